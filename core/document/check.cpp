// SPDX-License-Identifier: GPL-3.0-or-later
#include "document/check.h"

#include <algorithm>
#include <cmath>
#include <set>

#include <fmt/format.h>

#include "document/file.h"
#include "document/floor_plan.h"
#include "document/references.h"

namespace tapward::document {
namespace {

constexpr std::size_t kTagBytes = 32;
constexpr std::size_t kNameBytes = 200;

Problem flaw(Message what, Message remedy, std::string where)
{
    return {std::move(what), std::move(remedy), std::move(where)};
}

std::optional<Problem> textFlaw(const std::string& text, std::size_t bytes, const char* where)
{
    if (text.size() > bytes) {
        return flaw({"A text is {0} bytes long; {1} are allowed.",
                     {static_cast<std::int64_t>(text.size()), static_cast<std::int64_t>(bytes)}},
                    "Shorten it.", where);
    }
    if (!isUtf8(text)) {
        return flaw("A text is not UTF-8.", "Type it again.", where);
    }
    return std::nullopt;
}

/// A short name on one line.
std::optional<Problem> nameFlaw(const std::string& text, std::size_t bytes, const char* where)
{
    if (auto why = textFlaw(text, bytes, where)) {
        return why;
    }
    const bool controls =
        std::any_of(text.begin(), text.end(), [](char c) { return static_cast<unsigned char>(c) < 0x20; });
    if (text.empty() || controls) {
        return flaw("A name is empty or goes over a line end.", "Give it a short name.", where);
    }
    return std::nullopt;
}

std::optional<Problem> numberFlaw(double value, double least, double most, Quantity quantity, const char* where)
{
    if (std::isfinite(value) && value >= least && value <= most) {
        return std::nullopt;
    }
    // A number that nobody reads as one (1e308, or no longer finite in the shown unit) is not repeated.
    constexpr double kReadable = 1e9;
    if (!std::isfinite(value) || std::abs(value) > kReadable * std::max({std::abs(least), std::abs(most), 1e-3})) {
        return flaw({"The value is nowhere near what is possible here: {0} to {1}.",
                     {Measure{least, quantity}, Measure{most, quantity}}},
                    "Check the value and its unit.", where);
    }
    return flaw({"The value {0} is outside {1} to {2}.",
                 {Measure{value, quantity}, Measure{least, quantity}, Measure{most, quantity}}},
                "Check the value and its unit.", where);
}

bool isPlace(const Point& point)
{
    return std::isfinite(point.x) && std::isfinite(point.y) && std::abs(point.x) <= kMostModules
           && std::abs(point.y) <= kMostModules;
}

std::optional<Problem> placeFlaw(const Point& point, std::string where)
{
    if (isPlace(point)) {
        return std::nullopt;
    }
    return flaw("A place lies off the canvas.", "Move it back to the drawing.", std::move(where));
}

std::optional<Problem> endsFlaw(const Drawing& drawing, const Part& pipe)
{
    for (std::size_t i = 0; i < 2; ++i) {
        const PipeEnd& end = pipe.ends[i];
        const std::string where = fmt::format("/ends/{}", i);
        if (end.part == kNoPart) {
            if (auto why = placeFlaw(end.loose, where + "/at")) {
                return why;
            }
            continue;
        }
        const Part* part = drawing.find(end.part);
        const parts::PartKind* kind = part ? parts::find(part->kind) : nullptr;
        if (!kind) {
            return flaw({"Pipe {0} ends on part {1}, which is not in the drawing.",
                         {pipe.tag, static_cast<std::int64_t>(end.part)}},
                        "Join it to a part that is there, or leave the end loose.", where + "/part");
        }
        if (kind->isPipe) {
            return flaw({"Pipe {0} ends on a pipe.", {pipe.tag}}, "Put a tee into that pipe and end on the tee.",
                        where + "/part");
        }
        if (!kind->port(end.port)) {
            return flaw(
                {"Pipe {0} ends on port \"{1}\" of {2}, which has no such port.", {pipe.tag, end.port, part->tag}},
                "Join it to one of its ports.", where + "/port");
        }
    }
    if (pipe.ends[0].part != kNoPart && pipe.ends[0].part == pipe.ends[1].part
        && pipe.ends[0].port == pipe.ends[1].port) {
        return flaw({"Both ends of pipe {0} sit on one port.", {pipe.tag}}, "Join the other end somewhere else.",
                    "/ends/1");
    }
    return std::nullopt;
}

std::optional<Problem> pipeFlaw(const Drawing& drawing, const Part& pipe)
{
    if (auto why = endsFlaw(drawing, pipe)) {
        return why;
    }
    if (pipe.bends.size() > kLimits.bendsPerPipe) {
        return flaw(
            {"Pipe {0} has {1} bends; {2} are allowed.",
             {pipe.tag, static_cast<std::int64_t>(pipe.bends.size()), static_cast<std::int64_t>(kLimits.bendsPerPipe)}},
            "Draw it with fewer bends.", "/bends");
    }
    for (std::size_t i = 0; i < pipe.bends.size(); ++i) {
        if (auto why = placeFlaw(pipe.bends[i], fmt::format("/bends/{}", i))) {
            return why;
        }
    }
    return std::nullopt;
}

/// Which parts an action of a case may be about.
std::optional<Problem> actionFlaw(const Drawing& drawing, const Case& one, const Action& action)
{
    if (auto why = numberFlaw(action.at_s, 0, 7200, Quantity::Time, "/at_s")) {
        return why;
    }
    const Part* part = drawing.find(action.part);
    const parts::PartKind* kind = part ? parts::find(part->kind) : nullptr;
    if (action.part != kNoPart && !kind) {
        return flaw({"Case \"{0}\" names part {1}, which is not in the drawing.",
                     {one.name, static_cast<std::int64_t>(action.part)}},
                    "Choose another part for this action.", "/part");
    }
    const auto needs = [&](bool fits, Message remedy) -> std::optional<Problem> {
        if (fits) {
            return std::nullopt;
        }
        return flaw({"An action of case \"{0}\" has no part it could be about.", {one.name}}, std::move(remedy),
                    "/part");
    };
    switch (action.kind) {
    case ActionKind::OpenOutlet:
        if (auto why = numberFlaw(action.value, 0, 1, Quantity::Percent, "/opening")) {
            return why;
        }
        if (!std::isfinite(action.second) || action.second > 1) {
            return flaw("A hot share is outside 0 to 1.", "Check the value.", "/hot_share");
        }
        return needs(kind && kind->group == parts::TrayGroup::Outlets, "Choose a tap to open.");
    case ActionKind::CloseOutlet:
        return needs(kind && kind->group == parts::TrayGroup::Outlets, "Choose a tap to close.");
    case ActionKind::PressButton:
        return needs(!kind || kind->group == parts::TrayGroup::Control, "Choose the button, or none for the only one.");
    case ActionKind::SetValve:
        if (auto why = numberFlaw(action.value, 0, 1, Quantity::Percent, "/opening")) {
            return why;
        }
        return needs(kind && kind->group == parts::TrayGroup::Valves, "Choose a valve.");
    case ActionKind::UseCity:
    case ActionKind::UsePump:
    case ActionKind::UseNothing:
        return std::nullopt;
    case ActionKind::SetVoltage:
        return numberFlaw(action.value, 0, 60, Quantity::Voltage, "/voltage_V");
    case ActionKind::StartFault:
    case ActionKind::EndFault:
        if (!kind) {
            return needs(false, "Choose the part that fails.");
        }
        if (std::none_of(kind->faults.begin(), kind->faults.end(),
                         [&action](const parts::Fault& fault) { return fault.id == action.fault; })) {
            return flaw({"{0} has no fault called \"{1}\".", {part->tag, action.fault}}, "Choose one of its faults.",
                        "/fault");
        }
        return std::nullopt;
    }
    return std::nullopt;
}

std::optional<Problem> caseFlaw(const Drawing& drawing, const Case& one)
{
    if (auto why = nameFlaw(one.name, kNameBytes, "/name")) {
        return why;
    }
    if (one.view == View::Both) {
        return flaw({"Case \"{0}\" is neither before nor after.", {one.name}}, "Choose before or after.", "/view");
    }
    struct Range {
        std::optional<double> value;
        double least, most;
        Quantity quantity;
        const char* where;
    };
    for (const Range& range : {Range{one.duration_s, 1, 7200, Quantity::Time, "/duration_s"},
                               Range{one.start_C, 0.5, 95, Quantity::Temperature, "/start_C"},
                               Range{one.ambient_C, -50, 80, Quantity::Temperature, "/ambient_C"},
                               Range{one.supply_C, 0.5, 60, Quantity::Temperature, "/supply_C"},
                               Range{one.storedHeater_C, 0.5, 95, Quantity::Temperature, "/stored_heater_C"},
                               Range{one.target_C, 0.5, 95, Quantity::Temperature, "/target_C"}}) {
        if (range.value) {
            if (auto why = numberFlaw(*range.value, range.least, range.most, range.quantity, range.where)) {
                return why;
            }
        }
    }
    if (one.targetPart != kNoPart && !drawing.find(one.targetPart)) {
        return flaw({"Case \"{0}\" asks about part {1}, which is not in the drawing.",
                     {one.name, static_cast<std::int64_t>(one.targetPart)}},
                    "Choose another outlet or sensor.", "/target_part");
    }
    if (one.actions.size() > kLimits.actionsPerCase) {
        return flaw({"Case \"{0}\" has {1} actions; {2} are allowed.",
                     {one.name, static_cast<std::int64_t>(one.actions.size()),
                      static_cast<std::int64_t>(kLimits.actionsPerCase)}},
                    "Split it into several cases.", "/actions");
    }
    for (std::size_t i = 0; i < one.actions.size(); ++i) {
        if (auto why = actionFlaw(drawing, one, one.actions[i])) {
            why->where = fmt::format("/actions/{}{}", i, why->where);
            return why;
        }
    }
    return std::nullopt;
}

}  // namespace

bool isUtf8(std::string_view text)
{
    for (std::size_t i = 0; i < text.size();) {
        const auto lead = static_cast<unsigned char>(text[i]);
        const int more = lead < 0x80 ? 0 : lead < 0xc2 ? -1 : lead < 0xe0 ? 1 : lead < 0xf0 ? 2 : lead < 0xf5 ? 3 : -1;
        if (more < 0 || i + static_cast<std::size_t>(more) >= text.size()) {
            return false;
        }
        for (int k = 1; k <= more; ++k) {
            const auto next = static_cast<unsigned char>(text[i + static_cast<std::size_t>(k)]);
            const unsigned char low = k > 1 ? 0x80 : lead == 0xe0 ? 0xa0 : lead == 0xf0 ? 0x90 : 0x80;
            const unsigned char high = k > 1 ? 0xbf : lead == 0xed ? 0x9f : lead == 0xf4 ? 0x8f : 0xbf;
            if (next < low || next > high) {
                return false;
            }
        }
        i += static_cast<std::size_t>(more) + 1;
    }
    return true;
}

std::optional<Problem> fieldFlaw(const Drawing& drawing, const parts::PartKind& kind, std::string_view key,
                                 const parts::Value& value)
{
    const parts::Field* field = kind.field(key);
    if (!field) {
        return flaw({"{0} has no property called \"{1}\".", {kind.title, std::string(key)}},
                    "Choose one of its properties.", {});
    }
    if (auto why = parts::refusal(kind, *field, value)) {
        return why;
    }
    const std::string* text = std::get_if<std::string>(&value);
    if (!text) {
        return std::nullopt;
    }
    if (kind.id == "floor_plan" && field->key == "picture") {
        const auto most = static_cast<std::size_t>(field->most);
        return text->size() > most ? textFlaw(*text, most, "") : pictureFlaw(*text);
    }
    if (field->type != parts::FieldType::PartRef) {
        return textFlaw(*text, kLimits.textBytes, "");
    }
    if (text->empty()) {
        return std::nullopt;
    }
    const Part* part = drawing.find(namedPart(*text));
    if (!part) {
        return flaw({"{0} names part {1}, which is not in the drawing.", {field->label, *text}},
                    "Choose another part, or none.", {});
    }
    if (fmt::format(" {} ", field->refKinds).find(fmt::format(" {} ", part->kind)) == std::string::npos) {
        return flaw({"{0} names {1}, which is not of the right kind.", {field->label, part->tag}},
                    "Choose another part, or none.", {});
    }
    return std::nullopt;
}

std::optional<Problem> partFlaw(const Drawing& drawing, const Part& part)
{
    const parts::PartKind* kind = parts::find(part.kind);
    if (!kind) {
        return flaw({"There is no kind of part called \"{0}\" in this Tapward.", {part.kind}},
                    "Open the drawing with the Tapward it was made with, or a newer one. The file was not changed.",
                    "/kind");
    }
    if (part.id <= 0 || part.id > kMostId) {
        return flaw({"Part number {0} is outside 1 to {1}.",
                     {static_cast<std::int64_t>(part.id), static_cast<std::int64_t>(kMostId)}},
                    "Give the part another number.", "/id");
    }
    if (auto why = nameFlaw(part.tag, kTagBytes, "/tag")) {
        return why;
    }
    if (part.turn < 0 || part.turn > 3) {
        return flaw(
            {"{0} is turned by {1} quarters, outside 0 to 3.", {part.tag, static_cast<std::int64_t>(part.turn)}},
            "Turn it again.", "/turn");
    }
    if (auto why = placeFlaw(part.at, "/at")) {
        return why;
    }
    if (part.label) {
        if (auto why = placeFlaw(*part.label, "/label")) {
            return why;
        }
    }
    if (auto why = numberFlaw(part.height_m, -100, 100, Quantity::Length, "/height_m")) {
        return why;
    }
    if (kind->isPipe) {
        if (auto why = pipeFlaw(drawing, part)) {
            return why;
        }
    } else if (!part.bends.empty() || part.ends != std::array<PipeEnd, 2>{}) {
        return flaw({"{0} is not a pipe but has pipe ends or bends.", {part.tag}}, "Take them out.", "/ends");
    }
    if (part.mark) {
        auto why = nameFlaw(part.mark->variant, kNameBytes, "/assembly/variant");
        if (!why) {
            why = nameFlaw(part.mark->role, kNameBytes, "/assembly/role");
        }
        if (!why) {
            why = numberFlaw(part.mark->coldShare, 0, 1, Quantity::Percent, "/assembly/cold_share");
        }
        if (why) {
            return why;
        }
    }
    for (const auto& [key, entry] : part.entries) {
        if (auto why = fieldFlaw(drawing, *kind, key, entry.value)) {
            why->where = fmt::format("/fields/{}", key);  // keys of fields need no escaping
            return why;
        }
    }
    return std::nullopt;
}

std::optional<Problem> casesFlaw(const Drawing& drawing, const std::vector<Case>& cases)
{
    if (cases.size() > kLimits.cases) {
        return flaw({"The drawing has {0} cases; {1} are allowed.",
                     {static_cast<std::int64_t>(cases.size()), static_cast<std::int64_t>(kLimits.cases)}},
                    "Keep some of them in another drawing.", {});
    }
    std::set<std::string_view> names;
    for (std::size_t i = 0; i < cases.size(); ++i) {
        auto why = caseFlaw(drawing, cases[i]);
        if (!why && !names.insert(cases[i].name).second) {
            why = flaw({"Two cases are called \"{0}\".", {cases[i].name}}, "Give one of them another name.", "/name");
        }
        if (why) {
            why->where = fmt::format("/{}{}", i, why->where);
            return why;
        }
    }
    return std::nullopt;
}

std::optional<Problem> dismissalsFlaw(const Drawing& drawing, const std::vector<Dismissal>& dismissals)
{
    if (dismissals.size() > kLimits.parts) {
        return flaw("There are too many dismissed findings.", "Take some back.", {});
    }
    for (std::size_t i = 0; i < dismissals.size(); ++i) {
        const Dismissal& one = dismissals[i];
        auto why = nameFlaw(one.rule, kNameBytes, "/rule");
        if (!why) {
            why = textFlaw(one.reason, kLimits.textBytes, "/reason");
        }
        if (!why && one.part != kNoPart && !drawing.find(one.part)) {
            why = flaw({"A dismissed finding names part {0}, which is not in the drawing.",
                        {static_cast<std::int64_t>(one.part)}},
                       "Take the dismissal out.", "/part");
        }
        if (why) {
            why->where = fmt::format("/{}{}", i, why->where);
            return why;
        }
    }
    return std::nullopt;
}

std::optional<Problem> jobFlaw(const Job& job)
{
    const std::pair<const std::string*, const char*> texts[] = {
        {&job.title, "/title"},           {&job.customer, "/customer"}, {&job.coach, "/coach"},
        {&job.technician, "/technician"}, {&job.date, "/date"},         {&job.revision, "/revision"},
        {&job.currency, "/currency"},     {&job.notes, "/notes"}};
    for (const auto& [text, where] : texts) {
        if (auto why = textFlaw(*text, text == &job.currency ? 16 : kLimits.textBytes, where)) {
            return why;
        }
    }
    if (auto why = numberFlaw(job.hours, 0, 10'000, Quantity::None, "/hours")) {
        return why;
    }
    if (auto why = numberFlaw(job.hourlyRate, 0, 1e6, Quantity::Money, "/hourly_rate")) {
        return why;
    }
    return numberFlaw(job.altitude_m, -500, 6000, Quantity::Altitude, "/altitude_m");
}

}  // namespace tapward::document
