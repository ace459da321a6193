// SPDX-License-Identifier: GPL-3.0-or-later
// What technicians see on loops of two small 12 V circulators in parallel with a motorized ball valve in a
// coach of about 30 ft, heater at 124 °F, water at 70 to 74 °F. Every observation in this file: common practice,
// no published source. One coach, one case, all observations at once; each figure of that coach is an ordinary one,
// held below against its range and where the range comes from.
#include <vector>

#include "document/file.h"
#include "study/prediction.h"
#include "support/catch.h"
#include "support/stored.h"

using namespace tapward;
using test::stored;

namespace {

document::Drawing coach() { return stored("tests/study/trade_coach.tapward"); }
/// 38 ft, a heater of another make, a stop of its own.
document::Drawing longCoach() { return stored("tests/study/trade_coach_long.tapward"); }

double scalar(const study::CaseResult& result, const char* id)
{
    const study::Scalar* found = result.scalar(id);
    REQUIRE(found);
    INFO(id << " " << render(found->reason, UnitSystem::Us));
    REQUIRE(found->value.has_value());
    return *found->value;
}

void remove(document::Drawing& drawing, const char* tag)
{
    const document::PartId id = drawing.findTag(tag)->id;
    for (document::Part& part : drawing.parts) {
        const bool hangs = part.ends[0].part == id || part.ends[1].part == id;
        if (part.id == id || hangs) {
            part.stage = document::Stage::Removed;
        }
    }
}

void onePump(document::Drawing& drawing)
{
    remove(drawing, "P2");
    remove(drawing, "CV2");
}

void setNumber(document::Drawing& drawing, const char* tag, const char* key, double value)
{
    for (document::Part& part : drawing.parts) {
        if (part.tag == tag) {
            part.entries[key] = {value, parts::Basis::Estimated};
        }
    }
}

/// A figure of the coach and what is ordinary.
struct Ordinary {
    const char* tag;
    const char* key;
    double least, most;
    const char* source;
};

constexpr double gpm = us::kGpm, gal = us::kGallon, psi = us::kPsi, btu = us::kBtuPerHour, ft = us::kFoot;
constexpr const char* kMemory = "from memory";
constexpr const char* kPractice = "common practice, no published source";
constexpr const char* kSheet = "one published data sheet of a small 12 V circulator";

const std::vector<Ordinary>& ordinary()
{
    static const double cv = gpm / std::sqrt(psi);
    static const std::vector<Ordinary> all{
        {"CW1", "pressure_Pa", 40 * psi, 60 * psi, "RV advice pages"},
        // The heater. What decides is where it lights, what its smallest fire is and how much water and copper it holds.
        {"WH1", "activation_flow_m3s", 0.4 * gpm, 0.6 * gpm, "data sheets, from memory"},
        {"WH1", "hold_flow_m3s", 0.3 * gpm, 0.55 * gpm, "0.05 to 0.2 gpm below it, from memory"},
        // At the flow seen, 15,400 Btu/h of gas warm water of 72 °F to 124 °F: with a larger smallest fire the first press
        // would pass the setpoint. The coach has the middle of 13,000 and that.
        {"WH1", "minimum_input_W", 13000 * btu, 20000 * btu, "home units, published"},
        {"WH1", "maximum_input_W", 42000 * btu, 60000 * btu, "data sheets of coach heaters, from memory"},
        {"WH1", "efficiency", 0.78, 0.85, "from memory; 0.802 measured, see the last test"},
        {"WH1", "exchanger_volume_m3", 0.05 * gal, 0.2 * gal, kMemory},
        {"WH1", "exchanger_mass_kg", 2 * us::kPound, 6 * us::kPound, kMemory},
        {"WH1", "loss_Pa", 3 * psi, 8 * psi, "at 2 gpm, from memory"},
        {"WH1", "loss_flow_m3s", 2 * gpm, 2 * gpm, "the flow of the line above"},
        {"WH1", "flow_proof_s", 0, 2, kMemory},
        {"WH1", "pre_purge_s", 0.5, 3, "light-up 3 to 6 s in all, published manuals"},
        {"WH1", "ignition_s", 0.5, 3, "light-up 3 to 6 s in all, published manuals"},
        // What the job adds.
        {"TE1", "lag_s", 1, 5, "in the water, from memory"},
        {"MV1", "travel_s", 3, 15, "published data sheets"},
        {"MV1", "flow_coefficient_m3s_sqrtPa", 2 * cv, 15 * cv, kMemory},
        {"FE1", "loss_Pa", 0.2 * psi, 1 * psi, "at 2 gpm, from memory"},
        {"CV1", "crack_Pa", 0.2 * psi, 1.0 * psi, kPractice},
        {"CV2", "crack_Pa", 0.2 * psi, 1.0 * psi, kPractice},
        {"CV1", "flow_coefficient_m3s_sqrtPa", 2 * cv, 5 * cv, kMemory},
        {"P1", "current_A", 0.7, 1.5, kSheet},
        {"P1", "minimum_V", 8, 9, kSheet},
        {"P1", "wire_length_m", 0, 3 * ft, "beside its fuse's feed; kind"},
        {"P2", "wire_length_m", 0, 3 * ft, "beside its fuse's feed; kind"},
        {"BT1", "voltage_V", 11.8, 12.6, kPractice},
        {"FU1", "feed_length_m", 30 * ft, 50 * ft, "the coach's length, and up and down: arithmetic"},
    };
    return all;
}

double number(const document::Drawing& drawing, const char* tag, const char* key)
{
    const document::Part* part = drawing.findTag(tag);
    REQUIRE(part);
    return document::values(*part).number(key);
}

/// Length, elbows and couplings of the coach's own pipes on these parts' way.
struct Way {
    double length_m = 0, elbows = 0, couplings = 0;
};
Way along(const document::Drawing& drawing, const std::vector<document::PartId>& way)
{
    Way sum;
    for (const document::PartId id : way) {
        const document::Part* part = drawing.find(id);
        if (part && part->kind == "pipe_run" && part->stage == document::Stage::Existing) {
            const parts::Values values = document::values(*part);
            sum.length_m += values.number("length_m");
            sum.elbows += values.number("elbows");
            sum.couplings += values.number("couplings");
        }
    }
    return sum;
}

}  // namespace

TEST_CASE("one ordinary coach shows all of the trade's observations at once", "[study][trade]")
{
    const document::Drawing drawing = coach();
    const auto prediction = study::predict(drawing);
    REQUIRE(prediction.has_value());
    const study::CaseResult& presses = prediction->cases.at(0);

    CHECK_THAT(scalar(presses, "loop_flow") / gpm, WithinAbs(0.475, 0.025));  // 0.45-0.50 gpm
    CHECK_THAT(scalar(presses, "volume_to_first_rise") / gal, WithinAbs(0.45, 0.05));  // 0.40-0.50 gal
    CHECK_THAT(scalar(presses, "volume_to_target") / gal, WithinAbs(0.67, 0.03));  // 100 °F: 0.64-0.70 gal
    CHECK_THAT(scalar(presses, "stop_volume") / gal, WithinAbs(0.75, 0.002));
    CHECK_THAT(us::fahrenheit(scalar(presses, "sensor_at_stop_1")), WithinAbs(107, 2));  // 107 °F at 0.75 gal
    CHECK_THAT(us::fahrenheit(scalar(presses, "sensor_at_stop_2")), WithinAbs(116, 5));  // 111-121 °F
    CHECK_THAT(us::fahrenheit(scalar(presses, "sensor_at_stop_3")), WithinAbs(142, 4));  // 142 °F
    CHECK_THAT(us::fahrenheit(scalar(presses, "hottest_heater_outlet_3")), WithinAbs(159, 8));  // 151-167 °F
}

TEST_CASE("one such pump alone stays below the heater's activation flow in the full coach", "[study][trade]")
{
    document::Drawing drawing = coach();
    onePump(drawing);
    const study::LoopAnswer loop = study::loopAnswer(drawing);
    REQUIRE(loop.flow_m3s.has_value());
    CHECK(*loop.flow_m3s < *loop.activationFlow_m3s);

    const auto prediction = study::predict(drawing);
    REQUIRE(prediction.has_value());
    CHECK_FALSE(prediction->cases.at(0).scalar("volume_to_target")->value.has_value());
    CHECK_FALSE(prediction->cases.at(0).scalar("volume_to_target")->reason.empty());
}

TEST_CASE("one pump on a short bench rig runs the heater, and 20 to 25 seconds of pumping are enough", "[study][trade]")
{
    document::Drawing drawing = coach();
    onePump(drawing);
    for (document::Part& part : drawing.parts) {
        const auto length = part.entries.find("length_m");
        if (length != part.entries.end() && part.stage == document::Stage::Existing) {
            // A few feet from the heater to the block and back, no joints between.
            part.entries["length_m"] = {1 * ft, parts::Basis::Measured};
            part.entries["elbows"] = {0.0, parts::Basis::Measured};
            part.entries["couplings"] = {0.0, parts::Basis::Measured};
        }
    }
    const auto prediction = study::predict(drawing);
    REQUIRE(prediction.has_value());
    CHECK(*prediction->loop.flow_m3s > *prediction->loop.activationFlow_m3s);
    const double travel_s = 5;  // of the valve, before water moves
    CHECK(scalar(prediction->cases.at(0), "time_to_target") - travel_s <= 25);
}

TEST_CASE("one volt at the pumps is worth about 0.04 gpm and can lose the heater", "[study][trade]")
{
    document::Drawing drawing = coach();
    const auto flowAt = [&](double volts) {
        setNumber(drawing, "BT1", "voltage_V", volts);
        return *study::loopAnswer(drawing).flow_m3s;
    };
    const double perVolt = (flowAt(12.5) - flowAt(11.5)) / us::kGpm;
    CHECK_THAT(perVolt, WithinAbs(0.04, 0.015));
    CHECK(flowAt(11.0) < *study::loopAnswer(drawing).activationFlow_m3s);
}

TEST_CASE("a longer coach with another heater shows the same in the wider sense", "[study][trade]")
{
    document::Drawing drawing = longCoach();
    const auto prediction = study::predict(drawing);
    REQUIRE(prediction.has_value());
    const study::CaseResult& presses = prediction->cases.at(0);
    CHECK(*prediction->loop.flow_m3s > *prediction->loop.activationFlow_m3s);
    CHECK_THAT(us::fahrenheit(scalar(presses, "sensor_at_stop_1")), WithinAbs(107, 5));
    CHECK_THAT(us::fahrenheit(scalar(presses, "sensor_at_stop_3")), WithinAbs(145, 10));  // 135 to 155 °F
    onePump(drawing);
    const study::LoopAnswer loop = study::loopAnswer(drawing);
    CHECK(*loop.flow_m3s < 1.05 * *loop.activationFlow_m3s);  // fails, or barely lights
}

TEST_CASE("each figure of those coaches is an ordinary one", "[study][trade]")
{
    for (const document::Drawing& drawing : {coach(), longCoach()}) {
        CAPTURE(drawing.job.title);
        for (const Ordinary& figure : ordinary()) {
            CAPTURE(figure.tag, figure.key, figure.source, number(drawing, figure.tag, figure.key));
            CHECK(number(drawing, figure.tag, figure.key) >= figure.least * (1 - 1e-9));
            CHECK(number(drawing, figure.tag, figure.key) <= figure.most * (1 + 1e-9));
        }
        const double lightUp_s = number(drawing, "WH1", "flow_proof_s") + number(drawing, "WH1", "pre_purge_s")
                                 + number(drawing, "WH1", "ignition_s");
        CHECK(lightUp_s >= 3);  // 3 to 6 s, published manuals
        CHECK(lightUp_s <= 6);

        // The pumps are the default ones, and so are their ends: max head 10-15 ft, max flow 1.9-4 gpm (the sheet, memory).
        for (const char* pump : {"P1", "P2"}) {
            CHECK_FALSE(drawing.findTag(pump)->entries.contains("curve"));
            const parts::Curve curve = document::values(*drawing.findTag(pump)).curve("curve");
            CHECK(curve.front().y >= 10 * ft);
            CHECK(curve.front().y <= 15 * ft);
            CHECK(curve.back().x >= 1.9 * gpm * (1 - 1e-9));
            CHECK(curve.back().x <= 4 * gpm);
        }

        // The lines: all of 1/2 in PEX with plastic insert fittings, as coaches are built; an elbow every 3 to 7 ft, a
        // joint every 8 to 20 ft; as long as the coach and a third to a half more for rises, the width and slack.
        const study::LoopAnswer loop = study::loopAnswer(drawing);
        const double coach_m = (drawing.job.title.find("38") != std::string::npos ? 38 : 30) * ft;
        for (const std::vector<document::PartId>* path : {&loop.hotPath, &loop.returnPath}) {
            const Way way = along(drawing, *path);
            CAPTURE(way.length_m / ft, way.elbows, way.couplings);
            CHECK(way.length_m >= 1.3 * coach_m);
            CHECK(way.length_m <= 1.6 * coach_m);
            CHECK(way.elbows >= way.length_m / (7 * ft));
            CHECK(way.elbows <= way.length_m / (3 * ft));
            CHECK(way.couplings >= way.length_m / (20 * ft));
            CHECK(way.couplings <= way.length_m / (8 * ft));
        }
        double hoses = 0;
        for (const document::Part& part : drawing.parts) {
            if (part.kind == "pipe_run") {
                const parts::Values values = document::values(part);
                CHECK(values.text("tube") == "pex_1_2");
                CHECK(values.text("fittings") == "polymer_insert");
                // Two flexible connectors a pump, bore 0.25 to 0.30 in (from memory), 12 in long: entry, exit and friction
                // come to 2.8 to 3.3 heads of their own; on the tube's that is 17.6 to 43.
                if (values.number("extra_k") > 0) {
                    ++hoses;
                    CHECK(values.number("extra_k") >= 17.6);
                    CHECK(values.number("extra_k") <= 43);
                }
            }
        }
        CHECK(hoses == 4);
        // Nothing stands in the loop but these, and, in the shorter coach, the check valve of the heater's bypass kit.
        for (const document::Part& part : drawing.parts) {
            CHECK(part.kind != "filter");
        }
    }
}

TEST_CASE("the coach's heater holds the heat a measured home unit holds, by its input", "[study][trade][published]")
{
    // Heat capacity of water and metal 8.36 +/- 0.6 kJ/K of a home-size gas tankless: University of Colorado Boulder, Civil
    // Engineering graduate thesis (MS), spring 2010, published abstract. Its input: 150,000 to 199,000 Btu/h, from memory.
    for (const document::Drawing& drawing : {coach(), longCoach()}) {
        const double capacity_J_K = number(drawing, "WH1", "exchanger_volume_m3") * 998.2 * 4182
                                    + number(drawing, "WH1", "exchanger_mass_kg") * 385;
        const double input = number(drawing, "WH1", "maximum_input_W") / btu;
        CAPTURE(capacity_J_K, input);
        CHECK(capacity_J_K >= (8360 - 600) * input / 199000);
        CHECK(capacity_J_K <= (8360 + 600) * input / 150000);
    }
}
