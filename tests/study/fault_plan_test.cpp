// SPDX-License-Identifier: GPL-3.0-or-later
#include "study/fault_plan.h"

#include <algorithm>
#include <set>

#include "study/trade_coach.h"
#include "support/catch.h"

using namespace tapward;
using document::ActionKind;
using document::PartId;
using parts::FaultEffect;
using study::FaultPlan;
using test::set;
using test::tradeCoach;

namespace {

study::Trials trialsOf(const document::Drawing& drawing)
{
    auto trials = study::Trials::make(drawing);
    REQUIRE(trials.has_value());
    return std::move(*trials);
}

document::Action act(double at_s, ActionKind kind, PartId part = document::kNoPart)
{
    document::Action action;
    action.at_s = at_s;
    action.kind = kind;
    action.part = part;
    return action;
}

const study::OneFault& fault(const std::vector<study::OneFault>& all, PartId part, std::string_view id)
{
    const auto at = std::find_if(all.begin(), all.end(),
                                 [&](const study::OneFault& one) { return one.part == part && one.fault->id == id; });
    REQUIRE(at != all.end());
    return *at;
}

std::size_t rowOf(const FaultPlan& plan, PartId part, std::string_view id)
{
    for (std::size_t r = 0; r < plan.rows.size(); ++r) {
        if (plan.rows[r].first.part == part && plan.rows[r].first.fault->id == id && !plan.rows[r].second) {
            return r;
        }
    }
    FAIL("no such row");
    return 0;
}

const study::FaultJob& jobOf(const FaultPlan& plan, PartId part, std::string_view id)
{
    const std::size_t job = plan.jobOf[rowOf(plan, part, id)];
    REQUIRE(job != FaultPlan::kNotRun);
    return plan.jobs[job];
}

}  // namespace

TEST_CASE("faults go through the drawing's own draws, two kinds of presses and each outlet in turn", "[study][faults]")
{
    document::Drawing drawing = tradeCoach();
    const PartId tap = drawing.findTag("F1")->id;
    document::Case draw = drawing.cases[0];
    draw.name = "Draw";
    draw.start_C = 11;
    draw.actions = {act(4, ActionKind::OpenOutlet, tap)};
    document::Case before = draw, broken = draw;
    before.name = "Today";
    before.view = document::View::Before;
    broken.name = "Broken";
    broken.actions.push_back(act(1, ActionKind::StartFault, drawing.findTag("P1")->id));
    drawing.cases = {before, broken, draw};
    drawing.cases[2].targetPart = tap;
    const study::Trials trials = trialsOf(drawing);
    const auto cases = study::standardCases(trials);
    // Not what is before the job, nor what starts a fault itself.
    REQUIRE(cases.size() == 5);
    CHECK(cases[0].trial.script == drawing.cases[2]);
    CHECK(cases[0].own);
    CHECK_FALSE(cases[0].pressesOnly);
    for (std::size_t c = 1; c < 5; ++c) {
        CHECK_FALSE(cases[c].own);
        CHECK(cases[c].trial.script.start_C == 11);  // the day of the first case that counts
        CHECK(cases[c].trial.script.targetPart == document::kNoPart);
        CHECK(cases[c].trial.script.view == document::View::After);
    }
    for (const std::size_t c : {1u, 2u}) {
        CHECK(cases[c].pressesOnly);
        CHECK(cases[c].trial.script.actions.empty());
        REQUIRE(cases[c].trial.plan.has_value());
        CHECK(cases[c].trial.plan->pressed == drawing.findTag("PB1")->id);
        CHECK(cases[c].trial.plan->gaps_s.front() < 10);
    }
    CHECK(cases[1].trial.plan->gaps_s.size() == 1);
    CHECK(cases[2].trial.plan->gaps_s.size() == 3);
    CHECK(cases[2].trial.plan->gaps_s[1] == cases[2].trial.plan->gaps_s[2]);
    // Three runs of ten minutes, stopped by hand, fit in.
    CHECK(cases[2].trial.script.duration_s > 3 * 600);
    for (const std::size_t c : {3u, 4u}) {
        CHECK_FALSE(cases[c].pressesOnly);
        const auto& actions = cases[c].trial.script.actions;
        REQUIRE(actions.size() == 2);  // one tap: opened and shut
        CHECK(actions[0].kind == ActionKind::OpenOutlet);
        CHECK(actions[0].part == tap);
        CHECK(actions[0].second == (c == 3 ? 1 : 0));  // all hot, all cold
        CHECK(actions[1].kind == ActionKind::CloseOutlet);
        CHECK(actions[1].part == tap);
        CHECK(actions[1].at_s > actions[0].at_s + 5);
        CHECK(cases[c].trial.script.duration_s > actions[1].at_s);
    }

    // A press alone is covered by the built cases; without a controller nothing is pressed.
    drawing.cases = {tradeCoach().cases[0]};
    CHECK(study::standardCases(trialsOf(drawing)).size() == 4);
    for (document::Part& part : drawing.parts) {
        part.stage = part.kind == "controller" ? document::Stage::Removed : part.stage;
    }
    CHECK(study::standardCases(trialsOf(drawing)).size() == 2);
    // No case at all: a mild day.
    drawing.cases.clear();
    CHECK(study::standardCases(trialsOf(drawing)).front().trial.script.start_C == 15);
}

TEST_CASE("outlets are drawn one after the other, hot where they have hot water, cold where cold", "[study][faults]")
{
    document::Drawing drawing = tradeCoach();
    document::Part cold;
    cold.id = drawing.nextId++;
    cold.kind = "toilet";  // cold water only
    cold.tag = "WC1";
    drawing.parts.push_back(cold);
    const auto cases = study::standardCases(trialsOf(drawing));
    const auto& hot = cases[2].trial.script.actions;
    const auto& colds = cases[3].trial.script.actions;
    CHECK(hot.size() == 2);
    REQUIRE(colds.size() == 4);
    CHECK(colds[0].part == drawing.findTag("F1")->id);
    CHECK(colds[2].part == cold.id);
    CHECK(colds[2].at_s > colds[1].at_s);  // the first is shut before the second opens
    CHECK(cases[3].trial.script.duration_s > colds[3].at_s);
    CHECK(colds[3].at_s - colds[2].at_s == colds[1].at_s - colds[0].at_s);
}

TEST_CASE("a fault that cannot act is not run, and only that", "[study][faults]")
{
    document::Drawing drawing = tradeCoach();
    const PartId box = drawing.findTag("C1")->id;
    const auto why = [&](const char* tag, std::string_view id) {
        return fault(study::declaredFaults(trialsOf(drawing)), drawing.findTag(tag)->id, id).cannotRun.text;
    };
    CHECK(why("C1", "limit_fails").find("high limit is switched off") != std::string::npos);
    CHECK(why("C1", "stop_fails").empty());
    CHECK(why("P1", "dead").empty());
    CHECK_FALSE(why("CV1", "backward").empty());
    set(drawing, "C1", "high_limit", true);
    CHECK(why("C1", "limit_fails").empty());
    // Any main stop that is on can fail.
    set(drawing, "C1", "stop_by_volume", false);
    CHECK(why("C1", "stop_fails").find("no main stop") != std::string::npos);
    CHECK(why("C1", "relay_welded").empty());
    for (const char* stop : {"stop_by_time", "stop_by_temperature", "stop_by_volume"}) {
        set(drawing, "C1", stop, true);
        CHECK(why("C1", "stop_fails").empty());
        set(drawing, "C1", stop, false);
    }
    // A part that no pipe reaches; a part that is taken out.
    document::Part loose;
    loose.id = drawing.nextId++;
    loose.kind = "circulator";
    loose.tag = "P9";
    drawing.parts.push_back(loose);
    CHECK(why("P9", "dead").find("not joined") != std::string::npos);
    drawing.parts.back().stage = document::Stage::Removed;
    const auto all = study::declaredFaults(trialsOf(drawing));
    CHECK(std::none_of(all.begin(), all.end(), [&](const study::OneFault& one) { return one.part == loose.id; }));
    CHECK(std::any_of(all.begin(), all.end(), [&](const study::OneFault& one) { return one.part == box; }));
}

TEST_CASE("a fault starts on its own part, from the start, in every case it can show in", "[study][faults]")
{
    document::Drawing drawing = tradeCoach();
    document::Case draw = drawing.cases[0];
    draw.name = "Draw";
    draw.actions = {act(4, ActionKind::OpenOutlet, drawing.findTag("F1")->id)};
    drawing.cases.push_back(draw);
    const study::Trials trials = trialsOf(drawing);
    const auto cases = study::standardCases(trials);
    REQUIRE(cases.size() == 5);  // own draw, press, three presses, hot, cold
    const FaultPlan plan = study::faultPlan(trials, cases, false);
    REQUIRE(plan.jobOf.size() == plan.rows.size());
    for (std::size_t r = 0; r < plan.rows.size(); ++r) {
        const auto& one = plan.rows[r].first;
        CHECK_FALSE(plan.rows[r].second.has_value());
        CHECK((plan.jobOf[r] == FaultPlan::kNotRun) == !one.cannotRun.empty());
        if (plan.jobOf[r] == FaultPlan::kNotRun || plan.jobs[plan.jobOf[r]].row != r) {
            continue;  // told by a like one
        }
        for (const study::Trial& trial : plan.jobs[plan.jobOf[r]].trials) {
            const auto& first = trial.script.actions.front();
            CHECK(first.kind == ActionKind::StartFault);
            CHECK(first.part == one.part);
            CHECK(first.fault == one.fault->id);
            CHECK(std::count_if(trial.script.actions.begin(), trial.script.actions.end(),
                                [](const document::Action& a) { return a.kind == ActionKind::StartFault; })
                  == 1);
        }
    }
    const auto standards = [&](const char* tag, std::string_view id) {
        return jobOf(plan, drawing.findTag(tag)->id, id).standard;
    };
    // A pump in all; what only matters while a run is on in the presses; a pipe's not in the drawing's own.
    CHECK(standards("P1", "dead") == std::vector<std::size_t>{0, 1, 2, 3, 4});
    CHECK(standards("C1", "stop_fails") == std::vector<std::size_t>{1, 2});
    CHECK(standards("PB1", "stuck") == std::vector<std::size_t>{1, 2});
    CHECK(standards("L5", "clogged") == std::vector<std::size_t>{1, 2, 3, 4});
    // Power goes at the start, and once more in the middle of the first run.
    CHECK(standards("BT1", "cut") == std::vector<std::size_t>{0, 1, 1, 2, 2, 3, 4});
    CHECK(standards("BT1", "low") == std::vector<std::size_t>{0, 1, 1, 2, 2, 3, 4});
    const auto& cut = jobOf(plan, drawing.findTag("BT1")->id, "cut").trials;
    CHECK(cut[1].script.actions.front().at_s == 0);
    CHECK(cut[2].script.actions.front().at_s > cut[2].plan->gaps_s.front() + 10);
    CHECK(cut[2].script.actions.front().at_s < cut[2].plan->gaps_s.front() + 60);
    CHECK(cut[0].script.actions.front().at_s == 0);
    CHECK(cut[1].plan.has_value());
}

TEST_CASE("only faults that are the same to the model share a run", "[study][faults]")
{
    document::Drawing drawing = tradeCoach();
    const study::Trials trials = trialsOf(drawing);
    const FaultPlan plan = study::faultPlan(trials, study::standardCases(trials), false);
    const auto same = [&](const char* a, std::string_view faultA, const char* b, std::string_view faultB) {
        return plan.jobOf[rowOf(plan, drawing.findTag(a)->id, faultA)]
               == plan.jobOf[rowOf(plan, drawing.findTag(b)->id, faultB)];
    };
    // Two pieces of one tube in one line, and not tube in another line.
    CHECK(same("L9", "clogged", "L10", "clogged"));
    CHECK_FALSE(same("L9", "clogged", "L5", "clogged"));
    CHECK_FALSE(same("L5", "clogged", "L6", "clogged"));
    // The two pumps are two; so are a pump's own faults, but not 'dead' and 'air-locked', both without drive.
    CHECK_FALSE(same("P1", "dead", "P2", "dead"));
    CHECK_FALSE(same("P1", "weak", "P1", "dead"));
    CHECK(same("P1", "dead", "P1", "air_locked"));
    CHECK_FALSE(same("MV1", "stuck_open", "MV1", "stuck_shut"));
    CHECK_FALSE(same("FE1", "clogged", "L11", "clogged"));
    // A narrower tube in the same line loses more.
    set(drawing, "L10", "tube", std::string("pex_3_8"));
    const study::Trials narrow = trialsOf(drawing);
    const FaultPlan other = study::faultPlan(narrow, study::standardCases(narrow), false);
    CHECK(other.jobOf[rowOf(other, drawing.findTag("L9")->id, "clogged")]
          != other.jobOf[rowOf(other, drawing.findTag("L10")->id, "clogged")]);
}

TEST_CASE("pairs join what a protection hides with every other fault but a pipe's", "[study][faults]")
{
    document::Drawing drawing = tradeCoach();
    const PartId box = drawing.findTag("C1")->id;
    const auto pairsOf = [&](std::string_view first) {
        const study::Trials trials = trialsOf(drawing);
        const auto cases = study::standardCases(trials);
        const FaultPlan plan = study::faultPlan(trials, cases, true);
        std::set<std::pair<PartId, std::string_view>> with;
        for (std::size_t r = 0; r < plan.rows.size(); ++r) {
            const auto& [one, second] = plan.rows[r];
            if (!second || one.fault->id != first) {
                continue;
            }
            CHECK(one.part == box);
            CHECK(plan.jobOf[r] != FaultPlan::kNotRun);
            with.insert({second->part, second->fault->id});
            for (std::size_t t = 0; t < plan.jobs[plan.jobOf[r]].trials.size(); ++t) {
                const auto& job = plan.jobs[plan.jobOf[r]];
                CHECK(cases[job.standard[t]].pressesOnly);  // a run has to be on
                const auto& actions = job.trials[t].script.actions;
                REQUIRE(actions.size() >= 2);
                CHECK(actions[0].part == box);
                CHECK(actions[0].fault == first);
                CHECK(actions[0].at_s == 0);
                CHECK(actions[1].part == second->part);
                CHECK(actions[1].fault == second->fault->id);
            }
        }
        return with;
    };
    const auto stop = pairsOf("stop_fails");
    CHECK(stop.contains({drawing.findTag("P1")->id, "dead"}));
    CHECK(stop.contains({box, "relay_welded"}));
    CHECK_FALSE(stop.contains({box, "stop_fails"}));
    CHECK_FALSE(stop.contains({box, "limit_fails"}));  // switched off: it cannot fail
    CHECK_FALSE(stop.contains({drawing.findTag("L5")->id, "clogged"}));
    CHECK_FALSE(stop.contains({drawing.findTag("CV1")->id, "backward"}));
    CHECK(pairsOf("limit_fails").empty());
    CHECK(pairsOf("dead").empty());
    set(drawing, "C1", "high_limit", true);
    CHECK(pairsOf("limit_fails").contains({box, "stop_fails"}));
    CHECK(pairsOf("stop_fails").contains({box, "limit_fails"}));
    // A power cut beside a failed stop: at the start and in the middle of the run.
    const study::Trials trials = trialsOf(drawing);
    const FaultPlan plan = study::faultPlan(trials, study::standardCases(trials), true);
    for (std::size_t r = 0; r < plan.rows.size(); ++r) {
        if (plan.rows[r].second && plan.rows[r].first.fault->id == "stop_fails"
            && plan.rows[r].second->fault->id == "cut") {
            const auto& job = plan.jobs[plan.jobOf[r]];
            REQUIRE(job.trials.size() == 4);
            CHECK(job.trials[1].script.actions[0].at_s == 0);
            CHECK(job.trials[1].script.actions[1].at_s > 10);
        }
    }
    // Without being asked for there are none.
    const FaultPlan singles = study::faultPlan(trials, study::standardCases(trials), false);
    CHECK(
        std::none_of(singles.rows.begin(), singles.rows.end(), [](const auto& row) { return row.second.has_value(); }));
}
