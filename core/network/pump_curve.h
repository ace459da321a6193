// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <vector>

#include "base/monotone_curve.h"
#include "base/result.h"

namespace tapward::network {

/// The head a pump gives at each flow, at rated speed, from its data sheet.
///
/// Between readings the curve is a monotone cubic, so it never bulges past its own data; past the last
/// reading it runs on along its last slope; below the first it holds the first head. A slight fall
/// (a millionth of the shut-off head over the sheet's flow) on top keeps it strictly falling for every
/// flow, forward and backward. A sheet that ends level is taken to fall by its shut-off head within
/// another such flow.
/// Method: Fritsch & Carlson (1980), SIAM J. Numer. Anal. 17(2), 238-246.
class PumpCurve {
public:
    struct Reading {
        double flow_m3s;  ///< zero or more
        double head_m;    ///< zero or more, metres of the water being pumped
    };

    PumpCurve() = default;
    /// @param readings  two or more; flow strictly rising, head never rising; at most 64.
    /// @return the curve, or a Problem saying which reading breaks which rule.
    static Result<PumpCurve> fromReadings(std::vector<Reading> readings);

    double headAt(double flow_m3s) const;        ///< m; may be negative past run-out
    double slopeAt(double flow_m3s) const;       ///< m of head per m³/s, negative
    double integralTo(double flow_m3s) const;    ///< integral of head from zero flow, m·m³/s
    bool covers(double flow_m3s) const;          ///< true where the data sheet backs the answer
    double shutOffHead() const;
    double runOutFlow() const { return m_runOut; }  ///< where head reaches zero (extrapolated if need be)
    const std::vector<Reading>& readings() const { return m_readings; }

private:
    double findRunOut() const;

    std::vector<Reading> m_readings;
    MonotoneCurve m_curve;
    double m_fall = 0;       // m per m³/s, above zero
    double m_pastSlope = 0;  // m per m³/s, below zero
    double m_runOut = 0;     // m³/s
};

}  // namespace tapward::network
