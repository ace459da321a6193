// SPDX-License-Identifier: GPL-3.0-or-later
#include "network/fittings.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <cstddef>
#include <numbers>

#include "base/units.h"
#include "network/friction.h"
#include "water/water.h"

namespace tapward::network {
namespace {

constexpr std::size_t kShapes = 4;
constexpr std::size_t kSizes = 4;
using Row = std::array<double, kSizes>;         // by tube size, smallest first
using Sheet = std::array<Row, kShapes>;         // Coupling, Elbow, TeeRun, TeeBranch

// Average bores of SDR-9 tube 3/8, 1/2, 3/4 and 1 (ASTM F876), m.
constexpr Row kTubeBore{8.890e-3, 12.065e-3, 17.043e-3, 21.920e-3};

// Equivalent feet of SDR-9 tube, PEX maker installation manual, form IM-PF 724596 0416, section 10.2.
constexpr Sheet kBrassFeet{{{2.9, 2.0, 0.6, 1.3}, {9.2, 9.4, 9.4, 10.0}, {2.9, 2.2, 1.9, 2.3}, {9.4, 10.4, 8.9, 11.0}}};
// The manual has no polymer tee for 3/8 (marked 0 here): toKs() scales the 1/2 one by the coupling's or
// the elbow's growth from 1/2 to 3/8.
constexpr Sheet kPolymerFeet{
    {{10.9, 7.1, 4.8, 4.5}, {22.3, 16.5, 17.4, 18.0}, {0, 7.2, 6.6, 6.0}, {0, 17.9, 17.7, 17.0}}};

// Screwed fittings of near full bore with a sharp inner corner: Rishel, HVAC Pump Handbook, 2nd ed. 2006,
// tables 3.8 and 3.10 (1/2, 3/4, 1; 3/8 held at the 1/2 figure). Expansion fittings are of that build;
// taking these figures for them, and 0.3 for their coupling, is common practice, no published source.
constexpr Sheet kExpansionK{{{0.3, 0.3, 0.3, 0.3}, {2.1, 2.1, 1.7, 1.5}, {0.9, 0.9, 0.9, 0.9}, {2.4, 2.4, 2.1, 1.9}}};

// Crane TP-410: K = n fT with fT of 1/2, 3/4, 1 (page A-26; 3/8 held at the 1/2 figure); n = 30 elbow, 20 and
// 60 tee run and branch (pages A-27..A-29, memory); n = 3 for a sleeve: common practice, no published source.
constexpr Row kTurbulentFactor{0.027, 0.027, 0.025, 0.023};
constexpr std::array<double, kShapes> kSolderedLengths{3, 30, 20, 60};

Sheet toKs(const Sheet& feet)
{
    constexpr double kVelocity = 8 * us::kFoot;  // the basis of the equivalent lengths
    const auto w = water::at(us::celsius(60));
    Sheet k{};
    for (std::size_t size = 0; size < kSizes; ++size) {
        const double bore = kTubeBore[size];
        const double f = frictionFactor(w.density * kVelocity * bore / w.viscosity, 1.5e-6 / bore);
        for (std::size_t shape = 0; shape < kShapes; ++shape)
            k[shape][size] = f * feet[shape][size] * us::kFoot / bore;
    }
    for (std::size_t shape = 2; shape < kShapes; ++shape)
        if (k[shape][0] == 0)
            k[shape][0] = k[shape][1] * k[shape - 2][0] / k[shape - 2][1];
    return k;
}

Sheet solderedKs()
{
    Sheet k{};
    for (std::size_t shape = 0; shape < kShapes; ++shape)
        for (std::size_t size = 0; size < kSizes; ++size)
            k[shape][size] = kSolderedLengths[shape] * kTurbulentFactor[size];
    return k;
}

const Sheet& sheet(FittingFamily family)
{
    static const Sheet brass = toKs(kBrassFeet);
    static const Sheet polymer = toKs(kPolymerFeet);
    static const Sheet soldered = solderedKs();
    switch (family) {
    case FittingFamily::BrassInsert:
        return brass;
    case FittingFamily::PolymerInsert:
        return polymer;
    case FittingFamily::Expansion:
        return kExpansionK;
    case FittingFamily::Soldered:
        return soldered;
    }
    return soldered;
}

constexpr double kWaterDensity = 998.2;

}  // namespace

double fittingK(FittingFamily family, FittingShape shape, double bore_m)
{
    const Row& row = sheet(family)[static_cast<std::size_t>(shape)];
    const double bore = std::clamp(bore_m, kTubeBore.front(), kTubeBore.back());
    std::size_t i = 0;
    while (i + 2 < kSizes && bore > kTubeBore[i + 1])
        ++i;
    const double share = std::log(bore / kTubeBore[i]) / std::log(kTubeBore[i + 1] / kTubeBore[i]);
    return row[i] + share * (row[i + 1] - row[i]);
}

double resistanceFromCoefficient(double flowAtOnePascal) { return 1 / (flowAtOnePascal * flowAtOnePascal); }

double coefficientFromCv(double cv) { return cv * us::kGpm / std::sqrt(us::kPsi); }

double coefficientFromKv(double kv) { return kv / 3600 / std::sqrt(1e5); }

double kFromCoefficient(double flowAtOnePascal, double bore_m)
{
    const double area = std::numbers::pi / 4 * bore_m * bore_m;
    return resistanceFromCoefficient(flowAtOnePascal) * 2 * area * area / kWaterDensity;
}

}  // namespace tapward::network
