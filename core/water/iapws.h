// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

namespace tapward::water::iapws {

/// IAPWS-IF97 region 1 (liquid), IAPWS R7-97(2012). Valid 273.15 to 623.15 K, up to 100 MPa.
struct Region1 {
    double volume;        ///< m³/kg
    double enthalpy;      ///< J/kg
    double heatCapacity;  ///< J/(kg K), isobaric
    double soundSpeed;    ///< m/s
    double expansion;     ///< 1/K, isobaric volume expansion
    double compressibility;  ///< 1/Pa, isothermal
};
Region1 region1(double kelvin, double pascal);
double saturationPressure(double kelvin);  ///< Pa, region 4

/// Dynamic viscosity, Pa s, IAPWS R12-08 without the critical enhancement.
double viscosity(double kelvin, double density);
/// Thermal conductivity, W/(m K), IAPWS R15-11 without the critical enhancement.
double conductivity(double kelvin, double density);

}  // namespace tapward::water::iapws
