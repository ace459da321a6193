// SPDX-License-Identifier: GPL-3.0-or-later
#include "document/json_value.h"

#include <fmt/format.h>

#include "document/file.h"

namespace tapward::document {
std::optional<parts::Value> readValue(const Json& json, std::size_t curvePoints, bool& tooMany)
{
    if (json.is_number()) {
        return json.get<double>();
    }
    if (json.is_boolean()) {
        return json.get<bool>();
    }
    if (json.is_string()) {
        return json.get<std::string>();
    }
    if (!json.is_array()) {
        return std::nullopt;
    }
    tooMany = json.size() > curvePoints;
    parts::Curve curve;
    for (const Json& reading : json) {
        if (tooMany || !reading.is_array() || reading.size() != 2 || !reading[0].is_number()
            || !reading[1].is_number()) {
            return std::nullopt;
        }
        curve.push_back({reading[0].get<double>(), reading[1].get<double>()});
    }
    return curve;
}

Json valueJson(const parts::Value& value)
{
    if (const double* one = std::get_if<double>(&value)) {
        return number(*one);
    }
    if (const bool* one = std::get_if<bool>(&value)) {
        return *one;
    }
    if (const std::string* one = std::get_if<std::string>(&value)) {
        return *one;
    }
    Json readings = Json::array();
    for (const parts::CurvePoint& reading : std::get<parts::Curve>(value)) {
        readings.push_back(Json::array({number(reading.x), number(reading.y)}));
    }
    return readings;
}

Json valueSchema(const parts::Field& field)
{
    switch (field.type) {
    case parts::FieldType::Number:
        return {{"type", "number"}, {"minimum", number(field.least)}, {"maximum", number(field.most)}};
    case parts::FieldType::Count: {
        return {{"type", "integer"}, {"minimum", number(field.least)}, {"maximum", number(field.most)}};
    }
    case parts::FieldType::Flag:
        return {{"type", "boolean"}};
    case parts::FieldType::Choice: {
        Json ids = Json::array();
        for (const parts::Choice& choice : field.choices) {
            ids.push_back(choice.id);
        }
        return {{"enum", std::move(ids)}};
    }
    case parts::FieldType::Text:
        return {{"type", "string"},
                {"maxLength", field.most < 1e9 ? static_cast<std::size_t>(field.most) : kLimits.textBytes}};
    case parts::FieldType::PartRef:
        return {{"type", "string"},
                {"pattern", "^([1-9][0-9]*)?$"},
                {"description", fmt::format("Id of a part of kind {}, or empty.", field.refKinds)}};
    case parts::FieldType::Curve: {
        Json json{{"type", "array"}, {"items", {{"$ref", "#/$defs/reading"}}}, {"maxItems", kLimits.curvePoints}};
        json["minItems"] = 2;
        json["description"] = fmt::format("Readings [{}, {}]; the first rising, the second never rising.",
                                          siSymbol(field.curveX), siSymbol(field.curveY));
        return json;
    }
    }
    return {};
}

}  // namespace tapward::document
