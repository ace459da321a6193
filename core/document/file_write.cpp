// SPDX-License-Identifier: GPL-3.0-or-later
#include <algorithm>
#include <set>

#include "document/file.h"
#include "document/json_text.h"
#include "document/json_value.h"
#include "document/names.h"
#include "document/written_size.h"

namespace tapward::document {
namespace {

Json point(const Point& point) { return Json::array({number(point.x), number(point.y)}); }

Json points(const std::vector<Point>& all)
{
    Json list = Json::array();
    for (const Point& one : all) {
        list.push_back(point(one));
    }
    return list;
}

Json job(const Job& job)
{
    Json json{{"title", job.title},
              {"customer", job.customer},
              {"coach", job.coach},
              {"technician", job.technician},
              {"date", job.date},
              {"revision", job.revision},
              {"notes", job.notes},
              {"currency", job.currency},
              {"hours", number(job.hours)},
              {"hourly_rate", number(job.hourlyRate)},
              {"altitude_m", number(job.altitude_m)},
              {"sample_figures", job.sampleFigures}};
    addUnknown(json, job.unknown);
    return json;
}

Json end(const PipeEnd& end)
{
    if (end.part == kNoPart) {
        return {{"at", point(end.loose)}};
    }
    return {{"part", end.part}, {"port", end.port}};
}

Json fields(const Part& part)
{
    Json json = Json::object();
    const auto add = [&json](const std::string& key, const parts::Entry& entry) {
        json[key] = Json{{"value", valueJson(entry.value)}, {"basis", nameOf(kBases, entry.basis)}};
    };
    // In the kind's own order, as the details panel shows them.
    const parts::PartKind* kind = parts::find(part.kind);
    for (const parts::Field& field : kind ? kind->fields : std::vector<parts::Field>{}) {
        if (const auto held = part.entries.find(field.key); held != part.entries.end()) {
            add(held->first, held->second);
        }
    }
    return json;
}

Json markJson(const Mark& mark)
{
    Json json{{"variant", mark.variant}, {"role", mark.role}};
    if (mark.coldPipe != kNoPart) {
        json["cold_pipe"] = mark.coldPipe;
        json["cold_share"] = number(mark.coldShare);
    }
    addUnknown(json, mark.unknown);
    return json;
}

Json partJson(const Part& part)
{
    Json json{{"id", part.id}, {"kind", part.kind}, {"tag", part.tag}, {"stage", nameOf(kStages, part.stage)}};
    const parts::PartKind* kind = parts::find(part.kind);
    const bool isPipe = kind && kind->isPipe;
    if (!isPipe) {
        json["at"] = point(part.at);
        if (part.turn != 0) {
            json["turn"] = part.turn;
        }
        if (part.flipped) {
            json["flipped"] = true;
        }
    }
    if (part.label) {
        json["label"] = point(*part.label);
    }
    if (part.height_m != 0) {
        json["height_m"] = number(part.height_m);
    }
    if (isPipe) {
        json["ends"] = Json::array({end(part.ends[0]), end(part.ends[1])});
        if (!part.bends.empty()) {
            json["bends"] = points(part.bends);
        }
    }
    if (part.mark) {
        json["assembly"] = markJson(*part.mark);
    }
    json["fields"] = fields(part);
    addUnknown(json, part.unknown);
    if (json["fields"].empty()) {
        json.erase("fields");
    }
    return json;
}

Json action(const Action& action)
{
    Json json{{"at_s", number(action.at_s)}, {"do", nameOf(kActions, action.kind)}};
    if (action.part != kNoPart) {
        json["part"] = action.part;
    }
    switch (action.kind) {
    case ActionKind::OpenOutlet:
        json["opening"] = number(action.value);
        if (action.second >= 0) {
            json["hot_share"] = number(action.second);
        }
        break;
    case ActionKind::SetValve:
        json["opening"] = number(action.value);
        break;
    case ActionKind::SetVoltage:
        json["voltage_V"] = number(action.value);
        break;
    case ActionKind::StartFault:
    case ActionKind::EndFault:
        json["fault"] = action.fault;
        break;
    case ActionKind::CloseOutlet:
    case ActionKind::PressButton:
    case ActionKind::UseCity:
    case ActionKind::UsePump:
    case ActionKind::UseNothing:
        break;
    }
    addUnknown(json, action.unknown);
    return json;
}

Json caseJson(const Case& one)
{
    Json json{{"name", one.name},
              {"view", nameOf(kViews, one.view)},
              {"duration_s", number(one.duration_s)},
              {"start_C", number(one.start_C)}};
    const std::pair<const char*, std::optional<double>> optional[] = {
        {"ambient_C", one.ambient_C}, {"supply_C", one.supply_C}, {"stored_heater_C", one.storedHeater_C}};
    for (const auto& [key, celsius] : optional) {
        if (celsius) {
            json[key] = number(*celsius);
        }
    }
    json["target_C"] = number(one.target_C);
    if (one.targetPart != kNoPart) {
        json["target_part"] = one.targetPart;
    }
    Json actions = Json::array();
    for (const Action& each : one.actions) {
        actions.push_back(action(each));
    }
    json["actions"] = std::move(actions);
    addUnknown(json, one.unknown);
    return json;
}

Json dismissal(const Dismissal& one)
{
    Json json{{"rule", one.rule}};
    if (one.part != kNoPart) {
        json["part"] = one.part;
    }
    json["reason"] = one.reason;
    addUnknown(json, one.unknown);
    return json;
}

Json tree(const Drawing& drawing)
{
    Json parts = Json::array();
    for (const Part& part : drawing.parts) {
        parts.push_back(partJson(part));
    }
    Json cases = Json::array();
    for (const Case& one : drawing.cases) {
        cases.push_back(caseJson(one));
    }
    Json dismissals = Json::array();
    for (const Dismissal& one : drawing.dismissals) {
        dismissals.push_back(dismissal(one));
    }
    Json json{{"format", "tapward"}, {"version", kFormatVersion}, {"job", job(drawing.job)}};
    json["parts"] = std::move(parts);
    json["cases"] = std::move(cases);
    json["dismissals"] = std::move(dismissals);
    json["next_id"] = drawing.nextId;
    addUnknown(json, drawing.unknown);
    return json;
}

}  // namespace

std::string write(const Drawing& drawing) { return fittingJson(tree(drawing), Limits{}.bytes); }

std::size_t tightBytes(const Drawing& drawing)
{
    Drawing rest = drawing;
    std::size_t pictures = 0;
    for (Part& part : rest.parts) {
        for (auto& [key, entry] : part.entries) {
            // Longer than any text may be: a picture as base 64, which stands in the file as it is.
            if (auto* text = std::get_if<std::string>(&entry.value); text && text->size() > Limits{}.textBytes) {
                pictures += text->size();
                text->clear();
            }
        }
    }
    return tightJson(tree(rest)).size() + pictures;
}

std::string writeParts(const Drawing& drawing, const std::vector<PartId>& ids)
{
    std::set<PartId> kept(ids.begin(), ids.end());
    for (const Part& pipe : drawing.parts) {
        if (kept.contains(pipe.ends[0].part) && kept.contains(pipe.ends[1].part)) {
            kept.insert(pipe.id);
        }
    }
    Json parts = Json::array();
    for (const Part& original : drawing.parts) {
        if (!kept.contains(original.id)) {
            continue;
        }
        Part part = original;
        for (PipeEnd& end : part.ends) {
            const Part* joined = drawing.find(end.part);
            const parts::PartKind* kind = joined ? parts::find(joined->kind) : nullptr;
            const parts::Port* port = kind ? kind->port(end.port) : nullptr;
            if (port && !kept.contains(end.part)) {
                end = {kNoPart, {}, portPlace(*joined, *port)};
            }
        }
        for (const parts::Field& field : kindOf(part).fields) {
            const auto held = part.entries.find(field.key);
            if (field.type != parts::FieldType::PartRef || held == part.entries.end()) {
                continue;
            }
            const bool stays = std::any_of(kept.begin(), kept.end(), [&held](PartId id) {
                return held->second.value == parts::Value{std::to_string(id)};
            });
            if (!stays) {
                part.entries.erase(held);
            }
        }
        parts.push_back(partJson(part));
    }
    Json json{{"format", "tapward-parts"}, {"version", kFormatVersion}};
    json["parts"] = std::move(parts);
    return fittingJson(json, Limits{}.bytes);
}

}  // namespace tapward::document
