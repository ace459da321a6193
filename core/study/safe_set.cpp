// SPDX-License-Identifier: GPL-3.0-or-later
#include "study/safe_set.h"

#include <algorithm>
#include <string>
#include <utility>

#include "document/references.h"
#include "study/press_search.h"
#include "study/protections.h"
#include "study/ranges.h"

namespace tapward::study {
namespace {

using document::Drawing;
using document::Part;
using document::PartId;
using Changes = std::vector<SafeChange>;

// 104 °F is the cold line's limit; 100, 95 and 90 °F below it leave room for what is on its way.
constexpr double kStops_C[] = {40.0, 37.777777777777779, 35.0};
constexpr double kLockouts_C[] = {40.0, 32.222222222222221};
constexpr double kWaits_s[] = {600, 1800};
constexpr double kSettings_C[] = {46.111111111111114, 43.333333333333336};  // 115 and 110 °F: 120 itself is the limit
constexpr double kWarm_K = 3;  // below the target it is warm all the same

/// What one protection may be set to: nothing, or one of these.
using Choices = std::vector<Changes>;

Measure celsius(double c) { return {c, Quantity::Temperature}; }

/// Every protection the drawing has the sensors for, milder settings first.
std::vector<Choices> choicesOf(const Drawing& drawing, const Part& box, const Part* heater)
{
    const parts::Values values = document::values(box);
    const auto senses = [&](const char* key) {
        const Part* sensor = drawing.find(document::namedPart(values.text(key)));
        return sensor && document::isPresent(sensor->stage, document::View::After);
    };
    const auto change = [&](const char* key, parts::Value value, Message words) {
        return SafeChange{box.id, key, std::move(value), std::move(words)};
    };
    std::vector<Choices> all;
    if (senses("stop_sensor")) {
        Choices stops, refusal;
        const double drawn_C = values.number("stop_temperature_C");
        for (const double stop_C : kStops_C) {
            if (!values.flag("stop_by_temperature") || stop_C < drawn_C - 0.1) {
                stops.push_back(
                    {change("stop_by_temperature", true, {"End the run at {0} by the stop sensor.", {celsius(stop_C)}}),
                     change("stop_temperature_C", stop_C, {})});
            }
        }
        all.push_back(std::move(stops));
        if (!values.flag("refuse_when_warm")) {
            refusal.push_back({change("refuse_when_warm", true, "Refuse a press while the stop sensor is warm.")});
        }
        all.push_back(std::move(refusal));
    }
    if (senses("inlet_sensor")) {
        Choices lockouts;
        for (const double at_C : kLockouts_C) {
            if (!values.flag("inlet_lockout") || at_C < values.number("inlet_lockout_C") - 0.1) {
                lockouts.push_back(
                    {change("inlet_lockout", true, {"Lock out at {0} at the heater's inlet.", {celsius(at_C)}}),
                     change("inlet_lockout_C", at_C, {})});
            }
        }
        all.push_back(std::move(lockouts));
    }
    if (senses("limit_sensor") && !values.flag("high_limit")) {
        all.push_back({{change("high_limit", true,
                               {"Switch the high limit on, at {0}.", {celsius(values.number("high_limit_C"))}})}});
    }
    Choices waits;
    for (const double wait_s : kWaits_s) {
        if (values.number("cool_down_wait_s") < wait_s) {
            waits.push_back(
                {change("cool_down_wait_s", wait_s, {"Wait {0} between runs.", {Measure{wait_s, Quantity::Time}}})});
        }
    }
    all.push_back(std::move(waits));
    if (heater && document::kindOf(*heater).field("setpoint_C")) {
        Choices settings;
        for (const double set_C : kSettings_C) {
            const parts::Field* field = document::kindOf(*heater).field("setpoint_C");
            if (document::values(*heater).number("setpoint_C") > set_C + 0.1 && field->least <= set_C) {
                settings.push_back(
                    {{heater->id, "setpoint_C", set_C, {"Set {0} to {1}.", {heater->tag, celsius(set_C)}}}});
            }
        }
        all.push_back(std::move(settings));
    }
    std::erase_if(all, [](const Choices& choices) { return choices.empty(); });
    return all;
}

/// Every way of choosing at most one setting of each, the fewest first.
std::vector<std::vector<Changes>> setsOf(const std::vector<Choices>& choices)
{
    std::vector<std::vector<Changes>> sets{{}};
    for (const Choices& one : choices) {
        const std::size_t before = sets.size();
        for (std::size_t i = 0; i < before; ++i) {
            for (const Changes& changes : one) {
                sets.push_back(sets[i]);
                sets.back().push_back(changes);
            }
        }
    }
    sets.erase(sets.begin());
    std::stable_sort(sets.begin(), sets.end(), [](const auto& a, const auto& b) { return a.size() < b.size(); });
    return sets;
}

Changes flat(const std::vector<Changes>& set)
{
    Changes all;
    for (const Changes& changes : set) {
        all.insert(all.end(), changes.begin(), changes.end());
    }
    return all;
}

Drawing with(Drawing drawing, const Changes& changes)
{
    for (const SafeChange& change : changes) {
        drawing.find(change.part)->entries[change.key] = {change.value, parts::Basis::Estimated};
    }
    return drawing;
}

/// Whether a place is over its limit.
bool isOver(const PressesOptions& options, HeatPlace place, double celsius)
{
    switch (place) {
    case HeatPlace::OutletHot:
        return celsius > options.outletLimit_C;
    case HeatPlace::OutletCold:
    case HeatPlace::ColdEntry:
        return celsius > options.coldEntryLimit_C;
    case HeatPlace::HeaterOutlet:
    case HeatPlace::HeaterInlet:
    case HeatPlace::Sensor:
    case HeatPlace::Join:
        break;
    }
    return false;
}

/// Tries sets of changes against the worst points found as drawn.
class SafeSearch {
public:
    SafeSearch(const Drawing& drawing, const PressesOptions& options) : m_drawing(drawing), m_options(options)
    {
        m_options.protections = m_options.safeWait = false;
        m_options.progress = {};
    }

    /// What was hottest at each kind of place of the drawing as it is.
    Result<bool> keepsAsDrawn()
    {
        auto found = search(m_drawing);
        if (!found) {
            return tl::unexpected(found.error());
        }
        return *found;
    }

    /// Against the worst points known, and the ordinary run. Points that break a set are asked of the next ones first.
    Result<bool> holds(const Changes& changes)
    {
        const Drawing changed = with(m_drawing, changes);
        const auto trials = Trials::make(changed, m_options.hands);
        if (!trials) {
            return tl::unexpected(trials.error());
        }
        PressSearch search(*trials, m_options, {}, std::nullopt, [](int) {});
        if (!warms(*trials, search, changed)) {
            return false;
        }
        for (std::size_t i = 0; i < m_worst.size(); ++i) {
            if (const auto problem = search.evaluate({m_worst[i]})) {
                return tl::unexpected(*problem);
            }
            if (over(search)) {
                std::rotate(m_worst.begin(), m_worst.begin() + static_cast<std::ptrdiff_t>(i),
                            m_worst.begin() + static_cast<std::ptrdiff_t>(i) + 1);
                return false;
            }
        }
        return true;
    }

    /// The drawing's own full search; what breaks it is remembered.
    Result<bool> search(const Drawing& changed)
    {
        const auto trials = Trials::make(changed, m_options.hands);
        if (!trials) {
            return tl::unexpected(trials.error());
        }
        PressSearch search(*trials, m_options, {}, std::nullopt, [](int) {});
        if (const auto problem = search.search(true, m_worst)) {
            return tl::unexpected(*problem);
        }
        m_with = {};
        m_entering_C.reset();
        m_hottest.reset();
        double farthest_K = -1e9;
        for (const auto& [key, best] : search.best()) {
            take(m_with, {key.place, key.part, best.hottest_C, 0});
            if (key.place == HeatPlace::ColdEntry) {
                m_entering_C = std::max(m_entering_C.value_or(best.hottest_C), best.hottest_C);
            }
            if (!isOver(m_options, key.place, best.hottest_C)) {
                continue;
            }
            const PressPoint point = PressSearch::trimmed(best);
            if (std::find(m_worst.begin(), m_worst.end(), point) == m_worst.end() && m_worst.size() < kMostPoints) {
                m_worst.push_back(point);
            }
            const double limit_C =
                key.place == HeatPlace::OutletHot ? m_options.outletLimit_C : m_options.coldEntryLimit_C;
            if (best.hottest_C - limit_C > farthest_K) {
                farthest_K = best.hottest_C - limit_C;
                m_hottest = std::pair(key, best);
            }
        }
        return !m_hottest.has_value();
    }

    const Hottest& found() const { return m_with; }
    std::optional<double> entering_C() const { return m_entering_C; }
    /// What is farthest over its limit, of the last full search.
    const std::optional<std::pair<PlaceKey, PressBest>>& hottest() const { return m_hottest; }

private:
    static constexpr std::size_t kMostPoints = 12;

    bool over(const PressSearch& search) const
    {
        return std::any_of(search.best().begin(), search.best().end(),
                           [&](const auto& one) { return isOver(m_options, one.first.place, one.second.hottest_C); });
    }

    /// One press on the drawing's own day still brings the tap near its target.
    bool warms(const Trials& trials, const PressSearch& search, const Drawing& changed) const
    {
        PressPoint once = search.plainPoint();
        once.plan.gaps_s = {2};
        Options coarse = searchOptions();
        coarse.stop = m_options.stop;
        const auto results = trials.run(std::vector{search.trial(once)}, coarse);
        double target_C = 1e9;
        for (const document::Case& script : changed.cases) {
            const bool presses = std::any_of(script.actions.begin(), script.actions.end(), [](const auto& action) {
                return action.kind == document::ActionKind::PressButton;
            });
            if (presses) {
                target_C = std::min(target_C, script.target_C);
            }
        }
        if (!results) {
            return false;
        }
        return target_C > 1e8
               || std::any_of(results->front().result.hottest.begin(), results->front().result.hottest.end(),
                              [&](const PlaceHeat& heat) {
                                  return heat.place == HeatPlace::Join && heat.hottest_C >= target_C - kWarm_K;
                              });
    }

    const Drawing& m_drawing;
    PressesOptions m_options;
    std::vector<PressPoint> m_worst;
    Hottest m_with;
    std::optional<double> m_entering_C;
    std::optional<std::pair<PlaceKey, PressBest>> m_hottest;
};

}  // namespace

document::Edit SafeSet::edit() const
{
    document::Edit edit{"Switch the needed protections on", {}};
    for (const SafeChange& change : changes) {
        edit.steps.emplace_back(
            document::SetField{change.part, change.key, parts::Entry{change.value, parts::Basis::Estimated}});
    }
    return edit;
}

Result<SafeSet> findSafeSet(const document::Drawing& drawing, const PressesOptions& options)
{
    const auto plan = Trials::make(drawing, options.hands);
    if (!plan) {
        return tl::unexpected(plan.error());
    }
    const Part* box = drawing.find(loopParts(drawing).controller);
    const LoopAnswer& loop = plan->loop().answer;
    if (!box) {
        return problem("No controller is drawn, so there is no run to repeat.",
                       "Draw the loop's controller and its push button.");
    }
    if (!loop.exists) {
        return problem(loop.reason, "Join pumps, valve and pipes to a loop through the heater.");
    }
    const auto told = [&](double share) {
        if (options.progress) {
            options.progress(share);
        }
    };
    SafeSearch search(drawing, options);
    SafeSet found;
    const auto asDrawn = search.keepsAsDrawn();
    if (!asDrawn) {
        return tl::unexpected(asDrawn.error());
    }
    told(0.2);
    const auto tell = [&] {
        found.with = search.found();
        found.entering_C = search.entering_C();
        told(1);
        return found;
    };
    if (*asDrawn) {
        found.keepsAsDrawn = true;
        return tell();
    }
    const std::vector<Choices> choices = choicesOf(drawing, *box, drawing.find(loop.heater));
    std::vector<Changes> strictest;
    for (const Choices& one : choices) {
        strictest.push_back(one.back());
    }
    // All at once at their strictest: where that does not help, nothing of it does.
    const auto most = search.search(with(drawing, flat(strictest)));
    if (!most) {
        return tl::unexpected(most.error());
    }
    found.tried = 1;
    told(0.4);
    if (!*most) {
        const auto& [key, best] = *search.hottest();
        const Part* part = drawing.find(key.part);
        const Measure limit =
            celsius(key.place == HeatPlace::OutletHot ? options.outletLimit_C : options.coldEntryLimit_C);
        const std::string tag = part ? part->tag : "?";
        const std::int64_t presses = best.presses;
        found.reason =
            presses <= 1
                ? Message("With all of them one press still brings {0} to {1}, above {2}: no setting of the control "
                          "helps. A mixing valve behind the heater, more flow, or a heater with a smaller fire would.",
                          {celsius(best.hottest_C), tag, limit})
                : Message("With all of them {0} presses still bring {1} to {2}, above {3}. A mixing valve behind the "
                          "heater or a return line of its own would help.",
                          {presses, celsius(best.hottest_C), tag, limit});
        return tell();
    }
    const auto sets = setsOf(choices);
    for (std::size_t i = 0; i < sets.size(); ++i) {
        if (options.stop.stop_requested()) {
            return problem("The study was stopped.", "Start it again.");
        }
        const Changes changes = flat(sets[i]);
        ++found.tried;
        auto holds = search.holds(changes);
        if (holds && *holds) {
            holds = search.search(with(drawing, changes));
        }
        if (!holds) {
            return tl::unexpected(holds.error());
        }
        if (*holds) {
            found.changes = changes;
            return tell();
        }
        told(0.4 + 0.6 * static_cast<double>(i + 1) / static_cast<double>(sets.size()));
    }
    found.reason =
        "What would keep the limits no longer warms the tap: lower the target, or return by a line of its own.";
    return tell();
}

}  // namespace tapward::study
