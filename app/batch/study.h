// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <string>

#include "base/result.h"
#include "document/drawing.h"

namespace tapward::app::batch {

/// What `tapward-batch study` was asked for; exactly one study.
struct StudyAsked {
    bool presses = false;
    bool faults = false;
    bool stop = false;
    bool wiring = false;
    bool protections = false;
    bool pairs = false;  ///< with faults
    bool json = false;
};

/// The study's text or JSON. @param fileName  named in the JSON
Result<std::string> study(const document::Drawing& drawing, const StudyAsked& asked, const std::string& fileName,
                          UnitSystem units);

}  // namespace tapward::app::batch
