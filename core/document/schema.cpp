// SPDX-License-Identifier: GPL-3.0-or-later
#include "document/schema.h"

#include <fmt/format.h>

#include "document/check.h"
#include "document/file.h"
#include "document/json_text.h"
#include "document/json_value.h"
#include "document/names.h"

namespace tapward::document {
namespace {

template <class T, std::size_t N>
Json words(const Names<T, N>& names)
{
    Json list = Json::array();
    for (const auto& [value, name] : names) {
        list.push_back(name);
    }
    return {{"enum", std::move(list)}};
}

Json reference(const char* definition) { return {{"$ref", std::string("#/$defs/").append(definition)}}; }

Json range(double least, double most)
{
    return {{"type", "number"}, {"minimum", number(least)}, {"maximum", number(most)}};
}

Json text(std::size_t most) { return {{"type", "string"}, {"maxLength", most}}; }

Json list(Json items, std::size_t most) { return {{"type", "array"}, {"items", std::move(items)}, {"maxItems", most}}; }

/// "Length, m. Real length of the tube." Default and its source follow.
std::string describe(const parts::Field& field)
{
    std::string words(field.label);
    if (const std::string_view unit = siSymbol(field.quantity); !unit.empty()) {
        words += fmt::format(", {}", unit);
    }
    words += '.';
    if (!field.help.empty()) {
        words += fmt::format(" {}", field.help);
    }
    if (!field.unset.empty()) {
        words += fmt::format(" 0: {}.", field.unset);
    }
    words += fmt::format(" Default from: {}.", field.source);
    return words;
}

Json defaultOf(const parts::Field& field)
{
    if (const double* value = std::get_if<double>(&field.initial)) {
        return number(*value);
    }
    if (const bool* value = std::get_if<bool>(&field.initial)) {
        return *value;
    }
    if (const std::string* value = std::get_if<std::string>(&field.initial)) {
        return *value;
    }
    Json readings = Json::array();
    for (const parts::CurvePoint& reading : std::get<parts::Curve>(field.initial)) {
        readings.push_back(Json::array({number(reading.x), number(reading.y)}));
    }
    return readings;
}

Json fieldsOf(const parts::PartKind& kind)
{
    Json properties = Json::object();
    for (const parts::Field& field : kind.fields) {
        Json value = valueSchema(field);
        value["default"] = defaultOf(field);
        properties[std::string(field.key)] = {
            {"description", describe(field)},
            {"type", "object"},
            {"required", {"value"}},
            {"properties", {{"value", std::move(value)}, {"basis", reference("basis")}}}};
    }
    Json json{{"title", kind.title}};
    if (!kind.ports.empty()) {
        std::string ports;
        for (const parts::Port& port : kind.ports) {
            ports += fmt::format("{}{}", ports.empty() ? "Ports: " : ", ", port.id);
        }
        ports += '.';
        json["description"] = std::move(ports);
    }
    if (!kind.faults.empty()) {
        std::string faults;
        for (const parts::Fault& fault : kind.faults) {
            faults += fmt::format("{}{}", faults.empty() ? "Faults a case can start: " : ", ", fault.id);
        }
        faults += '.';
        json["$comment"] = std::move(faults);
    }
    json["type"] = "object";
    json["properties"] = std::move(properties);
    return json;
}

Json partSchema()
{
    Json kinds = Json::array();
    Json fields = Json::array();
    for (const parts::PartKind* kind : parts::catalogue()) {
        kinds.push_back(kind->id);
        const std::string definition = fmt::format("{}_fields", kind->id);
        Json then{{"properties", {{"fields", reference(definition.c_str())}}}};
        then["required"] = kind->isPipe ? Json::array({"ends"}) : Json::array({"at"});
        fields.push_back({{"if", {{"properties", {{"kind", {{"const", kind->id}}}}}}}, {"then", std::move(then)}});
    }
    Json properties{
        {"id", reference("id")},
        {"kind", {{"enum", std::move(kinds)}}},
        {"tag", {{"type", "string"}, {"minLength", 1}, {"maxLength", 32}, {"description", "Unique in the drawing."}}},
        {"stage", words(kStages)},
        {"at", reference("point")},
        {"turn", {{"enum", {0, 1, 2, 3}}, {"description", "Quarter turns clockwise."}}},
        {"flipped", {{"type", "boolean"}, {"description", "Mirrored left to right before turning."}}},
        {"label", reference("point")},
        {"height_m", range(-100, 100)},
        {"ends", {{"type", "array"}, {"items", reference("end")}, {"minItems", 2}, {"maxItems", 2}}},
        {"bends", list(reference("point"), kLimits.bendsPerPipe)},
        {"assembly", reference("assembly")},
        {"fields", {{"type", "object"}, {"description", "What was set, by key; what is not here has its default."}}}};
    return {{"type", "object"},
            {"required", {"id", "kind", "tag"}},
            {"properties", std::move(properties)},
            {"allOf", std::move(fields)}};
}

Json actionSchema()
{
    return {{"type", "object"},
            {"required", {"at_s", "do"}},
            {"properties",
             {{"at_s", range(0, 7200)},
              {"do", words(kActions)},
              {"part", reference("id")},
              {"opening", range(0, 1)},
              {"hot_share", {{"type", "number"}, {"maximum", 1}, {"description", "Without it the outlet's own."}}},
              {"voltage_V", range(0, 60)},
              {"fault", {{"type", "string"}, {"description", "One of the faults of the part's kind."}}}}}};
}

Json caseSchema()
{
    return {{"type", "object"},
            {"required", {"name"}},
            {"properties",
             {{"name",
               {{"type", "string"}, {"minLength", 1}, {"maxLength", 200}, {"description", "Unique in the drawing."}}},
              {"view", words(kViews)},
              {"duration_s", range(1, 7200)},
              {"start_C", range(0.5, 95)},
              {"ambient_C", range(-50, 80)},
              {"supply_C", range(0.5, 60)},
              {"stored_heater_C", range(0.5, 95)},
              {"target_C", range(0.5, 95)},
              {"target_part", reference("id")},
              {"actions", list(reference("action"), kLimits.actionsPerCase)}}}};
}

Json jobSchema()
{
    return {{"type", "object"},
            {"properties",
             {{"title", text(kLimits.textBytes)},
              {"customer", text(kLimits.textBytes)},
              {"coach", text(kLimits.textBytes)},
              {"technician", text(kLimits.textBytes)},
              {"date", text(kLimits.textBytes)},
              {"revision", text(kLimits.textBytes)},
              {"notes", text(kLimits.textBytes)},
              {"currency", text(16)},
              {"hours", range(0, 10'000)},
              {"hourly_rate", range(0, 1e6)},
              {"altitude_m", range(-500, 6000)},
              {"sample_figures", {{"type", "boolean"}, {"description", "Invented figures; shown on every page."}}}}}};
}

}  // namespace

std::string schema()
{
    Json definitions{
        {"id", {{"type", "integer"}, {"minimum", 1}, {"maximum", kMostId}}},
        {"point",
         {{"description", "Canvas place in modules, x right, y down; not a real length."},
          {"type", "array"},
          {"items", range(-kMostModules, kMostModules)},
          {"minItems", 2},
          {"maxItems", 2}}},
        {"reading",
         {{"type", "array"}, {"items", {{"type", "number"}, {"minimum", 0}}}, {"minItems", 2}, {"maxItems", 2}}},
        {"basis", words(kBases)},
        {"end",
         {{"description", "A port of a part, or a loose end at a place."},
          {"type", "object"},
          {"properties", {{"part", reference("id")}, {"port", {{"type", "string"}}}, {"at", reference("point")}}}}},
        {"job", jobSchema()},
        {"assembly",
         {{"description", "The proposed assembly a part was drawn with, and as what."},
          {"type", "object"},
          {"required", {"variant", "role"}},
          {"properties",
           {{"variant", {{"type", "string"}, {"minLength", 1}, {"maxLength", 200}}},
            {"role", {{"type", "string"}, {"minLength", 1}, {"maxLength", 200}}},
            {"cold_pipe", reference("id")},
            {"cold_share", range(0, 1)}}}}},
        {"part", partSchema()},
        {"case", caseSchema()},
        {"action", actionSchema()},
        {"dismissal",
         {{"description", "A finding somebody looked at and set aside, with the reason."},
          {"type", "object"},
          {"required", {"rule"}},
          {"properties",
           {{"rule", {{"type", "string"}, {"minLength", 1}, {"maxLength", 200}}},
            {"part", reference("id")},
            {"reason", text(kLimits.textBytes)}}}}},
    };
    for (const parts::PartKind* kind : parts::catalogue()) {
        definitions[fmt::format("{}_fields", kind->id)] = fieldsOf(*kind);
    }
    Json json{{"$schema", "https://json-schema.org/draft/2020-12/schema"},
              {"$id", fmt::format("tapward-{}.schema.json", kFormatVersion)},
              {"title", fmt::format("Tapward drawing, format version {}", kFormatVersion)},
              {"description",
               "SI values with the unit in the key, temperatures in degrees Celsius. Keys not listed here are kept "
               "on a round trip. Ports, tags and ids are each used once; references name parts that are there."},
              {"type", "object"},
              {"required", {"format", "version", "parts"}},
              {"properties",
               {{"format", {{"const", "tapward"}}},
                {"version", {{"const", kFormatVersion}}},
                {"job", reference("job")},
                {"parts", list(reference("part"), kLimits.parts)},
                {"cases", list(reference("case"), kLimits.cases)},
                {"dismissals", list(reference("dismissal"), kLimits.parts)},
                {"next_id",
                 {{"description", "Above every id used so far."},
                  {"type", "integer"},
                  {"minimum", 1},
                  {"maximum", kMostNextId}}}}}};
    json["$defs"] = std::move(definitions);
    return prettyJson(json);
}

}  // namespace tapward::document
