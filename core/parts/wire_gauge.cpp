// SPDX-License-Identifier: GPL-3.0-or-later
#include "parts/wire_gauge.h"

#include <array>
#include <charconv>
#include <cmath>
#include <numbers>

#include "base/units.h"

namespace tapward::parts {
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

double wireArea_mm2(int awg)
{
    const double diameter_mm = 0.005 * 25.4 * std::pow(92.0, (36.0 - awg) / 39.0);
    return std::numbers::pi / 4 * diameter_mm * diameter_mm;
}

double wireResistance_ohm_m(int awg) { return 0.017241 / wireArea_mm2(awg); }

std::vector<Choice> wireGaugeChoices()
{
    return {{"18", "AWG 18"}, {"16", "AWG 16"}, {"14", "AWG 14"}, {"12", "AWG 12"}, {"10", "AWG 10"}, {"8", "AWG 8"}};
}

int wireGauge(std::string_view choice)
{
    int awg = 14;
    std::from_chars(choice.data(), choice.data() + choice.size(), awg);
    return awg;
}

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

std::optional<int> gaugeForCurrent(double current_A)
{
    for (const int gauge : {18, 16, 14, 12, 10}) {
        if (*largestFuse_A(gauge) >= kFuseOverLoad * current_A) {
            return gauge;
        }
    }
    return std::nullopt;
}

}  // namespace tapward::parts
