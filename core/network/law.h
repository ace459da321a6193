// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <memory>
#include <variant>

#include "network/pump_curve.h"

namespace tapward::network {

/// Element laws. Each gives the pressure lost (Pa) from the `from` end to the `to` end as a strictly
/// rising function of volume flow q (m³/s, positive from -> to). A law is plain data plus a *setting*
/// that a running case changes (how far a valve is open, how fast a pump turns).
///
/// Every R (Pa/(m³/s)²) is for water at 998.2 kg/m³ and is scaled with the density of the water inside.
/// `R q|q|` stands for q sqrt(R² q² + k²) with k the larger of 1e-7 m³/s times R and 100 Pa/(m³/s): the
/// slope at rest stays above zero, and at 0.1 gpm the square law is met within 0.02 %.

/// Straight tube with its fittings. Darcy-Weisbach, friction all-regime; K on the tube's velocity head.
struct PipeLaw {
    double length_m = 0;
    double bore_m = 0.012065;
    double roughness_m = 1.5e-6;  ///< drawn tubing
    double minorK = 0;            ///< sum over the fittings
};

/// Anything that loses pressure with the square of flow: valve, strainer, flow sensor, heater, fixture.
/// loss = F(q / opening) with F(u) = R u|u|, so that at one pressure the flow is `opening` times that of
/// full opening. With a flow regulator F rises steeply above capFlow: 1 MPa at 5 % above, 2.7 % above at
/// 0.3 MPa; the cap is thereby shared out with the opening, so that a mixer's two ways keep to it together.
/// An opening below 1e-3 is shut: then it lets through `leak_m3s_per_Pa` only.
struct ResistanceLaw {
    double R = 0;                     ///< Pa/(m³/s)²
    double opening = 1;               ///< setting, 0 shut to 1 open; effective flow share of full opening
    double leak_m3s_per_Pa = 0;       ///< when shut
    double capFlow_m3s = 0;           ///< flow regulator of an outlet at full opening; 0 = none
};

/// One-way. Passes nothing backward when sound; opens at the cracking pressure. With a backward leak it
/// passes leak times pressure, both ways, up to the cracking pressure. Stuck shut it passes nothing.
struct CheckLaw {
    double crack_Pa = 3447;           ///< 0.5 psi, common practice
    double R = 0;
    double leak_m3s_per_Pa = 0;       ///< fault: backward leak
    enum class Condition { Sound, StuckOpen, StuckShut } condition = Condition::Sound;
};

/// Circulator: gain = rho g speed² H(q/speed); stopped, the impeller is a resistance both ways. Turning,
/// that resistance also stands against flow driven backward or past its run-out flow, so that the law
/// goes over smoothly into the stopped one.
struct PumpLaw {
    std::shared_ptr<const PumpCurve> curve;  ///< at rated voltage
    double speed = 0;                        ///< setting, 0 stopped, 1 rated (affinity laws)
    double stoppedR = 0;                     ///< Pa/(m³/s)²
};

/// Fixed pressure behind a resistance: city water after its regulator, the tank, an accumulator.
/// loss = -pressure + slope q + R q|q|; with oneWay nothing flows back into it (sound inlet check).
struct SourceLaw {
    double pressure_Pa = 0;          ///< setting, gauge
    double slope_Pa_per_m3s = 1e5;   ///< zero or more
    double R = 0;
    bool oneWay = true;
    bool connected = true;           ///< setting; false = as a shut valve
};

using Law = std::variant<PipeLaw, ResistanceLaw, CheckLaw, PumpLaw, SourceLaw>;

struct LawValue {
    double loss;   ///< Pa
    double slope;  ///< Pa/(m³/s), above zero
};

/// What a law lets through at all. A way that is barred carries exactly nothing.
struct Ways {
    bool forward = true;
    bool backward = true;
};

/// @param density kg/m³ and @param viscosity Pa s of the water inside.
/// In a barred direction the loss rises with 1e18 Pa/(m³/s): as good as shut, and still strictly rising.
LawValue evaluate(const Law& law, double flow_m3s, double density, double viscosity);

Ways ways(const Law& law);

/// True when the law as set lets no water through in either direction.
bool isShut(const Law& law);

}  // namespace tapward::network
