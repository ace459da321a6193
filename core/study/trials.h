// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <functional>
#include <memory>
#include <optional>
#include <span>
#include <stop_token>
#include <vector>

#include "study/simulate.h"

namespace tapward::study {

/// Told how much of a study is done, 0..1, from whichever thread gets there; must be quick.
using Progress = std::function<void(double)>;

/// Seconds a study will still take at the pace so far; none while too little is done to tell.
/// @param share done, 0..1 @param elapsed_s since it began
std::optional<double> secondsLeft(double share, double elapsed_s);

/// A drawing made ready once, to be run in many variations. Results come in the order of the trials whatever
/// the number of threads, and do not depend on it.
class Trials {
public:
    /// @param hands  threads to use; 0 = all cores
    /// @return a Problem when a part's own values make no model or nothing in the drawing holds water.
    static Result<Trials> make(const document::Drawing& drawing, unsigned hands = 0);

    const document::Drawing& drawing() const { return *m_drawing; }
    const Plant& plant() const { return *m_plant; }   ///< with what the job adds
    const LoopMap& loop() const { return *m_loop; }

    /// Every trial's result, or a Problem when stopped. Trials of the view 'before' are run 'after' too: a
    /// study is about the finished job.
    Result<std::vector<TrialResult>> run(std::span<const Trial> trials, const Options& options) const;
    unsigned hands() const { return m_hands; }

private:
    Trials() = default;
    const document::Drawing* m_drawing = nullptr;
    std::shared_ptr<const Plant> m_plant;
    std::shared_ptr<const LoopMap> m_loop;
    unsigned m_hands = 0;
};

/// Coarser cells, fewer wall layers and rarer flow solutions, for searching. What a search finds is run
/// again with the default resolution before it is reported.
Options searchOptions();

}  // namespace tapward::study
