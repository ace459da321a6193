// SPDX-License-Identifier: GPL-3.0-or-later
#include "document/curve_cells.h"

#include <algorithm>

#include "base/editable_number.h"

namespace tapward::document {

Result<parts::Curve> readCurve(const CellBlock& block, const parts::PartKind& kind, const parts::Field& field,
                               UnitSystem units)
{
    parts::Curve curve;
    for (std::size_t i = 0; i < block.size(); ++i) {
        const auto& row = block[i];
        if (std::all_of(row.begin(), row.end(), [](const auto& cell) { return cell.empty(); })) {
            continue;
        }
        const auto number = static_cast<std::int64_t>(i + 1);
        if (row.size() < 2) {
            return problem({"Row {0} has only one column.", {number}}, "Copy two columns, the flow or the like first.",
                           std::to_string(number));
        }
        const auto x = parseMeasure(row[0], field.curveX, units), y = parseMeasure(row[1], field.curveY, units);
        if (i == 0 && !x && !y) {
            continue;  // headings
        }
        if (!x || !y) {
            return problem({"Row {0}: \"{1}\" is no number that fits here.", {number, x ? row[1] : row[0]}},
                           "Put it right in the spreadsheet and copy it again.", std::to_string(number));
        }
        curve.push_back({*x, *y});
    }
    std::stable_sort(curve.begin(), curve.end(), [](const auto& a, const auto& b) { return a.x < b.x; });
    if (auto why = parts::refusal(kind, field, curve)) {
        return tl::unexpected(std::move(*why));
    }
    return curve;
}

CellBlock curveCells(const parts::Curve& curve, const parts::Field& field, UnitSystem units)
{
    CellBlock block;
    for (const parts::CurvePoint& point : curve) {
        block.push_back(
            {editableNumber({point.x, field.curveX}, units), editableNumber({point.y, field.curveY}, units)});
    }
    return block;
}

}  // namespace tapward::document
