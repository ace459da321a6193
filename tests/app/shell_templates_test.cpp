// SPDX-License-Identifier: GPL-3.0-or-later
// The start page's templates: seen, named, opened as untitled copies.
#include <QAction>
#include <QApplication>
#include <QSignalSpy>
#include <QTest>
#include <QToolButton>
#include <set>

#include "shell/main_window.h"
#include "shell/start_page.h"
#include "support/catch.h"
#include "tools/editing_canvas.h"

using namespace tapward;
using namespace tapward::app;

namespace {

/// A blank picture has one colour.
std::size_t coloursOf(const QToolButton& button)
{
    const QImage picture = button.icon().pixmap(button.iconSize()).toImage();
    std::set<QRgb> colours;
    for (int y = 0; y < picture.height(); ++y)
        for (int x = 0; x < picture.width(); ++x)
            colours.insert(picture.pixel(x, y));
    return colours.size();
}

}  // namespace

TEST_CASE("the start page shows every template with a picture and a name, and a click asks for it", "[shell]")
{
    REQUIRE(templates().size() >= 4);
    StartPage page;
    page.show();
    const auto painted = [&] { return coloursOf(*page.findChildren<QToolButton*>().constLast()) > 10; };
    REQUIRE(QTest::qWaitFor(painted));  // the first frame has the words, the next the pictures
    QSignalSpy asked(&page, &StartPage::sampleRequested);
    std::set<QString> names;
    for (auto* button : page.findChildren<QToolButton*>()) {
        CHECK(names.insert(button->accessibleName()).second);
        CHECK(button->focusPolicy() != Qt::NoFocus);
        CHECK(coloursOf(*button) > 10);
        button->click();
    }
    CHECK(names.size() == templates().size());
    CHECK(asked.count() == static_cast<int>(templates().size()));
}

TEST_CASE("the start page has the focus on a way to begin, and Return takes it; closing a drawing comes back to it",
          "[shell]")
{
    MainWindow window;
    window.show();
    window.activateWindow();
    REQUIRE(QTest::qWaitForWindowActive(&window));
    const auto focused = [&] {
        const auto* button = qobject_cast<QAbstractButton*>(QApplication::focusWidget());
        return button ? button->property("resource").toString() : QString();
    };
    REQUIRE(focused() == templates().front().resource);
    QTest::keyClick(QApplication::focusWidget(), Qt::Key_Return);
    REQUIRE(window.hasDrawing());
    CHECK(window.canvas().hasFocus());
    for (auto* action : window.findChildren<QAction*>())
        if (action->shortcut() == QKeySequence(Qt::CTRL | Qt::Key_W))
            action->trigger();
    REQUIRE_FALSE(window.hasDrawing());
    CHECK(focused() == templates().front().resource);
}

TEST_CASE("a template opens as an untitled copy, not modified", "[shell]")
{
    MainWindow window;
    for (const auto& one : templates()) {
        CAPTURE(one.title.toStdString());
        REQUIRE(window.openSample(one.resource));
        CHECK(window.session().path().isEmpty());
        CHECK_FALSE(window.session().isModified());
        CHECK(window.session().drawing().job.sampleFigures);
    }
}

TEST_CASE("the pictures come in the window too, and do not push the page about", "[shell]")
{
    MainWindow window;
    window.show();
    const auto* page = window.findChild<StartPage*>();
    REQUIRE(page);
    QToolButton* last = nullptr;
    for (auto* button : page->findChildren<QToolButton*>())
        if (!button->property("resource").isNull())
            last = button;
    REQUIRE(last);
    const QSize before = last->sizeHint();
    REQUIRE(QTest::qWaitFor([&] { return coloursOf(*last) > 10; }));
    CHECK(last->sizeHint() == before);
}
