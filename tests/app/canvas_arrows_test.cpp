// SPDX-License-Identifier: GPL-3.0-or-later
// Arrowheads of a drawing at rest say where the water of a run goes: held against the flows of that run.
#include <cmath>
#include <filesystem>

#include "canvas/pipe_use.h"
#include "document/file.h"
#include "document/proposal.h"
#include "study/prediction.h"
#include "support/catch.h"

using namespace tapward;
using namespace tapward::app;
using document::Drawing;
using document::PartId;

namespace {

Drawing stored(const std::string& path)
{
    auto drawing = document::load(std::string(TAPWARD_SOURCE_DIR "/") + path);
    REQUIRE(drawing.has_value());
    return *drawing;
}

/// The drawing with a loop begun on the first hot pipe that has room for it; nothing where there is none.
std::optional<Drawing> withLoop(Drawing drawing, document::ReturnWay way)
{
    const document::Variant variant{way, document::PumpSet::One};
    for (const document::Part& part : drawing.parts) {
        const document::Place hot{part.id, 0.5, {}};
        if (!document::kindOf(part).isPipe || document::beginRefusal(drawing, hot))
            continue;
        if (const auto cold = document::usualEnd(drawing, hot, way))
            if (auto edit = document::propose(drawing, hot, *cold, variant)) {
                document::apply(drawing, std::move(*edit));
                return drawing;
            }
    }
    return std::nullopt;
}

const document::Case* runOf(const Drawing& drawing)
{
    for (const auto& one : drawing.cases)
        for (const auto& action : one.actions)
            if (action.kind == document::ActionKind::PressButton && one.view == document::View::After)
                return &one;
    return nullptr;
}

/// Which way water moved through each part over the whole run, m3: positive from ends[0] to ends[1].
std::map<PartId, double> movedIn(const Drawing& drawing)
{
    const auto* run = runOf(drawing);
    REQUIRE(run != nullptr);
    study::Options options;
    options.onlyCase = run->name;
    options.snapshots = true;
    const auto prediction = study::predict(drawing, options);
    REQUIRE(prediction.has_value());
    std::map<PartId, double> moved;
    for (const auto& result : prediction->cases) {
        const auto& seen = result.snapshot;
        for (std::size_t moment = 0; moment < seen.time_s.size(); ++moment)
            for (std::size_t track = 0; track < seen.tracks.size(); ++track)
                moved[seen.tracks[track].part] +=
                    static_cast<double>(seen.flow_m3s[moment * seen.tracks.size() + track]);
    }
    return moved;
}

/// Pipes in which a glass and more has moved against its arrow.
std::vector<std::string> against(const Drawing& drawing, bool coldToo)
{
    constexpr double kGlass_m3 = 2e-4;
    const auto moved = movedIn(drawing);
    std::vector<std::string> wrong;
    int held = 0;
    for (const auto& [pipe, trace] : tracePipes(drawing)) {
        const auto at = moved.find(pipe);
        if (at == moved.end() || std::abs(at->second) < kGlass_m3 || (trace.use == PipeUse::Cold && !coldToo))
            continue;
        ++held;
        if (trace.direction * at->second <= 0)
            wrong.push_back(drawing.find(pipe)->tag + (trace.direction == 0 ? " has none" : " points backward") + " "
                            + std::to_string(1e3 * at->second) + " L");
    }
    CHECK(held > 3);
    return wrong;
}

}  // namespace

TEST_CASE("an arrow at rest points where the run's water goes, whichever way it returns", "[canvas]")
{
    for (const auto& entry : std::filesystem::directory_iterator(TAPWARD_SOURCE_DIR "/resources/templates")) {
        const Drawing bare = stored("resources/templates/" + entry.path().filename().string());
        for (const auto way :
             {document::ReturnWay::ColdLine, document::ReturnWay::Tank, document::ReturnWay::OwnLine}) {
            const auto drawing = withLoop(bare, way);
            if (!drawing)
                continue;
            CAPTURE(entry.path().filename().string(), static_cast<int>(way));
            // By the cold line its water runs against what a tap draws: the arrow says what the line is for.
            CHECK(against(*drawing, way != document::ReturnWay::ColdLine) == std::vector<std::string>{});
        }
    }
    CHECK(against(stored("samples/long_hall_coach.tapward"), false) == std::vector<std::string>{});
    CHECK(against(stored("samples/storage_coach.tapward"), false) == std::vector<std::string>{});
}

TEST_CASE("water comes to a demand pump from its tank, whichever was drawn first", "[canvas]")
{
    Drawing drawing;
    const auto place = [&](const char* kind, double x) {
        const PartId id = drawing.nextId;
        document::apply(drawing, *document::placePart(drawing, kind, {x, 0}, document::Stage::Existing));
        return id;
    };
    const auto join = [&](PartId a, const char* portA, PartId b, const char* portB) {
        const PartId id = drawing.nextId;
        document::apply(drawing,
                        *document::connect(drawing, {a, portA, {}}, {b, portB, {}}, document::Stage::Existing));
        return id;
    };
    const PartId pump = place("demand_pump", 60), drain = place("hand_valve", 20), suction = place("hand_valve", 40),
                 tank = place("fresh_tank", 0);
    const PartId near = join(suction, "outlet", pump, "inlet"), middle = join(drain, "outlet", suction, "inlet"),
                 far = join(tank, "outlet", drain, "inlet");
    auto traces = tracePipes(drawing);
    for (const PartId pipe : {near, middle, far}) {
        CHECK(traces[pipe].direction == 1);
        CHECK(traces[pipe].use == PipeUse::Cold);
    }
}

TEST_CASE("a vessel beside a pump takes nothing: the arrows come from the pump", "[canvas]")
{
    // Every template with a demand pump: from its outlet to the tee where city water comes in.
    int held = 0;
    for (const auto& entry : std::filesystem::directory_iterator(TAPWARD_SOURCE_DIR "/resources/templates")) {
        const Drawing drawing = stored("resources/templates/" + entry.path().filename().string());
        const auto traces = tracePipes(drawing);
        for (const auto& part : drawing.parts) {
            if (part.kind != "demand_pump")
                continue;
            PartId at = part.id;
            const document::Part* pipe = drawing.pipeAt(part.id, "outlet");
            for (int steps = 0; steps < 4 && pipe != nullptr; ++steps) {
                const int far = pipe->ends[0].part == at ? 1 : 0;
                CAPTURE(entry.path().filename().string(), pipe->tag);
                CHECK(traces.at(pipe->id).direction == (far == 1 ? 1 : -1));
                CHECK(traces.at(pipe->id).use == PipeUse::Cold);
                ++held;
                at = pipe->ends[static_cast<std::size_t>(far)].part;
                const auto* tee = drawing.find(at);
                // On past a tee that holds a vessel, to the one where the supplies meet.
                const document::Part* next = nullptr;
                bool vessel = false;
                for (const char* port : {"run_a", "run_b", "branch"}) {
                    const auto* other = tee->kind == "tee" ? drawing.pipeAt(at, port) : nullptr;
                    if (other == nullptr || other->id == pipe->id)
                        continue;
                    const auto beyond = other->ends[other->ends[0].part == at ? 1 : 0].part;
                    if (drawing.find(beyond)->kind == "accumulator")
                        vessel = true;
                    else
                        next = other;
                }
                pipe = vessel ? next : nullptr;
            }
        }
    }
    CHECK(held > 4);
}
