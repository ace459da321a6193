// SPDX-License-Identifier: GPL-3.0-or-later
// The fire map and the winter page of the safety pane.
#include <algorithm>
#include <QToolButton>
#include <set>

#include "panels/fire_map_page.h"
#include "panels/question_list.h"
#include "panels/safety_panel.h"
#include "panels/safety_plot.h"
#include "panels/safety_table.h"
#include "panels/say.h"
#include "panels/winter_page.h"
#include "panels_support.h"
#include "review/finding.h"

using namespace tapward;
using namespace tapward::app;
using namespace tapward::app::test;

namespace {

bool waitForQuickStudies(SafetyPanel& panel)
{
    panel.runStudies();
    const bool came =
        QTest::qWaitFor([&] { return panel.worker().answers().fire && panel.worker().answers().winter; }, 60000);
    panel.worker().cancel();
    return came;
}

}  // namespace

TEST_CASE("every region of the fire map has its own hatching and name, and the loop's presses run over it",
          "[panels][safety][fire]")
{
    Session session;
    StudyWorker studies(session);
    SafetyPanel panel(session, studies);
    REQUIRE_FALSE(session.open(samplePath()));
    REQUIRE(waitForQuickStudies(panel));
    REQUIRE(panel.worker().answers().fire->answer);
    const study::FireMap& map = *panel.worker().answers().fire->answer;
    const auto& content = panel.fire().chart().plot().content();
    const std::set<study::FireOutcome> met(map.outcomes.begin(), map.outcomes.end());
    REQUIRE(met.size() >= 3);
    REQUIRE(content.areas.size() == met.size());
    std::set<int> hatches;
    std::set<QString> names;
    for (const auto& area : content.areas) {
        hatches.insert(static_cast<int>(area.hatch));
        names.insert(area.name);
    }
    CHECK(hatches.size() == met.size());
    for (const auto outcome : met)
        CHECK(names.contains(say(study::title(outcome))));
    // A point of every cell lies in the area of its outcome.
    for (std::size_t i = 0; i < map.inlet_C.size(); i += 5)
        for (std::size_t f = 0; f < map.flow_m3s.size(); f += 5) {
            const QPointF at(toDisplay({map.flow_m3s[f], Quantity::Flow}, UnitSystem::Us),
                             toDisplay({map.inlet_C[i], Quantity::Temperature}, UnitSystem::Us));
            for (const auto& area : content.areas) {
                CAPTURE(at.x(), at.y(), area.name);
                CHECK(area.outline.containsPoint(at, Qt::OddEvenFill)
                      == (area.name == say(study::title(map.at(i, f)))));
            }
        }
    REQUIRE(map.path.back().press == 3);
    CHECK(content.marks.size() == 3);
    CHECK(content.marks.back().at.y() == toDisplay({map.path.back().inlet_C, Quantity::Temperature}, UnitSystem::Us));
    const auto& table = panel.fire().chart().table();
    int path = 0, cells = 0;
    for (int row = 0; row < table.rowCount(); ++row)
        ++(table.item(row, 0)->text() == QStringLiteral("Map") ? cells : path);
    CHECK(path >= 6);  // begin and end of each press
    CHECK(cells >= static_cast<int>(met.size()));
    CHECK(content.description.contains(QStringLiteral("Press 3")));
}

TEST_CASE("a coach with a storage heater says that there is no fire to map", "[panels][safety][fire]")
{
    Session session;
    StudyWorker studies(session);
    SafetyPanel panel(session, studies);
    REQUIRE_FALSE(session.open(samplePath("storage_coach")));
    REQUIRE(waitForQuickStudies(panel));
    CHECK_FALSE(panel.worker().answers().fire->answer);
    CHECK(panel.fire().chart().table().rowCount() == 0);
    CHECK(panel.titles().contains(QStringLiteral("Fire Map")));
}

TEST_CASE("the winter page has every step and every segment that stays full, and a line selects its parts",
          "[panels][safety][winter]")
{
    Session session;
    StudyWorker studies(session);
    SafetyPanel panel(session, studies);
    panel.resize(1100, 420);
    panel.show();
    REQUIRE_FALSE(session.open(QStringLiteral(TAPWARD_SOURCE_DIR "/tests/study/trade_ranges.tapward")));
    REQUIRE(waitForQuickStudies(panel));
    REQUIRE(waitForAnswer(session));
    const auto& slot = panel.worker().answers().winter;
    REQUIRE(slot->answer);
    const review::WinterPlan& plan = *slot->answer;
    auto& page = panel.winter();
    panel.questions().setCurrentPage(&page);
    REQUIRE(page.steps().rowCount() == static_cast<int>(plan.steps.size()));
    int choosing = 0;
    for (int row = 0; row < page.steps().rowCount(); ++row) {
        const auto& step = plan.steps[static_cast<std::size_t>(row)];
        CHECK(page.steps().item(row, 1)->text() == sayMessage(step.text, UnitSystem::Us));
        page.steps().chooseRow(row);
        QTest::keyClick(&page.steps(), Qt::Key_Return);
        CHECK(session.selection() == step.parts);
        choosing += step.parts.empty() ? 0 : 1;
    }
    CHECK(choosing >= 3);
    REQUIRE_FALSE(plan.full.empty());  // the loop behind its shut valve
    const QRect cell = page.places().visualItemRect(page.places().item(0, 0));
    QTest::mouseClick(page.places().viewport(), Qt::LeftButton, {}, cell.center());
    CHECK(session.selection() == plan.full.front().parts);
    REQUIRE(session.prediction());
    for (const auto& message : review::cautions(session.drawing(), *session.prediction(), *session.assessment()))
        CHECK(page.cautions().contains(sayMessage(message, UnitSystem::Us)));
}
