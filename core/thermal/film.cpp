// SPDX-License-Identifier: GPL-3.0-or-later
#include "thermal/film.h"

#include <algorithm>
#include <cmath>
#include <numbers>

#include "water/water.h"

namespace tapward::thermal {

namespace {

constexpr double kLaminarNusselt = 48.0 / 11.0;
constexpr double kLaminarEnd = 2300;
constexpr double kTurbulentStart = 4000;
constexpr double kDispersionFitStart = 3000;
constexpr double kKelvin = 273.15;
constexpr double kGravity = 9.80665;
constexpr double kStefanBoltzmann = 5.670374419e-8;
using std::numbers::pi;

double smoothFriction(double reynolds)
{
    const double root = 0.79 * std::log(reynolds) - 1.64;
    return 1.0 / (root * root);
}

}  // namespace

double gnielinski(double reynolds, double prandtl)
{
    const double f8 = smoothFriction(reynolds) / 8.0;
    return f8 * (reynolds - 1000.0) * prandtl / (1.0 + 12.7 * std::sqrt(f8) * (std::cbrt(prandtl * prandtl) - 1.0));
}

double nusselt(double reynolds, double prandtl)
{
    if (reynolds <= kLaminarEnd)
        return kLaminarNusselt;
    if (reynolds >= kTurbulentStart)
        return gnielinski(reynolds, prandtl);
    const double share = (reynolds - kLaminarEnd) / (kTurbulentStart - kLaminarEnd);
    return (1.0 - share) * kLaminarNusselt + share * gnielinski(kTurbulentStart, prandtl);
}

double insideFilm(double flow_m3s, double bore_m, double celsius)
{
    const auto water = water::at(celsius);
    const double reynolds = 4.0 * std::abs(flow_m3s) * water.density / (pi * bore_m * water.viscosity);
    const double prandtl = water.viscosity * water.heatCapacity / water.conductivity;
    return nusselt(reynolds, prandtl) * water.conductivity / bore_m;
}

Air airAt(double celsius)
{
    const double kelvin = celsius + kKelvin;
    const double root = kelvin * std::sqrt(kelvin);
    const double viscosity = 1.458e-6 * root / (kelvin + 110.4);
    const double conductivity = 2.64638e-3 * root / (kelvin + 245.4 * std::pow(10.0, -12.0 / kelvin));
    const double density = 101325.0 / (287.05 * kelvin);
    return {conductivity, viscosity / density, viscosity * 1006.0 / conductivity, 1.0 / kelvin};
}

double rayleigh(double surfaceCelsius, double airCelsius, double diameter_m, const Air& air)
{
    const double nu = air.kinematicViscosity;
    return kGravity * air.expansion * std::abs(surfaceCelsius - airCelsius) * diameter_m * diameter_m * diameter_m
           * air.prandtl / (nu * nu);
}

double horizontalCylinderNusselt(double rayleigh, double prandtl)
{
    const double blend = std::pow(1.0 + std::pow(0.559 / prandtl, 9.0 / 16.0), 8.0 / 27.0);
    const double root = 0.60 + 0.387 * std::pow(rayleigh, 1.0 / 6.0) / blend;
    return root * root;
}

double radiationFilm(double surfaceCelsius, double surroundingsCelsius, double emissivity)
{
    const double a = surfaceCelsius + kKelvin;
    const double b = surroundingsCelsius + kKelvin;
    return emissivity * kStefanBoltzmann * (a * a + b * b) * (a + b);
}

double outsideFilm(double surfaceCelsius, double airCelsius, double diameter_m, double emissivity)
{
    const Air air = airAt(0.5 * (surfaceCelsius + airCelsius));
    const double nu = horizontalCylinderNusselt(rayleigh(surfaceCelsius, airCelsius, diameter_m, air), air.prandtl);
    return nu * air.conductivity / diameter_m + radiationFilm(surfaceCelsius, airCelsius, emissivity);
}

double shellResistance(double innerDiameter_m, double outerDiameter_m, double conductivity, double length_m)
{
    return std::log(outerDiameter_m / innerDiameter_m) / (2.0 * pi * conductivity * length_m);
}

double filmResistance(double film_W_m2K, double diameter_m, double length_m)
{
    return 1.0 / (film_W_m2K * pi * diameter_m * length_m);
}

double taylorAris(double speed_m_s, double radius_m, double diffusivity_m2_s)
{
    const double peclet = speed_m_s * radius_m / diffusivity_m2_s;
    return diffusivity_m2_s * (1.0 + peclet * peclet / 48.0);
}

double taylorTurbulent(double speed_m_s, double radius_m, double frictionFactor)
{
    return 10.1 * radius_m * speed_m_s * std::sqrt(frictionFactor / 8.0);
}

// Laminar: a front in a parabolic profile first spreads with the profile itself (variance u² t² / 3) and
// only after about a²/(16 D) the way Taylor and Aris found; a coach's pipes are far shorter than that. The
// coefficient at age t is K (1 - exp(-t/T)), T = a²/(16 D): both limits are exact (form after Gill &
// Sankarasubramanian 1970, Proc. R. Soc. A 316, 341; memory). Its mean over the residence time is used.
//
// Turbulent: Taylor's value plus what measurements show above it at low Reynolds numbers,
// d u 1.17e9 Re^-2.5 (Hart, Guymer, Sonnenwald & Stovin 2016, J. Hydraul. Eng. 142(9); memory): three times
// Taylor's at Re 5,000, a third more at 10,000. The fit is used from Re 3,000 on, the least it was made for; between
// there and the end of laminar flow the coefficient falls tenfold and more, so the blend is in its logarithm.
double axialDispersion(double flow_m3s, double bore_m, double length_m, double celsius)
{
    const double flow = std::abs(flow_m3s);
    if (!(flow > 0))
        return 0;
    const auto water = water::at(celsius);
    const double radius = 0.5 * bore_m;
    const double speed = flow / (pi * radius * radius);
    const double reynolds = water.density * speed * bore_m / water.viscosity;

    const auto laminar = [&] {
        const double diffusivity = water.conductivity / (water.density * water.heatCapacity);
        const double age = length_m / speed * 16.0 * diffusivity / (radius * radius);
        const double developed = age > 1e-6 ? 1.0 + std::expm1(-age) / age : 0.5 * age;
        return diffusivity + (taylorAris(speed, radius, diffusivity) - diffusivity) * developed;
    };
    const auto turbulent = [&](double re) {
        return taylorTurbulent(speed, radius, smoothFriction(re)) + bore_m * speed * 1.17e9 * std::pow(re, -2.5);
    };
    if (reynolds <= kLaminarEnd)
        return laminar();
    if (reynolds >= kDispersionFitStart)
        return turbulent(reynolds);
    const double share = (reynolds - kLaminarEnd) / (kDispersionFitStart - kLaminarEnd);
    return std::pow(laminar(), 1.0 - share) * std::pow(turbulent(kDispersionFitStart), share);
}

}  // namespace tapward::thermal
