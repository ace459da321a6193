// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

namespace tapward::network {

/// Darcy friction factor (4 x Fanning), all regimes in one smooth formula.
/// Method: Churchill (1977), Chem. Eng. 84(24), 91-92.
/// @param reynolds  zero or more   @param relativeRoughness  roughness / bore, 0 to 0.05
double frictionFactor(double reynolds, double relativeRoughness);

struct Friction {
    double factor;
    double slope;  ///< d ln(factor) / d ln(reynolds): -1 in laminar flow, 0 in fully rough
};
Friction friction(double reynolds, double relativeRoughness);

/// The same by Colebrook (1939), iterated to 1e-12; for checks. Reynolds above 2,300.
double colebrook(double reynolds, double relativeRoughness);

}  // namespace tapward::network
