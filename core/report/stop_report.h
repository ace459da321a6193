// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <string>

#include "study/curves.h"
#include "study/head_budget.h"
#include "study/stop.h"
#include "study/wiring.h"

namespace tapward::report {

/// What a kind of stop is called: "Volume", "Volume or temperature, whichever is first".
std::string title(study::StopKind kind);
std::string title(study::Load::Kind kind);
std::string title(study::PumpArrangement arrangement);

/// The suggested stop, its rivals, the chance and the inputs to measure first, as aligned text.
std::string stopText(const document::Drawing& drawing, const study::StopStudy& study, UnitSystem units);
/// The 12 V side with the pumps' working points, as aligned text. Curves and budget where there is a loop.
std::string wiringText(const document::Drawing& drawing, const study::WiringStudy& study,
                       const study::LoopCurves* curves, const study::HeadBudget* budget, UnitSystem units);

/// The same as one JSON document: SI units, °C, shares 0..1.
std::string stopJson(const document::Drawing& drawing, const study::StopStudy& study, const std::string& fileName);
std::string wiringJson(const document::Drawing& drawing, const study::WiringStudy& study,
                       const study::LoopCurves* curves, const study::HeadBudget* budget, const std::string& fileName);

}  // namespace tapward::report
