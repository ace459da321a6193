// SPDX-License-Identifier: GPL-3.0-or-later
#include <algorithm>

#include <fmt/format.h>

#include "report/study_report.h"
#include "report/text.h"
#include "review/burn.h"

namespace tapward::report {
namespace {

using Table = std::vector<std::vector<std::string>>;

/// Columns as wide as their widest cell; the last one runs free.
std::string aligned(const Table& table)
{
    std::vector<std::size_t> widths;
    for (const auto& row : table) {
        widths.resize(std::max(widths.size(), row.size()), 0);
        for (std::size_t c = 0; c + 1 < row.size(); ++c) {
            widths[c] = std::max(widths[c], codePoints(row[c]));
        }
    }
    std::string out;
    for (const auto& row : table) {
        out += ' ';
        for (std::size_t c = 0; c < row.size(); ++c) {
            out += ' ' + row[c];
            if (c + 1 < row.size()) {
                out.append(widths[c] - codePoints(row[c]) + 1, ' ');
            }
        }
        out += '\n';
    }
    return out;
}

std::string celsius(std::optional<double> value, UnitSystem units)
{
    return value ? show({*value, Quantity::Temperature}, units) : std::string("-");
}

std::string head(const document::Drawing& drawing, const char* what)
{
    std::string out = drawing.job.title.empty() ? std::string(what) : drawing.job.title + ": " + what;
    out += "\nPredicted from the drawing; not measured. Yardsticks, not a declaration of compliance.";
    out += drawing.job.sampleFigures ? " Sample figures: an invented coach.\n" : "\n";
    return out;
}

const char* const kCaution =
    "\nHot water can burn; children, elders and people with reduced feeling burn sooner. Never rely on one\n"
    "stop. The heater maker's instructions, local codes and licensed practice come first.\n";

void addWait(Table& table, const char* label, const std::optional<double>& wait_s, const Message& reason,
             UnitSystem units)
{
    table.push_back(
        {label, wait_s ? show({*wait_s, Quantity::Time}, units) : "no wait is enough", render(reason, units)});
}

std::string waitText(const study::SafeWait& wait, UnitSystem units)
{
    Table table;
    addWait(table, "For the outlets", wait.outlets_s, wait.outletsReason, units);
    addWait(table, "For the cold line", wait.coldEntry_s, wait.coldEntryReason, units);
    addWait(table, "For both", wait.both_s, {}, units);
    addWait(table, "No hotter than the first press", wait.asTheFirst_s, {}, units);
    return aligned(table);
}

}  // namespace

std::string placeName(const document::Drawing& drawing, study::HeatPlace place, document::PartId part)
{
    const document::Part* found = drawing.find(part);
    const std::string tag = found ? found->tag : std::string();
    switch (place) {
    case study::HeatPlace::HeaterOutlet:
        return tag + ", outlet";
    case study::HeatPlace::HeaterInlet:
        return tag + ", inlet";
    case study::HeatPlace::Sensor:
        return tag + ", sensor";
    case study::HeatPlace::Join:
        return tag + ", into the return";
    case study::HeatPlace::OutletHot:
        return tag + ", hot";
    case study::HeatPlace::OutletCold:
        return tag + ", cold";
    case study::HeatPlace::ColdEntry:
        return tag + ", into the cold line";
    }
    return tag;
}

std::string pressesText(const document::Drawing& drawing, const study::PressesStudy& study, UnitSystem units)
{
    std::string out = head(drawing, "Repeated presses");
    out += heading("Hottest the control allows");
    Table table{{"Where", "Hottest", "Presses", "Adult burns in", ""}};
    for (const study::WorstHeat& heat : study.worst) {
        const review::BurnTime burn = review::burnTime(heat.hottest_C);
        table.push_back({placeName(drawing, heat.place, heat.part), celsius(heat.hottest_C, units),
                         std::to_string(heat.presses),
                         burn.adult_s ? show({*burn.adult_s, Quantity::Time}, units) : "not in tables",
                         std::string(review::title(burn.hazard))});
    }
    out += aligned(table);
    if (study.wait) {
        out += heading("Wait between presses, on the worst days");
        out += waitText(*study.wait, units);
    }
    if (study.waitAsDrawn) {
        out += heading("Wait between presses, on the day of the drawing's case");
        out += waitText(*study.waitAsDrawn, units);
    }
    if (!study.protections.empty()) {
        out += heading("Protections");
        table = {{"", "Now", "Outlets", "Cold outlets", "Heater outlet", ""}};
        table.push_back({"As drawn", "", celsius(study.asDrawn.outlets_C, units),
                         celsius(study.asDrawn.coldOutlets_C, units), celsius(study.asDrawn.heaterOutlet_C, units),
                         ""});
        for (const study::ProtectionEffect& effect : study.protections) {
            table.push_back({std::string(study::title(effect.protection)), effect.counted ? "on" : "off",
                             celsius(effect.other.outlets_C, units), celsius(effect.other.coldOutlets_C, units),
                             celsius(effect.other.heaterOutlet_C, units), render(effect.note, units)});
        }
        out += aligned(table);
    }
    return out + kCaution;
}

std::string neededText(const study::SafeSet& set, UnitSystem units)
{
    if (set.keepsAsDrawn) {
        return "As drawn, repeated presses keep every limit: nothing needs to be changed.\n";
    }
    if (set.changes.empty()) {
        return "None is enough. " + render(set.reason, units) + '\n';
    }
    std::string out = "The fewest changes that keep every limit, whoever presses how often:\n";
    for (const study::SafeChange& change : set.changes) {
        if (!change.words.empty()) {
            out += "  " + render(change.words, units) + '\n';
        }
    }
    return out;
}

std::string safeSetText(const document::Drawing& drawing, const study::SafeSet& set, UnitSystem units)
{
    std::string out = head(drawing, "Protections needed");
    out += '\n' + neededText(set, units);
    out += heading(set.isFound() ? "Hottest a search of its own finds with it" : "Hottest with all of them at once");
    Table table{{"Heater outlet", celsius(set.with.heaterOutlet_C, units)},
                {"Outlets, hot", celsius(set.with.outlets_C, units)},
                {"Outlets, cold", celsius(set.with.coldOutlets_C, units)},
                {"Into the cold line", celsius(set.entering_C, units)}};
    return out + aligned(table) + kCaution;
}

std::string faultsText(const document::Drawing& drawing, const study::FaultsStudy& study, UnitSystem units)
{
    const bool pairs = std::any_of(study.rows.begin(), study.rows.end(),
                                   [](const study::FaultRow& row) { return row.withPart != document::kNoPart; });
    std::string out = head(drawing, pairs ? "Single faults and pairs" : "Single faults");
    out += fmt::format(
        "\nSound: outlets {}, cold outlets {}, heater outlet {}.\nThrough:", celsius(study.sound.outlets_C, units),
        celsius(study.sound.coldOutlets_C, units), celsius(study.sound.heaterOutlet_C, units));
    for (const std::string& name : study.cases) {
        out += " '" + name + "'";
    }
    out += ".\n\n";
    Table table{{"Part", "Fault", "Outlets", "Cold", "Heater", "Change", "Hurts", "Consequence"}};
    const auto nameOf = [&](document::PartId id, const std::string& fault) {
        const document::Part* part = drawing.find(id);
        if (!part) {
            return fault;
        }
        for (const parts::Fault& known : document::kindOf(*part).faults) {
            if (known.id == fault) {
                return std::string(known.title.english().substr(0, known.title.english().find(':')));
            }
        }
        return fault;
    };
    const auto tag = [&](document::PartId id) {
        const document::Part* part = drawing.find(id);
        return part ? part->tag : std::string();
    };
    for (const study::FaultRow& row : study.rows) {
        const bool pair = row.withPart != document::kNoPart;
        const std::string part = tag(row.part) + (pair ? " and " + tag(row.withPart) : "");
        const std::string fault =
            nameOf(row.part, row.fault) + (pair ? " and " + nameOf(row.withPart, row.withFault) : "");
        if (!row.run) {
            table.push_back({part, fault, "-", "-", "-", "-", "not run", render(row.consequence, units)});
            continue;
        }
        std::string words = render(row.consequence, units) + " Who: " + render(row.who, units)
                            + (row.harmsSoundToo ? " Above the limit there in the sound coach too." : "")
                            + " Shows: " + render(row.shows, units) + " Ends it: " + render(row.stops, units);
        table.push_back({part, fault, celsius(row.hottest.outlets_C, units), celsius(row.hottest.coldOutlets_C, units),
                         celsius(row.hottest.heaterOutlet_C, units),
                         row.change_K ? show({*row.change_K, Quantity::TemperatureDifference}, units) : "-",
                         row.harm == study::Harm::Nobody ? "nobody" : tag(row.harmedAt), std::move(words)});
    }
    return out + aligned(table) + kCaution;
}

}  // namespace tapward::report
