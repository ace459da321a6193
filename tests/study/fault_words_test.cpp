// SPDX-License-Identifier: GPL-3.0-or-later
#include "study/fault_words.h"

#include <algorithm>

#include "study/trade_coach.h"
#include "support/catch.h"

using namespace tapward;
using parts::FaultEffect;
using study::Harm;
using study::HeatPlace;
using study::Outcome;

namespace {

/// Two drinking faucets (1, 2), a shower (3), a heater (4), a tee (5): what a study's places name.
document::Drawing places()
{
    document::Drawing drawing;
    for (const auto& [kind, tag] : {std::pair{"faucet", "F1"},
                                    {"faucet", "F2"},
                                    {"shower", "SH1"},
                                    {"tankless_heater", "WH1"},
                                    {"tee", "T1"},
                                    {"controller", "C1"},
                                    {"circulator", "P1"},
                                    {"circulator", "P2"}}) {
        document::Part part;
        part.id = drawing.nextId++;
        part.kind = kind;
        part.tag = tag;
        drawing.parts.push_back(part);
    }
    test::set(drawing, "F1", "drinking", true);
    test::set(drawing, "F2", "drinking", true);
    return drawing;
}

Outcome outcome(std::vector<study::PlaceHeat> hottest, bool ran = true)
{
    Outcome one;
    one.hottest = std::move(hottest);
    one.ran = one.lit = ran;
    one.lastEnd = "stop_volume";
    return one;
}

/// The row of cases that each say what they came to, with the faults' and the sound coach's outcomes.
study::FaultRow worded(const std::vector<Outcome>& faulty, const std::vector<Outcome>& sound,
                       FaultEffect effect = FaultEffect::SensorOffset, std::size_t worst = 0)
{
    study::FaultRow row;
    for (const Outcome& one : faulty) {
        for (const study::PlaceHeat& heat : one.hottest) {
            study::keepHottest(row, heat);
        }
    }
    study::FaultsOptions options;
    options.outletLimit_C = 49;
    options.coldEntryLimit_C = 40;
    study::wordRow(places(), row, faulty, sound, worst, options, effect);
    return row;
}

study::PlaceHeat hot(document::PartId part, double celsius) { return {HeatPlace::OutletHot, part, celsius, 0}; }
study::PlaceHeat cold(document::PartId part, double celsius) { return {HeatPlace::OutletCold, part, celsius, 0}; }
study::PlaceHeat fired(double celsius) { return {HeatPlace::HeaterOutlet, 4, celsius, 0}; }
study::PlaceHeat join(double celsius) { return {HeatPlace::Join, 5, celsius, 0}; }

const Argument kelvin(double c) { return Measure{c, Quantity::Temperature}; }

study::TrialResult withEvents(std::vector<std::pair<double, std::string>> events)
{
    study::TrialResult result;
    for (auto& [t_s, id] : events) {
        study::Event event;
        event.t_s = t_s;
        event.id = std::move(id);
        result.result.events.push_back(event);
    }
    return result;
}

}  // namespace

TEST_CASE("what a case came to is read from its events", "[study][faults]")
{
    const Outcome quiet = study::outcomeOf(withEvents({}));
    CHECK_FALSE((quiet.lit || quiet.lockout || quiet.heaterLimit || quiet.limitOpen || quiet.ran || quiet.refused));
    CHECK_FALSE((quiet.endedByHand || quiet.runsAtEnd));
    CHECK(quiet.lastEnd.empty());
    for (const auto& [id, what] : {std::pair{"burner_lit", &Outcome::lit},
                                   {"heater_lockout", &Outcome::lockout},
                                   {"heater_limit", &Outcome::heaterLimit},
                                   {"limit_open", &Outcome::limitOpen},
                                   {"run_refused", &Outcome::refused}}) {
        const Outcome one = study::outcomeOf(withEvents({{1, id}, {2, "something_else"}}));
        CAPTURE(id);
        CHECK(one.*what);
        int set = 0;
        for (const auto flag : {&Outcome::lit, &Outcome::lockout, &Outcome::heaterLimit, &Outcome::limitOpen,
                                &Outcome::ran, &Outcome::refused, &Outcome::endedByHand, &Outcome::runsAtEnd}) {
            set += one.*flag ? 1 : 0;
        }
        CHECK(set == 1);
    }
    const Outcome running = study::outcomeOf(withEvents({{1, "run_started"}, {5, "stop_time"}, {9, "run_started"}}));
    CHECK(running.ran);
    CHECK(running.runsAtEnd);
    CHECK(running.lastEnd == "stop_time");
    CHECK_FALSE(running.endedByHand);
    const Outcome ended = study::outcomeOf(
        withEvents({{1, "run_started"}, {5, "stop_button"}, {9, "run_started"}, {12, "stop_high_limit"}}));
    CHECK_FALSE(ended.runsAtEnd);
    CHECK(ended.lastEnd == "stop_high_limit");
    CHECK(ended.endedByHand);
}

TEST_CASE("the hottest of a place is that of the part asked about, or of any", "[study][faults]")
{
    const Outcome one = outcome({hot(1, 44), hot(2, 47), cold(1, 50), fired(60)});
    CHECK(study::hottestAt(one, HeatPlace::OutletHot, 1) == 44);
    CHECK(study::hottestAt(one, HeatPlace::OutletHot, document::kNoPart) == 47);
    CHECK(study::hottestAt(one, HeatPlace::OutletCold, 1) == 50);
    CHECK(study::hottestAt(one, HeatPlace::OutletCold, 2) < -1000);
}

TEST_CASE("a row keeps the hottest of each outlet and of each group of places", "[study][faults]")
{
    study::FaultRow row;
    for (const study::PlaceHeat& heat :
         {hot(1, 44), cold(1, 30), hot(1, 43), hot(2, 40), fired(60), fired(58), join(45), cold(1, 33)}) {
        study::keepHottest(row, heat);
    }
    REQUIRE(row.outlets.size() == 3);  // F1 hot, F1 cold, F2 hot
    CHECK(row.outlets[0].hottest_C == 44);
    CHECK(row.outlets[1].hottest_C == 33);
    CHECK(row.outlets[2].hottest_C == 40);
    CHECK(row.hottest.heaterOutlet_C == 60);
    CHECK(row.hottest.outlets_C == 44);
    CHECK(row.hottest.coldOutlets_C == 33);
    CHECK_FALSE(row.hottest.heaterInlet_C.has_value());
}

TEST_CASE("a case that burns shows a fault worse than one that is only warmer", "[study][faults]")
{
    // 2 K above the outlets' limit of 49 and 5 K above the sound coach: 7. A heater 6 K hotter: 6, however hot it is.
    const Outcome sound = outcome({hot(1, 46), cold(1, 20), fired(70)});
    CHECK_THAT(study::caseWeight_K(outcome({hot(1, 51), fired(70)}), sound, 49), WithinAbs(7, 1e-9));
    CHECK_THAT(study::caseWeight_K(outcome({hot(1, 46), fired(76)}), sound, 49), WithinAbs(6, 1e-9));
    CHECK_THAT(study::caseWeight_K(outcome({hot(1, 45), fired(69)}), sound, 49), WithinAbs(-1, 1e-9));
    CHECK_THAT(study::caseWeight_K(outcome({cold(1, 24), fired(70)}), sound, 49), WithinAbs(4, 1e-9));
    // Join, sensor and the heater's inlet are no places people meet.
    CHECK(study::caseWeight_K(outcome({join(90), {HeatPlace::HeaterInlet, 4, 90, 0}}), sound, 49) < -1000);
}

TEST_CASE("harm is to whoever meets water above the limit of that water", "[study][faults]")
{
    // Hot side above the outlets' 49: whoever opens it.
    const auto burned = worded({outcome({hot(1, 50), hot(2, 45)})}, {outcome({hot(1, 45), hot(2, 45)})});
    CHECK(burned.harm == Harm::User);
    CHECK(burned.harmedAt == 1);
    CHECK_FALSE(burned.harmsSoundToo);
    CHECK(burned.who.text == "Whoever opens {0}: {1}.");
    CHECK(burned.who.arguments == std::vector<Argument>{std::string("F1"), kelvin(50)});
    // At the limit nobody; the cold drinking tap has the lower limit of 40.
    CHECK(worded({outcome({hot(1, 49)})}, {outcome({hot(1, 45)})}).harm == Harm::Nobody);
    CHECK(worded({outcome({cold(1, 40)})}, {outcome({cold(1, 20)})}).harm == Harm::Nobody);
    const auto drunk = worded({outcome({cold(1, 40.5)})}, {outcome({cold(1, 20)})});
    CHECK(drunk.harm == Harm::Drinking);
    CHECK(drunk.who.text.find("drinks") != std::string::npos);
    CHECK(drunk.who.arguments[1] == kelvin(40.5));
    // Nobody drinks from a shower; above 49 it burns on cold too, at any tap.
    CHECK(worded({outcome({cold(3, 45)})}, {outcome({cold(3, 20)})}).harm == Harm::Nobody);
    const auto skin = worded({outcome({cold(3, 50)})}, {outcome({cold(3, 20)})});
    CHECK(skin.harm == Harm::User);
    CHECK(skin.who.text == "Whoever opens {0} on cold: {1}.");
    CHECK(worded({outcome({cold(1, 50)})}, {outcome({cold(1, 20)})}).harm == Harm::User);
    // Of several the one most above its own limit: 6 K over 40 beats 3 K over 49, in either order.
    const auto most = worded({outcome({hot(2, 52), cold(1, 46)})}, {outcome({hot(2, 45), cold(1, 20)})});
    CHECK(most.harmedAt == 1);
    CHECK(most.harm == Harm::Drinking);
    const auto turned = worded({outcome({cold(1, 46), hot(2, 57)})}, {outcome({cold(1, 20), hot(2, 45)})});
    CHECK(turned.harmedAt == 2);
    CHECK(turned.harm == Harm::User);
    // The sound coach reaches the limit there too: at 49 it does not, above it does, in whatever case.
    CHECK_FALSE(worded({outcome({hot(1, 52)})}, {outcome({hot(1, 49)})}).harmsSoundToo);
    CHECK(worded({outcome({hot(1, 52)}), outcome({hot(1, 45)})}, {outcome({hot(1, 40)}), outcome({hot(1, 51)})})
              .harmsSoundToo);
}

TEST_CASE("a row's change is the most an outlet or the heater gets hotter", "[study][faults]")
{
    const auto change = [](std::vector<study::PlaceHeat> faulty, std::vector<study::PlaceHeat> sound) {
        return worded({outcome(std::move(faulty))}, {outcome(std::move(sound))}).change_K.value_or(-99);
    };
    CHECK_THAT(change({hot(1, 47), hot(2, 44), fired(62)}, {hot(1, 45), hot(2, 40), fired(60)}), WithinAbs(4, 1e-9));
    CHECK_THAT(change({hot(1, 47), fired(65)}, {hot(1, 45), fired(60)}), WithinAbs(5, 1e-9));
    CHECK_THAT(change({hot(1, 40), fired(55)}, {hot(1, 45), fired(60)}), WithinAbs(-5, 1e-9));
    CHECK_THAT(change({hot(1, 47)}, {hot(1, 45)}), WithinAbs(2, 1e-9));
    CHECK_THAT(change({fired(61)}, {fired(60)}), WithinAbs(1, 1e-9));
    CHECK_FALSE(worded({outcome({join(40)})}, {outcome({join(30)})}).change_K.has_value());
    // Against the hottest of the sound coach's cases.
    const auto two = worded({outcome({fired(61)}), outcome({fired(50)})}, {outcome({fired(40)}), outcome({fired(58)})});
    CHECK_THAT(two.change_K.value_or(-99), WithinAbs(3, 1e-9));
}

TEST_CASE("what shows first of a fault is what it is told by, most serious first", "[study][faults]")
{
    const auto with = [](bool Outcome::* what, Outcome one = outcome({hot(1, 45), fired(60), join(44)})) {
        one.*what = true;
        return one;
    };
    const Outcome plain = outcome({hot(1, 45), fired(60), join(44)});
    const auto told = [&](const Outcome& faulty, const Outcome& sound, FaultEffect effect = FaultEffect::SensorOffset) {
        return worded({plain, faulty}, {plain, sound}, effect).consequence.text;
    };
    CHECK(told(with(&Outcome::endedByHand), plain) == "A run does not end by itself.");
    CHECK(told(with(&Outcome::lockout), plain) == "The heater locks out.");
    CHECK(told(with(&Outcome::heaterLimit), plain).starts_with("The heater stops at its own limit"));
    // One that the sound coach does as well is no news; the more serious one is told.
    CHECK(told(with(&Outcome::lockout), with(&Outcome::lockout)) == "Little changes in these cases.");
    CHECK(told(with(&Outcome::lockout, with(&Outcome::endedByHand)), plain) == "A run does not end by itself.");
    CHECK(told(with(&Outcome::heaterLimit, with(&Outcome::lockout)), plain) == "The heater locks out.");

    // More than 3 K at a tap is noticed; by the outlet that rose most, with both temperatures.
    const auto warmer =
        worded({outcome({hot(1, 46), hot(2, 48.5), cold(1, 21)})}, {outcome({hot(1, 45), hot(2, 45), cold(1, 20)})});
    CHECK(warmer.consequence.text == "Water at {0} comes at up to {1}, {2} in the sound coach.");
    CHECK(warmer.consequence.arguments == std::vector<Argument>{std::string("F2"), kelvin(48.5), kelvin(45)});
    CHECK(warmer.shows.text == "Water hotter than usual; feel with care.");
    const auto coldTap = worded({outcome({cold(2, 30), hot(1, 45)})}, {outcome({cold(2, 20), hot(1, 45)})});
    CHECK(coldTap.consequence.text.starts_with("Cold water at {0}"));
    CHECK(coldTap.shows.text == "A cold tap that runs warm.");
    // Between 0.5 and 3 K it is small; to 0.5 K it is nothing (what the coarser cases leave open).
    const auto small = worded({outcome({hot(1, 47.5)})}, {outcome({hot(1, 45)})});
    CHECK(small.consequence.text == "Up to {0} hotter at {1}.");
    CHECK(small.consequence.arguments
          == std::vector<Argument>{Measure{2.5, Quantity::TemperatureDifference}, std::string("F1")});
    CHECK(worded({outcome({hot(1, 48)})}, {outcome({hot(1, 45)})}).consequence.text == "Up to {0} hotter at {1}.");
    CHECK(worded({outcome({hot(1, 45.5)})}, {outcome({hot(1, 45)})}).consequence.text
          == "Little changes in these cases.");

    // What no longer happens.
    Outcome still = plain;
    still.ran = false;
    CHECK(told(still, plain) == "No run starts.");
    CHECK(told(still, still) == "Little changes in these cases.");
    Outcome unlit = plain;
    unlit.lit = false;
    CHECK(told(unlit, plain) == "The heater does not light where it should.");
    CHECK(told(plain, unlit) == "Little changes in these cases.");
    still.lit = false;
    CHECK(told(still, plain) == "No run starts.");

    // A loop whose end gets more than 3 K less; below 35 °C it feels cool.
    const auto cooler = [&](double faulty_C, double sound_C) {
        return worded({outcome({join(faulty_C)})}, {outcome({join(sound_C)})});
    };
    CHECK(cooler(40, 44).consequence.arguments == std::vector<Argument>{kelvin(40), kelvin(44)});
    CHECK(cooler(40, 44).shows.text == "The tap is less warm than usual after a run.");
    CHECK(cooler(35, 44).shows.text == "The tap is less warm than usual after a run.");
    CHECK(cooler(34.9, 44).shows.text == "The tap is still cool after a run.");
    CHECK(cooler(41, 44).consequence.text == "Little changes in these cases.");
    CHECK(cooler(48, 44).consequence.text == "Little changes in these cases.");
    // The best of all cases counts, on both sides.
    const auto either = worded({outcome({join(20)}), outcome({join(43)})}, {outcome({join(44)}), outcome({join(20)})});
    CHECK(either.consequence.text == "Little changes in these cases.");

    // Power that goes is told as that where nothing else shows.
    for (const FaultEffect effect : {FaultEffect::PowerCut, FaultEffect::LowVoltage}) {
        CHECK(told(plain, plain, effect) == "A run ends early or does not start.");
        CHECK(told(with(&Outcome::lockout), plain, effect) == "The heater locks out.");
    }
    CHECK(told(plain, plain, FaultEffect::DriveShare) == "Little changes in these cases.");
}

TEST_CASE("a failed stop or limit that makes water hotter shows as longer runs, unless it shows worse",
          "[study][faults]")
{
    const Outcome sound = outcome({hot(1, 45)}), warmer = outcome({hot(1, 47)});
    const auto shows = [&](Outcome faulty, FaultEffect effect) {
        return worded({std::move(faulty)}, {sound}, effect).shows.text;
    };
    CHECK(shows(warmer, FaultEffect::StopFails) == "Longer runs than usual.");
    CHECK(shows(warmer, FaultEffect::LimitFails) == "Longer runs than usual.");
    CHECK(shows(warmer, FaultEffect::ButtonStuck) == "Little: only a check at the tap with a thermometer.");
    CHECK(shows(sound, FaultEffect::StopFails) == "Nothing: it waits for another fault. Test it at every service.");
    Outcome byHand = warmer, locked = warmer;
    byHand.endedByHand = true;
    locked.lockout = true;
    CHECK(shows(byHand, FaultEffect::StopFails) == "Pumps that keep humming after the usual time.");
    CHECK(shows(locked, FaultEffect::LimitFails).starts_with("The heater's fault light"));
}

TEST_CASE("what ends a run with the fault is told from the case that shows it worst", "[study][faults]")
{
    const auto stops = [](Outcome one) {
        Outcome other = outcome({});
        other.lastEnd = "stop_time";
        return worded({other, one}, {other, other}, FaultEffect::SensorOffset, 1).stops.text;
    };
    for (const auto& [end, words] : {std::pair{"stop_volume", "The volume stop."},
                                     {"stop_time", "The time stop."},
                                     {"stop_temperature", "The temperature stop."},
                                     {"stop_high_limit", "The independent high limit."},
                                     {"stop_inlet_lockout", "The inlet lockout."},
                                     {"stop_longest_run", "The longest run."},
                                     {"stop_no_flow", "The stop without flow."},
                                     {"stop_power_lost", "The loss of power."}}) {
        Outcome one = outcome({});
        one.lastEnd = end;
        CHECK(stops(one) == words);
        one.lockout = true;  // the loop's own stop came first
        CHECK(stops(one) == words);
        one.limitOpen = true;
        CHECK(stops(one) == "The independent high limit.");
        one.endedByHand = true;
        CHECK(stops(one) == "Nothing: the run was stopped at the button after ten minutes.");
    }
    Outcome endless = outcome({});
    endless.lastEnd.clear();
    CHECK(stops(endless) == "No run was under way.");
    endless.runsAtEnd = true;
    CHECK(stops(endless) == "Nothing in this case.");
    endless.heaterLimit = true;
    CHECK(stops(endless) == "The heater's own limits, not the loop's control.");
    endless.heaterLimit = false;
    endless.lockout = true;
    CHECK(stops(endless) == "The heater's own limits, not the loop's control.");
    // No case runs at all.
    Outcome none = outcome({}, false);
    none.lastEnd = "stop_time";
    CHECK(worded({none}, {outcome({})}).stops.text == "No run was under way.");
}

TEST_CASE("a row that shares a like fault's run is told with its own part, a pair with both", "[study][faults]")
{
    const document::Drawing drawing = places();
    study::FaultRow told;
    told.part = 7;
    told.fault = "dead";
    told.worst.name = "Cold press";
    document::Action fault;
    fault.kind = document::ActionKind::StartFault;
    fault.part = 7;
    fault.fault = "dead";
    document::Action press;
    press.part = 6;
    told.worst.actions = {fault, press};
    told.harm = Harm::User;
    study::FaultRow own;
    own.part = 8;
    own.fault = "air_locked";
    const study::FaultRow single = study::toldOf(drawing, told, own);
    CHECK(single.run);
    CHECK(single.part == 8);
    CHECK(single.fault == "air_locked");
    CHECK(single.harm == Harm::User);
    CHECK(single.worst.name == "P2 air_locked: Cold press");
    CHECK(single.worst.actions[0].part == 8);
    CHECK(single.worst.actions[0].fault == "air_locked");
    CHECK(single.worst.actions[1] == press);

    fault.part = 6;
    fault.fault = "stop_fails";
    document::Action second = fault;
    second.part = 7;
    second.fault = "dead";
    told.worst.actions = {fault, second, press};
    own.part = 6;
    own.fault = "stop_fails";
    own.withPart = 7;
    own.withFault = "dead";
    const study::FaultRow pair = study::toldOf(drawing, told, own);
    CHECK(pair.withPart == 7);
    CHECK(pair.withFault == "dead");
    CHECK(pair.worst.name == "C1 stop_fails, P1 dead: Cold press");
    CHECK(pair.worst.actions[0].part == 6);
    CHECK(pair.worst.actions[0].fault == "stop_fails");
    CHECK(pair.worst.actions[1].part == 7);
    CHECK(pair.worst.actions[1].fault == "dead");
    CHECK(study::caseTitle(drawing, pair) == "C1 main stop never trips, P1 does not turn: Cold press");
    study::FaultRow renamed = pair;
    renamed.worst.name = "By another name";
    CHECK(study::caseTitle(drawing, renamed) == "By another name");
    // A title is cut at what explains it: "relay welded: runs on".
    renamed = single;
    renamed.fault = "always_on";
    renamed.worst.name = "P2 always_on: Cold press";
    CHECK(study::caseTitle(drawing, renamed) == "P2 relay welded: Cold press");
    renamed.fault = "not_known";
    renamed.worst.name = "P2 not_known: Cold press";
    CHECK(study::caseTitle(drawing, renamed) == "P2 not_known: Cold press");
}
