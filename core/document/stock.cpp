// SPDX-License-Identifier: GPL-3.0-or-later
#include "document/stock.h"

#include <algorithm>
#include <tuple>

#include "document/check.h"
#include "document/file.h"

namespace tapward::document {
namespace {

constexpr StockLimits kStockBounds;

/// Values of the place a part is in, not of the thing one buys.
bool belongsToPlace(const parts::Field& field)
{
    return field.key == "name" || field.key == "bay_C" || field.divides || field.type == parts::FieldType::PartRef;
}

std::size_t trayPlace(std::string_view kind)
{
    const auto& all = parts::catalogue();
    return static_cast<std::size_t>(
        std::find_if(all.begin(), all.end(), [kind](const auto* one) { return one->id == kind; }) - all.begin());
}

bool before(const StockItem& a, const StockItem& b)
{
    return std::tuple(trayPlace(a.kind), std::string_view(a.name))
           < std::tuple(trayPlace(b.kind), std::string_view(b.name));
}

Problem flaw(Message what, Message remedy, std::string where)
{
    return {std::move(what), std::move(remedy), std::move(where)};
}

}  // namespace

const StockItem* StockList::find(std::string_view kind, std::string_view name) const
{
    const auto at = std::find_if(items.begin(), items.end(),
                                 [&](const StockItem& item) { return item.kind == kind && item.name == name; });
    return at == items.end() ? nullptr : &*at;
}

std::optional<Problem> stockFlaw(const StockItem& item)
{
    const parts::PartKind* kind = parts::find(item.kind);
    if (!kind) {
        return flaw({"There is no kind of part called \"{0}\" in this Tapward.", {item.kind}}, "Choose another kind.",
                    "/kind");
    }
    const bool controls =
        std::any_of(item.name.begin(), item.name.end(), [](char c) { return static_cast<unsigned char>(c) < 0x20; });
    if (item.name.empty() || item.name.size() > kStockBounds.nameBytes || controls || !isUtf8(item.name)) {
        return flaw("The name of a stock item is empty, too long or goes over a line end.", "Give it a short name.",
                    "/name");
    }
    for (const auto& [text, where] : {std::pair{&item.rating, "/rating"}, std::pair{&item.note, "/note"}}) {
        if (text->size() > kStockBounds.textBytes || !isUtf8(*text)) {
            return flaw({"A text of {0} is too long.", {item.name}}, "Shorten it.", where);
        }
    }
    for (const auto& [key, value] : item.fields) {
        const parts::Field* field = kind->field(key);
        if (!field || belongsToPlace(*field)) {
            return flaw({"\"{0}\" is no value of a stock item of this kind.", {key}}, "Leave it out.",
                        "/fields/" + key);
        }
        if (auto why = parts::refusal(*kind, *field, value)) {
            why->where = "/fields/" + key;
            return why;
        }
        if (const auto* text = std::get_if<std::string>(&value); text && text->size() > Limits{}.textBytes) {
            return flaw({"A text of {0} is too long.", {item.name}}, "Shorten it.", "/fields/" + key);
        }
    }
    return std::nullopt;
}

std::optional<Problem> putStock(StockList& list, StockItem item)
{
    if (auto why = stockFlaw(item)) {
        return why;
    }
    removeStock(list, item.kind, item.name);
    if (list.items.size() >= kStockBounds.items) {
        return flaw({"The stock list already has {0} items.", {static_cast<std::int64_t>(list.items.size())}},
                    "Remove some first.", {});
    }
    const auto at = std::upper_bound(list.items.begin(), list.items.end(), item, before);
    list.items.insert(at, std::move(item));
    return std::nullopt;
}

bool removeStock(StockList& list, std::string_view kind, std::string_view name)
{
    return std::erase_if(list.items, [&](const StockItem& item) { return item.kind == kind && item.name == name; }) > 0;
}

std::size_t mergeStock(StockList& list, const StockList& other)
{
    std::size_t changed = 0;
    for (const StockItem& item : other.items) {
        const StockItem* held = list.find(item.kind, item.name);
        if ((!held || !(*held == item)) && !putStock(list, item)) {
            ++changed;
        }
    }
    for (const std::string& foreign : other.foreign) {
        if (std::find(list.foreign.begin(), list.foreign.end(), foreign) == list.foreign.end()) {
            list.foreign.push_back(foreign);
        }
    }
    return changed;
}

StockItem stockItem(const Part& part, std::string name)
{
    StockItem item;
    item.name = std::move(name);
    item.kind = part.kind;
    for (const auto& [key, entry] : part.entries) {
        const parts::Field* field = kindOf(part).field(key);
        if (field && !belongsToPlace(*field)) {
            item.fields.emplace(key, entry.value);
        }
    }
    return item;
}

Result<Edit> chooseStock(const Drawing& drawing, const std::vector<PartId>& ids, const StockItem& item)
{
    if (auto why = stockFlaw(item)) {
        return tl::unexpected(std::move(*why));
    }
    Edit edit{{"Choose {0} from stock", {item.name}}, {}};
    for (const PartId id : ids) {
        const Part* part = drawing.find(id);
        if (!part || part->kind != item.kind) {
            return problem({"{0} is no part for {1}.", {item.name, part ? part->tag : std::string("?")}},
                           "Choose a stock item of the same kind of part.", part ? part->tag : std::string());
        }
        for (const auto& [key, value] : item.fields) {
            const parts::Entry entry{value, parts::Basis::DataSheet};
            const auto held = part->entries.find(key);
            if (held == part->entries.end() || !(held->second == entry)) {
                edit.steps.emplace_back(SetField{id, key, entry});
            }
        }
    }
    if (edit.steps.empty()) {
        return problem("The selected part already has all values of this stock item.", "Choose another one.");
    }
    return edit;
}

}  // namespace tapward::document
