// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "network/law.h"

namespace tapward::network {

/// A law worked out for one setting and one state of the water: what the solver evaluates, many times.
/// In a barred direction it simply runs on smoothly; keeping flow out of there is the solver's work.
/// It points into the law's pump curve, so it must not outlive the law.
class ReadyLaw {
public:
    ReadyLaw() = default;
    ReadyLaw(const Law& law, double density, double viscosity);

    LawValue at(double flow_m3s) const;
    Ways ways() const { return m_ways; }

private:
    enum class Kind { Line, Pipe, Square, Capped, LeakyCheck, Pump };

    void prepare(const PipeLaw& pipe, double density, double viscosity);
    void prepare(const ResistanceLaw& resistance, double density, double viscosity);
    void prepare(const CheckLaw& check, double density, double viscosity);
    void prepare(const PumpLaw& pump, double density, double viscosity);
    void prepare(const SourceLaw& source, double density, double viscosity);
    void setSquare(double R);

    Kind m_kind = Kind::Line;
    Ways m_ways;
    const PumpCurve* m_curve = nullptr;
    double m_offset = 0;     // Pa, loss at no flow
    double m_slope = 0;      // Pa/(m³/s), linear part
    double m_squareR = 0;    // Pa/(m³/s)²
    double m_squareK = 0;    // Pa/(m³/s), slope of the square part at rest
    double m_opening = 1;    // Square, Capped
    double m_cap = 0;        // m³/s: Capped; LeakyCheck: flow at the cracking pressure; Pump: run-out flow
    double m_reynolds = 0;   // Pipe: per m³/s
    double m_roughness = 0;  // Pipe: relative
    double m_frictionR = 0;  // Pipe: Pa/(m³/s)² per unit friction factor; Pump: rho g
    double m_speed = 0;      // Pump
};

}  // namespace tapward::network
