// SPDX-License-Identifier: GPL-3.0-or-later
#include <fmt/format.h>

#include "document/file.h"
#include "document/json_object.h"
#include "document/json_text.h"
#include "document/json_value.h"
#include "document/stock.h"

namespace tapward::document {
namespace {

constexpr const char* kFormat = "tapward-stock";

void readFields(Trouble& trouble, const Json& json, const std::string& where, StockItem& item)
{
    const Object all(trouble, json, where);  // says so when it is no object
    const parts::PartKind& kind = *parts::find(item.kind);
    if (!json.is_object()) {
        return;
    }
    for (const auto& member : json.items()) {
        const std::string step = pointerStep(member.key());
        if (!kind.field(member.key())) {
            item.unknown.emplace("/fields/" + step, compactJson(member.value()));
            continue;
        }
        bool tooMany = false;
        auto value = readValue(member.value(), Limits{}.curvePoints, tooMany);
        if (!value) {
            trouble.add({"\"{0}\" holds something that is no value.", {member.key()}},
                        "Give a number, a text, true or false, or a list of readings.",
                        fmt::format("{}/{}", where, step));
            return;
        }
        item.fields.emplace(member.key(), std::move(*value));
    }
}

Json itemJson(const StockItem& item)
{
    Json json{{"name", item.name}, {"kind", item.kind}};
    if (!item.rating.empty()) {
        json["rating"] = item.rating;
    }
    if (!item.note.empty()) {
        json["note"] = item.note;
    }
    Json fields = Json::object();
    const parts::PartKind* kind = parts::find(item.kind);
    for (const parts::Field& field : kind ? kind->fields : std::vector<parts::Field>{}) {
        if (const auto held = item.fields.find(field.key); held != item.fields.end()) {
            fields[held->first] = valueJson(held->second);
        }
    }
    json["fields"] = std::move(fields);
    addUnknown(json, item.unknown);
    return json;
}

}  // namespace

Result<StockList> readStock(std::string_view text, const StockLimits& limits)
{
    Limits bounds;
    bounds.bytes = limits.bytes;
    auto json = parseJson(text, bounds);
    if (!json) {
        return tl::unexpected(std::move(json.error()));
    }
    const auto format = json->is_object() ? json->find("format") : json->end();
    if (!json->is_object() || format == json->end() || *format != kFormat) {
        return problem("This is not a Tapward stock list.", "Choose a stock file saved by Tapward.", "/format");
    }
    Trouble trouble;
    Object top(trouble, *json, "");
    top.member("format");
    const double version = top.requiredNumber("version");
    if (!trouble.first && version != kStockVersion) {
        return problem({"The stock list has version {0}; this Tapward reads version {1}.",
                        {Measure{version, Quantity::None}, static_cast<std::int64_t>(kStockVersion)}},
                       "Open it with the Tapward it was saved by. The file was not changed.", "/version");
    }
    StockList list;
    const Json::array_t& items = top.list("items", top.required("items"), limits.items);
    for (std::size_t i = 0; i < items.size() && !trouble.first; ++i) {
        Object object(trouble, items[i], fmt::format("/items/{}", i));
        StockItem item;
        item.name = object.requiredText("name");
        item.kind = object.requiredText("kind");
        if (trouble.first) {
            break;
        }
        if (!parts::find(item.kind)) {
            list.foreign.push_back(compactJson(items[i]));
            continue;
        }
        item.rating = object.text("rating");
        item.note = object.text("note");
        if (const Json* fields = object.member("fields")) {
            readFields(trouble, *fields, object.where("fields"), item);
        }
        object.keepRest(item.unknown);
        auto why = trouble.first ? std::nullopt : stockFlaw(item);
        if (!why && !trouble.first && list.find(item.kind, item.name)) {
            why = Problem{
                {"Two stock items are called \"{0}\".", {item.name}}, "Give one of them another name.", "/name"};
        }
        if (why) {
            trouble.add(std::move(why->what), std::move(why->remedy), object.where() + why->where);
        }
        if (!trouble.first) {
            putStock(list, std::move(item));
        }
    }
    top.keepRest(list.unknown);
    if (trouble.first) {
        return tl::unexpected(std::move(*trouble.first));
    }
    return list;
}

std::string writeStock(const StockList& list)
{
    Json items = Json::array();
    for (const StockItem& item : list.items) {
        items.push_back(itemJson(item));
    }
    for (const std::string& text : list.foreign) {
        if (auto item = parseJson(text, {})) {
            items.push_back(std::move(*item));
        }
    }
    Json json{{"format", kFormat}, {"version", kStockVersion}, {"items", std::move(items)}};
    addUnknown(json, list.unknown);
    return fittingJson(json, StockLimits{}.bytes);
}

Result<std::string> writeReadableStock(const StockList& list)
{
    std::string text = writeStock(list);
    if (const auto again = readStock(text); !again) {
        return problem(again.error().what,
                       "The stock list was not saved: it could not be opened again. The file that was there is "
                       "unchanged. Remove some items, or shorten them, then try again.",
                       again.error().where);
    }
    return text;
}

}  // namespace tapward::document
