// SPDX-License-Identifier: GPL-3.0-or-later
#include "network/friction.h"

#include <cmath>

namespace tapward::network {

Friction friction(double reynolds, double relativeRoughness)
{
    if (reynolds < 1e-12)
        reynolds = 1e-12;  // at rest the factor is infinite; the pressure law never asks for it there
    if (reynolds < 1000)   // here the formula differs from 64/Re by less than 1e-13
        return {64 / reynolds, -1};

    const double smooth = std::exp(0.9 * std::log(7 / reynolds));
    const double x = smooth + 0.27 * relativeRoughness;
    const double log = -std::log(x);
    auto power16 = [](double v) {
        v *= v;
        v *= v;
        v *= v;
        return v * v;
    };
    const double a = power16(2.457 * log);
    const double b = power16(37530 / reynolds);
    const double sum = a + b;
    const double turbulent = 1 / (sum * std::sqrt(sum));
    const double r = 8 / reynolds;
    const double r4 = (r * r) * (r * r);
    const double laminar = r4 * r4 * r4;
    const double total = laminar + turbulent;
    const double factor = 8 * std::sqrt(std::sqrt(std::cbrt(total)));
    // d ln(a)/d ln(Re) and d ln(b)/d ln(Re), then the chain rule
    const double da = 16 * a * 0.9 * smooth / (x * log);
    const double db = -16 * b;
    const double slope = (-12 * laminar - 1.5 * turbulent * (da + db) / sum) / (12 * total);
    return {factor, slope};
}

double frictionFactor(double reynolds, double relativeRoughness)
{
    return friction(reynolds, relativeRoughness).factor;
}

double colebrook(double reynolds, double relativeRoughness)
{
    double x = 1 / std::sqrt(frictionFactor(reynolds, relativeRoughness));  // 1/sqrt(f)
    for (int i = 0; i < 50; ++i) {
        const double inside = relativeRoughness / 3.7 + 2.51 * x / reynolds;
        const double residual = x + 2 * std::log10(inside);
        const double slope = 1 + 2 / std::log(10.0) * 2.51 / reynolds / inside;
        const double step = residual / slope;
        x -= step;
        if (std::abs(step) < 1e-13 * x)
            break;
    }
    return 1 / (x * x);
}

}  // namespace tapward::network
