// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <optional>
#include <span>

#include "canvas/drawing_layout.h"

class QPainter;

namespace tapward::app {

/// m³/s, a tenth of a millilitre a second: less is shown as standing.
inline constexpr double kStillFlow = 1e-7;

/// Water in one pipe at one moment; points == 0 where nothing is known.
struct HeatTrack {
    int points = 0;
    std::span<const float> celsius;  ///< from ends[0] to ends[1]
    double flow_m3s = 0;             ///< positive from ends[0] to ends[1]
};

/// The pipe's water at options.time_s, from options.snapshot.
HeatTrack heatTrack(const PaintOptions& options, document::PartId pipe);

/// The temperature at the number's place.
void paintNumber(QPainter& painter, const NumberShape& number, const PaintOptions& options);

/// The pipe as a band of colours, hatched where the water scalds, arrows where it flows.
void paintHeat(QPainter& painter, const PipeShape& pipe, const HeatTrack& heat, const PaintOptions& options);

}  // namespace tapward::app
