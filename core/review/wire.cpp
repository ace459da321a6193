// SPDX-License-Identifier: GPL-3.0-or-later
#include "review/wire.h"

#include <array>

#include "base/units.h"

namespace tapward::review {
namespace {

struct Conductor {
    int gauge;
    double circularMils;  ///< least area
};

constexpr std::array kConductors{Conductor{18, 1537}, Conductor{16, 2336}, Conductor{14, 3702},
                                 Conductor{12, 5833}, Conductor{10, 9343}, Conductor{8, 14810},
                                 Conductor{6, 25910}, Conductor{4, 37360}, Conductor{2, 62450}};

constexpr double kCopper = 10.75;  // ohm circular-mil/ft

}  // namespace

std::optional<int> minimumGauge(double current_A, double oneWay_m, double share, double volts)
{
    const double roundTrip_ft = 2 * oneWay_m / us::kFoot;
    const double needed = kCopper * current_A * roundTrip_ft / (share * volts);
    for (const Conductor& conductor : kConductors) {
        if (conductor.circularMils >= needed) {
            return conductor.gauge;
        }
    }
    return std::nullopt;
}

std::optional<double> largestFuse_A(int gauge)
{
    switch (gauge) {
    case 18:
        return 6;
    case 16:
        return 8;
    case 14:
        return 15;
    case 12:
        return 20;
    case 10:
        return 30;
    default:
        return std::nullopt;
    }
}

}  // namespace tapward::review
