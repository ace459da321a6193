// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <cstddef>

namespace tapward::study {

/// How much a case of a prediction may write down, so that a drawing from a stranger cannot fill the memory: a budget
/// for the whole prediction, shared alike by its cases. A coach with a dozen curves and six cases of two hours stays
/// within it at the usual intervals; beyond it a case first writes at longer intervals (whole seconds), and one with
/// so many taps that hardly a moment would be left keeps the curves that come first.
inline constexpr std::size_t kMostRecorded = 2'000'000;    ///< numbers in all curves together
inline constexpr std::size_t kMostSnapped = 32'000'000;    ///< numbers in all snapshots together
inline constexpr std::size_t kMostEventsTogether = 50'000;
inline constexpr std::size_t kMostEvents = 5'000;          ///< of one case

struct RecordBounds {
    std::size_t series = 0;            ///< curves kept, in their order
    double every_s = 1;                ///< between two readings while water moves; kRecordEvery_s where that fits
    std::size_t events = kMostEvents;  ///< kept, from the first
};

/// @param duration_s of the case, s, above 0 @param cases of the prediction, 1 or more
/// @param series curves the case would have
RecordBounds recordBounds(double duration_s, std::size_t cases, std::size_t series);

/// Seconds between two snapshots of `width` numbers each, `asked_s` (above 0) where they fit.
double snapshotInterval_s(double duration_s, std::size_t cases, std::size_t width, double asked_s);

}  // namespace tapward::study
