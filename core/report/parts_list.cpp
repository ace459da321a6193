// SPDX-License-Identifier: GPL-3.0-or-later
#include <algorithm>
#include <cmath>
#include <tuple>

#include <fmt/format.h>
#include <fmt/ranges.h>

#include "report/csv.h"
#include "report/report.h"
#include "report/text.h"

namespace tapward::report {
namespace {

/// A line with its place in the tray, for the order.
struct Placed {
    std::size_t tray;
    PartLine line;
};

std::size_t trayPlace(const parts::PartKind& kind)
{
    const auto& all = parts::catalogue();
    return static_cast<std::size_t>(std::find(all.begin(), all.end(), &kind) - all.begin());
}

std::string money(double amount) { return fmt::format("{:.2f}", amount); }

/// Up to three decimals, none that say nothing.
std::string count(double quantity)
{
    std::string text = fmt::format("{:.3f}", quantity);
    while (text.back() == '0') {
        text.pop_back();
    }
    if (text.back() == '.') {
        text.pop_back();
    }
    return text;
}

}  // namespace

PartsList partsList(const document::Drawing& drawing)
{
    std::vector<Placed> placed;
    for (const document::Part& part : drawing.parts) {
        if (part.stage != document::Stage::Added) {
            continue;
        }
        const parts::PartKind& kind = document::kindOf(part);
        if (!kind.materials) {
            continue;
        }
        for (parts::Material& material : kind.materials(document::values(part))) {
            if (!(material.quantity > 0)) {
                continue;
            }
            // The same thing at another price stays another line, so that the sum can be followed.
            const auto same = std::find_if(placed.begin(), placed.end(), [&](const Placed& other) {
                return other.line.item == material.item && other.line.metres == material.perMetre
                       && other.line.unitPrice == material.unitPrice;
            });
            Placed& into =
                same != placed.end()
                    ? *same
                    : placed.emplace_back(Placed{
                          trayPlace(kind), {std::move(material.item), 0, material.perMetre, {}, material.unitPrice}});
            into.tray = std::min(into.tray, trayPlace(kind));
            into.line.quantity += material.quantity;
            if (std::find(into.line.tags.begin(), into.line.tags.end(), part.tag) == into.line.tags.end()) {
                into.line.tags.push_back(part.tag);
            }
        }
    }
    std::stable_sort(placed.begin(), placed.end(), [](const Placed& a, const Placed& b) {
        return std::tuple(a.tray, inEnglish(a.line.item), a.line.unitPrice)
               < std::tuple(b.tray, inEnglish(b.line.item), b.line.unitPrice);
    });
    PartsList list;
    list.allPriced = true;
    for (Placed& one : placed) {
        list.allPriced = list.allPriced && one.line.unitPrice > 0;
        list.partsTotal += one.line.price();
        list.lines.push_back(std::move(one.line));
    }
    list.labour = drawing.job.hours * drawing.job.hourlyRate;
    return list;
}

std::string partsCsv(const document::Drawing& drawing, UnitSystem units)
{
    const PartsList list = partsList(drawing);
    const DisplayUnit length = displayUnit(Quantity::Length, units);
    const std::string& currency = drawing.job.currency;
    std::string out = csvRow({"Item", "Quantity", "Unit", "Tags", fmt::format("Unit price ({})", currency),
                              fmt::format("Price ({})", currency)});
    for (const PartLine& line : list.lines) {
        std::string tags;
        for (const std::string& tag : line.tags) {
            tags += (tags.empty() ? "" : " ") + tag;
        }
        const double shown = line.metres ? toDisplay({line.quantity, Quantity::Length}, units) : line.quantity;
        const bool priced = line.unitPrice > 0;
        out += csvRow({inEnglish(line.item), count(shown), line.metres ? std::string(length.symbol) : "pcs", tags,
                       priced ? money(line.metres ? line.unitPrice / length.scale : line.unitPrice) : "",
                       priced ? money(line.price()) : ""});
    }
    return out;
}

std::string partsText(const document::Drawing& drawing, UnitSystem units)
{
    const PartsList list = partsList(drawing);
    if (list.lines.empty()) {
        return "Nothing is added to this coach.\n";
    }
    std::vector<std::string> counts, items;
    std::size_t countWidth = 0, itemWidth = 0;
    for (const PartLine& line : list.lines) {
        counts.push_back(line.metres ? show({line.quantity, Quantity::Length}, units) : count(line.quantity));
        const std::string item = inEnglish(line.item);
        items.push_back(line.tags.empty() ? item : fmt::format("{} ({})", item, fmt::join(line.tags, " ")));
        countWidth = std::max(countWidth, codePoints(counts.back()));
        itemWidth = std::max(itemWidth, codePoints(items.back()));
    }
    std::string out;
    const auto row = [&](const std::string& amount, const std::string& item, const std::string& price) {
        out += std::string(countWidth - codePoints(amount), ' ') + amount + "  " + item
               + std::string(itemWidth - std::min(itemWidth, codePoints(item)) + 2, ' ') + fmt::format("{:>10}", price)
               + '\n';
    };
    for (std::size_t i = 0; i < list.lines.size(); ++i) {
        row(counts[i], items[i], list.lines[i].unitPrice > 0 ? money(list.lines[i].price()) : "not priced");
    }
    const std::string& currency = drawing.job.currency;
    row("", list.allPriced ? "Parts, " + currency : "Parts with a price, " + currency, money(list.partsTotal));
    if (list.labour > 0) {
        row("", fmt::format("Labor, {} h", count(drawing.job.hours)), money(list.labour));
    }
    row("", list.allPriced ? "Total" : "Total without the unpriced parts", money(list.partsTotal + list.labour));
    return out;
}

}  // namespace tapward::report
