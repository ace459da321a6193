// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "study/faults.h"

namespace tapward::study {

/// What the events and temperatures of one case come to.
struct Outcome {
    std::vector<PlaceHeat> hottest;
    bool lit = false, lockout = false, heaterLimit = false, limitOpen = false;
    bool ran = false, refused = false, endedByHand = false, runsAtEnd = false;
    std::string lastEnd;   ///< id of the event that ended the last run
};
Outcome outcomeOf(const TrialResult& result);
double hottestAt(const Outcome& outcome, HeatPlace place, document::PartId part);

/// Adds one place's heat to what a row has of it.
void keepHottest(FaultRow& row, const PlaceHeat& heat);

/// How badly a case shows a fault: at the outlets and the heater's outlet, most of what is above the outlets' limit
/// (at an outlet only) and what is above the sound coach, added. What burns counts before what is merely warmer.
double caseWeight_K(const Outcome& faulty, const Outcome& sound, double outletLimit_C);

/// The row `told` about the fault of `own`, which is the same to the model: its script starts `own`'s fault.
FaultRow toldOf(const document::Drawing& drawing, FaultRow told, const FaultRow& own);

/// Fills a row's words from the outcomes of its cases beside the sound ones.
/// @param worst  index of the case that shows it worst
void wordRow(const document::Drawing& drawing, FaultRow& row, const std::vector<Outcome>& faulty,
             const std::vector<Outcome>& sound, std::size_t worst, const FaultsOptions& options,
             parts::FaultEffect effect);

/// The name under which a row's worst case opens, in words: "C1 main stop never trips: Cold press".
std::string caseTitle(const document::Drawing& drawing, const FaultRow& row);

}  // namespace tapward::study
