// SPDX-License-Identifier: GPL-3.0-or-later
#include "network/law.h"

#include <algorithm>
#include <cmath>
#include <numbers>

#include "network/friction.h"
#include "network/inner.h"
#include "network/ready_law.h"

namespace tapward::network {
namespace {

constexpr double kReferenceDensity = 998.2;  // kg/m³, see law.h
constexpr double kRestFlow = 1e-7;           // m³/s, below it a square law turns linear
constexpr double kShutOpening = 1e-3;
constexpr double kLeastLeak = 1e-16;         // m³/(s Pa): less than a drop a year, taken as none
constexpr double kLeastSpeed = 1e-3;
constexpr double kLeastCap_m3s = 1e-9;  ///< a drop a minute: less is divided by, and means the same
constexpr double kCapPressure = 1e6;         // Pa at kCapWidth above the cap
constexpr double kCapWidth = 0.05;
constexpr double kBarredSlope = 1e18;        // Pa/(m³/s)

// q sqrt(R² q² + k²)
LawValue square(double q, double R, double k)
{
    const double r = R * q;
    const double root = std::sqrt(r * r + k * k);
    return {q * root, root + (root > 0 ? r * r / root : 0.0)};
}

bool turns(const PumpLaw& pump) { return pump.curve && pump.speed >= kLeastSpeed; }
bool leaks(double leak) { return leak >= kLeastLeak; }

}  // namespace

ReadyLaw::ReadyLaw(const Law& law, double density, double viscosity)
{
    std::visit([&](const auto& kind) { prepare(kind, density, viscosity); }, law);
}

void ReadyLaw::setSquare(double R)
{
    m_squareR = std::max(R, 0.0);
    m_squareK = std::max(kLeastSlope, m_squareR * kRestFlow);
}

void ReadyLaw::prepare(const PipeLaw& pipe, double density, double viscosity)
{
    m_kind = Kind::Pipe;
    const double bore = std::max(pipe.bore_m, 1e-5);
    const double length = std::max(pipe.length_m, 0.0);
    const double area = std::numbers::pi / 4 * bore * bore;
    const double head = 0.5 * density / (area * area);  // velocity head per flow squared
    m_reynolds = density * bore / (area * viscosity);
    m_roughness = std::clamp(pipe.roughness_m / bore, 0.0, 0.05);
    m_frictionR = length / bore * head;
    m_slope = 64 / m_reynolds * m_frictionR;  // laminar
    m_squareR = std::max(pipe.minorK, 0.0) * head;
    m_squareK = m_slope < kLeastSlope ? kLeastSlope : 0.0;
}

void ReadyLaw::prepare(const ResistanceLaw& resistance, double density, double)
{
    const double opening = resistance.opening;
    if (!(opening >= kShutOpening)) {
        const bool leaky = leaks(resistance.leak_m3s_per_Pa);
        m_kind = Kind::Line;
        m_slope = leaky ? 1 / resistance.leak_m3s_per_Pa : kBarredSlope;
        m_ways = {leaky, leaky};
        return;
    }
    m_kind = resistance.capFlow_m3s > 0 ? Kind::Capped : Kind::Square;
    m_cap = std::max(resistance.capFlow_m3s, kLeastCap_m3s);
    m_opening = opening;
    setSquare(resistance.R * density / kReferenceDensity);
}

void ReadyLaw::prepare(const CheckLaw& check, double density, double)
{
    setSquare(check.R * density / kReferenceDensity);
    m_kind = Kind::Square;
    switch (check.condition) {
    case CheckLaw::Condition::StuckOpen:
        return;
    case CheckLaw::Condition::StuckShut:
        m_kind = Kind::Line;
        m_slope = kBarredSlope;
        m_ways = {false, false};
        return;
    case CheckLaw::Condition::Sound:
        m_offset = std::max(check.crack_Pa, 0.0);
        if (leaks(check.leak_m3s_per_Pa)) {
            m_kind = Kind::LeakyCheck;
            m_slope = 1 / check.leak_m3s_per_Pa;
            m_cap = m_offset * check.leak_m3s_per_Pa;
        } else {
            m_ways.backward = false;
        }
        return;
    }
}

void ReadyLaw::prepare(const PumpLaw& pump, double density, double)
{
    setSquare(pump.stoppedR * density / kReferenceDensity);
    m_kind = Kind::Square;
    if (!turns(pump))
        return;
    m_kind = Kind::Pump;
    m_curve = pump.curve.get();
    m_speed = pump.speed;
    m_frictionR = density * kGravity;
    m_cap = pump.speed * pump.curve->runOutFlow();
    m_slope = kLeastSlope;
}

void ReadyLaw::prepare(const SourceLaw& source, double density, double)
{
    if (!source.connected) {
        m_kind = Kind::Line;
        m_slope = kBarredSlope;
        m_ways = {false, false};
        return;
    }
    m_kind = Kind::Square;
    m_offset = -source.pressure_Pa;
    m_slope = std::max(source.slope_Pa_per_m3s, 0.0);
    setSquare(source.R * density / kReferenceDensity);
    m_ways.backward = !source.oneWay;
}

LawValue ReadyLaw::at(double q) const
{
    switch (m_kind) {
    case Kind::Line:
        return {m_slope * q, m_slope};
    case Kind::Pipe: {
        LawValue v = square(q, m_squareR, m_squareK);
        const double flow = std::abs(q);
        const double reynolds = flow * m_reynolds;
        if (reynolds < 1000) {
            v.loss += m_slope * q;
            v.slope += m_slope;
        } else {
            const Friction f = friction(reynolds, m_roughness);
            const double each = f.factor * m_frictionR * flow;
            v.loss += each * q;
            v.slope += each * (2 + f.slope);
        }
        return v;
    }
    case Kind::Square: {
        LawValue v = square(q / m_opening, m_squareR, m_squareK);
        return {m_offset + m_slope * q + v.loss, m_slope + v.slope / m_opening};
    }
    case Kind::Capped: {
        const double u = q / m_opening;
        LawValue v = square(u, m_squareR, m_squareK);
        const double over = (std::abs(u) - m_cap) / (kCapWidth * m_cap);
        if (over > 0) {
            v.loss += std::copysign(kCapPressure * over * over, u);
            v.slope += 2 * kCapPressure * over / (kCapWidth * m_cap);
        }
        return {v.loss, v.slope / m_opening};
    }
    case Kind::LeakyCheck: {
        if (q <= m_cap)
            return {m_slope * q, m_slope};
        LawValue v = square(q - m_cap, m_squareR, m_squareK);
        return {m_offset + v.loss, v.slope};
    }
    case Kind::Pump: {
        const double u = q / m_speed;
        LawValue v{m_slope * q - m_frictionR * m_speed * m_speed * m_curve->headAt(u),
                   m_slope - m_frictionR * m_speed * m_curve->slopeAt(u)};
        const double driven = q < 0 ? q : std::max(q - m_cap, 0.0);
        v.loss += m_squareR * driven * std::abs(driven);
        v.slope += 2 * m_squareR * std::abs(driven);
        return v;
    }
    }
    return {0, 0};
}

LawValue evaluate(const Law& law, double flow_m3s, double density, double viscosity)
{
    const ReadyLaw ready(law, density, viscosity);
    const Ways open = ready.ways();
    if (flow_m3s < 0 ? open.backward : (open.forward || flow_m3s == 0))
        return ready.at(flow_m3s);
    return {ready.at(0).loss + kBarredSlope * flow_m3s, kBarredSlope};
}

Ways ways(const Law& law)
{
    const ReadyLaw ready(law, kReferenceDensity, 1e-3);
    return ready.ways();
}

bool isShut(const Law& law)
{
    const Ways open = ways(law);
    return !open.forward && !open.backward;
}

}  // namespace tapward::network
