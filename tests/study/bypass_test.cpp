// SPDX-License-Identifier: GPL-3.0-or-later
// A pipe that joins hot and cold near the heater: what the pumps move, what goes through the heater and what the meter
// counts are three flows then.
#include <cmath>
#include <rapidcheck.h>

#include "document/file.h"
#include "study/prediction.h"
#include "support/catch.h"

using namespace tapward;

namespace {

document::Drawing coach()
{
    auto drawing = document::load(TAPWARD_SOURCE_DIR "/tests/study/trade_coach.tapward");
    REQUIRE(drawing.has_value());
    return *drawing;
}

document::Part& tagged(document::Drawing& drawing, const char* tag) { return *drawing.find(drawing.findTag(tag)->id); }

/// The shower's branches near the heater, joined by a pipe of this length in place of the shower, through a check valve that
/// lets water from hot to cold where asked for. @return the pipe's id
document::PartId joinHotAndCold(document::Drawing& drawing, double length_m, bool checked = false)
{
    const document::PartId shower = drawing.findTag("SH1")->id;
    document::Part* first = nullptr;
    for (document::Part& part : drawing.parts) {
        if (part.ends[0].part == shower || part.ends[1].part == shower) {
            part.entries["length_m"] = {checked ? 0.3 : length_m, parts::Basis::Measured};
            part.entries.erase("elbows");
            part.entries.erase("couplings");
            first = first ? first : &part;
        }
    }
    document::Part& joint = tagged(drawing, "SH1");
    joint.kind = checked ? "check_valve" : "hand_valve";
    joint.tag = checked ? "CV9" : "V9";
    joint.entries.clear();
    for (document::Part& part : drawing.parts) {
        for (document::PipeEnd& end : part.ends) {
            if (end.part == shower) {
                end.port = end.port == "hot" ? "inlet" : "outlet";
            }
        }
    }
    return first->id;
}

double scalar(const study::CaseResult& result, const char* id)
{
    const study::Scalar* found = result.scalar(id);
    REQUIRE(found);
    REQUIRE(found->value);
    return *found->value;
}

}  // namespace

TEST_CASE("a short pipe between hot and cold: pumps, heater and meter are told apart, and the pipe is the thief",
          "[study][bypass]")
{
    document::Drawing drawing = coach();
    const study::LoopAnswer sound = study::loopAnswer(drawing);
    CHECK(sound.bypass == document::kNoPart);
    CHECK_THAT(*sound.pumpFlow_m3s, WithinRel(*sound.flow_m3s, 1e-3));
    CHECK_THAT(*sound.meterFlow_m3s, WithinRel(*sound.flow_m3s, 1e-3));

    joinHotAndCold(drawing, 0.2);
    const study::LoopAnswer loop = study::loopAnswer(drawing);
    REQUIRE(loop.flow_m3s);
    CHECK(*loop.flow_m3s < *sound.flow_m3s);
    CHECK(*loop.pumpFlow_m3s > *sound.flow_m3s);
    CHECK_THAT(*loop.meterFlow_m3s, WithinRel(*loop.pumpFlow_m3s, 1e-3));
    // What comes from the pumps goes through the heater or past it.
    CHECK_THAT(*loop.flow_m3s + *loop.bypassFlow_m3s, WithinRel(*loop.pumpFlow_m3s, 1e-3));
    CHECK(*loop.flowMargin < 1);

    auto prediction = study::predict(drawing);
    REQUIRE(prediction);
    const study::CaseResult& presses = prediction->cases.at(0);
    // The meter counts what the pumps move: the run is stopped by its volume.
    CHECK_THAT(scalar(presses, "stop_volume"), WithinRel(0.75 * us::kGallon, 0.01));
    CHECK_THAT(scalar(presses, "loop_flow"), WithinRel(*loop.flow_m3s, 0.02));
    CHECK_THAT(scalar(presses, "pumped_flow"), WithinRel(*loop.pumpFlow_m3s, 0.02));
    for (const study::Event& event : presses.events) {
        CHECK(render(event.what, UnitSystem::Us).find("0.00 gal") == std::string::npos);
    }
}

TEST_CASE("longer and longer, a pipe past the heater leaves the heater more and the pumps less", "[study][bypass]")
{
    CHECK(rc::check("monotone in the bypass", [] {
        document::Drawing drawing = coach();
        const auto scale = [&](const char* kind, const char* key, double least, double most) {
            const double by = least + (most - least) * *rc::gen::inRange(0, 1000) / 999.0;
            for (document::Part& part : drawing.parts) {
                if (part.kind == kind) {
                    const double now = document::values(part).number(key);
                    part.entries[key] = {now * by, parts::Basis::Estimated};
                }
            }
        };
        scale("pipe_run", "length_m", 0.4, 2);
        scale("tankless_heater", "loss_Pa", 0.3, 2);
        scale("check_valve", "crack_Pa", 0.2, 1.5);
        scale("circulator", "wire_length_m", 0, 10);
        scale("battery", "voltage_V", 0.95, 1.1);
        if (*rc::gen::arbitrary<bool>()) {  // one pump
            for (const char* tag : {"P2", "CV2"}) {
                const document::PartId id = drawing.findTag(tag)->id;
                for (document::Part& part : drawing.parts) {
                    if (part.id == id || part.ends[0].part == id || part.ends[1].part == id) {
                        part.stage = document::Stage::Removed;
                    }
                }
            }
        }
        double heater = 0, pumps = 1;
        for (double length_m = 0.1; length_m <= 100.5; length_m *= std::pow(10.0, 0.25)) {
            document::Drawing joined = drawing;
            joinHotAndCold(joined, length_m / 2);  // of two pipes
            const study::LoopAnswer loop = study::loopAnswer(joined);
            RC_ASSERT(loop.flow_m3s && loop.pumpFlow_m3s);
            RC_ASSERT(*loop.flow_m3s >= heater * (1 - 1e-6));
            RC_ASSERT(*loop.pumpFlow_m3s <= pumps * (1 + 1e-6));
            RC_ASSERT(*loop.pumpFlow_m3s >= *loop.flow_m3s * (1 - 1e-3));
            heater = *loop.flow_m3s;
            pumps = *loop.pumpFlow_m3s;
        }
    }));
}
