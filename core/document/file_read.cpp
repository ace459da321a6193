// SPDX-License-Identifier: GPL-3.0-or-later
#include <algorithm>
#include <cmath>
#include <limits>
#include <map>
#include <set>

#include <fmt/format.h>

#include "document/check.h"
#include "document/file.h"
#include "document/json_object.h"
#include "document/json_text.h"
#include "document/json_value.h"
#include "document/names.h"

namespace tapward::document {
namespace {

Job readJob(Trouble& trouble, const Json& json)
{
    Object object(trouble, json, "/job");
    Job job;
    job.title = object.text("title");
    job.customer = object.text("customer");
    job.coach = object.text("coach");
    job.technician = object.text("technician");
    job.date = object.text("date");
    job.revision = object.text("revision");
    job.notes = object.text("notes");
    job.currency = object.text("currency", "USD");
    job.hours = object.number("hours", 0);
    job.hourlyRate = object.number("hourly_rate", 0);
    job.altitude_m = object.number("altitude_m", 0);
    job.sampleFigures = object.flag("sample_figures", false);
    object.keepRest(job.unknown);
    return job;
}

PipeEnd readEnd(Trouble& trouble, const Json& json, const std::string& where, std::size_t index, Unknown& unknown)
{
    Object object(trouble, json, where);
    PipeEnd end;
    end.part = object.id("part");
    if (end.part != kNoPart) {
        end.port = object.requiredText("port");
    } else {
        end.loose = object.point("at", object.required("at"));
    }
    object.keepRest(unknown, fmt::format("/ends/{}", index));
    return end;
}

void readFields(Trouble& trouble, const Json& json, const std::string& where, const Limits& limits, Part& part)
{
    const parts::PartKind* kind = parts::find(part.kind);
    const Object all(trouble, json, where);  // says so when it is no object
    if (!json.is_object() || !kind) {
        return;
    }
    for (const auto& item : json.items()) {
        const std::string pointer = fmt::format("/fields/{}", pointerStep(item.key()));
        if (!kind->field(item.key())) {
            part.unknown.emplace(pointer, compactJson(item.value()));
            continue;
        }
        Object object(trouble, item.value(), fmt::format("{}/{}", where, pointerStep(item.key())));
        parts::Entry entry;
        if (const Json* held = object.required("value")) {
            bool tooMany = false;
            auto value = readValue(*held, limits.curvePoints, tooMany);
            if (tooMany) {
                trouble.add({"A curve has {0} readings; {1} are allowed.",
                             {static_cast<std::int64_t>(held->size()), static_cast<std::int64_t>(limits.curvePoints)}},
                            "Leave some readings out.", object.where("value"));
            } else if (!value) {
                trouble.add({"\"{0}\" holds something that is no value.", {item.key()}},
                            "Give a number, a text, true or false, or a list of readings.", object.where("value"));
            }
            entry.value = std::move(value).value_or(0.0);
        }
        entry.basis = object.word("basis", kBases, object.member("basis"), parts::Basis::Estimated);
        object.keepRest(part.unknown, pointer);
        part.entries.emplace(item.key(), std::move(entry));
    }
}

Mark readMark(Trouble& trouble, const Json& json, const std::string& where)
{
    Object object(trouble, json, where);
    Mark mark;
    mark.variant = object.requiredText("variant");
    mark.role = object.requiredText("role");
    mark.coldPipe = object.id("cold_pipe");
    mark.coldShare = object.number("cold_share", mark.coldShare);
    object.keepRest(mark.unknown);
    return mark;
}

Part readPart(Trouble& trouble, const Json& json, const std::string& where, const Limits& limits)
{
    Object object(trouble, json, where);
    Part part;
    part.id = object.requiredId("id");
    part.kind = object.requiredText("kind");
    part.tag = object.requiredText("tag");
    part.stage = object.word("stage", kStages, object.member("stage"), Stage::Existing);
    const parts::PartKind* kind = parts::find(part.kind);
    if (!kind) {
        trouble.add({"There is no kind of part called \"{0}\" in this Tapward.", {part.kind}},
                    "Open the drawing with the Tapward it was made with, or a newer one. The file was not changed.",
                    object.where("kind"));
        return part;
    }
    if (kind->isPipe) {
        const Json* ends = object.required("ends");
        const Json::array_t& list = object.list("ends", ends, 2);
        if (ends && list.size() != 2) {
            trouble.add("A pipe has two ends.", "Give two.", object.where("ends"));
        }
        for (std::size_t i = 0; i < list.size(); ++i) {
            part.ends[i] = readEnd(trouble, list[i], fmt::format("{}/ends/{}", where, i), i, part.unknown);
        }
        const Json::array_t& bends = object.list("bends", object.member("bends"), limits.bendsPerPipe);
        for (std::size_t i = 0; i < bends.size(); ++i) {
            part.bends.push_back(Object::pointAt(trouble, bends[i], fmt::format("{}/bends/{}", where, i)));
        }
    } else {
        part.at = object.point("at", object.required("at"));
        const double turn = object.number("turn", 0);
        if (turn != 0 && turn != 1 && turn != 2 && turn != 3) {
            trouble.add("A part is turned by quarters, 0 to 3.", "Give 0, 1, 2 or 3.", object.where("turn"));
        } else {
            part.turn = static_cast<int>(turn);
        }
        part.flipped = object.flag("flipped", false);
    }
    if (const Json* label = object.member("label")) {
        part.label = object.point("label", label);
    }
    part.height_m = object.number("height_m", 0);
    if (const Json* mark = object.member("assembly")) {
        part.mark = readMark(trouble, *mark, object.where("assembly"));
    }
    if (const Json* fields = object.member("fields")) {
        readFields(trouble, *fields, object.where("fields"), limits, part);
    }
    object.keepRest(part.unknown);
    return part;
}

Action readAction(Trouble& trouble, const Json& json, const std::string& where)
{
    Object object(trouble, json, where);
    Action action;
    action.at_s = object.requiredNumber("at_s");
    action.kind = object.word("do", kActions, object.required("do"), ActionKind::PressButton);
    action.part = object.id("part");
    switch (action.kind) {
    case ActionKind::OpenOutlet:
        action.value = object.number("opening", 1);
        action.second = object.number("hot_share", -1);
        break;
    case ActionKind::SetValve:
        action.value = object.requiredNumber("opening");
        break;
    case ActionKind::SetVoltage:
        action.value = object.requiredNumber("voltage_V");
        break;
    case ActionKind::StartFault:
    case ActionKind::EndFault:
        action.fault = object.requiredText("fault");
        break;
    case ActionKind::CloseOutlet:
    case ActionKind::PressButton:
    case ActionKind::UseCity:
    case ActionKind::UsePump:
    case ActionKind::UseNothing:
        break;
    }
    object.keepRest(action.unknown);
    return action;
}

Case readCase(Trouble& trouble, const Json& json, const std::string& where, const Limits& limits)
{
    Object object(trouble, json, where);
    Case one;
    one.name = object.requiredText("name");
    one.view = object.word("view", kViews, object.member("view"), one.view);
    one.duration_s = object.number("duration_s", one.duration_s);
    one.start_C = object.number("start_C", one.start_C);
    one.ambient_C = object.optionalNumber("ambient_C");
    one.supply_C = object.optionalNumber("supply_C");
    one.storedHeater_C = object.optionalNumber("stored_heater_C");
    one.target_C = object.number("target_C", one.target_C);
    one.targetPart = object.id("target_part");
    const Json::array_t& actions = object.list("actions", object.member("actions"), limits.actionsPerCase);
    for (std::size_t i = 0; i < actions.size() && !trouble.first; ++i) {
        one.actions.push_back(readAction(trouble, actions[i], fmt::format("{}/actions/{}", where, i)));
    }
    object.keepRest(one.unknown);
    return one;
}

Dismissal readDismissal(Trouble& trouble, const Json& json, const std::string& where)
{
    Object object(trouble, json, where);
    Dismissal one;
    one.rule = object.requiredText("rule");
    one.part = object.id("part");
    one.reason = object.text("reason");
    object.keepRest(one.unknown);
    return one;
}

/// Reads the parts in the order of the file, checks them as a whole and leaves them sorted by id.
void readParts(Trouble& trouble, const Json::array_t& list, const Limits& limits, Drawing& drawing)
{
    std::map<PartId, std::size_t> places;
    std::set<std::string> tags;
    for (std::size_t i = 0; i < list.size() && !trouble.first; ++i) {
        const std::string where = fmt::format("/parts/{}", i);
        Part part = readPart(trouble, list[i], where, limits);
        if (!trouble.first && !places.emplace(part.id, i).second) {
            trouble.add({"Two parts have the number {0}.", {static_cast<std::int64_t>(part.id)}},
                        "Give one of them another number.", where + "/id");
        }
        if (!trouble.first && !tags.insert(part.tag).second) {
            trouble.add({"Two parts have the tag {0}.", {part.tag}}, "Give one of them another tag.", where + "/tag");
        }
        drawing.parts.push_back(std::move(part));
    }
    if (trouble.first) {
        return;
    }
    std::sort(drawing.parts.begin(), drawing.parts.end(), [](const Part& a, const Part& b) { return a.id < b.id; });
    std::set<std::pair<PartId, std::string_view>> ports;
    for (const Part& part : drawing.parts) {
        const std::string where = fmt::format("/parts/{}", places[part.id]);
        if (auto why = partFlaw(drawing, part)) {
            trouble.add(why->what, why->remedy, where + why->where);
            return;
        }
        for (std::size_t end = 0; end < 2; ++end) {
            if (part.ends[end].part != kNoPart && !ports.emplace(part.ends[end].part, part.ends[end].port).second) {
                const Part* holder = drawing.find(part.ends[end].part);
                trouble.add({"Two pipes end on port \"{0}\" of {1}.", {part.ends[end].port, holder ? holder->tag : ""}},
                            "Put a tee between them.", fmt::format("{}/ends/{}", where, end));
                return;
            }
        }
    }
}

/// Adds the place of a list to a problem found in it.
void addFlaw(Trouble& trouble, std::optional<Problem> why, const char* place)
{
    if (why) {
        trouble.add(std::move(why->what), std::move(why->remedy), place + why->where);
    }
}

Result<Json> parseTop(std::string_view text, const Limits& limits, const char* format)
{
    auto json = parseJson(text, limits);
    if (!json) {
        return json;
    }
    const auto tag = json->is_object() ? json->find("format") : json->end();
    if (!json->is_object() || tag == json->end() || *tag != format) {
        return problem("This is not a Tapward drawing.", "Choose a file that was saved by Tapward.", "/format");
    }
    const auto version = json->find("version");
    const bool whole = version != json->end() && (version->is_number_integer() || version->is_number_unsigned());
    if (!whole || version->get<double>() < 1) {
        return problem("The version of the file format is missing or no whole number.", "Open a saved copy.",
                       "/version");
    }
    if (version->get<double>() > kFormatVersion) {
        return problem({"The drawing was saved in format version {0}; this Tapward reads up to version {1}.",
                        {static_cast<std::int64_t>(std::min(version->get<double>(), 9e15)),
                         static_cast<std::int64_t>(kFormatVersion)}},
                       "Open it with the newer Tapward it was saved by. The file was not changed.", "/version");
    }
    return json;
}

}  // namespace

Result<Drawing> read(std::string_view text, const Limits& limits)
{
    auto json = parseTop(text, limits, "tapward");
    if (!json) {
        return tl::unexpected(json.error());
    }
    Trouble trouble;
    Drawing drawing;
    Object top(trouble, *json, "");
    top.member("format");
    top.member("version");
    if (const Json* job = top.member("job")) {
        drawing.job = readJob(trouble, *job);
        addFlaw(trouble, jobFlaw(drawing.job), "/job");
    }
    readParts(trouble, top.list("parts", top.required("parts"), limits.parts), limits, drawing);

    const Json::array_t& cases = top.list("cases", top.member("cases"), limits.cases);
    for (std::size_t i = 0; i < cases.size() && !trouble.first; ++i) {
        drawing.cases.push_back(readCase(trouble, cases[i], fmt::format("/cases/{}", i), limits));
    }
    const Json::array_t& dismissals = top.list("dismissals", top.member("dismissals"), limits.parts);
    for (std::size_t i = 0; i < dismissals.size() && !trouble.first; ++i) {
        drawing.dismissals.push_back(readDismissal(trouble, dismissals[i], fmt::format("/dismissals/{}", i)));
    }
    if (!trouble.first) {
        addFlaw(trouble, casesFlaw(drawing, drawing.cases), "/cases");
        addFlaw(trouble, dismissalsFlaw(drawing, drawing.dismissals), "/dismissals");
    }
    const PartId afterLast = drawing.parts.empty() ? 1 : drawing.parts.back().id + 1;
    const Json* next = top.member("next_id");
    drawing.nextId = next ? top.id("next_id", next, afterLast, kMostNextId) : afterLast;
    if (!trouble.first && drawing.nextId < afterLast) {
        trouble.add({"The next part number, {0}, is already taken.", {static_cast<std::int64_t>(drawing.nextId)}},
                    "Give a number above every part's.", "/next_id");
    }
    top.keepRest(drawing.unknown);
    if (trouble.first) {
        return tl::unexpected(std::move(*trouble.first));
    }
    return drawing;
}

Result<std::vector<Part>> readParts(std::string_view text, const Limits& limits)
{
    auto json = parseTop(text, limits, "tapward-parts");
    if (!json) {
        return tl::unexpected(json.error());
    }
    Trouble trouble;
    Drawing drawing;
    Object top(trouble, *json, "");
    readParts(trouble, top.list("parts", top.required("parts"), limits.parts), limits, drawing);
    if (trouble.first) {
        return tl::unexpected(std::move(*trouble.first));
    }
    return std::move(drawing.parts);
}

}  // namespace tapward::document
