// SPDX-License-Identifier: GPL-3.0-or-later
#include "study/record_bounds.h"

#include <algorithm>
#include <cmath>

#include "study/actors.h"

namespace tapward::study {
namespace {

constexpr std::size_t kLeastMoments = 240;  ///< a curve of fewer says little; rather fewer curves
constexpr std::size_t kLeastSeries = 16;    ///< loop, heater and a few sensors and taps are always there

/// Seconds between readings of `width` numbers so that `share` holds them all.
double interval_s(double duration_s, double least_s, std::size_t width, std::size_t share)
{
    const auto moments = static_cast<double>(std::max<std::size_t>(share / std::max<std::size_t>(width, 1), 2));
    return duration_s / least_s < moments ? least_s : std::ceil(duration_s / (moments - 1));
}

}  // namespace

RecordBounds recordBounds(double duration_s, std::size_t cases, std::size_t series)
{
    const std::size_t share = kMostRecorded / cases;
    RecordBounds bounds;
    bounds.series = std::min(series, std::max(kLeastSeries, share / kLeastMoments));
    bounds.every_s = interval_s(duration_s, kRecordEvery_s, bounds.series, share);
    bounds.events = std::min(kMostEvents, kMostEventsTogether / cases);
    return bounds;
}

double snapshotInterval_s(double duration_s, std::size_t cases, std::size_t width, double asked_s)
{
    return interval_s(duration_s, asked_s, width, kMostSnapped / cases);
}

}  // namespace tapward::study
