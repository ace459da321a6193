// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <string>

#include "study/faults.h"
#include "study/presses.h"
#include "study/safe_set.h"

namespace tapward::report {

/// The repeated presses study and the fault table as aligned text in the reader's units, with burn times.
std::string pressesText(const document::Drawing& drawing, const study::PressesStudy& study, UnitSystem units);
std::string faultsText(const document::Drawing& drawing, const study::FaultsStudy& study, UnitSystem units);
/// What the protections needed come to, in lines.
std::string neededText(const study::SafeSet& set, UnitSystem units);
std::string safeSetText(const document::Drawing& drawing, const study::SafeSet& set, UnitSystem units);

/// The same as one JSON document (resources/schema/study-1.schema.json): SI units, °C.
std::string pressesJson(const document::Drawing& drawing, const study::PressesStudy& study,
                        const std::string& fileName);
std::string faultsJson(const document::Drawing& drawing, const study::FaultsStudy& study, const std::string& fileName);
std::string safeSetJson(const document::Drawing& drawing, const study::SafeSet& set, const std::string& fileName);

/// "F3, hot": how a place is called in words.
std::string placeName(const document::Drawing& drawing, study::HeatPlace place, document::PartId part);

}  // namespace tapward::report
