// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

namespace tapward::water {

/// Liquid water at 0.3 MPa absolute (a coach's working pressure), 0.5 to 99 °C. Outside that range the
/// temperature is clamped, so a solver needs no error path (enthalpy runs on with the end heat capacity,
/// so that it can always be turned back). Linear interpolation in a table of 0.5 K built once, at first
/// use, from the IAPWS formulations in iapws.h; density, heat capacity within 0.02 %, viscosity and
/// conductivity within 0.1 % of them.
double density(double celsius);             ///< kg/m³
double heatCapacity(double celsius);        ///< J/(kg K), isobaric
double viscosity(double celsius);           ///< Pa s, dynamic
double conductivity(double celsius);        ///< W/(m K)
double enthalpy(double celsius);            ///< J/kg, integral of heat capacity, 0 at 0 °C
double celsiusFromEnthalpy(double enthalpy);
double vapourPressure(double celsius);      ///< Pa absolute, at 0 to 300 °C

struct Properties {
    double density, heatCapacity, viscosity, conductivity;
};
Properties at(double celsius);  ///< all four in one look-up

/// Volume heat capacity (J/(m³ K)) at 40 °C, the constant every heat balance in Tapward uses so that
/// energy carried, stored and mixed add up exactly; the error against the true value is below 2 % from
/// 5 to 80 °C (+1.4 % at 5 °C, -1.7 % at 80 °C) and is part of the stated discretisation error.
double referenceVolumeHeat();

}  // namespace tapward::water
