// SPDX-License-Identifier: GPL-3.0-or-later
// Any bytes at all go to what else comes from strangers: the shop's stock list, and cells pasted from a
// spreadsheet, read as a pump's curve. What is taken is the same when written and read again; what is refused says
// why.
#include <cstddef>
#include <cstdint>
#include <cstdlib>
#include <string_view>

#include "document/curve_cells.h"
#include "document/stock.h"

using namespace tapward;

namespace {

void require(bool holds)
{
    if (!holds) {
        std::abort();
    }
}

void readStockList(std::string_view text)
{
    const auto list = document::readStock(text);
    if (!list) {
        require(!list.error().what.empty() && !list.error().remedy.empty());
        (void)render(list.error().what, UnitSystem::Us);
        return;
    }
    const std::string written = document::writeStock(*list);
    const auto again = document::readStock(written);
    require(again.has_value());
    require(again->items.size() == list->items.size());
    require(document::writeStock(*again) == written);
}

void readPastedCurve(std::string_view text)
{
    const auto cells = document::readCells(text);
    if (!cells) {
        require(!cells.error().what.empty());
        return;
    }
    require(document::readCells(document::writeCells(*cells)).has_value());
    const parts::PartKind* pump = parts::find("circulator");
    const parts::Field* field = pump->field("curve");
    const auto curve = document::readCurve(*cells, *pump, *field, UnitSystem::Us);
    require(curve || !curve.error().what.empty());
    if (curve) {
        require(document::readCurve(document::curveCells(*curve, *field, UnitSystem::Us), *pump, *field, UnitSystem::Us)
                    .has_value());
    }
}

}  // namespace

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size)
{
    const std::string_view text(reinterpret_cast<const char*>(data), size);
    readStockList(text);
    readPastedCurve(text);
    return 0;
}
