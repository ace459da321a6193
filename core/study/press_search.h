// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <map>
#include <utility>
#include <vector>

#include "study/presses.h"

namespace tapward::study {

/// One point of the search: a day and a way of pressing.
struct PressPoint {
    double volts = 12.6;
    double supply_C = 15, ambient_C = 20;
    bool pumpSupplies = false;
    PressPlan plan;
    friend bool operator==(const PressPoint& a, const PressPoint& b);
};

struct PlaceKey {
    HeatPlace place;
    document::PartId part;
    friend auto operator<=>(const PlaceKey&, const PlaceKey&) = default;
};

/// Hottest so far at a place, and how.
struct PressBest {
    double hottest_C = -1e9;
    PressPoint point;
    int presses = 0;          ///< that had been made by then
    double sincePress_s = 0;  ///< from the last of them
};

/// The search for one setting of the controls.
class PressSearch {
public:
    PressSearch(const Trials& trials, const PressesOptions& options, std::vector<ControlChange> controls,
                std::optional<double> mixingSetpoint_C, std::function<void(int)> counted);

    /// Runs the points with the search's resolution and keeps what is hottest.
    std::optional<Problem> evaluate(const std::vector<PressPoint>& points);
    /// Days, then gaps and draws on the worst days. `thorough` adds moves around the best and the outlets
    /// opened at the end.
    std::optional<Problem> search(bool thorough, const std::vector<PressPoint>& seeds);
    const std::map<PlaceKey, PressBest>& best() const { return m_best; }
    /// What was hottest at each place before outlets were opened for it; empty of a search that opens none.
    const std::vector<PressBest>& withoutOpening() const { return m_withoutOpening; }

    PressPoint plainPoint() const;  ///< drawn volts, first case's temperatures, presses without a gap
    Trial trial(const PressPoint& point) const;
    /// The point with only the presses it takes, watched to the end of the last.
    static PressPoint trimmed(const PressBest& best);
    const PressBest* hottest(const std::vector<HeatPlace>& places) const;
    const std::vector<PressPoint>& known() const { return m_known; }

private:
    std::optional<Problem> refine(const std::vector<HeatPlace>& places);
    std::optional<Problem> openWhileRunning();
    std::optional<Problem> openOutlets();

    const Trials& m_trials;
    const PressesOptions& m_options;
    std::vector<ControlChange> m_controls;
    std::optional<double> m_mixingSetpoint_C;
    std::function<void(int)> m_counted;
    document::PartId m_pressed = document::kNoPart, m_hotDraw = document::kNoPart, m_coldDraw = document::kNoPart;
    bool m_hasCity = false, m_hasPump = false;
    std::map<PlaceKey, PressBest> m_best;
    std::vector<PressBest> m_withoutOpening;
    std::vector<PressPoint> m_known;
};

}  // namespace tapward::study
