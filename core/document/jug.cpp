// SPDX-License-Identifier: GPL-3.0-or-later
#include "document/jug.h"

#include <algorithm>
#include <cmath>

namespace tapward::document {
namespace {

constexpr std::string_view kFlow = "rated_flow_m3s";
constexpr std::string_view kPressure = "rated_pressure_Pa";
constexpr std::string_view kCap = "cap_flow_m3s";

std::optional<Problem> flaw(double value, double least, double most, Quantity quantity, std::size_t number)
{
    if (std::isfinite(value) && value >= least && value <= most) {
        return std::nullopt;
    }
    return Problem{{"Try {0}: {1} is outside {2} to {3}.",
                    {static_cast<std::int64_t>(number), Measure{value, quantity}, Measure{least, quantity},
                     Measure{most, quantity}}},
                   "Check the number and its unit, or take the line out.",
                   std::to_string(number)};
}

}  // namespace

bool takesJugFlow(const parts::PartKind& kind) { return kind.field(kFlow) && kind.field(kPressure); }

Result<JugFlow> jugFlow(const std::vector<JugTry>& tries)
{
    if (tries.empty()) {
        return problem("There is no try yet.", "Fill the jug once and write down volume and seconds.");
    }
    JugFlow flow;
    flow.tries = tries.size();
    double sum = 0;
    for (std::size_t i = 0; i < tries.size(); ++i) {
        if (auto why = flaw(tries[i].volume_m3, 5e-5, 0.1, Quantity::Volume, i + 1)) {
            return tl::unexpected(std::move(*why));
        }
        if (auto why = flaw(tries[i].seconds, 1, 3600, Quantity::Time, i + 1)) {
            return tl::unexpected(std::move(*why));
        }
        const double one = tries[i].volume_m3 / tries[i].seconds;
        flow.least_m3s = i == 0 ? one : std::min(flow.least_m3s, one);
        flow.most_m3s = std::max(flow.most_m3s, one);
        sum += one;
    }
    flow.flow_m3s = sum / static_cast<double>(tries.size());
    double squares = 0;
    for (const JugTry& one : tries) {
        const double off = one.volume_m3 / one.seconds - flow.flow_m3s;
        squares += off * off;
    }
    flow.deviation_m3s = tries.size() > 1 ? std::sqrt(squares / static_cast<double>(tries.size() - 1)) : 0;
    return flow;
}

Result<Edit> setJugFlow(const Drawing& drawing, PartId id, const JugFlow& flow, std::optional<JugPressure> pressure)
{
    const Part* part = drawing.find(id);
    if (!part || !takesJugFlow(kindOf(*part))) {
        return problem("This part has no flow a jug could measure.", "Select a faucet, a shower or another outlet.");
    }
    Edit edit{{"Measured flow of {0}", {part->tag}}, {}};
    edit.steps.emplace_back(SetField{id, std::string(kFlow), parts::Entry{flow.flow_m3s, parts::Basis::Measured}});
    if (pressure) {
        edit.steps.emplace_back(
            SetField{id, std::string(kPressure), parts::Entry{pressure->pressure_Pa, pressure->basis()}});
    }
    if (auto why = refusal(drawing, edit)) {
        return tl::unexpected(std::move(*why));
    }
    return edit;
}

std::vector<Message> jugNotes(const Drawing& drawing, PartId id, const JugFlow& flow,
                              std::optional<JugPressure> pressure)
{
    std::vector<Message> notes;
    if (flow.spread() > kWideSpread) {
        notes.push_back({"The tries differ by {0}: the pressure or the opening changed between them. Measure again "
                         "with the demand pump running all the time, or on city water.",
                         {Measure{flow.spread(), Quantity::Percent}}});
    }
    const Part* part = drawing.find(id);
    if (!part || !takesJugFlow(kindOf(*part))) {
        return notes;
    }
    const parts::Values held = values(*part);
    if (!pressure) {
        notes.push_back({"No pressure is noted: the flow is taken to be the one at {0}, as the part says.",
                         {Measure{held.number(kPressure), Quantity::Pressure}}});
    } else if (pressure->reckonedFor != ActionKind::UseNothing) {
        const Measure stood{pressure->pressure_Pa, Quantity::Pressure};
        notes.push_back(pressure->reckonedFor == ActionKind::UsePump
                            ? Message("No pressure is noted: {0} is entered as an estimate, what the drawing leaves at "
                                      "{1} on the demand pump while so much flows.",
                                      {stood, part->tag})
                            : Message("No pressure is noted: {0} is entered as an estimate, what the drawing leaves at "
                                      "{1} on city water while so much flows.",
                                      {stood, part->tag}));
    }
    if (const parts::Field* cap = held.kind().field(kCap)) {
        const double limit = held.number(cap->key);
        if (limit > 0 && limit < flow.flow_m3s) {
            notes.push_back({"The flow regulator of {0} is set to {1}: predictions stay below it until it is changed.",
                             {part->tag, Measure{limit, Quantity::Flow}}});
        }
    }
    return notes;
}

}  // namespace tapward::document
