// SPDX-License-Identifier: GPL-3.0-or-later
#include <algorithm>

#include "review/fix.h"
#include "review/rules/rules.h"
#include "review/seen.h"

namespace tapward::review::rule {

void valvePowerLoss(const Seen& seen, Findings& findings)
{
    using OnPowerLoss = parts::MotorValveModel::OnPowerLoss;
    const auto& loop = seen.prediction.loop;
    for (const study::PlantPart* valve : seen.after.withRole(parts::Role::MotorValve)) {
        const OnPowerLoss onLoss = valve->model.motorValve->onPowerLoss;
        const bool inLoop =
            std::find(loop.returnPath.begin(), loop.returnPath.end(), valve->id) != loop.returnPath.end();
        if (onLoss == OnPowerLoss::Closes || !inLoop) {
            continue;
        }
        Finding finding;
        finding.severity = Severity::Caution;
        finding.what = onLoss == OnPowerLoss::Opens
                           ? Message("{0} opens when it loses its 12 V.", {valve->part->tag})
                           : Message("{0} stays open when it loses its 12 V during a run.", {valve->part->tag});
        finding.why = "The loop is then open with its pumps stopped: a cold tap can draw hot water through it, and "
                      "nobody sees it.";
        finding.remedy = "Take a valve that closes by spring or capacitor when the power fails.";
        finding.source = kPractice;
        finding.part = valve->id;
        finding.fix = setValue(seen.drawing, valve->id, "on_power_loss", std::string("closes"),
                               {"Take a closing valve for {0}", {valve->part->tag}});
        findings.push_back(std::move(finding));
    }
}

}  // namespace tapward::review::rule
