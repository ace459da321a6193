// SPDX-License-Identifier: GPL-3.0-or-later
#include "network/pump_curve.h"

#include <algorithm>
#include <cmath>
#include <cstdint>
#include <utility>

namespace tapward::network {
namespace {

constexpr std::size_t kMostReadings = 64;
constexpr double kSlightFall = 1e-6;  // of the shut-off head over the sheet's flow: strict, yet unseen

Message reading(const char* text, std::size_t index, const PumpCurve::Reading& r)
{
    return {
        text,
        {static_cast<std::int64_t>(index + 1), Measure{r.flow_m3s, Quantity::Flow}, Measure{r.head_m, Quantity::Head}}};
}

}  // namespace

Result<PumpCurve> PumpCurve::fromReadings(std::vector<Reading> readings)
{
    if (readings.size() < 2)
        return problem("A pump curve needs at least two readings of flow and head.",
                       "Add a reading from the pump's data sheet.");
    if (readings.size() > kMostReadings)
        return problem({"The pump curve has {0} readings; {1} is the most Tapward takes.",
                        {static_cast<std::int64_t>(readings.size()), static_cast<std::int64_t>(kMostReadings)}},
                       "Keep readings where the curve bends and leave out some between.");
    for (std::size_t i = 0; i < readings.size(); ++i) {
        const Reading& r = readings[i];
        if (!std::isfinite(r.flow_m3s) || !std::isfinite(r.head_m) || r.flow_m3s < 0 || r.head_m < 0)
            return problem(
                reading("Reading {0} of the pump curve ({1}, {2}) is not a flow and a head of zero or more.", i, r),
                "Check the reading against the data sheet.");
        if (i == 0)
            continue;
        if (r.flow_m3s <= readings[i - 1].flow_m3s)
            return problem(
                reading("Reading {0} of the pump curve ({1}, {2}) has no more flow than the one before it.", i, r),
                "Put the readings in order of rising flow.");
        if (r.head_m > readings[i - 1].head_m)
            return problem(
                reading("Reading {0} of the pump curve ({1}, {2}) gives more head than the one before it.", i, r),
                "Check the reading; Tapward models pumps whose head falls with flow.");
    }
    if (readings.front().head_m <= 0)
        return problem("The pump curve gives no head at all.", "Check the unit of head on the data sheet.");

    PumpCurve curve;
    std::vector<MonotoneCurve::Point> points;
    points.reserve(readings.size());
    for (const Reading& r : readings)
        points.push_back({r.flow_m3s, r.head_m});
    curve.m_curve = MonotoneCurve(std::move(points));
    const double last = readings.back().flow_m3s;
    curve.m_fall = kSlightFall * readings.front().head_m / last;
    // A sheet that ends on a level stretch says nothing about where the pump gives out. Falling by the
    // shut-off head within another such flow is a guess on the safe side, outside what `covers` backs.
    curve.m_pastSlope = curve.m_curve.slopeAt(last);
    if (curve.m_pastSlope > -0.01 * readings.front().head_m / last)
        curve.m_pastSlope = -readings.front().head_m / last;
    curve.m_readings = std::move(readings);
    curve.m_runOut = curve.findRunOut();
    return curve;
}

double PumpCurve::headAt(double flow_m3s) const
{
    const double first = m_readings.front().flow_m3s;
    const double last = m_readings.back().flow_m3s;
    const double fall = -m_fall * (flow_m3s - first);
    if (flow_m3s <= first)
        return m_readings.front().head_m + fall;
    if (flow_m3s >= last)
        return m_readings.back().head_m + m_pastSlope * (flow_m3s - last) + fall;
    return m_curve.at(flow_m3s) + fall;
}

double PumpCurve::slopeAt(double flow_m3s) const
{
    if (flow_m3s <= m_readings.front().flow_m3s)
        return -m_fall;
    if (flow_m3s >= m_readings.back().flow_m3s)
        return m_pastSlope - m_fall;
    return m_curve.slopeAt(flow_m3s) - m_fall;
}

double PumpCurve::integralTo(double flow_m3s) const
{
    const double first = m_readings.front().flow_m3s;
    const double last = m_readings.back().flow_m3s;
    double area = m_readings.front().head_m * std::min(flow_m3s, first);
    if (flow_m3s > first)
        area += m_curve.integralTo(std::min(flow_m3s, last));
    if (flow_m3s > last) {
        const double past = flow_m3s - last;
        area += past * (m_readings.back().head_m + 0.5 * m_pastSlope * past);
    }
    return area - m_fall * flow_m3s * (0.5 * flow_m3s - first);
}

bool PumpCurve::covers(double flow_m3s) const
{
    return flow_m3s >= m_readings.front().flow_m3s && flow_m3s <= m_readings.back().flow_m3s;
}

double PumpCurve::shutOffHead() const { return headAt(0); }

double PumpCurve::findRunOut() const
{
    const Reading& last = m_readings.back();
    const double left = headAt(last.flow_m3s);
    if (left > 0)
        return last.flow_m3s + left / (m_fall - m_pastSlope);
    double low = m_readings.front().flow_m3s;
    double high = last.flow_m3s;
    for (int i = 0; i < 100 && high - low > 1e-15 * high; ++i) {
        const double middle = 0.5 * (low + high);
        (headAt(middle) > 0 ? low : high) = middle;
    }
    return 0.5 * (low + high);
}

}  // namespace tapward::network
