// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <optional>
#include <QString>

#include "document/drawing.h"
#include "study/presses.h"

namespace tapward::app {

/// "SH1, hot outlet"; "T4, where the return enters the cold line".
QString sayPlace(const document::Drawing& drawing, study::HeatPlace place, document::PartId part);

/// "3 s", "5 min": of review::wholeBurnSeconds().
QString sayBurnTime(double seconds);
/// "about 3 s": contact to a serious burn of adult skin; never a promise of safety.
QString sayBurnAdult(double celsius);
/// No published table used here is of children: the adult's time is the most it can be.
QString sayBurnChild(double celsius);

/// "10 min", "1 h 5 min": a wait as people keep it, rounded up to the second below a minute, to half a
/// minute above.
QString sayWait(double seconds);

}  // namespace tapward::app
