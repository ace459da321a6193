// SPDX-License-Identifier: GPL-3.0-or-later
// Work areas: each part of the job at full size, and the same drawing, case and moment in all of them.
#include <QAction>
#include <QApplication>
#include <QDockWidget>
#include <QFormLayout>
#include <QGridLayout>
#include <QHeaderView>
#include <QLabel>
#include <QSettings>
#include <QStatusBar>
#include <QTableView>
#include <QTest>
#include <set>

#include "panels/answers.h"
#include "panels/case_bar.h"
#include "panels/findings_panel.h"
#include "panels/flow_layout.h"
#include "panels/question_list.h"
#include "panels/safety_panel.h"
#include "panels/survey_panel.h"
#include "panels/survey_table.h"
#include "panels/time_bar.h"
#include "panels_support.h"
#include "shell/main_window.h"
#include "shell/start_page.h"
#include "shell/window_style.h"
#include "tools/editing_canvas.h"

using namespace tapward;
using namespace tapward::app;
using namespace tapward::app::test;

namespace {

void forgetLooks()
{
    for (const char* key : {"panes", "geometry", "area"})
        QSettings().remove(QString::fromLatin1(key));
}

std::set<QString> shownPanes(const MainWindow& window)
{
    std::set<QString> shown;
    for (const auto* pane : window.findChildren<QDockWidget*>())
        if (!pane->isHidden())
            shown.insert(pane->objectName());
    return shown;
}

/// As it stands in a coach: on a small laptop.
struct Laptop {
    explicit Laptop(QSize size = {1366, 768})
    {
        forgetLooks();
        window.setFixedSize(size);
        window.show();
        REQUIRE(window.openSample(samples().front().resource));
        settle();
    }
    ~Laptop() { forgetLooks(); }
    void area(const char* id)
    {
        window.showArea(QString::fromLatin1(id));
        settle();
    }
    static void settle()
    {
        for (int i = 0; i < 6; ++i)
            QApplication::processEvents();
    }
    MainWindow window;
};

}  // namespace

TEST_CASE("where one draws or watches the drawing has 900 x 420 pixels of a small laptop", "[shell][areas]")
{
    Laptop laptop;
    for (const char* area : {"coach", "loop"}) {
        laptop.area(area);
        CAPTURE(area, laptop.window.canvas().width(), laptop.window.canvas().height());
        CHECK(laptop.window.canvas().width() >= 900);
        CHECK(laptop.window.canvas().height() >= 420);
    }
}

TEST_CASE("the survey shows twelve rows beside the drawing, and a run chosen in one is lit in both", "[shell][areas]")
{
    Laptop laptop;
    laptop.area("survey");
    SurveyTable& table = laptop.window.survey().shownTable();
    CAPTURE(table.viewport()->height(), table.rowHeight(0));
    CHECK(table.viewport()->height() >= 12 * table.rowHeight(0));
    CHECK(laptop.window.canvas().width() >= 500);
    const auto run = laptop.window.session().drawing().findTag("L3")->id;
    laptop.window.session().select({run});
    const auto rows = table.selectionModel()->selectedIndexes();
    REQUIRE_FALSE(rows.isEmpty());
    CHECK(rows.front().siblingAtColumn(0).data(Qt::EditRole).toString() == QStringLiteral("L3"));
    table.selectRow(table.rowAt(1));
    REQUIRE(laptop.window.session().selection().size() == 1);
    CHECK(laptop.window.session().selection().front() != run);
}

TEST_CASE("safety is a list of questions beside a page of full height, the drawing in view", "[shell][areas]")
{
    Laptop laptop;
    laptop.area("safety");
    const SafetyPanel& safety = laptop.window.safety();
    CHECK(safety.height() >= 560);
    CHECK(safety.width() >= 700);
    CHECK(laptop.window.canvas().width() >= 450);
    CHECK(laptop.window.canvas().isVisible());
}

TEST_CASE("drawing, case and moment are the same in every area; each keeps its own panes", "[shell][areas]")
{
    {
        Laptop laptop;
        MainWindow& window = laptop.window;
        REQUIRE(waitForAnswer(window.session()));
        window.session().setTime(30);
        const QString shown = window.session().caseName();
        std::set<std::set<QString>> kinds;
        for (const QString& id : window.areaIds()) {
            window.showArea(id);
            CHECK(window.area() == id);
            CHECK(window.session().caseName() == shown);
            CHECK(window.session().time() == 30);
            CHECK(window.canvas().isVisible());
            kinds.insert(shownPanes(window));
        }
        CHECK(static_cast<qsizetype>(kinds.size()) == window.areaIds().size());
        // A pane closed in one area is there in the others, and still closed when one comes back.
        window.showArea(QStringLiteral("loop"));
        window.findChild<QDockWidget*>(QStringLiteral("findings"))->close();
        window.showArea(QStringLiteral("safety"));
        CHECK(shownPanes(window).contains(QStringLiteral("findings")));
        window.showArea(QStringLiteral("loop"));
        CHECK_FALSE(shownPanes(window).contains(QStringLiteral("findings")));
        window.close();
        // The next window too, in the area that was shown last.
        MainWindow next;
        next.show();
        REQUIRE(next.openSample(samples().front().resource));
        CHECK(next.area() == QStringLiteral("loop"));
        CHECK_FALSE(shownPanes(next).contains(QStringLiteral("findings")));
        CHECK(shownPanes(next).contains(QStringLiteral("warm-up")));
    }
}

TEST_CASE("areas are reached by Alt and a digit; a pane that an area lacks is shown where it belongs", "[shell][areas]")
{
    Laptop laptop;
    MainWindow& window = laptop.window;
    for (int i = 0; i < window.areaIds().size(); ++i) {
        QAction* found = nullptr;
        for (QAction* action : window.actions())
            if (action->shortcut() == QKeySequence(Qt::ALT | static_cast<Qt::Key>(Qt::Key_1 + i)))
                found = action;
        REQUIRE(found);
        CHECK(found->isEnabled());
        found->trigger();
        CHECK(window.area() == window.areaIds()[i]);
        CHECK(found->isChecked());
    }
    laptop.area("coach");
    window.showPane("survey");
    CHECK(window.area() == QStringLiteral("survey"));
    window.showPane("details");  // has no area of its own
    CHECK(window.area() == QStringLiteral("survey"));
    CHECK(shownPanes(window).contains(QStringLiteral("details")));
    // F9 hides the side panes of this area and brings back just those.
    laptop.area("loop");
    const auto before = shownPanes(window);
    for (int times = 0; times < 2; ++times)
        for (QAction* action : window.actions())
            if (action->shortcut() == QKeySequence(Qt::Key_F9)) {
                action->trigger();
                CHECK((shownPanes(window) == before) == (times == 1));
            }
}

TEST_CASE("a new drawing says once how to begin, and warns of nothing", "[shell][areas]")
{
    forgetLooks();
    MainWindow window;
    window.show();
    window.newDrawing();
    REQUIRE(waitForAnswer(window.session()));
    CHECK(window.area() == QStringLiteral("coach"));
    CHECK(window.session().findings().empty());
    CHECK(window.findings().openCount() == 0);
    const Answers answers = collectAnswers(window.session());
    CHECK(answers.lines.empty());
    CHECK(answers.cautions.empty());
    CHECK_FALSE(answers.noMargin.isEmpty());
    int hints = 0;
    for (const auto* label : window.findChildren<QLabel*>())
        hints += label->isVisible() && label->text().contains(QStringLiteral("Insert"));
    CHECK(hints == 0);  // the canvas paints the one there is
    window.autosave().forget();
    forgetLooks();
}

TEST_CASE("every distance of the window is of one grid of four pixels", "[shell][areas]")
{
    struct Styled {
        Styled() { QApplication::setStyle(new WindowStyle); }
        ~Styled() { QApplication::setStyle(QStringLiteral("fusion")); }
    } const styled;
    Laptop laptop;
    int looked = 0;
    for (const auto* layout : laptop.window.findChildren<QLayout*>()) {
        const QWidget* owner = layout->parentWidget();
        if (!owner || qobject_cast<const QStatusBar*>(owner) || owner->inherits("QDialogButtonBox")
            || owner->inherits("QComboBoxPrivateContainer"))
            continue;  // the style's own
        std::vector<int> distances;
        if (const auto* grid = qobject_cast<const QGridLayout*>(layout))
            distances = {grid->horizontalSpacing(), grid->verticalSpacing()};
        else if (const auto* form = qobject_cast<const QFormLayout*>(layout))
            distances = {form->horizontalSpacing(), form->verticalSpacing()};
        else if (qobject_cast<const QBoxLayout*>(layout) || dynamic_cast<const FlowLayout*>(layout))
            distances = {layout->spacing()};
        else
            continue;
        const QMargins margins = layout->contentsMargins();
        distances.insert(distances.end(), {margins.left(), margins.top(), margins.right(), margins.bottom()});
        ++looked;
        INFO(owner->metaObject()->className() << ' ' << owner->objectName().toStdString());
        for (const int distance : distances)
            CHECK(distance % 4 == 0);
    }
    CHECK(looked > 40);
}

TEST_CASE("at twice the size on a small laptop nothing above and below the drawing lies on it", "[shell][areas]")
{
    Laptop laptop({683, 384});
    MainWindow& window = laptop.window;
    for (const char* id : {"coach", "survey", "loop", "safety"}) {
        laptop.area(id);
        INFO(id);
        const auto rect = [&](const QWidget& widget) { return QRect(widget.mapTo(&window, QPoint()), widget.size()); };
        const QRect canvas = rect(window.canvas());
        for (const auto* bar : {static_cast<QWidget*>(window.findChild<CaseBar*>()),
                                static_cast<QWidget*>(window.findChild<TimeBar*>())}) {
            CHECK_FALSE(rect(*bar).intersects(canvas));
            for (const auto* control : bar->findChildren<QWidget*>())
                if (control->isVisible())
                    CHECK_FALSE(rect(*control).intersects(canvas));
        }
        CHECK(canvas.height() >= 120);
    }
}
