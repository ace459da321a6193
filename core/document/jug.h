// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <optional>
#include <vector>

#include "document/edit.h"

// A fixture's flow, measured with a jug and a stopwatch.
namespace tapward::document {

/// One filling of the jug.
struct JugTry {
    double volume_m3 = 0;  ///< 50 mL .. 100 L
    double seconds = 0;    ///< 1 .. 3600
};

/// What several tries say together.
struct JugFlow {
    double flow_m3s = 0;    ///< mean of the tries' flows
    double least_m3s = 0, most_m3s = 0;
    /// Sample standard deviation of the tries' flows (n - 1); 0 for one try.
    double deviation_m3s = 0;
    std::size_t tries = 0;
    /// (most - least) / mean: above kWideSpread something changed between the tries.
    double spread() const { return (most_m3s - least_m3s) / flow_m3s; }
};
inline constexpr double kWideSpread = 0.1;

/// Errors: no try, or one out of range (`where` is its number, from 1).
Result<JugFlow> jugFlow(const std::vector<JugTry>& tries);

/// The pressure at the outlet while it ran.
struct JugPressure {
    double pressure_Pa = 0;
    /// UseCity or UsePump: reckoned from the drawing for this supply, an estimate; UseNothing: read off a gauge.
    ActionKind reckonedFor = ActionKind::UseNothing;
    parts::Basis basis() const
    {
        return reckonedFor == ActionKind::UseNothing ? parts::Basis::Measured : parts::Basis::Estimated;
    }
};

/// Puts the mean into the part's rated flow as measured, one step; with a pressure into its rated pressure too.
/// Without it the pressure that stands there goes on counting.
/// Errors: the part has no rated flow, a value is out of its range.
Result<Edit> setJugFlow(const Drawing& drawing, PartId part, const JugFlow& flow, std::optional<JugPressure> pressure);

/// Whether a kind's flow can be measured so.
bool takesJugFlow(const parts::PartKind& kind);

/// What to know about putting this flow into that part: a wide spread, no pressure noted (and which counts instead), a
/// flow regulator set below what was measured. In order of weight; empty when there is nothing.
std::vector<Message> jugNotes(const Drawing& drawing, PartId part, const JugFlow& flow,
                              std::optional<JugPressure> pressure);

}  // namespace tapward::document
