// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <vector>

#include "review/finding.h"

/// One function per rule, one file per function. review() writes the rule's id into what it adds.
namespace tapward::review::rule {

using Findings = std::vector<Finding>;

void scaldAtTap(const Seen& seen, Findings& findings);
void coldOutletWarm(const Seen& seen, Findings& findings);
void repeatedPresses(const Seen& seen, Findings& findings);
void checkValveBackward(const Seen& seen, Findings& findings);
void crossoverOpen(const Seen& seen, Findings& findings);
void loopOpenAtRest(const Seen& seen, Findings& findings);
void pumpWithoutOwnCheck(const Seen& seen, Findings& findings);
void valvePowerLoss(const Seen& seen, Findings& findings);
void pumpDeadHeaded(const Seen& seen, Findings& findings);
void limitSharesSensor(const Seen& seen, Findings& findings);
void protectionWithoutSensor(const Seen& seen, Findings& findings);
void clippedOnSensor(const Seen& seen, Findings& findings);
void heaterRecirculation(const Seen& seen, Findings& findings);
void drinkingBranchWarm(const Seen& seen, Findings& findings);
void filterOnReturn(const Seen& seen, Findings& findings);
void partTooHot(const Seen& seen, Findings& findings);
void partOverPressure(const Seen& seen, Findings& findings);
void trappedExpansion(const Seen& seen, Findings& findings);
void winterTrapped(const Seen& seen, Findings& findings);
void tapFlowMargin(const Seen& seen, Findings& findings);
void demandPumpCycling(const Seen& seen, Findings& findings);
void partNotListed(const Seen& seen, Findings& findings);
void partVolts(const Seen& seen, Findings& findings);
void pumpSucksDry(const Seen& seen, Findings& findings);
void deadEnd(const Seen& seen, Findings& findings);
void sensorLate(const Seen& seen, Findings& findings);
void singleStop(const Seen& seen, Findings& findings);
void inletLockout(const Seen& seen, Findings& findings);
void showerWithoutMixingValve(const Seen& seen, Findings& findings);
void loopBlocked(const Seen& seen, Findings& findings);
void flowMargin(const Seen& seen, Findings& findings);
void heaterLowVolts(const Seen& seen, Findings& findings);
void freezeInBay(const Seen& seen, Findings& findings);
void minimumFire(const Seen& seen, Findings& findings);
void circulatorTooHot(const Seen& seen, Findings& findings);
void loopWithoutCheck(const Seen& seen, Findings& findings);
void regulatorMissing(const Seen& seen, Findings& findings);
void wireDrop(const Seen& seen, Findings& findings);
void fuseAboveWire(const Seen& seen, Findings& findings);
void branchOverloaded(const Seen& seen, Findings& findings);
void loadWithoutFuse(const Seen& seen, Findings& findings);
void tankOverfills(const Seen& seen, Findings& findings);
void outletWithoutSupply(const Seen& seen, Findings& findings);
void openEnd(const Seen& seen, Findings& findings);
void caseWithoutAnswer(const Seen& seen, Findings& findings);
void restsOnEstimates(const Seen& seen, Findings& findings);

}  // namespace tapward::review::rule
