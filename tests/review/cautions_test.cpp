// SPDX-License-Identifier: GPL-3.0-or-later
// Standing cautions, the order of findings, and how much each weighs.
#include <algorithm>
#include <map>

#include "base/units.h"
#include "review/burn.h"
#include "review/coach.h"
#include "review/fault_weight.h"
#include "review/heat_weight.h"
#include "support/catch.h"

using namespace tapward;
using review::BurnHazard;
using review::Severity;
using study::HeatPlace;
using test::Coach;

namespace {

const Message* with(const std::vector<Message>& all, const std::string& words)
{
    const auto at = std::find_if(all.begin(), all.end(),
                                 [&](const Message& one) { return one.text.find(words) != std::string::npos; });
    return at == all.end() ? nullptr : &*at;
}

std::vector<Message> cautions(const Coach& coach)
{
    return review::cautions(coach.drawing, coach.prediction, coach.drawn());
}

double si(const Message& message, std::size_t argument) { return std::get<Measure>(message.arguments.at(argument)).si; }

}  // namespace

TEST_CASE("the caution about hot water has the hottest tap from 104 °F on, with a burn time where there is one",
          "[review]")
{
    Coach coach;
    CHECK(cautions(coach).front().arguments.empty());
    coach.addCase("Mild", 1, {{"hottest_tap", 40.0}});
    CHECK(cautions(coach).front().arguments.empty());
    coach.addCase("Warm", 1, {{"hottest_tap", 42.0}});
    REQUIRE(cautions(coach).front().arguments.size() == 1);  // below the tables' 44 °C there is no time
    CHECK(si(cautions(coach).front(), 0) == 42);
    coach.addCase("Hot", 1, {{"hottest_tap", 60.0}});
    REQUIRE(cautions(coach).front().arguments.size() == 2);
    CHECK(si(cautions(coach).front(), 0) == 60);
    CHECK(si(cautions(coach).front(), 1) == 3);  // Moritz & Henriques (1947)
}

TEST_CASE("repeated presses are warned of with what they were seen to do, or in general", "[review]")
{
    Coach coach;
    const std::string words = "Let the line cool before pressing again";
    REQUIRE(with(cautions(coach), words));
    CHECK(with(cautions(coach), words)->arguments.empty());
    coach.addCase("Once", 1, {{"hottest_heater_outlet", 42.0}});
    CHECK(with(cautions(coach), words)->arguments.empty());
    coach.addCase("Twice", 2, {{"hottest_heater_outlet", 43.0}});
    REQUIRE(with(cautions(coach), words)->arguments.size() == 1);
    CHECK(si(*with(cautions(coach), words), 0) == 43);
    coach.addCase("Thrice", 3, {{"hottest_heater_outlet", 60.0}});
    REQUIRE(with(cautions(coach), words)->arguments.size() == 2);
    CHECK(si(*with(cautions(coach), words), 1) == 3);
    const auto all = cautions(coach);
    CHECK(std::count_if(all.begin(), all.end(),
                        [&](const Message& one) { return one.text.find(words) != std::string::npos; })
          == 1);
}

TEST_CASE("a coach without a loop is warned of hot water, gas and the papers only", "[review]")
{
    Coach coach;
    coach.prediction.loop.circulators.clear();
    const auto all = cautions(coach);
    CHECK(all.size() == 3);
    CHECK(with(all, "Gas:"));
    CHECK_FALSE(with(all, "12 V:"));
    CHECK_FALSE(with(all, "high limit"));
    CHECK(with(all, "licensed practice") == &all.back());
    // A storage heater with a burner has gas, one without has none.
    coach.drawing.find(coach.id("WH1"))->kind = "storage_heater";
    CHECK(with(cautions(coach), "Gas:"));
    coach.set("WH1", "burner_input_W", 0.0);
    coach.set("WH1", "element_W", 1000.0);
    CHECK_FALSE(with(cautions(coach), "Gas:"));
}

TEST_CASE("a loop's valve that could stay open is warned of where there is one", "[review]")
{
    Coach coach;
    CHECK(with(cautions(coach), "If the loop's valve stays open"));
    coach.drawing.find(coach.id("MV1"))->kind = "hand_valve";
    CHECK_FALSE(with(cautions(coach), "If the loop's valve stays open"));
}

TEST_CASE("what an open finding says is not said again, what was set aside is", "[review]")
{
    Coach coach;
    coach.addCase("Hot", 3, {{"hottest_tap", 60.0}, {"hottest_heater_outlet", 72.0}});
    auto findings = review::review(coach.drawing, coach.prediction, coach.drawn());
    const auto beside = [&] {
        return review::cautionsBeside(findings, coach.drawing, coach.prediction, coach.drawn());
    };
    const std::map<std::string, std::string> rules{{"scald_at_tap", "Hot water can burn."},
                                                   {"repeated_presses_unprotected", "Let the line cool before"},
                                                   {"single_stop", "Never rely on one stop"}};
    for (const auto& [rule, words] : rules) {
        CAPTURE(rule);
        CHECK(with(cautions(coach), words));
        CHECK_FALSE(with(beside(), words));
        for (review::Finding& finding : findings) {
            finding.dismissed = finding.rule == rule;
        }
        CHECK(with(beside(), words));
    }
    CHECK(with(beside(), "12 V:"));
    // Each standing caution that a rule can say falls silent with that rule's finding and no other's.
    const std::map<std::string, std::string> more{{"loop_open_at_rest", "If the loop's valve stays open"},
                                                  {"winter_trapped", "Freeze: pipe, pumps"}};
    for (const auto& [rule, words] : more) {
        review::Finding finding;
        finding.rule = rule;
        findings = {finding};
        CHECK_FALSE(with(beside(), words));
        CHECK(with(beside(), "Never rely on one stop"));
        findings[0].dismissed = true;
        CHECK(with(beside(), words));
    }
}

TEST_CASE("a dismissal sets aside the finding of its rule and part, no other", "[review]")
{
    Coach coach;
    coach.add("controller", "C2");
    coach.drawing.dismissals.push_back({"single_stop", coach.id("C2"), "Fitted later.", {}});
    coach.drawing.dismissals.push_back({"heater_recirculation_unknown", coach.id("C1"), "Not this part.", {}});
    const auto stops = coach.found("single_stop");
    REQUIRE(stops.size() == 2);
    CHECK(stops[0].part == coach.id("C1"));
    CHECK_FALSE(stops[0].dismissed);
    CHECK(stops[0].dismissReason.empty());
    CHECK(stops[1].dismissed);
    CHECK(stops[1].dismissReason == "Fitted later.");
    CHECK_FALSE(coach.found("heater_recirculation_unknown").at(0).dismissed);
}

TEST_CASE("findings come worst first, then in the order of the rules, then by part", "[review]")
{
    Coach coach(Coach::Return::ByColdLine, false);
    coach.add("controller", "C0");
    coach.add("fuse", "FU1");
    coach.set("FU1", "rating_A", 99.0);
    coach.addCase("Hot", 3, {{"hottest_tap", 60.0}, {"hottest_heater_outlet", 72.0}, {"hottest_heater_inlet", 50.0}});
    const auto all = review::review(coach.drawing, coach.prediction, coach.drawn());
    std::map<std::string, std::size_t> place;
    for (std::size_t i = 0; i < review::rules().size(); ++i) {
        place[review::rules()[i].id] = i;
    }
    REQUIRE(all.size() > 8);
    CHECK(all.front().rule == "scald_at_tap");
    CHECK(all.back().severity == Severity::Note);
    for (std::size_t i = 1; i < all.size(); ++i) {
        const auto &a = all[i - 1], &b = all[i];
        CAPTURE(a.rule, b.rule, i);
        CHECK(a.severity >= b.severity);
        if (a.severity == b.severity) {
            CHECK(place.at(a.rule) <= place.at(b.rule));
            if (a.rule == b.rule) {
                CHECK(a.part <= b.part);
            }
        }
    }
}

TEST_CASE("a part whose values make no model is the one finding, at that part", "[review]")
{
    Coach coach;
    coach.set("P1", "minimum_V", 14.0);
    coach.set("P1", "maximum_V", 13.0);
    const auto all = review::review(coach.drawing, coach.prediction, coach.drawn());
    REQUIRE(all.size() == 1);
    CHECK(all[0].rule == "part_without_model");
    CHECK(all[0].severity == Severity::Caution);
    CHECK_FALSE(all[0].what.empty());
    CHECK_FALSE(all[0].remedy.empty());
    CHECK(all[0].part == coach.id("P1"));
    coach.drawing.dismissals.push_back({"part_without_model", all[0].part, "Known.", {}});
    CHECK(review::review(coach.drawing, coach.prediction, coach.drawn())[0].dismissed);
}

TEST_CASE("how bad water is goes by the published times: 5 s, a minute, the guidance", "[review][burn]")
{
    // The lower of the tables: 5 s or less from 140 °F (hospital: under 5 s), seconds at 130 °F, two minutes at 51 °C
    // (Moritz & Henriques), five minutes at the guidance of 120 °F, twenty at 47 °C.
    CHECK(review::burnTime(us::celsius(150)).hazard == BurnHazard::AtOnce);
    CHECK(review::burnTime(60).hazard == BurnHazard::AtOnce);
    CHECK(review::burnTime(55).hazard == BurnHazard::Quick);  // 17 s
    CHECK(review::burnTime(us::celsius(130)).hazard == BurnHazard::Quick);
    CHECK(review::burnTime(51).hazard == BurnHazard::Burns);
    CHECK(review::burnTime(us::celsius(121)).hazard == BurnHazard::Burns);
    CHECK(review::burnTime(us::celsius(120)).hazard == BurnHazard::Slow);
    CHECK(review::burnTime(47).hazard == BurnHazard::Slow);
    CHECK(review::burnTime(44).hazard == BurnHazard::Slow);
    CHECK(review::burnTime(43).hazard == BurnHazard::BelowTables);
    CHECK(review::burnTime(60).words.arguments == std::vector<Argument>{Measure{3, Quantity::Time}});
    CHECK(review::burnTime(43).words.arguments.empty());
    // Between two points of a table falls the minute: 60 s at one temperature, 59 s just above it.
    double celsius = 51;
    while (*review::burnTime(celsius).adult_s >= 60) {
        celsius += 0.01;
    }
    CHECK(review::burnTime(celsius).hazard == BurnHazard::Quick);
    CHECK(review::burnTime(celsius - 0.01).hazard == BurnHazard::Burns);
    while (*review::burnTime(celsius).adult_s > 5) {
        celsius += 0.01;
    }
    CHECK(review::burnTime(celsius).hazard == BurnHazard::AtOnce);
    CHECK(review::burnTime(celsius - 0.01).hazard == BurnHazard::Quick);
    CHECK(review::id(BurnHazard::BelowTables) == "below_tables");
    CHECK(review::id(BurnHazard::Slow) == "slow");
    CHECK(review::id(BurnHazard::Burns) == "burns");
    CHECK(review::id(BurnHazard::Quick) == "quick");
    CHECK(review::id(BurnHazard::AtOnce) == "at_once");
    CHECK(review::title(BurnHazard::BelowTables) == "Below the burn tables");
    CHECK(review::title(BurnHazard::Slow) == "Burns in minutes");
    CHECK(review::title(BurnHazard::Burns) == "Burns in a minute or more");
    CHECK(review::title(BurnHazard::Quick) == "Burns in seconds");
    CHECK(review::title(BurnHazard::AtOnce) == "Burns at once");
}

TEST_CASE("a yardstick is not passed by meeting it", "[review]")
{
    CHECK(review::heatSeverity(HeatPlace::OutletHot, us::celsius(120)) == Severity::Note);
    CHECK(review::heatSeverity(HeatPlace::OutletHot, us::celsius(120.1)) == Severity::Danger);
    CHECK(review::heatSeverity(HeatPlace::OutletCold, us::celsius(120)) == Severity::Caution);
    CHECK(review::heatSeverity(HeatPlace::OutletCold, 40) == Severity::Note);
    CHECK(review::heatSeverity(HeatPlace::OutletCold, 40.1) == Severity::Caution);
    CHECK(review::heatSeverity(HeatPlace::ColdEntry, 40) == Severity::Note);
    CHECK(review::heatSeverity(HeatPlace::ColdEntry, 40.1) == Severity::Caution);
    CHECK(review::heatSeverity(HeatPlace::ColdEntry, 80) == Severity::Caution);  // nobody touches it there
    for (const HeatPlace place :
         {HeatPlace::Sensor, HeatPlace::HeaterOutlet, HeatPlace::Join, HeatPlace::HeaterInlet}) {
        CHECK(review::heatSeverity(place, us::celsius(120)) == Severity::Note);
        CHECK(review::heatSeverity(place, us::celsius(120.1)) == Severity::Caution);
    }
}

TEST_CASE("a fault as bad as the sound coach weighs nothing until it is half a kelvin worse", "[review][faults]")
{
    study::FaultRow row;
    row.run = true;
    row.harm = study::Harm::User;
    row.harmsSoundToo = true;
    row.change_K = 0.5;
    CHECK_FALSE(review::worseThanSound(row));
    CHECK(review::faultSeverity(row) == Severity::Note);
    row.change_K = 0.51;
    CHECK(review::worseThanSound(row));
    row.change_K.reset();
    CHECK_FALSE(review::worseThanSound(row));
    row.harmsSoundToo = false;
    CHECK(review::worseThanSound(row));
    row.run = false;
    CHECK_FALSE(review::worseThanSound(row));
    CHECK_FALSE(review::faultSeverity(row).has_value());
    row.run = true;
    row.harm = study::Harm::Nobody;
    CHECK_FALSE(review::worseThanSound(row));
    // Those without a change come behind those that have one, those not run last in the study's order.
    study::FaultsStudy study;
    study::FaultRow none = row, some = row, unrun = row;
    none.change_K.reset();
    some.change_K = -4;
    unrun.run = false;
    unrun.change_K = 50;
    study.rows = {unrun, none, some, unrun};
    CHECK(review::worstFirst(study) == std::vector<std::size_t>{2, 1, 0, 3});
}
