// SPDX-License-Identifier: GPL-3.0-or-later
#include "study/jug_pressure.h"

#include <algorithm>
#include <cmath>

#include "study/prediction.h"

namespace tapward::study {
namespace {

using document::ActionKind;

constexpr double kRun_s = 30;     // an accumulator has settled to its pump by then
constexpr double kCounted_s = 15;  // of it, at the end
constexpr double kClose = 1e-4;   // of the flow
constexpr int kMostRounds = 60;

document::View viewOf(const document::Part& part)
{
    return part.stage == document::Stage::Added ? document::View::After : document::View::Before;
}

}  // namespace

std::vector<ActionKind> jugSupplies(const document::Drawing& drawing, document::PartId outlet)
{
    std::vector<ActionKind> found;
    const document::Part* part = drawing.find(outlet);
    if (!part) {
        return found;
    }
    const auto drawn = [&](const char* kind) {
        return std::any_of(drawing.parts.begin(), drawing.parts.end(), [&](const document::Part& other) {
            return other.kind == kind && document::isPresent(other.stage, viewOf(*part));
        });
    };
    if (drawn("city_inlet")) {
        found.push_back(ActionKind::UseCity);
    }
    if (drawn("demand_pump")) {
        found.push_back(ActionKind::UsePump);
    }
    return found;
}

Result<document::JugPressure> jugPressure(const document::Drawing& drawing, document::PartId outlet, double flow_m3s,
                                          ActionKind supply)
{
    document::Drawing coach = drawing;
    document::Part* part = coach.find(outlet);
    if (!part || !document::takesJugFlow(document::kindOf(*part)) || !(flow_m3s > 0)) {
        return problem("This part has no flow a jug could measure.", "Select a faucet, a shower or another outlet.");
    }
    document::Case script;
    script.name = part->tag;
    script.view = viewOf(*part);
    script.duration_s = kRun_s;
    document::Action feed, open;
    feed.kind = supply;
    open.kind = ActionKind::OpenOutlet;
    open.part = outlet;
    open.second = 0;  // all cold; of a single line all there is
    script.actions = {feed, open};
    coach.cases = {script};
    part->entries["rated_flow_m3s"] = {flow_m3s, parts::Basis::Measured};
    part->entries["cap_flow_m3s"] = {0.0, parts::Basis::Measured};

    const parts::Field* range = document::kindOf(*part).field("rated_pressure_Pa");
    // The outlet's own drop at the flow that comes is the next to try: it closes in by the share that pipes and supply
    // take of the pressure, so steps are stretched by what the last two tell (Aitken).
    Options coarse;
    coarse.cell_m = 1;
    coarse.wallLayers = 1;
    double pressure = document::values(*part).number("rated_pressure_Pa"), before = 0, stepBefore = 0, passed = 0;
    for (int round = 0; round < kMostRounds && pressure >= range->least; ++round) {
        part->entries["rated_pressure_Pa"] = {std::min(pressure, range->most), parts::Basis::Estimated};
        const auto prediction = predict(coach, coarse);
        if (!prediction) {
            return tl::unexpected(prediction.error());
        }
        const CaseResult& result = prediction->cases.front();
        if (result.noAnswer) {
            return tl::unexpected(*result.noAnswer);
        }
        const Series* curve = result.find("tap_flow." + part->tag);
        double sum = 0;
        int count = 0;
        for (std::size_t i = 0; curve && i < curve->values.size(); ++i) {
            if (result.time_s[i] >= kRun_s - kCounted_s && std::isfinite(curve->values[i])) {
                sum += curve->values[i];
                ++count;
            }
        }
        passed = count > 0 ? sum / count : 0;
        if (!(passed > 0)) {
            break;
        }
        const double ratio = passed / flow_m3s;
        if (std::abs(ratio - 1) <= kClose) {
            return document::JugPressure{pressure, supply};
        }
        const double step = pressure * (ratio * ratio - 1);
        const double rate = stepBefore != 0 ? step / stepBefore : 0;
        before = pressure;
        pressure += rate > 0 && rate < 0.95 ? step / (1 - rate) : step;
        stepBefore = rate > 0 && rate < 0.95 ? 0 : step;
        pressure = std::max(pressure, 0.2 * before);
    }
    const Measure most{passed, Quantity::Flow};
    return problem(supply == ActionKind::UsePump
                       ? Message("As drawn {0} gets no more than {1} from the demand pump.", {part->tag, most})
                       : Message("As drawn {0} gets no more than {1} on city water.", {part->tag, most}),
                   "Check the supply's pressure, the pipes' bores and lengths and the valves on the way, or note the "
                   "pressure at the outlet.");
}

}  // namespace tapward::study
