// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <span>
#include <string>
#include <vector>

#include "base/result.h"
#include "document/drawing.h"

namespace tapward::study {

/// Something the answer rests on that is not known for sure, and how far it may be off. Every value between
/// the two ends is held equally likely.
struct Range {
    enum class Means {
        Factor,  ///< times what is drawn
        Shift,   ///< on top of what is drawn
        Value    ///< instead of what is drawn
    };
    std::string id;     ///< "pipe_lengths", "hidden_fittings", "activation_flow", "minimum_fire", "voltage",
                        ///< "ambient", "supply_temperature", "sensor_lag", "flow_sensor", "pump_head"; stable
    Text label;  ///< "Pipe lengths"
    Means means = Means::Factor;
    Quantity quantity = Quantity::Percent;
    double least = 1, most = 1;
    std::string source;  ///< of the width, in words
    bool isOpen() const { return most > least; }
};

/// The ranges of this drawing for one case. Width by the basis of the field: measured narrow, data sheet
/// middle, estimated wide; a field nobody filled in has the range of the trade figures. Only what the
/// drawing has: no sensor, no lag.
std::vector<Range> ranges(const document::Drawing& drawing, const document::Case& script);

/// The drawing and the case as they would be with these values, one per range.
struct Sample {
    document::Drawing drawing;
    document::Case script;
    double sensorLag_s = 0;  ///< of the stop sensor
    double sensorGain = 1;   ///< flow sensor's reading / truth
};
Sample withValues(const document::Drawing& drawing, const document::Case& script, std::span<const Range> ranges,
                  std::span<const double> values);

/// `count` points of as many dimensions as `ranges`, point-major, each coordinate in its range. Latin
/// hypercube: every input's range is cut in `count` equal strips, each strip is met exactly once. McKay,
/// Beckman & Conover (1979), Technometrics 21(2), 239-245. Same seed, same points, on every machine.
std::vector<double> latinHypercube(std::span<const Range> ranges, int count, std::uint64_t seed);

/// The parts a stop study is about, by the controller that runs the loop; kNoPart where there is none.
struct LoopParts {
    document::PartId controller = document::kNoPart, stopSensor = document::kNoPart, flowSensor = document::kNoPart;
};
LoopParts loopParts(const document::Drawing& drawing);

}  // namespace tapward::study
