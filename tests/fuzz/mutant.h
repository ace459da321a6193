// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <cstddef>
#include <cstdint>
#include <string>
#include <vector>

#include "document/drawing.h"

// Drawings that somebody could have sent: a real one with a few slips in its data.
namespace tapward::test {

/// The samples, the templates, the file fuzzer's small drawing and a number of small random coaches.
/// @param source  the repository's folder
std::vector<document::Drawing> seedDrawings(const std::string& source);

struct MutantLimits {
    double mostCase_s = 40;       ///< of most mutants; one in sixteen may be three times as long
    std::size_t mostCases = 3;
    std::size_t mostParts = 120;  ///< a mutant that grew beyond is cut back to its seed
};

/// Mutant number `index` of this seed, as the text of its file; the same text on every machine. One to ten slips:
/// values to their bounds, beyond and back, parts and pipes added, taken, turned, joined elsewhere, references bent,
/// actions and cases changed, numbers changed in the text itself. The reader may refuse it.
std::string mutant(const std::vector<document::Drawing>& seeds, std::uint64_t seed, std::uint64_t index,
                   const MutantLimits& limits = {});

}  // namespace tapward::test
