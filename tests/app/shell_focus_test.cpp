// SPDX-License-Identifier: GPL-3.0-or-later
// Whatever has the keyboard shows it.
#include <QApplication>
#include <QDockWidget>
#include <QLabel>
#include <QScrollArea>
#include <set>
#include <vector>

#include "panels/case_editor.h"
#include "panels/icons.h"
#include "panels/jug_dialog.h"
#include "panels/stock_dialog.h"
#include "panels_support.h"
#include "shell/help_window.h"
#include "shell/main_window.h"
#include "shell/start_page.h"
#include "shell/window_style.h"
#include "tools/editing_canvas.h"

using namespace tapward;
using namespace tapward::app;
using namespace tapward::app::test;

namespace {

QImage pictureOf(QWidget& widget)
{
    QCoreApplication::sendPostedEvents();
    return widget.window()
        ->grab(QRect(widget.mapTo(widget.window(), QPoint(-3, -3)), widget.size() + QSize(6, 6)))
        .toImage();
}

/// Pixels that change by more than a shade when the widget, or what is in it, gets the focus from the keyboard. (For Qt this reason is as
/// good as a Tab key; the Tab reason without the key is not.)
int shownBy(QWidget& widget, QWidget& elsewhere)
{
    elsewhere.setFocus(Qt::ShortcutFocusReason);
    const QImage without = pictureOf(widget);
    widget.setFocus(Qt::ShortcutFocusReason);
    if (!widget.hasFocus() && !widget.isAncestorOf(QApplication::focusWidget()))
        return -1;
    const QImage with = pictureOf(widget);
    int changed = 0;
    for (int y = 0; y < with.height(); ++y)
        for (int x = 0; x < with.width(); ++x) {
            const QColor a = with.pixelColor(x, y), b = without.pixelColor(x, y);
            changed +=
                std::abs(a.red() - b.red()) + std::abs(a.green() - b.green()) + std::abs(a.blue() - b.blue()) > 48;
        }
    return changed;
}

bool isScrolledAway(const QWidget& widget)
{
    for (const QWidget* above = widget.parentWidget(); above && !above->isWindow(); above = above->parentWidget())
        if (const auto* scroll = qobject_cast<const QScrollArea*>(above);
            scroll && !scroll->viewport()->rect().contains(widget.mapTo(scroll->viewport(), widget.rect().center())))
            return true;
    return false;
}

void checkAll(QWidget& root, QWidget* other = nullptr)
{
    root.window()->activateWindow();
    REQUIRE(QTest::qWaitForWindowActive(root.window()));
    QList<QWidget*> candidates = root.findChildren<QWidget*>();
    candidates << &root;
    std::vector<QWidget*> all;
    for (auto* widget : candidates)
        if ((widget->focusPolicy() & Qt::TabFocus) && widget->isEnabled() && widget->isVisible()
            && !widget->focusProxy() && widget->window() == root.window() && !isScrolledAway(*widget)
            && root.window()->rect().contains(widget->mapTo(root.window(), widget->rect().bottomRight())))
            all.push_back(widget);
    REQUIRE((other || all.size() >= 2));
    for (auto* widget : all) {
        QWidget* elsewhere = other ? other : widget == all.front() ? all.back() : all.front();
        const int changed = shownBy(*widget, *elsewhere);
        CAPTURE(widget->metaObject()->className(), widget->accessibleName().toStdString(),
                widget->objectName().toStdString(), root.metaObject()->className(), changed);
        CHECK(changed >= 20);
    }
}

struct Dark {
    explicit Dark(bool on) : before(QApplication::palette())
    {
        QApplication::setStyle(new WindowStyle);
        if (on)
            QApplication::setPalette(look::darkPalette());
    }
    ~Dark() { QApplication::setPalette(before); }
    QPalette before;
};

}  // namespace

TEST_CASE("every control shows that it has the keyboard, in the light and in the dark", "[shell]")
{
    for (const bool dark : {false, true}) {
        CAPTURE(dark);
        const Dark palette(dark);
        MainWindow window;
        window.resize(1500, 1000);
        window.show();
        QCoreApplication::processEvents();
        checkAll(*window.findChild<StartPage*>());
        REQUIRE(window.openSample(samples().front().resource));
        REQUIRE(waitForAnswer(window.session()));
        window.session().select({window.session().drawing().findTag("P1")->id});
        for (const QString& area : window.areaIds()) {
            window.showArea(area);
            for (auto* dock : window.findChildren<QDockWidget*>()) {
                if (dock->isHidden())
                    continue;
                dock->raise();
                QCoreApplication::processEvents();
                checkAll(*dock->widget(), &window.canvas());
            }
        }
        checkAll(*window.centralWidget());
        CaseEditor cases(window.session(), &window);
        StockDialog stock(window.session(), &window);
        JugDialog jug(window.session(), window.session().drawing().findTag("F1")->id, &window);
        HelpWindow help(&window);
        for (QWidget* dialog : std::initializer_list<QWidget*>{&cases, &stock, &jug, &help}) {
            dialog->show();
            QCoreApplication::processEvents();
            checkAll(*dialog);
            dialog->hide();
        }
    }
}

TEST_CASE("F6 goes round all panes that are seen, Shift+F6 the other way, with nothing to show too", "[shell]")
{
    for (const auto* drawings : {&samples(), &templates()}) {
        MainWindow window;
        window.resize(1500, 1000);
        window.show();
        window.activateWindow();
        REQUIRE(QTest::qWaitForWindowActive(&window));
        CAPTURE(drawings->front().title.toStdString());
        REQUIRE(window.openSample(drawings->front().resource));
        REQUIRE(waitForAnswer(window.session()));
        QCoreApplication::processEvents();
        const auto paneOf = [&](const QWidget* focus) -> QString {
            for (const auto* dock : window.findChildren<QDockWidget*>())
                if (dock->isAncestorOf(focus))
                    return dock->objectName();
            return focus == &window.canvas() ? QStringLiteral("drawing") : QStringLiteral("beside the drawing");
        };
        std::set<QString> seen{QStringLiteral("drawing"), QStringLiteral("beside the drawing")};
        for (auto* dock : window.findChildren<QDockWidget*>()) {
            QList<QWidget*> inside = dock->findChildren<QWidget*>();
            inside << dock->widget();
            for (const auto* one : inside)
                if (one->isVisible() && window.rect().contains(one->mapTo(&window, one->rect().center()))
                    && one->isEnabled() && (one->focusPolicy() & Qt::TabFocus))
                    seen.insert(dock->objectName());
        }
        window.canvas().setFocus();
        std::vector<QString> forth, back;
        for (auto* way : {&forth, &back}) {
            const auto modifiers = way == &forth ? Qt::NoModifier : Qt::ShiftModifier;
            do {
                QTest::keyClick(&window, Qt::Key_F6, modifiers);
                REQUIRE(QApplication::focusWidget());
                way->push_back(paneOf(QApplication::focusWidget()));
            } while (!window.canvas().hasFocus() && way->size() < 20);
        }
        const std::set<QString> visited(forth.begin(), forth.end());
        for (const QString& pane : seen) {
            CAPTURE(pane.toStdString());
            CHECK(visited.contains(pane));
        }
        for (const QString& pane : visited) {
            CAPTURE(pane.toStdString());
            CHECK(seen.contains(pane));
        }
        REQUIRE(forth.size() == back.size());
        CHECK(std::equal(forth.begin(), forth.end() - 1, back.rbegin() + 1));
    }
}
