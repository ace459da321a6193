// SPDX-License-Identifier: GPL-3.0-or-later
#include <algorithm>
#include <optional>
#include <string>

#include "document/loop_builder.h"

namespace tapward::document {

Result<Edit> LoopBuilder::build(Message title)
{
    if (m_old.empty()) {
        cutInletSensor();
        const bool atHeater = id(kInletSensor) != kNoPart;
        m_survey.sensorInBlock = !atHeater && m_variant.way != ReturnWay::Tank;
        m_survey.inletSensed = atHeater || m_survey.sensorInBlock;
    }
    survey();
    if (m_gesture.failed()) {
        return m_gesture.finish(std::move(title));
    }
    const Plan plan = planFor(m_variant, m_survey);
    Plan chosen = plan;
    const Point origin = place(plan, chosen);
    drawItems(chosen, origin);
    drawRuns(chosen);
    for (const auto& [role, part] : m_ids) {
        const Part* held = now().find(part);
        if (held && (!held->mark || held->mark->variant != idOf(m_variant))) {
            Part marked = *held;
            marked.mark = markFor(role);
            m_gesture.make(ChangePart{std::move(marked)});
        }
    }
    wire();
    addCases();
    return m_gesture.finish(std::move(title));
}

void LoopBuilder::drawItems(const Plan& plan, const Point& origin)
{
    constexpr double kBlockHeight_m = 0.3;  // above the floor, in a cabinet: an estimate
    for (const PlanItem& item : plan.items) {
        const PartId known = id(item.role);
        Part part;
        if (known != kNoPart) {
            part = *now().find(known);
        } else {
            const parts::PartKind* kind = parts::find(item.kind);
            part.id = now().nextId;
            part.kind = item.kind;
            part.tag = now().freeTag(*kind);
            part.stage = Stage::Added;
            part.height_m = kBlockHeight_m;
            part.entries = item.entries;
        }
        part.at = {origin.x + item.at.x, origin.y + item.at.y};
        part.turn = item.turn;
        part.flipped = item.flipped;
        part.mark = markFor(item.role);
        m_ids[item.role] = part.id;
        known != kNoPart ? m_gesture.make(ChangePart{std::move(part)}) : m_gesture.make(AddPart{std::move(part)});
    }
}

PipeEnd LoopBuilder::endAt(const std::string& role, const std::string& port, bool begin) const
{
    if (role.empty()) {
        return begin ? m_hot : m_back;
    }
    return {id(role), port, {}};
}

/// A new tee's branch faces the side from which the way to the other end is cheaper.
void LoopBuilder::turnBranch(PartId teeId, const PipeEnd& other)
{
    const Part* tee = now().find(teeId);
    const Part* part = now().find(other.part);
    const parts::Port* port = part ? kindOf(*part).port(other.port) : nullptr;
    if (!tee || !port) {
        return;
    }
    Part turned = *tee;
    turned.flipped = !turned.flipped;
    turned.turn = (turned.turn + 2) & 3;
    const Sheet sheet(now());
    const parts::Port& branch = *kindOf(*tee).port("branch");
    const auto as = sheet.way(*tee, branch, *part, *port);
    const auto other_ = sheet.way(turned, branch, *part, *port);
    if (other_ && (!as || other_->cost < as->cost)) {
        m_gesture.make(ChangePart{std::move(turned)});
    }
}

void LoopBuilder::drawRun(const PlanRun& run)
{
    const PipeEnd from = endAt(run.from, run.fromPort, true);
    const PipeEnd to = endAt(run.to, run.toPort, false);
    const PartId known = id(run.role);
    Part pipe;
    if (known != kNoPart) {
        pipe = *now().find(known);
    } else {
        const parts::PartKind* kind = parts::find("pipe_run");
        pipe.id = now().nextId;
        pipe.kind = kind->id;
        pipe.tag = now().freeTag(*kind);
        pipe.stage = Stage::Added;
        pipe.entries["length_m"] = {run.length_m, parts::Basis::Estimated};
        pipe.entries["couplings"] = {static_cast<double>(run.couplings), parts::Basis::Estimated};
        pipe.entries["carries"] = {std::string("return"), parts::Basis::Estimated};
        if (run.extraK > 0) {
            pipe.entries["extra_k"] = {run.extraK, parts::Basis::Estimated};
        }
        if (run.elbows > 0) {
            pipe.entries["elbows"] = {static_cast<double>(run.elbows), parts::Basis::Estimated};
        }
    }
    pipe.ends = {from, to};
    pipe.bends.clear();
    pipe.mark = markFor(run.role);
    // A way of its own only where the usual one runs into something.
    const Part* start = now().find(from.part);
    const Part* goal = now().find(to.part);
    const parts::Port* startPort = start ? kindOf(*start).port(from.port) : nullptr;
    const parts::Port* goalPort = goal ? kindOf(*goal).port(to.port) : nullptr;
    if ((run.from.empty() || run.to.empty()) && startPort && goalPort) {
        const Sheet sheet(now());
        const auto way = sheet.way(*start, *startPort, *goal, *goalPort);
        if (way && way->corners.size() > 2 && sheet.cost(route(now(), pipe)) > way->cost + 0.5) {
            pipe.bends.assign(way->corners.begin() + 1, way->corners.end() - 1);
        }
    }
    m_ids[run.role] = pipe.id;
    known != kNoPart ? m_gesture.make(ChangePart{std::move(pipe)}) : m_gesture.make(AddPart{std::move(pipe)});
}

void LoopBuilder::drawRuns(const Plan& plan)
{
    // Inside the block first: what leads in and out finds its way round it.
    for (const bool outside : {false, true}) {
        for (const PlanRun& run : plan.runs) {
            if ((run.from.empty() || run.to.empty()) != outside || m_gesture.failed()) {
                continue;
            }
            if (run.from.empty() && m_newHotTee) {
                turnBranch(*m_newHotTee, endAt(run.to, run.toPort, false));
            }
            if (run.to.empty() && m_newEndTee) {
                turnBranch(*m_newEndTee, endAt(run.from, run.fromPort, true));
            }
            drawRun(run);
        }
    }
}

void LoopBuilder::wire()
{
    const auto refer = [this](std::string_view holder, const char* key, std::string_view to) {
        const PartId part = id(holder);
        const PartId named = id(to);
        if (part == kNoPart || named == kNoPart || m_gesture.failed()) {
            return;
        }
        const parts::Entry entry{std::to_string(named), parts::Basis::Measured};
        const auto held = now().find(part)->entries.find(key);
        if (held == now().find(part)->entries.end() || !(held->second == entry)) {
            m_gesture.make(SetField{part, key, entry});
        }
    };
    refer(kController, "stop_sensor", kStopSensor);
    refer(kController, "limit_sensor", kLimitSensor);
    refer(kController, "inlet_sensor", kInletSensor);
    refer(kController, "flow_sensor", kFlowSensor);
    refer(kController, "button", kButton);
    for (const std::string_view driven : {std::string_view("pump_1"), std::string_view("pump_2"), kValve, kButton}) {
        refer(driven, "controller", kController);
    }
    for (const std::string_view fed : {std::string_view("pump_1"), std::string_view("pump_2"), kValve, kController}) {
        refer(fed, "fuse", "fuse");
    }
    // A lockout needs its sensor, and a sensor come anew its lockout.
    const bool hadSensor = old(kInletSensor) != kNoPart;
    if (!m_old.empty() && hadSensor != m_survey.inletSensed && id(kController) != kNoPart) {
        m_gesture.make(
            SetField{id(kController), "inlet_lockout", parts::Entry{m_survey.inletSensed, parts::Basis::Estimated}});
    }
}

/// What a technician asks of a new loop: one run, three in a row, the tap after a run, and a cold tap with the loop's valve
/// stuck open. The taps are those that the drawing's own cases open.
void LoopBuilder::addCases()
{
    for (const Case& one : m_before.cases) {
        for (const Action& action : one.actions) {
            if (action.kind == ActionKind::PressButton && one.view == View::After) {
                return;
            }
        }
    }
    if (m_gesture.failed()) {
        return;
    }
    constexpr double kRunsApart_s = 240;  // longer than a run of an ordinary coach: a press in a run would end it
    std::vector<Case> cases = now().cases;
    const Case first = cases.empty() ? Case{} : cases.front();  // its starting state
    std::optional<Action> draw, coldDraw;
    for (const Case& one : now().cases) {
        for (const Action& action : one.actions) {
            if (action.kind == ActionKind::OpenOutlet) {
                std::optional<Action>& known = action.second == 0 ? coldDraw : draw;
                known = known ? known : action;
            }
        }
    }
    const auto add = [&](const std::string& name, double duration_s, PartId target, std::vector<Action> actions) {
        Case made = first;
        made.name = name;
        const auto taken = [&] {
            return std::any_of(cases.begin(), cases.end(), [&](const Case& one) { return one.name == made.name; });
        };
        for (int number = 2; taken(); ++number) {
            made.name = name + ' ' + std::to_string(number);
        }
        made.view = View::After;
        made.duration_s = std::max(made.duration_s, duration_s);
        made.targetPart = target;
        made.unknown.clear();
        made.actions = std::move(actions);
        cases.push_back(std::move(made));
    };
    const auto press = [&](double at_s) {
        Action action;
        action.at_s = at_s;
        action.part = id(kButton);
        return action;
    };
    add("Preheat run", 300, id(kStopSensor), {press(2)});
    add("Three presses in a row", 3 * kRunsApart_s, id(kStopSensor),
        {press(2), press(2 + kRunsApart_s), press(2 + 2 * kRunsApart_s)});
    if (draw) {
        draw->at_s = kRunsApart_s;
        add("Preheat run, then the tap", kRunsApart_s + 120, draw->part, {press(2), *draw});
    }
    const Part* tap = coldDraw ? now().find(coldDraw->part) : draw ? now().find(draw->part) : nullptr;
    if (tap && kindOf(*tap).port("cold")) {
        Action stuck;
        stuck.kind = ActionKind::StartFault;
        stuck.part = id(kValve);
        stuck.fault = "stuck_open";
        Action cold = coldDraw ? *coldDraw : *draw;
        cold.at_s = 2;
        cold.second = 0;
        add("Cold draw, loop valve stuck open", 180, cold.part, {stuck, cold});
    }
    m_gesture.make(SetCases{std::move(cases)});
}

}  // namespace tapward::document
