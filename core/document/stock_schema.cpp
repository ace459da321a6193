// SPDX-License-Identifier: GPL-3.0-or-later
#include <fmt/format.h>

#include "document/json_text.h"
#include "document/json_value.h"
#include "document/stock.h"

namespace tapward::document {

std::string stockSchema()
{
    constexpr StockLimits limits;
    Json rules = Json::array(), definitions = Json::object();
    definitions["reading"] = {
        {"type", "array"}, {"items", {{"type", "number"}, {"minimum", 0}}}, {"minItems", 2}, {"maxItems", 2}};
    for (const parts::PartKind* kind : parts::catalogue()) {
        const std::string name = fmt::format("{}_fields", kind->id);
        Json properties = Json::object();
        StockItem probe{"item", std::string(kind->id), {}, {}, {}, {}};
        for (const parts::Field& field : kind->fields) {
            probe.fields = {{std::string(field.key), field.initial}};
            if (stockFlaw(probe)) {
                continue;  // belongs to the place, not to the thing
            }
            Json value{{"description", field.label}};
            value.update(valueSchema(field));
            properties[std::string(field.key)] = std::move(value);
        }
        definitions[name] = {{"title", kind->title}, {"type", "object"}, {"properties", std::move(properties)}};
        rules.push_back({{"if", {{"properties", {{"kind", {{"const", kind->id}}}}}}},
                         {"then", {{"properties", {{"fields", {{"$ref", "#/$defs/" + name}}}}}}}});
    }
    Json item{{"type", "object"}, {"required", {"name", "kind"}}};
    item["properties"] = {
        {"name",
         {{"description", "As the shop calls it; unique among the items of one kind."},
          {"type", "string"},
          {"minLength", 1},
          {"maxLength", limits.nameBytes}}},
        {"kind", {{"description", "Items of kinds not listed here are kept, not read."}, {"type", "string"}}},
        {"rating", {{"description", "What is printed on it."}, {"type", "string"}, {"maxLength", limits.textBytes}}},
        {"note", {{"type", "string"}, {"maxLength", limits.textBytes}}},
        {"fields", {{"description", "Values by key, SI with the unit in the key."}, {"type", "object"}}}};
    item["allOf"] = std::move(rules);
    definitions["item"] = std::move(item);
    Json json{{"$schema", "https://json-schema.org/draft/2020-12/schema"},
              {"$id", fmt::format("stock-{}.schema.json", kStockVersion)},
              {"title", fmt::format("Tapward stock list, format version {}", kStockVersion)},
              {"description",
               "The shop's own list of parts. Choosing an item for a part sets these values as \"data sheet\". Keys "
               "not listed here are kept on a round trip."},
              {"type", "object"},
              {"required", {"format", "version", "items"}}};
    json["properties"] = {
        {"format", {{"const", "tapward-stock"}}},
        {"version", {{"const", kStockVersion}}},
        {"items", {{"type", "array"}, {"items", {{"$ref", "#/$defs/item"}}}, {"maxItems", limits.items}}}};
    json["$defs"] = std::move(definitions);
    return prettyJson(json);
}

}  // namespace tapward::document
