// SPDX-License-Identifier: GPL-3.0-or-later
// A tankless heater in a coach: its readings and what it loses.
#include <algorithm>
#include <cmath>
#include <set>

#include "study/bench.h"
#include "study/trailer.h"

using namespace tapward;
using document::ActionKind;

namespace {

double valueAt(const study::CaseResult& result, const char* series, double t_s)
{
    const study::Series* found = result.find(series);
    REQUIRE(found);
    const auto at = std::lower_bound(result.time_s.begin(), result.time_s.end(), t_s - 1e-6);
    REQUIRE(at != result.time_s.end());
    return found->values[static_cast<std::size_t>(at - result.time_s.begin())];
}

/// City water straight into the heater's hot port, out at a tap on its cold one.
document::Drawing backward()
{
    document::Drawing drawing;
    const auto add = [&](const char* kind, const char* tag) -> document::Part& {
        document::Part part;
        part.id = drawing.nextId++;
        part.kind = kind;
        part.tag = tag;
        drawing.parts.push_back(part);
        return drawing.parts.back();
    };
    const auto city = add("city_inlet", "CW1").id, heater = add("tankless_heater", "WH1").id;
    const auto tap = add("faucet", "F1").id;
    add("battery", "BT1");
    const auto pipe = [&](document::PartId from, const char* fromPort, document::PartId to, const char* toPort) {
        document::Part& part = add("pipe_run", "L1");
        part.tag += std::to_string(part.id);
        part.ends[0] = {from, fromPort, {}};
        part.ends[1] = {to, toPort, {}};
        part.entries["length_m"] = {0.5, parts::Basis::Measured};
    };
    pipe(city, "outlet", heater, "hot");
    pipe(heater, "cold", tap, "hot");
    return drawing;
}

}  // namespace

TEST_CASE("the heater's outlet is read at its hot port, and its inlet at the cold one, also while water runs backward",
          "[study]")
{
    const document::Drawing drawing = backward();
    document::Case script = test::draws(drawing, ActionKind::UseCity, {{"F1", 2, 100, 1, 1}});
    script.start_C = 15;
    script.supply_C = 45;
    script.duration_s = 60;
    const study::CaseResult result = test::runCase(drawing, script);
    // Warm water comes in at the hot port first; the cold one sees it a turnover later.
    double hot_s = 0, cold_s = 0;
    for (double t_s = 2; t_s < 60; t_s += 1) {
        hot_s = valueAt(result, "heater_outlet", t_s) < 35 ? t_s : hot_s;
        cold_s = valueAt(result, "heater_inlet", t_s) < 35 ? t_s : cold_s;
    }
    CHECK(hot_s + 3 < cold_s);
    CHECK(cold_s < 55);
    CHECK_THAT(valueAt(result, "heater_outlet", 59), WithinAbs(45, 0.5));
    CHECK(std::none_of(result.events.begin(), result.events.end(),
                       [](const study::Event& event) { return event.id == "burner_lit"; }));
}

TEST_CASE("the fan that purges after a run takes about 3 °F from the heater's water", "[study][trade]")
{
    // Common practice, no published source.
    document::Drawing drawing = test::trailer();
    const document::Case script = test::draws(drawing, ActionKind::UseCity, {{"F2", 2, 58, 1, 1}});
    const auto afterPurge_C = [&](double loss_W_K) {
        for (document::Part& part : drawing.parts) {
            if (part.kind == "tankless_heater") {
                part.entries["purge_loss_W_K"] = {loss_W_K, parts::Basis::Measured};
            }
        }
        return valueAt(test::runCase(drawing, script), "heater_outlet", 60 + 21);
    };
    const double kept_C = afterPurge_C(0);
    for (document::Part& part : drawing.parts) {
        part.entries.erase("purge_loss_W_K");
    }
    const double usual_C = valueAt(test::runCase(drawing, script), "heater_outlet", 60 + 21);
    CHECK_THAT((kept_C - usual_C) * 1.8, WithinAbs(3, 0.75));
    CHECK(afterPurge_C(20) < usual_C - 2);
}

TEST_CASE("of two heaters in one line each has its own curves, and the second gets what the first gives", "[study]")
{
    test::Bench bench;
    const auto city = bench.add("city_inlet", "CW1"), first = bench.add("tankless_heater", "WH1");
    const auto second = bench.add("tankless_heater", "WH2"), tap = bench.add("faucet", "F1");
    bench.add("battery", "BT1");
    bench.pipe(city, "outlet", first, "cold", 0.5);
    bench.pipe(first, "hot", second, "cold", 0.5);
    bench.pipe(second, "hot", tap, "hot", 0.5);
    document::Case script = bench.script(40, {bench.act(0, ActionKind::UseCity), bench.hot(2)});
    script.start_C = 20;
    script.supply_C = 20;
    const study::CaseResult result = bench.run(script);
    std::set<std::string> names;
    for (const study::Series& series : result.series) {
        INFO(series.id);
        CHECK(names.insert(series.id).second);
    }
    const double between = valueAt(result, "heater_outlet", 39);
    CHECK(between > 30);
    CHECK_THAT(valueAt(result, "heater_inlet.WH2", 39), WithinAbs(between, 1));
    CHECK(valueAt(result, "heater_outlet.WH2", 39) > 30);
    CHECK_THAT(valueAt(result, "heater_inlet", 39), WithinAbs(20, 0.1));
    // A second after the draw begins the two outlets are not alike.
    CHECK(result.find("heater_outlet")->values != result.find("heater_outlet.WH2")->values);
}
