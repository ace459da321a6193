// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <optional>
#include <stop_token>
#include <string>
#include <vector>

#include "study/presses.h"

namespace tapward::study {

enum class Harm {
    Nobody,
    Drinking,  ///< water of a cold drinking outlet above the limit for the cold line
    User       ///< water above the outlet limit where people touch it
};

/// One declared fault of one part (with `pairs`: two at once).
struct FaultRow {
    document::PartId part = document::kNoPart;
    std::string fault;                ///< id in the part's kind
    document::PartId withPart = document::kNoPart;  ///< the second fault of a pair
    std::string withFault;
    bool run = false;                 ///< false: `consequence` says why it was not
    Message consequence;
    Hottest hottest;                  ///< over all cases
    std::vector<PlaceHeat> outlets;   ///< each outlet, hot and cold, over all cases
    std::optional<double> change_K;   ///< most an outlet or the heater's outlet is hotter than in the sound coach
    Harm harm = Harm::Nobody;
    bool harmsSoundToo = false;       ///< the sound coach reaches the limit there as well
    document::PartId harmedAt = document::kNoPart;
    Message who, shows, stops;
    document::Case worst;             ///< shows it worst; opens as a case of the drawing
};

struct FaultsOptions {
    bool pairs = false;            ///< also: the main stop fails and ..., the high limit fails and ...
    double outletLimit_C = kOutletLimit_C;
    double coldEntryLimit_C = kColdEntryLimit_C;
    Options resolution = {};       ///< of the rows that can hurt; the others are coarser (within 0.5 K)
    unsigned hands = 0;            ///< threads, 0 = all cores
    std::stop_token stop = {};
    Progress progress = {};
};

struct FaultsStudy {
    Hottest sound;                       ///< the same cases without a fault
    std::vector<std::string> cases;      ///< names of the cases every fault went through
    std::vector<FaultRow> rows;          ///< in part order, then as the kind lists them; pairs after all singles
    int simulated = 0;                   ///< cases run, for the benchmark
};

/// Every fault that every present part declares, through the drawing's own cases that draw water and a cold
/// press, three presses in a row, hot and cold draws at each outlet in turn. A fault that cannot be run has
/// its row and its reason. Same drawing + same options = same answer.
/// @return a Problem when nothing holds water or when stopped.
Result<FaultsStudy> studyFaults(const document::Drawing& drawing, const FaultsOptions& options = {});

}  // namespace tapward::study
