// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <string>

#include "study/assessment.h"
#include "study/safe_set.h"

namespace tapward::report {

/// All that is known of a drawing, as one reads it: the key answers, how hot each place gets with the limit it is held
/// against and what shows it, and the protections needed. @param needed  or why there is no answer
std::string assessText(const document::Drawing& drawing, const study::Prediction& prediction,
                       const study::Assessment& assessment, const Result<study::SafeSet>& needed, UnitSystem units);

/// The same as one JSON document (resources/schema/assessment-1.schema.json): SI units, °C.
std::string assessJson(const document::Drawing& drawing, const study::Prediction& prediction,
                       const study::Assessment& assessment, const Result<study::SafeSet>& needed,
                       const std::string& fileName);

}  // namespace tapward::report
