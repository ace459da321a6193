// SPDX-License-Identifier: GPL-3.0-or-later
#include "study/press_search.h"

#include <algorithm>
#include <cmath>

namespace tapward::study {
namespace {

using document::ActionKind;
using document::PartId;

constexpr double kLongestCase_s = 7200;
/// Hotter by less than this is not worth another round.
constexpr double kWorth_K = 0.02;

bool samePlan(const PressPlan& a, const PressPlan& b)
{
    return a.gaps_s == b.gaps_s && a.drawAt == b.drawAt && a.drawHotShare == b.drawHotShare && a.openAt == b.openAt
           && a.openHotShare == b.openHotShare && a.openFromPress == b.openFromPress && a.openDelay_s == b.openDelay_s;
}

}  // namespace

bool operator==(const PressPoint& a, const PressPoint& b)
{
    return a.volts == b.volts && a.supply_C == b.supply_C && a.ambient_C == b.ambient_C
           && a.pumpSupplies == b.pumpSupplies && samePlan(a.plan, b.plan);
}

PressSearch::PressSearch(const Trials& trials, const PressesOptions& options, std::vector<ControlChange> controls,
                         std::optional<double> mixingSetpoint_C, std::function<void(int)> counted)
    : m_trials(trials), m_options(options), m_controls(std::move(controls)), m_mixingSetpoint_C(mixingSetpoint_C),
      m_counted(std::move(counted))
{
    for (const PlantPart& part : trials.plant().parts) {
        const parts::Role role = part.model.role;
        if (role == parts::Role::Controller && m_pressed == document::kNoPart) {
            m_pressed = part.id;
        }
        m_hasCity = m_hasCity || role == parts::Role::CitySupply;
        m_hasPump = m_hasPump || role == parts::Role::DemandPump;
        if (part.model.outlet && part.model.outlet->coldPath >= 0 && m_coldDraw == document::kNoPart) {
            m_coldDraw = part.id;
        }
    }
    // A button says which run is meant better than the box behind it.
    for (const PlantPart& part : trials.plant().parts) {
        if (part.model.role == parts::Role::Button) {
            m_pressed = part.id;
            break;
        }
    }
    m_hotDraw = trials.loop().answer.tap;
}

PressPoint PressSearch::plainPoint() const
{
    PressPoint point;
    point.volts = batterySupply(m_trials.plant()).volts;
    for (const document::Case& script : m_trials.drawing().cases) {
        if (script.view == document::View::After) {
            point.supply_C = script.supply_C.value_or(script.start_C);
            point.ambient_C = script.ambient_C.value_or(script.start_C);
            break;
        }
    }
    point.pumpSupplies = !m_hasCity && m_hasPump;
    point.plan.pressed = m_pressed;
    point.plan.gaps_s.assign(static_cast<std::size_t>(std::clamp(m_options.mostPresses, 1, 12)), 0.0);
    point.plan.gaps_s.front() = 2;
    return point;
}

Trial PressSearch::trial(const PressPoint& point) const
{
    Trial trial;
    trial.script.name = "Presses";
    trial.script.duration_s = kLongestCase_s;
    trial.script.start_C = point.supply_C;
    trial.script.supply_C = point.supply_C;
    trial.script.ambient_C = point.ambient_C;
    document::Action action;
    action.kind = ActionKind::SetVoltage;
    action.value = point.volts;
    trial.script.actions.push_back(action);
    if (m_hasCity || m_hasPump) {
        action.kind = point.pumpSupplies ? ActionKind::UsePump : ActionKind::UseCity;
        action.value = 1;
        trial.script.actions.push_back(action);
    }
    trial.plan = point.plan;
    trial.controls = m_controls;
    trial.mixingSetpoint_C = m_mixingSetpoint_C;
    return trial;
}

std::optional<Problem> PressSearch::evaluate(const std::vector<PressPoint>& points)
{
    std::vector<PressPoint> fresh;
    for (const PressPoint& point : points) {
        if (std::find(m_known.begin(), m_known.end(), point) == m_known.end()) {
            m_known.push_back(point);
            fresh.push_back(point);
        }
    }
    std::vector<Trial> trials;
    trials.reserve(fresh.size());
    for (const PressPoint& point : fresh) {
        trials.push_back(trial(point));
    }
    Options options = searchOptions();
    options.stop = m_options.stop;
    const auto results = m_trials.run(trials, options);
    if (!results) {
        return results.error();
    }
    m_counted(static_cast<int>(fresh.size()));
    for (std::size_t i = 0; i < fresh.size(); ++i) {
        const TrialResult& result = (*results)[i];
        for (const PlaceHeat& heat : result.result.hottest) {
            PressBest& best = m_best[{heat.place, heat.part}];
            if (heat.hottest_C <= best.hottest_C) {
                continue;
            }
            best = {heat.hottest_C, fresh[i], 0, 0};
            for (const document::Action& action : result.asRun.actions) {
                if (action.kind == ActionKind::PressButton && action.at_s <= heat.at_s + 0.11
                    && best.presses < result.presses) {
                    ++best.presses;
                    best.sincePress_s = std::max(0.0, heat.at_s - action.at_s);
                }
            }
        }
    }
    return std::nullopt;
}

PressPoint PressSearch::trimmed(const PressBest& best)
{
    PressPoint point = best.point;
    if (point.plan.openAt == document::kNoPart && best.presses > 0
        && best.presses < static_cast<int>(point.plan.gaps_s.size())) {
        point.plan.gaps_s.resize(static_cast<std::size_t>(best.presses));
        // What was hottest while standing between two runs is still watched.
        point.plan.settle_s = 60;
    }
    return point;
}

const PressBest* PressSearch::hottest(const std::vector<HeatPlace>& places) const
{
    const PressBest* hottest = nullptr;
    for (const auto& [key, best] : m_best) {
        if (std::find(places.begin(), places.end(), key.place) != places.end()
            && (!hottest || best.hottest_C > hottest->hottest_C)) {
            hottest = &best;
        }
    }
    return hottest;
}

std::optional<Problem> PressSearch::refine(const std::vector<HeatPlace>& places)
{
    double volt = 0.5 * (m_options.volts.most - m_options.volts.least) / 4;
    double gap = 20, delay = 4;
    for (int round = 0; round < 9; ++round) {
        const PressBest* start = hottest(places);
        if (!start) {
            return std::nullopt;
        }
        const double before_C = start->hottest_C;
        const PressPoint centre = start->point;
        std::vector<PressPoint> moves;
        for (const double sign : {-1.0, 1.0}) {
            PressPoint moved = centre;
            moved.volts = std::clamp(centre.volts + sign * volt, m_options.volts.least, m_options.volts.most);
            moves.push_back(moved);
            moved = centre;
            for (std::size_t g = 1; g < moved.plan.gaps_s.size(); ++g) {
                moved.plan.gaps_s[g] = std::max(0.0, moved.plan.gaps_s[g] + sign * gap);
            }
            moves.push_back(moved);
            if (centre.plan.gaps_s.size() > 1) {
                moved = centre;
                moved.plan.gaps_s.back() = std::max(0.0, moved.plan.gaps_s.back() + sign * gap);
                moves.push_back(moved);
                moved = centre;
                moved.plan.gaps_s[1] = std::max(0.0, moved.plan.gaps_s[1] + sign * gap);
                moves.push_back(moved);
            }
            if (centre.plan.openAt != document::kNoPart) {
                moved = centre;
                moved.plan.openDelay_s = std::max(0.0, moved.plan.openDelay_s + sign * delay);
                moves.push_back(moved);
            }
        }
        if (auto problem = evaluate(moves)) {
            return problem;
        }
        if (hottest(places)->hottest_C < before_C + kWorth_K) {
            volt *= 0.4;
            gap *= 0.4;
            delay *= 0.4;
        }
    }
    return std::nullopt;
}

std::optional<Problem> PressSearch::openWhileRunning()
{
    // Another draw takes flow from the heater or brings it more within a second; the fire follows later.
    static constexpr double kDelays_s[] = {3, 8, 14, 20, 28, 40, 70};
    std::vector<PressPoint> starts;
    using enum HeatPlace;
    for (const auto& aim : {std::vector{HeaterOutlet}, {OutletHot}, {HeaterInlet}, {OutletCold, Sensor}}) {
        const PressBest* best = hottest(aim);
        if (!best) {
            continue;
        }
        PressPoint point = best->point;
        for (const bool all : {true, false}) {  // in the last of its runs, and in the one that was hottest
            const int presses = all ? static_cast<int>(point.plan.gaps_s.size()) : std::max(1, best->presses);
            point.plan.gaps_s.resize(std::min(point.plan.gaps_s.size(), static_cast<std::size_t>(presses)));
            if (std::find(starts.begin(), starts.end(), point) == starts.end()) {
                starts.push_back(point);
            }
        }
    }
    std::vector<PressPoint> points;
    for (PressPoint& point : starts) {
        for (const auto& [part, share] : {std::pair{m_hotDraw, 1.0}, std::pair{m_coldDraw, 0.0}}) {
            for (const double delay_s : kDelays_s) {
                if (part == document::kNoPart) {
                    continue;
                }
                point.plan.openAt = part;
                point.plan.openHotShare = share;
                point.plan.openFromPress = true;
                point.plan.openDelay_s = delay_s;
                points.push_back(point);
            }
        }
    }
    if (auto problem = evaluate(points)) {
        return problem;
    }
    return refine({HeatPlace::HeaterOutlet});
}

std::optional<Problem> PressSearch::openOutlets()
{
    std::vector<PressPoint> points;
    const auto keys = m_best;  // opening changes the bests while we walk
    for (const auto& [key, best] : keys) {
        if (!isOutlet(key.place)) {
            continue;
        }
        std::vector<PressBest> from{best};
        if (const PressBest* heater = hottest({HeatPlace::HeaterOutlet}); heater && key.place == HeatPlace::OutletHot) {
            from.push_back(*heater);
        }
        for (const PressBest& start : from) {
            PressPoint point = trimmed(start);
            point.plan.openAt = key.part;
            point.plan.openHotShare = key.place == HeatPlace::OutletHot ? 1 : 0;
            points.push_back(point);
            point.plan.openFromPress = true;
            point.plan.openDelay_s = start.sincePress_s;
            points.push_back(point);
        }
    }
    return evaluate(points);
}

std::optional<Problem> PressSearch::search(bool thorough, const std::vector<PressPoint>& seeds)
{
    // Days: voltage sets the flow and with it the rise, warm supply and bay set where the rise starts from.
    std::vector<PressPoint> points = seeds;
    const PressPoint plain = plainPoint();
    const int levels = thorough ? 5 : 3;
    for (int v = 0; v < levels; ++v) {
        PressPoint point = plain;
        const double share = static_cast<double>(v) / (levels - 1);
        point.volts = m_options.volts.least + share * (m_options.volts.most - m_options.volts.least);
        point.supply_C = m_options.supply_C.most;
        point.ambient_C = m_options.ambient_C.most;
        points.push_back(point);
        if (thorough) {
            point.supply_C = m_options.supply_C.least;
            points.push_back(point);
        }
    }
    points.push_back(plain);
    if (auto problem = evaluate(points)) {
        return problem;
    }
    if (thorough) {  // a gap may make another day the worst
        points.clear();
        for (const double gap : m_options.gaps_s) {
            for (int v = 0; v < levels && gap > 0; v += 2) {
                PressPoint point = plain;
                const double share = static_cast<double>(v) / (levels - 1);
                point.volts = m_options.volts.least + share * (m_options.volts.most - m_options.volts.least);
                point.supply_C = m_options.supply_C.most;
                point.ambient_C = m_options.ambient_C.most;
                std::fill(point.plan.gaps_s.begin() + 1, point.plan.gaps_s.end(), gap);
                points.push_back(point);
            }
        }
        if (auto problem = evaluate(points)) {
            return problem;
        }
    }
    // Gaps and draws on the worst days.
    using enum HeatPlace;
    const std::vector<std::vector<HeatPlace>> aims{
        {HeaterOutlet}, {OutletHot, Join, Sensor, ColdEntry}, {HeaterInlet}, {OutletCold}};
    std::vector<PressPoint> days;
    for (const auto& aim : aims) {
        if (const PressBest* best = hottest(aim)) {
            if (std::find(days.begin(), days.end(), best->point) == days.end() && days.size() < (thorough ? 3 : 1)) {
                days.push_back(best->point);
            }
        }
    }
    points.clear();
    for (const PressPoint& day : days) {
        for (const double gap : m_options.gaps_s) {
            PressPoint point = day;
            std::fill(point.plan.gaps_s.begin() + 1, point.plan.gaps_s.end(), gap);
            points.push_back(point);
            if (!m_options.draws || !thorough) {
                continue;
            }
            for (const auto& [part, share] : {std::pair{m_hotDraw, 1.0}, std::pair{m_coldDraw, 0.0}}) {
                if (part == document::kNoPart || (gap > 0 && gap != m_options.gaps_s[m_options.gaps_s.size() / 2])) {
                    continue;
                }
                PressPoint drawn = point;
                drawn.plan.drawAt = part;
                drawn.plan.drawHotShare = share;
                points.push_back(drawn);
                if (m_hasCity && m_hasPump) {
                    drawn.pumpSupplies = !drawn.pumpSupplies;
                    points.push_back(drawn);
                }
            }
        }
    }
    if (auto problem = evaluate(points)) {
        return problem;
    }
    if (!thorough) {
        return std::nullopt;
    }
    for (const auto& aim : aims) {
        if (auto problem = refine(aim)) {
            return problem;
        }
    }
    if (!m_options.draws) {
        return std::nullopt;
    }
    for (const auto& [key, best] : m_best) {
        m_withoutOpening.push_back(best);
    }
    if (auto problem = openOutlets()) {
        return problem;
    }
    if (auto problem = openWhileRunning()) {
        return problem;
    }
    return openOutlets();
}

}  // namespace tapward::study
