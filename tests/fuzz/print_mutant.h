// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <string>
#include <vector>

#include "review/finding.h"
#include "study/prediction.h"

namespace tapward::test {

/// Makes Qt ready to print without a display; once, in the process that prints.
void beginPrinting();

/// The customer's page and the survey sheet as PDF, in memory. @return why not, empty when they are whole.
std::string printed(const document::Drawing& drawing, const study::Prediction& prediction,
                    const std::vector<review::Finding>& findings, bool metric);

}  // namespace tapward::test
