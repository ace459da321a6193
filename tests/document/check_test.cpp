// SPDX-License-Identifier: GPL-3.0-or-later
// The bounds of a whole document, each at its last good value and its first bad one. The bounds are those of the
// published format (resources/schema/tapward-1.schema.json) and of document/file.h and check.h.
#include "document/check.h"

#include <cmath>
#include <functional>
#include <limits>

#include "document/file.h"
#include "support/catch.h"

using namespace tapward;
using namespace tapward::document;

namespace {

/// Faucet F1 (1), circulator P1 (2), controller C1 (3), hand valve V1 (4), pipe L1 (5) from P1 to F1's cold port.
Drawing checkedCoach()
{
    Drawing drawing;
    PartId id = 0;
    for (const auto& [kind, tag] : {std::pair{"faucet", "F1"},
                                    {"circulator", "P1"},
                                    {"controller", "C1"},
                                    {"hand_valve", "V1"},
                                    {"pipe_run", "L1"}}) {
        Part part;
        part.id = ++id;
        part.kind = kind;
        part.tag = tag;
        drawing.parts.push_back(part);
    }
    drawing.parts[4].ends = {PipeEnd{2, "outlet", {}}, PipeEnd{1, "cold", {}}};
    drawing.nextId = 6;
    return drawing;
}

std::string at(const std::optional<Problem>& flaw) { return flaw ? flaw->where : "good"; }

/// Where a part is flawed after `change`.
std::string part(PartId id, const std::function<void(Part&)>& change)
{
    Drawing drawing = checkedCoach();
    change(*drawing.find(id));
    return at(partFlaw(drawing, *drawing.find(id)));
}

Case oneCase()
{
    Case one;
    one.name = "One";
    return one;
}

std::string withCase(const std::function<void(Case&)>& change)
{
    Case one = oneCase();
    change(one);
    return at(casesFlaw(checkedCoach(), {one}));
}

std::string action(ActionKind kind, PartId about, double value = 1, double second = -1, const char* fault = "",
                   double at_s = 1)
{
    return withCase([&](Case& one) { one.actions = {{at_s, kind, about, value, second, fault, {}}}; });
}

constexpr double kLittle = 1e-6;

}  // namespace

TEST_CASE("a part's number, tag, turn, place and height are bounded at their ends", "[document][check]")
{
    CHECK(part(1, [](Part&) {}) == "good");
    CHECK(at(partFlaw({}, checkedCoach().parts[0])) == "good");
    Part far = checkedCoach().parts[0];
    far.id = kMostId;
    CHECK(at(partFlaw({}, far)) == "good");
    far.id = kMostId + 1;
    CHECK(at(partFlaw({}, far)) == "/id");
    far.id = 0;
    CHECK(at(partFlaw({}, far)) == "/id");
    CHECK(kMostId == 1'000'000'000);
    CHECK(part(1, [](Part& one) { one.kind = "warp_core"; }) == "/kind");
    CHECK(part(1, [](Part& one) { one.tag = std::string(32, 'x'); }) == "good");
    CHECK(part(1, [](Part& one) { one.tag = std::string(33, 'x'); }) == "/tag");
    CHECK(part(1, [](Part& one) { one.tag = ""; }) == "/tag");
    CHECK(part(1, [](Part& one) { one.tag = "a\x1f"; }) == "/tag");
    CHECK(part(1, [](Part& one) { one.tag = "a b"; }) == "good");
    CHECK(part(1, [](Part& one) { one.tag = "\xc3\x28"; }) == "/tag");
    for (const int turn : {0, 3}) {
        CHECK(part(1, [&](Part& one) { one.turn = turn; }) == "good");
    }
    for (const int turn : {-1, 4}) {
        CHECK(part(1, [&](Part& one) { one.turn = turn; }) == "/turn");
    }
    constexpr double kNan = std::numeric_limits<double>::quiet_NaN();
    CHECK(kMostModules == 100'000);
    for (const double edge : {-kMostModules, kMostModules}) {
        const double over = edge * (1 + kLittle);
        CHECK(part(1, [&](Part& one) { one.at = {edge, edge}; }) == "good");
        CHECK(part(1, [&](Part& one) { one.at = {over, 0}; }) == "/at");
        CHECK(part(1, [&](Part& one) { one.at = {0, over}; }) == "/at");
        CHECK(part(1, [&](Part& one) { one.label = Point{0, over}; }) == "/label");
        CHECK(part(1, [&](Part& one) { one.label = Point{0, edge}; }) == "good");
    }
    CHECK(part(1, [&](Part& one) { one.at = {kNan, 0}; }) == "/at");
    CHECK(part(1, [&](Part& one) { one.at = {0, kNan}; }) == "/at");
    for (const double edge : {-100.0, 100.0}) {
        CHECK(part(1, [&](Part& one) { one.height_m = edge; }) == "good");
        CHECK(part(1, [&](Part& one) { one.height_m = edge * (1 + kLittle); }) == "/height_m");
    }
    CHECK(part(1, [&](Part& one) { one.height_m = kNan; }) == "/height_m");
    // What only pipes have.
    CHECK(part(1, [](Part& one) { one.bends = {{0, 0}}; }) == "/ends");
    CHECK(part(1, [](Part& one) { one.ends[0].part = 2; }) == "/ends");
    const auto mark = [](const char* variant, const char* role, double share) {
        return part(1, [&](Part& one) {
            one.mark = Mark{};
            one.mark->variant = variant;
            one.mark->role = role;
            one.mark->coldShare = share;
        });
    };
    CHECK(mark("a", "b", 0) == "good");
    CHECK(mark("a", "b", 1) == "good");
    CHECK(mark("", "b", 1) == "/assembly/variant");
    CHECK(mark("a", "", 1) == "/assembly/role");
    CHECK(mark("a", "b", 1 + kLittle) == "/assembly/cold_share");
    CHECK(mark("a", "b", -kLittle) == "/assembly/cold_share");
}

TEST_CASE("a pipe ends on ports that are there, two different ones, with bends on the canvas", "[document][check]")
{
    const auto ends = [](PipeEnd first, PipeEnd second) {
        return part(5, [&](Part& pipe) { pipe.ends = {std::move(first), std::move(second)}; });
    };
    const PipeEnd loose{kNoPart, {}, {1, 1}}, off{kNoPart, {}, {2 * kMostModules, 0}};
    CHECK(ends(loose, loose) == "good");
    CHECK(ends(off, loose) == "/ends/0/at");
    CHECK(ends(loose, off) == "/ends/1/at");
    CHECK(ends({9, "cold", {}}, loose) == "/ends/0/part");
    CHECK(ends({5, "inlet", {}}, loose) == "/ends/0/part");  // a pipe on a pipe
    CHECK(ends(loose, {1, "drain", {}}) == "/ends/1/port");
    CHECK(ends({1, "cold", {}}, {1, "cold", {}}) == "/ends/1");
    CHECK(ends({1, "cold", {}}, {1, "hot", {}}) == "good");     // two ports of one part
    CHECK(ends({2, "inlet", {}}, {4, "inlet", {}}) == "good");  // ports of the same name
    CHECK(part(5, [](Part& pipe) { pipe.bends.assign(200, {1, 1}); }) == "good");
    CHECK(part(5, [](Part& pipe) { pipe.bends.assign(201, {1, 1}); }) == "/bends");
    CHECK(part(5, [](Part& pipe) { pipe.bends = {{0, 0}, {2 * kMostModules, 0}}; }) == "/bends/1");
}

TEST_CASE("an action is about a part that can do it, within its bounds", "[document][check]")
{
    using enum ActionKind;
    CHECK(action(OpenOutlet, 1) == "good");
    CHECK(action(OpenOutlet, 1, 0) == "good");
    CHECK(action(OpenOutlet, 1, 1 + kLittle) == "/0/actions/0/opening");
    CHECK(action(OpenOutlet, 1, -kLittle) == "/0/actions/0/opening");
    CHECK(action(OpenOutlet, 1, 1, 1) == "good");
    CHECK(action(OpenOutlet, 1, 1, 1 + kLittle) == "/0/actions/0/hot_share");
    CHECK(action(OpenOutlet, 1, 1, std::numeric_limits<double>::infinity()) == "/0/actions/0/hot_share");
    CHECK(action(OpenOutlet, 1, 1, -5) == "good");  // negative: the outlet's own
    CHECK(action(OpenOutlet, 2) == "/0/actions/0/part");
    CHECK(action(OpenOutlet, kNoPart) == "/0/actions/0/part");
    CHECK(action(CloseOutlet, 1) == "good");
    CHECK(action(CloseOutlet, 2) == "/0/actions/0/part");
    CHECK(action(CloseOutlet, kNoPart) == "/0/actions/0/part");
    CHECK(action(PressButton, kNoPart) == "good");
    CHECK(action(PressButton, 3) == "good");
    CHECK(action(PressButton, 1) == "/0/actions/0/part");
    CHECK(action(PressButton, 9) == "/0/actions/0/part");
    CHECK(action(SetValve, 4, 0) == "good");
    CHECK(action(SetValve, 4, 1) == "good");
    CHECK(action(SetValve, 4, -kLittle) == "/0/actions/0/opening");
    CHECK(action(SetValve, 4, 1 + kLittle) == "/0/actions/0/opening");
    CHECK(action(SetValve, 1) == "/0/actions/0/part");
    CHECK(action(UseCity, kNoPart) == "good");
    CHECK(action(SetVoltage, kNoPart, 0) == "good");
    CHECK(action(SetVoltage, kNoPart, 60) == "good");
    CHECK(action(SetVoltage, kNoPart, 60 + kLittle) == "/0/actions/0/voltage_V");
    CHECK(action(SetVoltage, kNoPart, -kLittle) == "/0/actions/0/voltage_V");
    const std::string fault(kindOf(checkedCoach().parts[1]).faults.at(0).id);
    CHECK(action(StartFault, 2, 1, -1, fault.c_str()) == "good");
    CHECK(action(EndFault, 2, 1, -1, fault.c_str()) == "good");
    CHECK(action(EndFault, 2, 1, -1, "explodes") == "/0/actions/0/fault");
    CHECK(action(StartFault, kNoPart, 1, -1, fault.c_str()) == "/0/actions/0/part");
    CHECK(action(UseCity, kNoPart, 1, -1, "", 0) == "good");
    CHECK(action(UseCity, kNoPart, 1, -1, "", 7200) == "good");
    CHECK(action(UseCity, kNoPart, 1, -1, "", 7200 + kLittle) == "/0/actions/0/at_s");
    CHECK(action(UseCity, kNoPart, 1, -1, "", -kLittle) == "/0/actions/0/at_s");
}

TEST_CASE("each figure of a case is bounded at its ends", "[document][check]")
{
    struct Bound {
        const char* where;
        double least, most;
        std::function<void(Case&, double)> set;
    };
    for (const Bound& bound :
         {Bound{"/0/duration_s", 1, 7200, [](Case& one, double value) { one.duration_s = value; }},
          Bound{"/0/start_C", 0.5, 95, [](Case& one, double value) { one.start_C = value; }},
          Bound{"/0/ambient_C", -50, 80, [](Case& one, double value) { one.ambient_C = value; }},
          Bound{"/0/supply_C", 0.5, 60, [](Case& one, double value) { one.supply_C = value; }},
          Bound{"/0/stored_heater_C", 0.5, 95, [](Case& one, double value) { one.storedHeater_C = value; }},
          Bound{"/0/target_C", 0.5, 95, [](Case& one, double value) { one.target_C = value; }}}) {
        CAPTURE(bound.where);
        const auto with = [&](double value) { return withCase([&](Case& one) { bound.set(one, value); }); };
        CHECK(with(bound.least) == "good");
        CHECK(with(bound.most) == "good");
        CHECK(with(bound.least - kLittle) == bound.where);
        CHECK(with(bound.most + kLittle) == bound.where);
    }
    CHECK(withCase([](Case& one) { one.name = ""; }) == "/0/name");
    CHECK(withCase([](Case& one) { one.name = std::string(200, 'x'); }) == "good");
    CHECK(withCase([](Case& one) { one.name = std::string(201, 'x'); }) == "/0/name");
    CHECK(withCase([](Case& one) { one.view = View::Both; }) == "/0/view");
    CHECK(withCase([](Case& one) { one.view = View::Before; }) == "good");
    CHECK(withCase([](Case& one) { one.targetPart = 1; }) == "good");
    CHECK(withCase([](Case& one) { one.targetPart = 9; }) == "/0/target_part");
    CHECK(withCase([](Case& one) { one.actions.assign(2000, Action{}); }) == "good");
    CHECK(withCase([](Case& one) { one.actions.assign(2001, Action{}); }) == "/0/actions");
    CHECK(withCase([](Case& one) {
              one.actions.assign(3, Action{});
              one.actions[2].at_s = -1;
          })
          == "/0/actions/2/at_s");

    std::vector<Case> many(200, oneCase());
    for (std::size_t i = 0; i < many.size(); ++i) {
        many[i].name = std::to_string(i);
    }
    CHECK(at(casesFlaw(checkedCoach(), many)) == "good");
    many[7].name = "3";
    CHECK(at(casesFlaw(checkedCoach(), many)) == "/7/name");
    many[7].name = "7";
    many.push_back(oneCase());
    CHECK(casesFlaw(checkedCoach(), many));
}

TEST_CASE("job and dismissed findings are bounded at their ends", "[document][check]")
{
    const auto job = [](const std::function<void(Job&)>& change) {
        Job one;
        change(one);
        return at(jobFlaw(one));
    };
    const std::pair<const char*, std::string Job::*> texts[] = {
        {"/title", &Job::title}, {"/customer", &Job::customer},
        {"/coach", &Job::coach}, {"/technician", &Job::technician},
        {"/date", &Job::date},   {"/revision", &Job::revision},
        {"/notes", &Job::notes}};
    for (const auto& [where, member] : texts) {
        CHECK(job([&, text = member](Job& one) { one.*text = std::string(8192, 'x'); }) == "good");
        CHECK(job([&, text = member](Job& one) { one.*text = std::string(8193, 'x'); }) == where);
        CHECK(job([&, text = member](Job& one) { one.*text = "\xff"; }) == where);
    }
    CHECK(job([](Job& one) { one.currency = std::string(16, 'x'); }) == "good");
    CHECK(job([](Job& one) { one.currency = std::string(17, 'x'); }) == "/currency");
    CHECK(job([](Job& one) { one.hours = 10'000; }) == "good");
    CHECK(job([](Job& one) { one.hours = 10'000.1; }) == "/hours");
    CHECK(job([](Job& one) { one.hours = -kLittle; }) == "/hours");
    CHECK(job([](Job& one) { one.hourlyRate = 1e6; }) == "good");
    CHECK(job([](Job& one) { one.hourlyRate = 1e6 + 1; }) == "/hourly_rate");
    CHECK(job([](Job& one) { one.hourlyRate = -kLittle; }) == "/hourly_rate");
    CHECK(job([](Job& one) { one.altitude_m = -500; }) == "good");
    CHECK(job([](Job& one) { one.altitude_m = 6000; }) == "good");
    CHECK(job([](Job& one) { one.altitude_m = -500.1; }) == "/altitude_m");
    CHECK(job([](Job& one) { one.altitude_m = 6000.1; }) == "/altitude_m");

    const auto dismissed = [](const std::function<void(Dismissal&)>& change) {
        Dismissal one;
        one.rule = "a_rule";
        change(one);
        return at(dismissalsFlaw(checkedCoach(), {Dismissal{"first", 1, "seen", {}}, one}));
    };
    CHECK(dismissed([](Dismissal&) {}) == "good");
    CHECK(dismissed([](Dismissal& one) { one.rule = ""; }) == "/1/rule");
    CHECK(dismissed([](Dismissal& one) { one.rule = std::string(201, 'x'); }) == "/1/rule");
    CHECK(dismissed([](Dismissal& one) { one.reason = std::string(8192, 'x'); }) == "good");
    CHECK(dismissed([](Dismissal& one) { one.reason = std::string(8193, 'x'); }) == "/1/reason");
    CHECK(dismissed([](Dismissal& one) { one.part = 5; }) == "good");
    CHECK(dismissed([](Dismissal& one) { one.part = 9; }) == "/1/part");
    CHECK_FALSE(dismissalsFlaw(checkedCoach(), std::vector<Dismissal>(4000, {"a_rule", 1, "seen", {}})));
    CHECK(dismissalsFlaw(checkedCoach(), std::vector<Dismissal>(4001, {"a_rule", 1, "seen", {}})));
}

TEST_CASE("a reference names a part of the kind the field asks for", "[document][check]")
{
    const Drawing drawing = checkedCoach();
    const auto flaw = [&](const parts::Value& value) {
        return fieldFlaw(drawing, kindOf(drawing.parts[1]), "controller", value).has_value();
    };
    CHECK_FALSE(flaw(std::string("3")));
    CHECK_FALSE(flaw(std::string()));
    CHECK(flaw(std::string("1")));   // a faucet
    CHECK(flaw(std::string("9")));   // nobody
    CHECK(flaw(std::string("3x")));  // half a number
    CHECK(flaw(std::string("x3")));
    CHECK(fieldFlaw(drawing, kindOf(drawing.parts[1]), "no_such_field", 1.0));
    const auto named = [&](std::string name) {
        return fieldFlaw(drawing, kindOf(drawing.parts[0]), "name", std::move(name)).has_value();
    };
    CHECK_FALSE(named(std::string(8192, 'x')));
    CHECK(named(std::string(8193, 'x')));
    CHECK(named("\xff"));
    Drawing held = checkedCoach();
    held.find(2)->entries["current_A"] = {-1.0, parts::Basis::Measured};
    CHECK(at(partFlaw(held, *held.find(2))) == "/fields/current_A");
}

TEST_CASE("UTF-8 is what RFC 3629 says it is", "[document][check]")
{
    // RFC 3629, section 4: the well-formed sequences at the ends of each row, and their neighbours outside.
    for (const char* good :
         {"", "a", "\x7f", "\xc2\x80", "\xdf\xbf", "\xe0\xa0\x80", "\xe1\x80\x80", "\xec\xbf\xbf", "\xed\x80\x80",
          "\xed\x9f\xbf", "\xee\x80\x80", "\xef\xbf\xbf", "\xf0\x90\x80\x80", "\xf1\x80\x80\x80", "\xf3\xbf\xbf\xbf",
          "\xf4\x80\x80\x80", "\xf4\x8f\xbf\xbf", "a\xc3\xa9z"}) {
        CAPTURE(good);
        CHECK(isUtf8(good));
    }
    for (const char* bad : {"\x80",
                            "\xbf",
                            "\xc0\x80",
                            "\xc1\xbf",
                            "\xc2",
                            "\xc2\x7f",
                            "\xc2\xc0",
                            "\xe0\x9f\xbf",
                            "\xe0\xa0",
                            "\xe0\xa0\x7f",
                            "\xe1\x7f\x80",
                            "\xe1\x80\xc0",
                            "\xed\xa0\x80",
                            "\xef\xc0\x80",
                            "\xf0\x8f\xbf\xbf",
                            "\xf0\x90\x80",
                            "\xf1\x80\x80\xc0",
                            "\xf4\x90\x80\x80",
                            "\xf5\x80\x80\x80",
                            "\xff",
                            "a\xe2\x82",
                            "\xc3\xa9\xa9"}) {
        CAPTURE(bad);
        CHECK_FALSE(isUtf8(bad));
    }
}
