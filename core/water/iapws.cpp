// SPDX-License-Identifier: GPL-3.0-or-later
#include "water/iapws.h"

#include <array>
#include <cmath>
#include <cstddef>

namespace tapward::water::iapws {
namespace {

constexpr double kGasConstant = 461.526;  // J/(kg K), R7-97 eq. 1
constexpr double kCriticalKelvin = 647.096;
constexpr double kCriticalDensity = 322.0;  // kg/m³

struct Term {
    int i;
    int j;
    double n;
};

// IAPWS R7-97(2012), table 2.
constexpr std::array<Term, 34> kRegion1{{
    {0, -2, 0.14632971213167},        {0, -1, -0.84548187169114},       {0, 0, -0.37563603672040e1},
    {0, 1, 0.33855169168385e1},       {0, 2, -0.95791963387872},        {0, 3, 0.15772038513228},
    {0, 4, -0.16616417199501e-1},     {0, 5, 0.81214629983568e-3},      {1, -9, 0.28319080123804e-3},
    {1, -7, -0.60706301565874e-3},    {1, -1, -0.18990068218419e-1},    {1, 0, -0.32529748770505e-1},
    {1, 1, -0.21841717175414e-1},     {1, 3, -0.52838357969930e-4},     {2, -3, -0.47184321073267e-3},
    {2, 0, -0.30001780793026e-3},     {2, 1, 0.47661393906987e-4},      {2, 3, -0.44141845330846e-5},
    {2, 17, -0.72694996297594e-15},   {3, -4, -0.31679644845054e-4},    {3, 0, -0.28270797985312e-5},
    {3, 6, -0.85205128120103e-9},     {4, -5, -0.22425281908000e-5},    {4, -2, -0.65171222895601e-6},
    {4, 10, -0.14341729937924e-12},   {5, -8, -0.40516996860117e-6},    {8, -11, -0.12734301741641e-8},
    {8, -6, -0.17424871230634e-9},    {21, -29, -0.68762131295531e-18}, {23, -31, 0.14478307828521e-19},
    {29, -38, 0.26335781662795e-22},  {30, -39, -0.11947622640071e-22}, {31, -40, 0.18228094581404e-23},
    {32, -41, -0.93537087292458e-25},
}};

// IAPWS R12-08, table 2.
constexpr std::array<Term, 21> kViscosity{{
    {0, 0, 0.520094},     {1, 0, 0.850895e-1},  {2, 0, -0.108374e1}, {3, 0, -0.289555},   {0, 1, 0.222531},
    {1, 1, 0.999115},     {2, 1, 0.188797e1},   {3, 1, 0.126613e1},  {5, 1, 0.120573},    {0, 2, -0.281378},
    {1, 2, -0.906851},    {2, 2, -0.772479},    {3, 2, -0.489837},   {4, 2, -0.257040},   {0, 3, 0.161913},
    {1, 3, 0.257399},     {0, 4, -0.325372e-1}, {3, 4, 0.698452e-1}, {4, 5, 0.872102e-2}, {3, 6, -0.435673e-2},
    {5, 6, -0.593264e-3},
}};

// IAPWS R15-11, table 2: row i is the power of (1/T - 1), column j that of (density - 1).
constexpr double kConductivity[5][6] = {
    {1.60397357, -0.646013523, 0.111443906, 0.102997357, -0.0504123634, 0.00609859258},
    {2.33771842, -2.78843778, 1.53616167, -0.463045512, 0.0832827019, -0.00719201245},
    {2.19650529, -4.54580785, 3.55777244, -1.40944978, 0.275418278, -0.0205938816},
    {-1.21051378, 1.60812989, -0.621178141, 0.0716373224, 0.0, 0.0},
    {-2.7203370, 4.57586331, -3.18369245, 1.1168348, -0.19268305, 0.012913842},
};

}  // namespace

Region1 region1(double kelvin, double pascal)
{
    const double pi = pascal / 16.53e6;
    const double tau = 1386.0 / kelvin;
    double gp = 0, gpp = 0, gt = 0, gtt = 0, gpt = 0;  // derivatives of the Gibbs energy
    for (const auto& [i, j, n] : kRegion1) {
        const double p = std::pow(7.1 - pi, i);
        const double t = std::pow(tau - 1.222, j);
        const double pd = i * p / (7.1 - pi);
        const double td = j * t / (tau - 1.222);
        gp -= n * pd * t;
        gpp += n * (i - 1) * pd / (7.1 - pi) * t;
        gt += n * p * td;
        gtt += n * p * (j - 1) * td / (tau - 1.222);
        gpt -= n * pd * td;
    }
    const double shift = gp - tau * gpt;
    Region1 r;
    r.volume = kGasConstant * kelvin / pascal * pi * gp;
    r.enthalpy = kGasConstant * kelvin * tau * gt;
    r.heatCapacity = -kGasConstant * tau * tau * gtt;
    r.soundSpeed = std::sqrt(kGasConstant * kelvin * gp * gp / (shift * shift / (tau * tau * gtt) - gpp));
    r.expansion = (1 - tau * gpt / gp) / kelvin;
    r.compressibility = -pi * gpp / gp / pascal;
    return r;
}

double saturationPressure(double kelvin)
{
    // IAPWS R7-97(2012), eq. 30.
    const double theta = kelvin - 0.23855557567849 / (kelvin - 0.65017534844798e3);
    const double a = (theta + 0.11670521452767e4) * theta - 0.72421316703206e6;
    const double b = (-0.17073846940092e2 * theta + 0.12020824702470e5) * theta - 0.32325550322333e7;
    const double c = (0.14915108613530e2 * theta - 0.48232657361591e4) * theta + 0.40511340542057e6;
    const double root = 2 * c / (-b + std::sqrt(b * b - 4 * a * c));
    return 1e6 * root * root * root * root;
}

double viscosity(double kelvin, double density)
{
    const double t = kelvin / kCriticalKelvin;
    const double d = density / kCriticalDensity;
    const double dilute = 100 * std::sqrt(t) / (1.67752 + (2.20462 + (0.6366564 - 0.241605 / t) / t) / t);
    double sum = 0;
    for (const auto& [i, j, n] : kViscosity)
        sum += n * std::pow(1 / t - 1, i) * std::pow(d - 1, j);
    return 1e-6 * dilute * std::exp(d * sum);
}

double conductivity(double kelvin, double density)
{
    const double t = kelvin / kCriticalKelvin;
    const double d = density / kCriticalDensity;
    const double dilute =
        std::sqrt(t) / (2.443221e-3 + (1.323095e-2 + (6.770357e-3 + (-3.454586e-3 + 4.096266e-4 / t) / t) / t) / t);
    double sum = 0;
    for (std::size_t i = 5; i-- > 0;) {
        double row = 0;
        for (std::size_t j = 6; j-- > 0;)
            row = row * (d - 1) + kConductivity[i][j];
        sum = sum * (1 / t - 1) + row;
    }
    return 1e-3 * dilute * std::exp(d * sum);
}

}  // namespace tapward::water::iapws
