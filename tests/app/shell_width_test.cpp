// SPDX-License-Identifier: GPL-3.0-or-later
#include <QAction>
#include <QApplication>
#include <QDockWidget>

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
