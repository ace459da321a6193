// SPDX-License-Identifier: GPL-3.0-or-later
#include "study/fault_words.h"

#include <algorithm>

#include <fmt/format.h>

#include "study/protections.h"

namespace tapward::study {
namespace {

constexpr double kNoticed_K = 3;    ///< a change people would notice at a tap
constexpr double kHotterBy_K = 0.5;
constexpr double kWarm_C = 35;      ///< feels warm to a hand: common practice, no published source

Measure celsius(double value) { return {value, Quantity::Temperature}; }

std::string tagOf(const document::Drawing& drawing, document::PartId part)
{
    const document::Part* found = drawing.find(part);
    return found ? found->tag : std::string();
}

bool drinks(const document::Part* part)
{
    if (!part) {
        return false;
    }
    const parts::PartKind& kind = document::kindOf(*part);
    const parts::Field* field = kind.field("drinking");
    return field ? document::values(*part).flag("drinking") : kind.id == "faucet";
}

Message stopWords(const Outcome& outcome)
{
    if (outcome.endedByHand) {
        return Message("Nothing: the run was stopped at the button after ten minutes.");
    }
    if (outcome.limitOpen) {
        return Message("The independent high limit.");
    }
    const std::string& end = outcome.lastEnd;
    if (end.empty() && (outcome.heaterLimit || outcome.lockout)) {
        return Message("The heater's own limits, not the loop's control.");
    }
    if (end == "stop_volume") {
        return Message("The volume stop.");
    }
    if (end == "stop_time") {
        return Message("The time stop.");
    }
    if (end == "stop_temperature") {
        return Message("The temperature stop.");
    }
    if (end == "stop_high_limit") {
        return Message("The independent high limit.");
    }
    if (end == "stop_inlet_lockout") {
        return Message("The inlet lockout.");
    }
    if (end == "stop_longest_run") {
        return Message("The longest run.");
    }
    if (end == "stop_no_flow") {
        return Message("The stop without flow.");
    }
    if (end == "stop_power_lost") {
        return Message("The loss of power.");
    }
    return outcome.runsAtEnd ? Message("Nothing in this case.") : Message("No run was under way.");
}

}  // namespace

double hottestAt(const Outcome& outcome, HeatPlace place, document::PartId part)
{
    double hottest = -1e9;
    for (const PlaceHeat& heat : outcome.hottest) {
        if (heat.place == place && (part == document::kNoPart || heat.part == part)) {
            hottest = std::max(hottest, heat.hottest_C);
        }
    }
    return hottest;
}

Outcome outcomeOf(const TrialResult& result)
{
    Outcome outcome;
    outcome.hottest = result.result.hottest;
    for (const Event& event : result.result.events) {
        outcome.lit = outcome.lit || event.id == "burner_lit";
        outcome.lockout = outcome.lockout || event.id == "heater_lockout";
        outcome.heaterLimit = outcome.heaterLimit || event.id == "heater_limit";
        outcome.limitOpen = outcome.limitOpen || event.id == "limit_open";
        outcome.refused = outcome.refused || event.id == "run_refused";
        if (event.id == "run_started") {
            outcome.ran = true;
            outcome.runsAtEnd = true;
        }
        if (event.id.starts_with("stop_")) {
            outcome.lastEnd = event.id;
            outcome.runsAtEnd = false;
            outcome.endedByHand = outcome.endedByHand || event.id == "stop_button";
        }
    }
    return outcome;
}

void keepHottest(FaultRow& row, const PlaceHeat& heat)
{
    take(row.hottest, heat);
    if (!isOutlet(heat.place)) {
        return;
    }
    for (PlaceHeat& known : row.outlets) {
        if (known.place == heat.place && known.part == heat.part) {
            known = heat.hottest_C > known.hottest_C ? heat : known;
            return;
        }
    }
    row.outlets.push_back(heat);
}

double caseWeight_K(const Outcome& faulty, const Outcome& sound, double outletLimit_C)
{
    double most_K = -1e9;
    for (const PlaceHeat& heat : faulty.hottest) {
        if (heat.place == HeatPlace::HeaterOutlet || isOutlet(heat.place)) {
            const double burns_K = isOutlet(heat.place) ? std::max(heat.hottest_C - outletLimit_C, 0.0) : 0;
            most_K = std::max(most_K, burns_K + heat.hottest_C - hottestAt(sound, heat.place, heat.part));
        }
    }
    return most_K;
}

FaultRow toldOf(const document::Drawing& drawing, FaultRow told, const FaultRow& own)
{
    told.part = own.part;
    told.fault = own.fault;
    told.withPart = own.withPart;
    told.withFault = own.withFault;
    told.run = true;
    const document::Part* part = drawing.find(own.part);
    const document::Part* with = drawing.find(own.withPart);
    for (document::Action& action : told.worst.actions) {  // a like fault's script is told with this part
        if (action.kind == document::ActionKind::StartFault && action.part != own.withPart) {
            action.part = own.part;
            action.fault = own.fault;
        }
    }
    told.worst.name =
        with ? fmt::format("{} {}, {} {}: {}", part->tag, own.fault, with->tag, own.withFault, told.worst.name)
             : fmt::format("{} {}: {}", part->tag, own.fault, told.worst.name);
    return told;
}

void wordRow(const document::Drawing& drawing, FaultRow& row, const std::vector<Outcome>& faulty,
             const std::vector<Outcome>& sound, std::size_t worst, const FaultsOptions& options,
             parts::FaultEffect effect)
{
    const auto any = [](const std::vector<Outcome>& all, bool Outcome::* what) {
        return std::any_of(all.begin(), all.end(), [&](const Outcome& one) { return one.*what; });
    };
    const auto newly = [&](bool Outcome::* what) {
        for (std::size_t i = 0; i < faulty.size(); ++i) {
            if (faulty[i].*what && !(sound[i].*what)) {
                return true;
            }
        }
        return false;
    };
    const auto lost = [&](bool Outcome::* what) {
        for (std::size_t i = 0; i < faulty.size(); ++i) {
            if (!(faulty[i].*what) && sound[i].*what) {
                return true;
            }
        }
        return false;
    };
    // Hottest per outlet over the cases, and what the sound coach reaches there.
    struct At {
        PlaceHeat heat;
        double sound_C;
        double limit_C;
    };
    std::vector<At> outlets;
    for (const PlaceHeat& heat : row.outlets) {
        double sound_C = -1e9;
        for (const Outcome& one : sound) {
            sound_C = std::max(sound_C, hottestAt(one, heat.place, heat.part));
        }
        // Cold drinking water has the lower limit; elsewhere cold or hot, skin is skin.
        const bool cold = heat.place == HeatPlace::OutletCold;
        const bool drinking = cold && drinks(drawing.find(heat.part));
        outlets.push_back({heat, sound_C, drinking ? options.coldEntryLimit_C : options.outletLimit_C});
    }
    const At* harmed = nullptr;  // the outlet most above its limit
    const At* raised = nullptr;  // ... most above what it is in the sound coach
    for (const At& at : outlets) {
        if (at.heat.hottest_C > at.limit_C
            && (!harmed || at.heat.hottest_C - at.limit_C > harmed->heat.hottest_C - harmed->limit_C)) {
            harmed = &at;
        }
        if (!raised || at.heat.hottest_C - at.sound_C > raised->heat.hottest_C - raised->sound_C) {
            raised = &at;
        }
    }
    const double heater_C = row.hottest.heaterOutlet_C.value_or(-1e9);
    double soundHeater_C = -1e9, join_C = -1e9, soundJoin_C = -1e9;
    for (std::size_t i = 0; i < sound.size(); ++i) {
        soundHeater_C = std::max(soundHeater_C, hottestAt(sound[i], HeatPlace::HeaterOutlet, document::kNoPart));
        join_C = std::max(join_C, hottestAt(faulty[i], HeatPlace::Join, document::kNoPart));
        soundJoin_C = std::max(soundJoin_C, hottestAt(sound[i], HeatPlace::Join, document::kNoPart));
    }
    row.change_K = heater_C > -1e8 ? std::optional(heater_C - soundHeater_C) : std::nullopt;
    if (raised) {
        const double change = raised->heat.hottest_C - raised->sound_C;
        row.change_K = std::max(row.change_K.value_or(change), change);
    }

    if (harmed) {
        const bool cold = harmed->heat.place == HeatPlace::OutletCold;
        const bool onSkin = harmed->heat.hottest_C > options.outletLimit_C;
        row.harm = onSkin ? Harm::User : Harm::Drinking;
        row.harmedAt = harmed->heat.part;
        row.harmsSoundToo = harmed->sound_C > harmed->limit_C;
        const std::string tag = tagOf(drawing, harmed->heat.part);
        row.who = !onSkin ? Message("Whoever drinks or fills a kettle at {0}: {1} from the cold tap.",
                                    {tag, celsius(harmed->heat.hottest_C)})
                  : cold  ? Message("Whoever opens {0} on cold: {1}.", {tag, celsius(harmed->heat.hottest_C)})
                          : Message("Whoever opens {0}: {1}.", {tag, celsius(harmed->heat.hottest_C)});
    } else {
        row.who = Message("Nobody in these cases.");
    }

    using enum parts::FaultEffect;
    const bool hotter = raised && raised->heat.hottest_C > raised->sound_C + kHotterBy_K;
    const std::string raisedTag = raised ? tagOf(drawing, raised->heat.part) : std::string();
    if (newly(&Outcome::endedByHand)) {
        row.consequence = Message("A run does not end by itself.");
        row.shows = Message("Pumps that keep humming after the usual time.");
    } else if (newly(&Outcome::lockout)) {
        row.consequence = Message("The heater locks out.");
        row.shows = Message("The heater's fault light or code; no hot water until it is reset.");
    } else if (newly(&Outcome::heaterLimit)) {
        row.consequence = Message("The heater stops at its own limit, up to {0} at its outlet.", {celsius(heater_C)});
        row.shows = Message("The burner goes out and lights again during a run.");
    } else if (hotter && raised->heat.hottest_C > raised->sound_C + kNoticed_K) {
        row.consequence = raised->heat.place == HeatPlace::OutletCold
                              ? Message("Cold water at {0} comes at up to {1}, {2} in the sound coach.",
                                        {raisedTag, celsius(raised->heat.hottest_C), celsius(raised->sound_C)})
                              : Message("Water at {0} comes at up to {1}, {2} in the sound coach.",
                                        {raisedTag, celsius(raised->heat.hottest_C), celsius(raised->sound_C)});
        row.shows = raised->heat.place == HeatPlace::OutletCold ? Message("A cold tap that runs warm.")
                                                                : Message("Water hotter than usual; feel with care.");
    } else if (lost(&Outcome::ran)) {
        row.consequence = Message("No run starts.");
        row.shows = Message("Nothing happens at the button.");
    } else if (lost(&Outcome::lit)) {
        row.consequence = Message("The heater does not light where it should.");
        row.shows = Message("Taps and loop stay cold.");
    } else if (soundJoin_C - join_C > kNoticed_K) {
        row.consequence = Message("The run brings {0} to the end of the loop, {1} in the sound coach.",
                                  {celsius(join_C), celsius(soundJoin_C)});
        row.shows = join_C < kWarm_C ? Message("The tap is still cool after a run.")
                                     : Message("The tap is less warm than usual after a run.");
    } else if (effect == PowerCut || effect == LowVoltage) {
        row.consequence = Message("A run ends early or does not start.");
        row.shows = Message("Lights dim or go out.");
    } else if (hotter) {
        row.consequence =
            Message("Up to {0} hotter at {1}.",
                    {Measure{raised->heat.hottest_C - raised->sound_C, Quantity::TemperatureDifference}, raisedTag});
        row.shows = Message("Little: only a check at the tap with a thermometer.");
    } else {
        row.consequence = Message("Little changes in these cases.");
        row.shows = Message("Nothing: it waits for another fault. Test it at every service.");
    }
    if ((effect == LimitFails || effect == StopFails) && hotter && !newly(&Outcome::endedByHand)
        && !newly(&Outcome::lockout)) {
        row.shows = Message("Longer runs than usual.");
    }
    row.stops = any(faulty, &Outcome::ran) ? stopWords(faulty[worst]) : Message("No run was under way.");
}

std::string caseTitle(const document::Drawing& drawing, const FaultRow& row)
{
    // The study names a script by ids, which do not change; the words stand in the part's kind.
    std::string ids, words;
    const auto add = [&](document::PartId id, const std::string& fault) {
        const document::Part* part = drawing.find(id);
        if (!part) {
            return;
        }
        const auto& known = document::kindOf(*part).faults;
        const auto found = std::find_if(known.begin(), known.end(), [&](const auto& one) { return one.id == fault; });
        const std::string title = found != known.end()
                                      ? std::string(found->title.english().substr(0, found->title.english().find(':')))
                                      : fault;
        ids += (ids.empty() ? "" : ", ") + part->tag + " " + fault;
        words += (words.empty() ? "" : ", ") + part->tag + " " + title;
    };
    add(row.part, row.fault);
    add(row.withPart, row.withFault);
    return row.worst.name.starts_with(ids) ? words + row.worst.name.substr(ids.size()) : row.worst.name;
}

}  // namespace tapward::study
