// SPDX-License-Identifier: GPL-3.0-or-later
#include "study/ranges.h"

#include <algorithm>
#include <cmath>

#include "study/trade_coach.h"
#include "support/catch.h"

using namespace tapward;
using parts::Basis;
using study::Range;
using test::tradeCoach;

namespace {

document::Part& part(document::Drawing& drawing, const char* tag)
{
    for (document::Part& one : drawing.parts) {
        if (one.tag == tag) {
            return one;
        }
    }
    throw std::runtime_error(tag);
}

void put(document::Drawing& drawing, const char* tag, const char* key, parts::Value value, Basis basis)
{
    part(drawing, tag).entries[key] = {std::move(value), basis};
}

std::optional<Range> found(const document::Drawing& drawing, const char* id)
{
    for (const Range& range : study::ranges(drawing, drawing.cases.at(0))) {
        if (range.id == id) {
            return range;
        }
    }
    return std::nullopt;
}

Range range(const document::Drawing& drawing, const char* id)
{
    const auto one = found(drawing, id);
    REQUIRE(one.has_value());
    return *one;
}

double number(const document::Drawing& drawing, const char* tag, const char* key)
{
    return document::values(*drawing.findTag(tag)).number(key);
}

/// The drawing as it would be with this one value.
study::Sample with(const document::Drawing& drawing, const char* id, double value)
{
    std::vector<Range> one(1);
    one[0].id = id;
    return study::withValues(drawing, drawing.cases.at(0), one, std::vector<double>{value});
}

}  // namespace

// The widths are common practice, no published source; what is checked here is that each goes with its basis.

TEST_CASE("pipe lengths are off by their bases, each tube weighed by its length", "[study][stop]")
{
    document::Drawing drawing = tradeCoach();
    for (document::Part& pipe : drawing.parts) {
        if (pipe.kind == "pipe_run") {
            pipe.entries["length_m"] = {0.0, Basis::Measured};
        }
    }
    put(drawing, "L5", "length_m", 6.0, Basis::Measured);
    const auto off = [&] { return range(drawing, "pipe_lengths").most - 1; };
    CHECK_THAT(off(), WithinAbs(0.03, 1e-12));
    put(drawing, "L7", "length_m", 3.0, Basis::DataSheet);
    CHECK_THAT(off(), WithinAbs((6 * 0.03 + 3 * 0.10) / 9, 1e-12));
    put(drawing, "L9", "length_m", 1.0, Basis::Estimated);
    CHECK_THAT(off(), WithinAbs((6 * 0.03 + 3 * 0.10 + 1 * 0.20) / 10, 1e-12));
    CHECK_THAT(range(drawing, "pipe_lengths").least, WithinAbs(1 - off(), 1e-12));
    CHECK(range(drawing, "pipe_lengths").means == Range::Means::Factor);
    // What is taken out does not count, and tube without length has none.
    part(drawing, "L7").stage = document::Stage::Removed;
    part(drawing, "L9").stage = document::Stage::Removed;
    CHECK_THAT(off(), WithinAbs(0.03, 1e-12));
    put(drawing, "L5", "length_m", 0.0, Basis::Measured);
    CHECK_FALSE(found(drawing, "pipe_lengths").has_value());
}

TEST_CASE("elbows may hide along existing tube of more than a metre whose elbows nobody counted", "[study][stop]")
{
    document::Drawing drawing = tradeCoach();
    for (document::Part& pipe : drawing.parts) {
        if (pipe.kind == "pipe_run") {
            put(drawing, pipe.tag.c_str(), "elbows", 2.0, Basis::Measured);
        }
    }
    CHECK_FALSE(found(drawing, "hidden_fittings").has_value());
    put(drawing, "L9", "elbows", 2.0, Basis::Estimated);
    put(drawing, "L9", "length_m", 5.0, Basis::Measured);
    CHECK_FALSE(found(drawing, "hidden_fittings").has_value());  // the job's own
    put(drawing, "L4", "elbows", 2.0, Basis::Estimated);
    put(drawing, "L4", "length_m", 0.8, Basis::Measured);
    CHECK_FALSE(found(drawing, "hidden_fittings").has_value());  // short
    put(drawing, "L4", "length_m", 3.0, Basis::Measured);
    const Range hidden = range(drawing, "hidden_fittings");
    CHECK(hidden.means == Range::Means::Shift);
    CHECK(hidden.least == 0);
    CHECK(hidden.most == 1);
    // One elbow to 3 m of tube, on top of those drawn; nothing to what was counted.
    const study::Sample sample = with(drawing, "hidden_fittings", 1);
    CHECK_THAT(number(sample.drawing, "L4", "elbows"), WithinAbs(3, 1e-12));
    CHECK(number(sample.drawing, "L5", "elbows") == 2);
    CHECK(number(sample.drawing, "L9", "elbows") == 2);
}

TEST_CASE("a field is off by its basis, or by the trade's range where nobody filled it in", "[study][stop]")
{
    struct One {
        const char *tag, *key, *id;
        double value, measured, sheet, estimated, tradeLeast, tradeMost;
    };
    document::Drawing drawing = tradeCoach();
    // Trade figures: published data sheets (0.4 to 0.75 gpm; 13,000 to 20,000 Btu/h); in water 1 to 5 s and 1 % of
    // gain claimed, 10 % met, from memory.
    const One all[] = {
        {"WH1", "activation_flow_m3s", "activation_flow", 3e-5, 0.03, 0.10, 0.20, 0.4 * us::kGpm, 0.75 * us::kGpm},
        {"WH1", "minimum_input_W", "minimum_fire", 5000, 0.05, 0.10, 0.25, 13000 * us::kBtuPerHour,
         20000 * us::kBtuPerHour},
        {"TE1", "lag_s", "sensor_lag", 3, 0.10, 0.25, 0.50, 1, 5},
        {"FE1", "gain", "flow_sensor", 1.02, 0.02, 0.03, 0.10, 0.9, 1.1}};
    for (const One& one : all) {
        CAPTURE(one.id);
        for (const auto& [basis, off] : {std::pair{Basis::Measured, one.measured},
                                         {Basis::DataSheet, one.sheet},
                                         {Basis::Estimated, one.estimated}}) {
            put(drawing, one.tag, one.key, one.value, basis);
            const Range wide = range(drawing, one.id);
            CHECK_THAT(wide.least, WithinRel(one.value * (1 - off), 1e-9));
            CHECK_THAT(wide.most, WithinRel(one.value * (1 + off), 1e-9));
            CHECK(wide.means == Range::Means::Value);
            CHECK(wide.quantity == document::kindOf(*drawing.findTag(one.tag)).field(one.key)->quantity);
            CHECK(wide.source.starts_with(basis == Basis::Measured    ? "measured"
                                          : basis == Basis::DataSheet ? "from a data sheet"
                                                                      : "estimated"));
        }
        part(drawing, one.tag).entries.erase(one.key);
        const Range trade = range(drawing, one.id);
        CHECK_THAT(trade.least, WithinRel(one.tradeLeast, 1e-9));
        CHECK_THAT(trade.most, WithinRel(one.tradeMost, 1e-9));
        CHECK(trade.source.starts_with("not filled in"));
    }
    // A clip-on trails by 10 to 40 s (from memory); the default lag stays inside its range.
    put(drawing, "TE1", "mounting", std::string("clipped"), Basis::Measured);
    const Range clipped = range(drawing, "sensor_lag");
    CHECK(clipped.most == 40);
    CHECK(clipped.least == std::min(10.0, number(drawing, "TE1", "lag_s")));
    // A value at the edge of its field stays inside it: a gain is at least 0.5.
    put(drawing, "FE1", "gain", 0.5, Basis::Estimated);
    CHECK(range(drawing, "flow_sensor").least == 0.5);
    put(drawing, "FE1", "gain", 2.0, Basis::Estimated);
    CHECK(range(drawing, "flow_sensor").most == 2);
}

TEST_CASE("battery volts that are only estimated run from low to the charger", "[study][stop]")
{
    // 11.5 V low to 14.4 V on the charger: common practice, no published source.
    document::Drawing drawing = tradeCoach();
    put(drawing, "BT1", "voltage_V", 12.0, Basis::Estimated);
    CHECK(range(drawing, "voltage").least == 11.5);
    CHECK(range(drawing, "voltage").most == 14.4);
    put(drawing, "BT1", "voltage_V", 11.0, Basis::Estimated);
    CHECK(range(drawing, "voltage").least == 11.0);
    put(drawing, "BT1", "voltage_V", 15.0, Basis::Estimated);
    CHECK(range(drawing, "voltage").most == 15.0);
    CHECK(range(drawing, "voltage").source.starts_with("estimated"));
    put(drawing, "BT1", "voltage_V", 12.0, Basis::Measured);
    CHECK_THAT(range(drawing, "voltage").least, WithinAbs(12 * 0.98, 1e-9));
    CHECK_THAT(range(drawing, "voltage").most, WithinAbs(12 * 1.02, 1e-9));
    put(drawing, "BT1", "voltage_V", 12.0, Basis::DataSheet);
    CHECK_THAT(range(drawing, "voltage").most, WithinAbs(12 * 1.04, 1e-9));
    part(drawing, "BT1").entries.erase("voltage_V");
    CHECK(range(drawing, "voltage").least == 11.5);
    CHECK(range(drawing, "voltage").most == 14.4);
}

TEST_CASE("pump head is off by the worst known of the pumps", "[study][stop]")
{
    document::Drawing drawing = tradeCoach();
    const auto basis = [&](const char* tag, Basis of) { part(drawing, tag).entries["curve"].basis = of; };
    const auto off = [&] { return range(drawing, "pump_head").most - 1; };
    basis("P1", Basis::Measured);
    basis("P2", Basis::Measured);
    CHECK_THAT(off(), WithinAbs(0.03, 1e-12));
    basis("P2", Basis::DataSheet);
    CHECK_THAT(off(), WithinAbs(0.07, 1e-12));
    basis("P1", Basis::Estimated);
    CHECK_THAT(off(), WithinAbs(0.15, 1e-12));
    CHECK_THAT(range(drawing, "pump_head").least, WithinAbs(0.85, 1e-12));
}

TEST_CASE("weather and season shift air and water, but water stays water", "[study][stop]")
{
    document::Drawing drawing = tradeCoach();
    drawing.cases[0].start_C = 20;
    CHECK(range(drawing, "ambient").least == -8);
    CHECK(range(drawing, "ambient").most == 8);
    CHECK(range(drawing, "supply_temperature").least == -5);
    CHECK(range(drawing, "supply_temperature").most == 5);
    CHECK(range(drawing, "supply_temperature").means == Range::Means::Shift);
    drawing.cases[0].start_C = 6;  // down to 1 °C
    CHECK(range(drawing, "supply_temperature").least == -5);
    drawing.cases[0].start_C = 4;
    CHECK(range(drawing, "supply_temperature").least == -3);
    CHECK(range(drawing, "supply_temperature").most == 5);
    CHECK(range(drawing, "ambient").least == -8);
    drawing.cases[0].start_C = 0.5;
    CHECK(range(drawing, "supply_temperature").least == 0);
}

TEST_CASE("only what the drawing has is in doubt", "[study][stop]")
{
    document::Drawing drawing = tradeCoach();
    for (const auto& [tag, id] :
         {std::pair{"WH1", "activation_flow"}, {"BT1", "voltage"}, {"TE1", "sensor_lag"}, {"FE1", "flow_sensor"}}) {
        CAPTURE(tag);
        CHECK(found(drawing, id).has_value());
        document::Drawing without = drawing;
        part(without, tag).stage = document::Stage::Removed;
        CHECK_FALSE(found(without, id).has_value());
    }
    part(drawing, "C1").entries.erase("stop_sensor");  // the controller does not use it
    CHECK_FALSE(found(drawing, "sensor_lag").has_value());
    part(drawing, "P1").stage = part(drawing, "P2").stage = document::Stage::Removed;
    CHECK_FALSE(found(drawing, "pump_head").has_value());
}

TEST_CASE("the loop's parts are those its controller names and that are there", "[study][stop]")
{
    document::Drawing drawing = tradeCoach();
    CHECK(study::loopParts(drawing).controller == drawing.findTag("C1")->id);
    CHECK(study::loopParts(drawing).stopSensor == drawing.findTag("TE1")->id);
    CHECK(study::loopParts(drawing).flowSensor == drawing.findTag("FE1")->id);
    part(drawing, "TE1").stage = document::Stage::Removed;
    CHECK(study::loopParts(drawing).stopSensor == document::kNoPart);
    CHECK(study::loopParts(drawing).flowSensor == drawing.findTag("FE1")->id);
    part(drawing, "C1").stage = document::Stage::Removed;
    CHECK(study::loopParts(drawing).controller == document::kNoPart);
    CHECK(study::loopParts(drawing).flowSensor == document::kNoPart);
}

TEST_CASE("each value goes into the drawing where it belongs and nowhere else", "[study][stop]")
{
    document::Drawing drawing = tradeCoach();
    drawing.cases[0].supply_C = 18;
    drawing.cases[0].ambient_C = 21;
    drawing.cases[0].start_C = 20;
    put(drawing, "L5", "bay_C", 25.0, Basis::Measured);
    const auto changed = [&](const document::Drawing& now) {
        std::vector<std::string> tags;
        for (std::size_t i = 0; i < now.parts.size(); ++i) {
            if (!(now.parts[i] == drawing.parts[i])) {
                tags.push_back(now.parts[i].tag);
            }
        }
        return tags;
    };
    const auto only = [](const char* tag) { return std::vector<std::string>{tag}; };

    const auto longer = with(drawing, "pipe_lengths", 1.1);
    CHECK_THAT(number(longer.drawing, "L5", "length_m"), WithinRel(1.1 * number(drawing, "L5", "length_m"), 1e-12));
    CHECK_THAT(number(longer.drawing, "L19", "length_m"), WithinRel(1.1 * number(drawing, "L19", "length_m"), 1e-12));
    CHECK(number(longer.drawing, "L5", "elbows") == number(drawing, "L5", "elbows"));
    CHECK(longer.script == drawing.cases[0]);

    // The hold flow keeps its share of the activation flow.
    const auto lights = with(drawing, "activation_flow", 3e-5);
    CHECK(changed(lights.drawing) == only("WH1"));
    CHECK_THAT(number(lights.drawing, "WH1", "activation_flow_m3s"), WithinRel(3e-5, 1e-12));
    CHECK_THAT(number(lights.drawing, "WH1", "hold_flow_m3s"),
               WithinRel(3e-5 * number(drawing, "WH1", "hold_flow_m3s") / number(drawing, "WH1", "activation_flow_m3s"),
                         1e-9));
    const auto fire = with(drawing, "minimum_fire", 4200);
    CHECK(changed(fire.drawing) == only("WH1"));
    CHECK(number(fire.drawing, "WH1", "minimum_input_W") == 4200);
    // Never above the largest fire.
    put(drawing, "WH1", "maximum_input_W", 4000.0, Basis::Measured);
    CHECK(number(with(drawing, "minimum_fire", 4200).drawing, "WH1", "minimum_input_W") == 4000);

    const auto volts = with(drawing, "voltage", 13);
    CHECK(changed(volts.drawing) == only("BT1"));
    CHECK(number(volts.drawing, "BT1", "voltage_V") == 13);
    CHECK(document::values(*volts.drawing.findTag("BT1")).basis("voltage_V")
          == document::values(*drawing.findTag("BT1")).basis("voltage_V"));

    const auto weaker = with(drawing, "pump_head", 0.9);
    CHECK(changed(weaker.drawing) == std::vector<std::string>{"P1", "P2"});
    const parts::Curve before = document::values(*drawing.findTag("P2")).curve("curve"),
                       after = document::values(*weaker.drawing.findTag("P2")).curve("curve");
    for (std::size_t i = 0; i < before.size(); ++i) {
        CHECK(after[i].x == before[i].x);
        CHECK_THAT(after[i].y, WithinAbs(0.9 * before[i].y, 1e-12));
    }

    const auto season = with(drawing, "supply_temperature", -3);
    CHECK(changed(season.drawing) == only("CW1"));
    CHECK_THAT(number(season.drawing, "CW1", "temperature_C"),
               WithinAbs(number(drawing, "CW1", "temperature_C") - 3, 1e-9));
    CHECK(season.script.start_C == 17);
    CHECK(season.script.supply_C == 15);
    CHECK(season.script.ambient_C == 21);

    const auto air = with(drawing, "ambient", 4);
    CHECK(air.script.ambient_C == 25);
    CHECK(air.script.start_C == 20);
    CHECK(number(air.drawing, "L5", "bay_C") == 29);
    CHECK(number(air.drawing, "CW1", "temperature_C") == number(drawing, "CW1", "temperature_C"));

    const auto lag = with(drawing, "sensor_lag", 7);
    CHECK(changed(lag.drawing) == only("TE1"));
    CHECK(number(lag.drawing, "TE1", "lag_s") == 7);
    CHECK(lag.sensorLag_s == 7);
    CHECK(lag.sensorGain == number(drawing, "FE1", "gain"));
    const auto gain = with(drawing, "flow_sensor", 1.05);
    CHECK(changed(gain.drawing) == only("FE1"));
    CHECK(gain.sensorGain == 1.05);
    CHECK(number(gain.drawing, "FE1", "gain") == 1.05);
    CHECK(gain.sensorLag_s == number(drawing, "TE1", "lag_s"));

    // A case that leaves supply and air open keeps them so.
    drawing.cases[0].supply_C.reset();
    drawing.cases[0].ambient_C.reset();
    CHECK_FALSE(with(drawing, "supply_temperature", -3).script.supply_C.has_value());
    CHECK_FALSE(with(drawing, "ambient", -3).script.ambient_C.has_value());

    // Several values, each for its own range.
    std::vector<Range> both(2);
    both[0].id = "voltage";
    both[1].id = "sensor_lag";
    const auto sample = study::withValues(drawing, drawing.cases[0], both, std::vector<double>{13, 6});
    CHECK(number(sample.drawing, "BT1", "voltage_V") == 13);
    CHECK(sample.sensorLag_s == 6);
    // Values outside a field are brought to its edge: a voltage is at most 60.
    CHECK(number(with(drawing, "voltage", 80).drawing, "BT1", "voltage_V") == 60);
}
