// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "review/finding.h"
#include "study/presses.h"

namespace tapward::review {

/// The published yardstick of a place: 120 °F (guidance for delivered water) where people touch water and in
/// the hot line; 104 °F where the loop's water enters a line that cold outlets draw from, and at a cold outlet.
double yardstick_C(study::HeatPlace place);

/// How much water this hot matters there. Danger: it comes out of an outlet above 120 °F. Caution: above the
/// place's yardstick otherwise. Note: at or below it, which promises nobody that it is safe.
Severity heatSeverity(study::HeatPlace place, double celsius);

}  // namespace tapward::review
