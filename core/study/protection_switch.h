// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "document/edit.h"
#include "study/presses.h"

namespace tapward::study {

/// The edit that makes the drawing what `effect` tried: the protection switched the other way, with the
/// value it was tried with.
/// @return a Problem when that takes more than a setting: a sensor or a valve has to be drawn or taken out.
Result<document::Edit> switchProtection(const document::Drawing& drawing, const ProtectionEffect& effect);

}  // namespace tapward::study
