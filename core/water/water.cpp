// SPDX-License-Identifier: GPL-3.0-or-later
#include "water/water.h"

#include <algorithm>
#include <array>
#include <cstddef>

#include "water/iapws.h"

namespace tapward::water {
namespace {

constexpr double kLeast = 0.5;  // °C
constexpr double kMost = 99.0;
constexpr double kStep = 0.5;
constexpr std::size_t kNodes = 198;  // kLeast + (kNodes - 1) kStep == kMost
constexpr double kPressure = 0.3e6;  // Pa absolute
constexpr double kZero = 273.15;

struct Table {
    std::array<Properties, kNodes> node;
    std::array<double, kNodes> enthalpy;  // exact integral of the interpolated heat capacity

    Table()
    {
        for (std::size_t k = 0; k < kNodes; ++k) {
            const double kelvin = kZero + kLeast + kStep * static_cast<double>(k);
            const auto r = iapws::region1(kelvin, kPressure);
            node[k] = {1 / r.volume, r.heatCapacity, iapws::viscosity(kelvin, 1 / r.volume),
                       iapws::conductivity(kelvin, 1 / r.volume)};
        }
        enthalpy[0] = kLeast * node[0].heatCapacity;
        for (std::size_t k = 1; k < kNodes; ++k)
            enthalpy[k] = enthalpy[k - 1] + kStep * 0.5 * (node[k - 1].heatCapacity + node[k].heatCapacity);
    }
};

const Table& table()
{
    static const Table built;
    return built;
}

struct Place {
    std::size_t k;  // node below
    double share;   // 0..1 of the way to the next
};

Place placeOf(double celsius)
{
    // The negated test also catches not-a-number, which then reads as the coldest water.
    const double t = !(celsius > kLeast) ? kLeast : std::min(celsius, kMost);
    const double x = (t - kLeast) / kStep;
    const auto k = std::min(static_cast<std::size_t>(x), kNodes - 2);
    return {k, x - static_cast<double>(k)};
}

double between(double a, double b, double share) { return a + (b - a) * share; }

double interpolate(double celsius, double Properties::* field)
{
    const auto [k, share] = placeOf(celsius);
    const auto& node = table().node;
    return between(node[k].*field, node[k + 1].*field, share);
}

}  // namespace

double density(double celsius) { return interpolate(celsius, &Properties::density); }
double heatCapacity(double celsius) { return interpolate(celsius, &Properties::heatCapacity); }
double viscosity(double celsius) { return interpolate(celsius, &Properties::viscosity); }
double conductivity(double celsius) { return interpolate(celsius, &Properties::conductivity); }

Properties at(double celsius)
{
    const auto [k, share] = placeOf(celsius);
    const Properties& a = table().node[k];
    const Properties& b = table().node[k + 1];
    return {between(a.density, b.density, share), between(a.heatCapacity, b.heatCapacity, share),
            between(a.viscosity, b.viscosity, share), between(a.conductivity, b.conductivity, share)};
}

double enthalpy(double celsius)
{
    const Table& t = table();
    if (celsius < kLeast)
        return celsius * t.node.front().heatCapacity;
    if (celsius > kMost)
        return t.enthalpy.back() + (celsius - kMost) * t.node.back().heatCapacity;
    const auto [k, share] = placeOf(celsius);
    const double a = t.node[k].heatCapacity;
    const double b = t.node[k + 1].heatCapacity;
    return t.enthalpy[k] + kStep * share * (a + 0.5 * (b - a) * share);
}

double celsiusFromEnthalpy(double enthalpy)
{
    const Table& t = table();
    if (enthalpy <= t.enthalpy.front())
        return enthalpy / t.node.front().heatCapacity;
    if (enthalpy >= t.enthalpy.back())
        return kMost + (enthalpy - t.enthalpy.back()) / t.node.back().heatCapacity;
    const auto above = std::upper_bound(t.enthalpy.begin(), t.enthalpy.end(), enthalpy);
    const auto k = static_cast<std::size_t>(above - t.enthalpy.begin()) - 1;
    const double a = t.node[k].heatCapacity;
    const double b = t.node[k + 1].heatCapacity;
    const double rest = (enthalpy - t.enthalpy[k]) / kStep;
    double share = rest / a;
    for (int i = 0; i < 3; ++i)  // heat capacity hardly changes over one step: this gains 4 digits a pass
        share = rest / (a + 0.5 * (b - a) * share);
    return kLeast + kStep * (static_cast<double>(k) + share);
}

double vapourPressure(double celsius) { return iapws::saturationPressure(kZero + std::clamp(celsius, 0.0, 300.0)); }

double referenceVolumeHeat()
{
    static const double value = density(40.0) * heatCapacity(40.0);
    return value;
}

}  // namespace tapward::water
