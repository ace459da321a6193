// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

namespace tapward::thermal {

/// Nusselt number inside a round tube, fully developed: 48/11 laminar (constant heat flux), Gnielinski
/// turbulent from Re 4,000 with the smooth-tube friction (0.79 ln Re - 1.64)^-2, linear in Re between
/// 2,300 and 4,000. Gnielinski (1976), Int. Chem. Eng. 16, 359; (2013), Int. J. Heat Mass Transf. 63, 134.
double nusselt(double reynolds, double prandtl);

/// The turbulent branch alone, Re from 2,300 up.
double gnielinski(double reynolds, double prandtl);

/// Water-side film coefficient, W/(m² K), at flow_m3s (sign ignored). At rest it is the laminar value,
/// 4.36 k/d: heat conducted from the core of the standing water to the wall (5.8 k/d for a wall at one
/// temperature); natural convection inside a bore of 1 cm adds little and is left out.
double insideFilm(double flow_m3s, double bore_m, double celsius);

/// Outside film of a horizontal tube in still air, W/(m² K): natural convection (Churchill & Chu 1975,
/// Int. J. Heat Mass Transf. 18, 1049) plus radiation (emissivity 0.9). Air properties at film temperature.
double outsideFilm(double surfaceCelsius, double airCelsius, double diameter_m, double emissivity = 0.9);

/// Dry air at 1 atm: viscosity by Sutherland's law, conductivity by the U.S. Standard Atmosphere (1976)
/// formula, heat capacity 1,006 J/(kg K). -40 to 150 °C.
struct Air {
    double conductivity;        ///< W/(m K)
    double kinematicViscosity;  ///< m²/s
    double prandtl;
    double expansion;           ///< 1/K
};
Air airAt(double celsius);

/// g beta dT d³ / (nu alpha), temperature difference without sign.
double rayleigh(double surfaceCelsius, double airCelsius, double diameter_m, const Air& air);

/// Churchill & Chu (1975), horizontal cylinder, Ra up to 1e12.
double horizontalCylinderNusselt(double rayleigh, double prandtl);

/// Radiation to surroundings of one temperature, as a film coefficient, W/(m² K).
double radiationFilm(double surfaceCelsius, double surroundingsCelsius, double emissivity);

/// Resistance of a cylinder shell, K/W: ln(outer/inner) / (2 pi k L).
double shellResistance(double innerDiameter_m, double outerDiameter_m, double conductivity, double length_m);

/// Resistance of a film on a cylinder, K/W: 1 / (h pi d L).
double filmResistance(double film_W_m2K, double diameter_m, double length_m);

/// Axial dispersion coefficient of heat, m²/s, as a mean over a tube of length_m. Turbulent: Taylor (1954)
/// 10.1 a u*, raised at low Re by a measured fit, from Re 3,000 on; laminar to Re 2,300: Taylor-Aris limited to the
/// development the residence time allows. Doubtful between the two, Re 2,300 to 3,000 (half-inch tube at 20 °C: 0.33
/// to 0.43 gpm): no measurement is behind the blend, and the coefficient falls there by a factor of ten and more.
double axialDispersion(double flow_m3s, double bore_m, double length_m, double celsius);

/// Taylor-Aris, fully developed laminar: D (1 + Pe²/48), Pe = u a / D.
double taylorAris(double speed_m_s, double radius_m, double diffusivity_m2_s);

/// Taylor (1954), turbulent: 10.1 a u sqrt(f/8).
double taylorTurbulent(double speed_m_s, double radius_m, double frictionFactor);

}  // namespace tapward::thermal
