// SPDX-License-Identifier: GPL-3.0-or-later
#include "review/rules/rules.h"
#include "review/seen.h"
#include "water/water.h"

namespace tapward::review::rule {

void minimumFire(const Seen& seen, Findings& findings)
{
    const study::LoopAnswer& loop = seen.prediction.loop;
    const study::PlantPart* heater = seen.after.find(loop.heater);
    if (!heater || !heater->model.tankless || !loop.flow_m3s || *loop.flow_m3s <= 0) {
        return;
    }
    const heater::TanklessSpec& spec = *heater->model.tankless;
    if (*loop.flow_m3s < spec.activationFlow_m3s) {
        return;  // it does not light at all: another rule says so
    }
    const double floor_W =
        spec.minimumInput_W * spec.efficiency * heater::altitudeFactor(seen.drawing.job.altitude_m, spec.derate);
    const double outlet_C = loop.coldStart_C + floor_W / (water::referenceVolumeHeat() * *loop.flow_m3s);
    if (outlet_C <= spec.setpoint_C) {
        return;
    }
    Finding finding;
    finding.severity = Severity::Caution;
    finding.what = {"At {0} the smallest fire of {1} heats water from {2} to {3}; it is set to {4}.",
                    {Measure{*loop.flow_m3s, Quantity::Flow}, heater->part->tag,
                     Measure{loop.coldStart_C, Quantity::Temperature}, Measure{outlet_C, Quantity::Temperature},
                     Measure{spec.setpoint_C, Quantity::Temperature}}};
    finding.why = "The heater cannot burn lower: expect it to overheat, to go out and relight, or to lock out.";
    finding.remedy = "Raise the loop's flow, or take a heater with a smaller least fire.";
    finding.source = "heating-rate identity: heat = flow x heat capacity x rise";
    finding.part = heater->id;
    findings.push_back(std::move(finding));
}

}  // namespace tapward::review::rule
