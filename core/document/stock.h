// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <map>
#include <string>
#include <string_view>
#include <vector>

#include "document/edit.h"

// The shop's own list of parts: names, ratings, prices and curves, kept as a file beside the drawings. Tapward
// ships none: which parts a shop buys is the shop's affair.
namespace tapward::document {

inline constexpr int kStockVersion = 1;

struct StockItem {
    std::string name;    ///< as the shop calls it; unique among the items of one kind
    std::string kind;    ///< PartKind::id
    std::string rating;  ///< what is printed on it, in words
    std::string note;
    std::map<std::string, parts::Value, std::less<>> fields;  ///< by field key, SI; also "price"
    Unknown unknown;
    friend bool operator==(const StockItem&, const StockItem&) = default;
};

struct StockList {
    std::vector<StockItem> items;
    std::vector<std::string> foreign;  ///< items of kinds this version does not know, as JSON text, kept
    Unknown unknown;

    const StockItem* find(std::string_view kind, std::string_view name) const;
    friend bool operator==(const StockList&, const StockList&) = default;
};

/// Bounds on a file from a stranger.
struct StockLimits {
    std::size_t bytes = 4u << 20;
    std::size_t items = 5000;
    std::size_t nameBytes = 200;
    std::size_t textBytes = 2000;
};

/// Reads a `.tapstock` file (JSON, resources/schema/stock-1.schema.json). Unknown keys are kept. Bad input: a
/// Problem with the JSON pointer of the place; newer versions are refused with the version named.
Result<StockList> readStock(std::string_view json, const StockLimits& limits = {});
/// writeStock(readStock(writeStock(l))) is byte-identical to writeStock(l).
std::string writeStock(const StockList& list);
/// writeStock(), once readStock() has taken the text back. Errors: what the reader would refuse.
Result<std::string> writeReadableStock(const StockList& list);
/// JSON Schema of the file, from the catalogue's own declarations.
std::string stockSchema();

/// Why an item cannot stand in a list.
std::optional<Problem> stockFlaw(const StockItem& item);
/// Puts an item in, in the place of one of the same kind and name if there is one. The list stays sorted by kind
/// in tray order, then by name.
std::optional<Problem> putStock(StockList& list, StockItem item);
bool removeStock(StockList& list, std::string_view kind, std::string_view name);
/// Everything of `other` into `list`; items of the same kind and name are taken over. @return how many changed
std::size_t mergeStock(StockList& list, const StockList& other);

/// What a part would be in stock: its set values but for those that belong to the place it is in (name, lengths,
/// counts of fittings, air around it, wiring).
StockItem stockItem(const Part& part, std::string name);
/// Sets the item's values on parts of its kind, all as "data sheet", one step. Values the item does not have stay
/// as they are. Errors: a part of another kind, nothing to set.
Result<Edit> chooseStock(const Drawing& drawing, const std::vector<PartId>& ids, const StockItem& item);

}  // namespace tapward::document
