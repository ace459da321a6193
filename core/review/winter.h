// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <string>
#include <vector>

#include "base/message.h"
#include "review/pipes.h"

namespace tapward::review {

/// Pieces that hang together and still hold water when taps and drains are open and the lines were blown out
/// and flushed, with the valves as they stand between runs.
struct WinterSegment {
    std::vector<document::PartId> parts;   ///< in id order
    double volume_m3 = 0;
    std::vector<document::PartId> valves;  ///< shut ones at its ends or in it
    bool loopClearsIt = false;             ///< opening the loop's valve and running its pump flushes it
    bool valvesClearIt = false;            ///< opening these valves lets it drain or be blown out
    document::PartId lowest = document::kNoPart;  ///< where a drain would do most
};

/// One thing to do, and the parts it is about.
struct WinterStep {
    Message text;
    std::vector<document::PartId> parts;  ///< in id order; empty: the whole coach
};

/// Winterizing as the drawing has it. Gravity: water leaves a place when a way to an open tap or drain never
/// rises (heights belong to parts; level counts as falling). Air at the city inlet, and antifreeze drawn by
/// the demand pump, clear what has a flow through it with one tap open at a time; the flows are solved.
struct WinterPlan {
    bool heightsKnown = false;              ///< else nothing is taken to drain by itself
    std::vector<document::PartId> drains;   ///< low-point drains there are
    std::vector<document::PartId> drained;  ///< pipes that empty by height
    std::vector<document::PartId> cleared;  ///< pipes that do not, but are blown out or flushed
    std::vector<WinterSegment> full;        ///< what stays full with the valves as they stand
    std::vector<WinterStep> steps;          ///< in order
};
WinterPlan winterPlan(const document::Drawing& drawing, const study::Plant& plant, const Pipes& pipes);
/// Tags of parts for a sentence, runs drawn together: "L1-L4, MV1".
std::string tagsInRuns(const document::Drawing& drawing, const std::vector<document::PartId>& ids);
/// The steps alone, for a plan whose other members are known.
std::vector<WinterStep> winterSteps(const document::Drawing& drawing, const study::Plant& plant,
                                    const WinterPlan& plan);
/// Of the coach as it will be; no steps when its parts make no model or nothing holds water.
WinterPlan winterPlan(const document::Drawing& drawing);

}  // namespace tapward::review
