// SPDX-License-Identifier: GPL-3.0-or-later
#include <cmath>
#include <vector>

#include <fmt/format.h>

#include "report/stop_report.h"
#include "report/text.h"

namespace tapward::report {
namespace {

using Cells = std::vector<std::string>;

/// Columns side by side, the first to the left, the others to the right.
std::string columns(const std::vector<Cells>& rows)
{
    std::vector<std::size_t> widths;
    for (const Cells& row : rows) {
        widths.resize(std::max(widths.size(), row.size()));
        for (std::size_t c = 0; c < row.size(); ++c) {
            widths[c] = std::max(widths[c], codePoints(row[c]));
        }
    }
    std::string out;
    for (const Cells& row : rows) {
        std::string line = "  ";
        for (std::size_t c = 0; c < row.size(); ++c) {
            const std::string room(widths[c] - codePoints(row[c]), ' ');
            line += (c == 0 ? "" : "  ") + (c == 0 ? row[c] + room : room + row[c]);
        }
        out += line.substr(0, line.find_last_not_of(' ') + 1) + '\n';
    }
    return out;
}

std::string percent(double share) { return show({share, Quantity::Percent}, UnitSystem::Us); }

std::string gauge(const std::optional<int>& awg, const char* none)
{
    return awg ? fmt::format("AWG {}", *awg) : std::string(none);
}

std::string settingOf(const study::StopChoice& choice, UnitSystem units)
{
    std::string out;
    const auto add = [&](const std::optional<double>& value, Quantity quantity) {
        if (value) {
            out += (out.empty() ? "" : " or ") + show({*value, quantity}, units);
        }
    };
    add(choice.volume_m3, Quantity::Volume);
    add(choice.temperature_C, Quantity::Temperature);
    add(choice.time_s, Quantity::Time);
    return out;
}

}  // namespace

std::string title(study::StopKind kind)
{
    switch (kind) {
    case study::StopKind::Volume:
        return "Volume";
    case study::StopKind::Time:
        return "Time";
    case study::StopKind::Temperature:
        return "Temperature";
    case study::StopKind::VolumeOrTemperature:
        break;
    }
    return "Volume or temperature, whichever is first";
}

std::string title(study::Load::Kind kind)
{
    switch (kind) {
    case study::Load::Kind::Circulator:
        return "pump";
    case study::Load::Kind::Valve:
        return "valve";
    case study::Load::Kind::Controller:
        return "controller";
    case study::Load::Kind::Heater:
        break;
    }
    return "heater";
}

std::string title(study::PumpArrangement arrangement)
{
    switch (arrangement) {
    case study::PumpArrangement::One:
        return "One pump";
    case study::PumpArrangement::TwoInParallel:
        return "Two in parallel";
    case study::PumpArrangement::TwoInSeries:
        break;
    }
    return "Two in series";
}

std::string stopText(const document::Drawing& drawing, const study::StopStudy& study, UnitSystem units)
{
    const auto temperature = [&](double celsius) { return show({celsius, Quantity::Temperature}, units); };
    std::string out = drawing.job.title + '\n';
    out += fmt::format("Suggested stop for '{}': {} at the tap.\n", study.caseName, temperature(study.target_C));
    out += fmt::format("Limits: tap {}", temperature(study.limits.tap_C));
    out += study.byColdLine ? fmt::format(", water into the cold line {}.\n", temperature(study.limits.coldEntry_C))
                            : std::string(".\n");
    out += fmt::format("{} samples of what is not known; the heater lights in {} of them.\n", study.samples,
                       percent(study.lights));
    out += '\n';
    if (const study::StopChoice* best = study.best()) {
        out += fmt::format("Suggested: {} ({}).\n", settingOf(*best, units), title(best->kind));
        out += fmt::format("  Reaches the target and keeps every limit in {} of the samples (standard error {}).\n",
                           percent(best->both), percent(best->bothError));
        out += fmt::format("  Hottest at the tap in any sample: {}. Set the run timer above {}.\n",
                           temperature(best->worstTap_C), show({best->longestRun_s, Quantity::Time}, units));
        if (study.confirmed > 0) {
            out += fmt::format("  Run itself on {} fresh samples: both in {}, hottest {}.\n", study.confirmed,
                               percent(study.confirmedBoth), temperature(study.confirmedWorstTap_C));
        }
        out += fmt::format("  The samples' coarser cells are off by {} at the tap.\n",
                           show({study.resolutionError_K, Quantity::TemperatureDifference}, units));
    } else {
        out += "Suggested: none. " + render(study.reason, units) + '\n';
        if (study.possibleTarget_C) {
            out += fmt::format("  With {} asked for at the tap there would be one, or with a return line of its own.\n",
                               temperature(*study.possibleTarget_C));
        }
    }
    out += heading("Kinds of stop");
    std::vector<Cells> rows{
        {"Kind", "Stop at", "from", "to", "Reaches", "Keeps", "Both", "Tap 10 %", "50 %", "90 %", "Hottest"}};
    std::string misses;
    for (const study::StopChoice& choice : study.choices) {
        if (!choice.notPossible.empty()) {
            misses += "  " + title(choice.kind) + ": " + render(choice.notPossible, units) + '\n';
            continue;
        }
        const Quantity window = choice.volume_m3 ? Quantity::Volume
                                : choice.time_s  ? Quantity::Time
                                                 : Quantity::Temperature;
        rows.push_back({title(choice.kind), settingOf(choice, units), show({choice.least, window}, units),
                        show({choice.most, window}, units), percent(choice.reaches), percent(choice.keeps),
                        percent(choice.both), temperature(choice.tapLow_C), temperature(choice.tapMiddle_C),
                        temperature(choice.tapHigh_C), temperature(choice.worstTap_C)});
    }
    out += columns(rows) + misses;
    out += heading("Measure this first");
    rows = {{"Input", "from", "to", "Rank weight", "Range"}};
    for (const study::Influence& influence : study.influences) {
        const study::Range& range = influence.range;
        rows.push_back({std::string(range.label), show({range.least, range.quantity}, units),
                        show({range.most, range.quantity}, units), fmt::format("{:+.2f}", influence.coefficient),
                        range.source});
    }
    out += columns(rows);
    out += fmt::format("  Standardized rank regression on the water at the tap when the stop comes; fit {:.2f}{}.\n",
                       study.rankFit, study.rankFit < 0.7 ? ", so the order is a hint only" : "");
    out += "\nHot water can burn. Never rely on one stop: a separate high limit must end the run if it fails.\n"
           "A prediction over ranges that are themselves guesses: prove the stop on the coach.\n";
    return out;
}

std::string wiringText(const document::Drawing& drawing, const study::WiringStudy& study,
                       const study::LoopCurves* curves, const study::HeadBudget* budget, UnitSystem units)
{
    const auto volts = [&](double volt) { return show({volt, Quantity::Voltage}, units); };
    const auto amps = [&](double ampere) { return show({ampere, Quantity::Current}, units); };
    const auto hours = [&](double coulomb) { return show({coulomb, Quantity::Charge}, units); };
    const auto watts = [&](double joule) { return show({joule, Quantity::ElectricEnergy}, units); };
    std::string out = drawing.job.title + '\n';
    out += fmt::format("12 V side in a run: battery {} unloaded, {} at its posts, {} drawn.\n", volts(study.battery_V),
                       volts(study.posts_V), amps(study.total_A));
    out += heading("Loads");
    std::vector<Cells> rows{{"Load", "Volts", "Current", "At start", "At 10.5 V", "Wire", "Length", "Warm drop", "3 %",
                             "10 %", "Heat", "Per run"}};
    for (const study::LoadAnswer& load : study.loads) {
        const bool known = load.length_m > 0;
        rows.push_back({tagOf(drawing, load.part) + " " + title(load.kind), volts(load.volts), amps(load.current_A),
                        volts(load.startVolts), volts(load.lowVolts), fmt::format("AWG {}", load.gauge),
                        known ? show({load.length_m, Quantity::Length}, units) : "not known",
                        known ? percent(load.warmDropShare) : "–",
                        known ? gauge(load.gaugeFor3Percent, "over AWG 2") : "–",
                        known ? gauge(load.gaugeFor10Percent, "over AWG 2") : "–",
                        gauge(load.gaugeForHeat, "over AWG 10"), hours(load.perPress_C)});
    }
    out += columns(rows);
    out += heading("Branches");
    rows = {{"Fuse", "Rating", "Its loads", "Others", "Inrush", "Wire may carry", "Spare", "Loads"}};
    for (const study::BranchAnswer& branch : study.branches) {
        std::string loads;
        for (const document::PartId load : branch.loads) {
            loads += (loads.empty() ? "" : " ") + tagOf(drawing, load);
        }
        const bool fused = branch.fuse != document::kNoPart;
        rows.push_back({fused ? tagOf(drawing, branch.fuse) : "none drawn", fused ? amps(branch.rating_A) : "–",
                        amps(branch.steady_A), amps(branch.other_A), amps(branch.inrush_A),
                        branch.wireLimit_A ? amps(*branch.wireLimit_A) : "look it up",
                        fused ? amps(branch.spare_A) : "–", loads});
    }
    out += columns(rows);
    out += heading("Flow by battery voltage");
    rows = {{"Battery", "Loop flow", "Over activation", "Heater's board"}};
    for (const study::VoltageAnswer& row : study.voltages) {
        rows.push_back({volts(row.battery_V), row.flow_m3s ? show({*row.flow_m3s, Quantity::Flow}, units) : "–",
                        row.margin ? fmt::format("{:.2f}", *row.margin) : "–", row.heaterWorks ? "works" : "too low"});
    }
    out += columns(rows);
    out += heading("Energy");
    out += fmt::format("  One run of {}: {}, {}. {}\n", show({study.press_s, Quantity::Time}, units),
                       hours(study.perPress_C), watts(study.perPress_J), render(study.pressNote, units));
    out += fmt::format("  A day of {} runs: {}, {}; {} of it drawn at rest{}.\n", study.pressesPerDay,
                       hours(study.perDay_C), watts(study.perDay_J), hours(study.restPerDay_C),
                       study.capacityShare ? ", " + percent(*study.capacityShare) + " of the battery" : "");
    if (curves) {
        out += heading("Pumps");
        rows = {{"Set", "Battery", "At the pump", "Flow", "Head", "Heater"}};
        for (const study::PumpSet& set : curves->sets) {
            rows.push_back({title(set.arrangement), volts(set.battery_V), volts(set.pump_V),
                            set.working ? show({set.heaterFlow_m3s, Quantity::Flow}, units) : "none",
                            set.working ? show({set.working->head_m, Quantity::Head}, units) : "–",
                            !curves->activationFlow_m3s ? "–"
                            : set.lights                ? "lights"
                                                        : "does not light"});
        }
        out += columns(rows);
    }
    if (budget) {
        out += heading("Where the head goes");
        rows = {{"Part", "Loss", "Share"}};
        for (const study::HeadItem& item : budget->items) {
            rows.push_back(
                {tagOf(drawing, item.part), show({item.loss_Pa, Quantity::Pressure}, units), percent(item.share)});
        }
        rows.push_back({"Pumps' head", show({budget->pumpHead_Pa, Quantity::Pressure}, units), ""});
        out += columns(rows);
    }
    if (!study.cautions.empty()) {
        out += heading("See to");
        for (const Message& caution : study.cautions) {
            out += "  " + render(caution, units) + '\n';
        }
    }
    out += "\nFuse at the source end, not above what the wire may carry; keep splices dry; isolate the battery before "
           "work.\nYardsticks: NEC 551/552, NFPA 1192 and ANSI/RVIA LV in the edition in force and the makers' "
           "instructions govern;\nABYC E-11 (3 %, 10 %) is a marine standard.\n";
    return out;
}

}  // namespace tapward::report
