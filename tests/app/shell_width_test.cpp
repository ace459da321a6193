// SPDX-License-Identifier: GPL-3.0-or-later
#include <QAction>
#include <QApplication>
#include <QDockWidget>
#include <QScreen>
#include <QSettings>

#include "panels/findings_panel.h"
#include "panels/survey_panel.h"
#include "panels/survey_table.h"
#include "panels_support.h"
#include "shell/main_window.h"
#include "shell/start_page.h"

using namespace tapward;
using namespace tapward::app;
using namespace tapward::app::test;

TEST_CASE("with 14 point letters the window still fits a small laptop's screen", "[shell]")
{
    const QFont before = QApplication::font();
    QFont large = before;
    large.setPointSizeF(14);
    QApplication::setFont(large);
    {
        MainWindow window;
        window.resize(1360, 760);
        window.show();
        REQUIRE(window.openSample(samples().front().resource));
        QApplication::processEvents();
        for (const auto* dock : window.findChildren<QDockWidget*>())
            UNSCOPED_INFO(dock->objectName().toStdString() << " " << dock->minimumSizeHint().width());
        for (const auto* widget : window.findChildren<QWidget*>())
            if (widget->minimumSizeHint().width() > 400)
                UNSCOPED_INFO(widget->metaObject()->className() << " " << widget->minimumSizeHint().width());
        CHECK(window.minimumSizeHint().width() <= 1366);
        window.resize(1360, 760);
        QApplication::processEvents();
        CHECK(window.width() <= 1366);
    }
    QApplication::setFont(before);
}

TEST_CASE("the first window, and one from a larger screen, stay within what the screen has room for", "[shell]")
{
    const auto fits = [](const MainWindow& window) {
        const QSize room = window.screen()->availableSize();
        const int bar = 37;  // a common desktop's: common practice, no published source
        CAPTURE(window.width(), window.height(), room.width(), room.height());
        CHECK(window.width() <= room.width());
        CHECK(window.height() <= room.height() - bar);
    };
    QSettings().remove(QStringLiteral("geometry"));
    REQUIRE(QGuiApplication::primaryScreen()->availableSize().width() < 1360);  // else nothing is asked of it
    MainWindow first;
    fits(first);
    first.show();
    fits(first);
    QWidget large;
    large.resize(4000, 3000);
    QSettings().setValue(QStringLiteral("geometry"), large.saveGeometry());
    MainWindow second;
    second.show();
    fits(second);
    QSettings().remove(QStringLiteral("geometry"));
}

TEST_CASE("the survey is reached from the menu and selects with the drawing", "[shell]")
{
    MainWindow window;
    window.show();
    REQUIRE(window.openSample(samples().front().resource));
    QAction* open = nullptr;
    for (QAction* action : window.actions())
        if (action->shortcut() == QKeySequence(Qt::CTRL | Qt::Key_T))
            open = action;
    REQUIRE(open);
    open->trigger();
    QApplication::processEvents();
    CHECK(window.survey().isVisible());
    CHECK_FALSE(window.survey().visibleRegion().isEmpty());
    const auto id = idOf(window.session(), "L3");
    window.session().select({id});
    const auto selected = window.survey().shownTable().selectionModel()->selectedIndexes();
    REQUIRE_FALSE(selected.isEmpty());
    CHECK(selected.front().siblingAtColumn(0).data(Qt::EditRole).toString() == QStringLiteral("L3"));
}

TEST_CASE("findings stand beside the warm-up where there is room, else their tab has the count", "[shell]")
{
    QSettings().remove(QStringLiteral("panes"));
    QSettings().remove(QStringLiteral("geometry"));
    const auto paneOf = [](const MainWindow& window, const char* name) {
        return window.findChild<QDockWidget*>(QString::fromLatin1(name));
    };
    const QFont before = QApplication::font();
    for (const bool roomy : {true, false}) {
        CAPTURE(roomy);
        QFont letters = before;
        letters.setPointSizeF(roomy ? before.pointSizeF() : 14);
        QApplication::setFont(letters);
        MainWindow window;
        window.resize(1366, 768);
        window.show();
        REQUIRE(window.openSample(samples().front().resource));
        REQUIRE(waitForAnswer(window.session()));
        QApplication::processEvents();
        const auto* chart = paneOf(window, "warm-up");
        const auto* findings = paneOf(window, "findings");
        CHECK_FALSE(chart->visibleRegion().isEmpty());
        CHECK(findings->visibleRegion().isEmpty() != roomy);
        CHECK(window.tabifiedDockWidgets(paneOf(window, "warm-up")).contains(paneOf(window, "findings")) != roomy);
        CHECK(findings->windowTitle()
              == QStringLiteral("Findings (%1)").arg(static_cast<int>(window.findings().openCount())));
        QSettings().remove(QStringLiteral("panes"));
        QApplication::setFont(before);
    }
}
