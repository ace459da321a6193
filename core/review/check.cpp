// SPDX-License-Identifier: GPL-3.0-or-later
#include <algorithm>
#include <tuple>

#include "review/finding.h"
#include "review/rules/rules.h"
#include "review/seen.h"

namespace tapward::review {

const std::vector<Rule>& rules()
{
    static const std::vector<Rule> all{
        {"crossover_open", &rule::crossoverOpen},
        {"scald_at_tap", &rule::scaldAtTap},
        {"cold_outlet_warm", &rule::coldOutletWarm},
        {"drinking_branch_warm", &rule::drinkingBranchWarm},
        {"filter_on_return", &rule::filterOnReturn},
        {"repeated_presses_unprotected", &rule::repeatedPresses},
        {"single_stop", &rule::singleStop},
        {"limit_shares_sensor", &rule::limitSharesSensor},
        {"protection_without_sensor", &rule::protectionWithoutSensor},
        {"clipped_on_sensor", &rule::clippedOnSensor},
        {"sensor_late", &rule::sensorLate},
        {"inlet_lockout_missing", &rule::inletLockout},
        {"loop_open_at_rest", &rule::loopOpenAtRest},
        {"valve_power_loss_unsafe", &rule::valvePowerLoss},
        {"heater_recirculation_unknown", &rule::heaterRecirculation},
        {"shower_without_mixing_valve", &rule::showerWithoutMixingValve},
        {"loop_blocked", &rule::loopBlocked},
        {"check_valve_backward", &rule::checkValveBackward},
        {"pump_dead_headed", &rule::pumpDeadHeaded},
        {"pump_sucks_dry", &rule::pumpSucksDry},
        {"flow_margin_thin", &rule::flowMargin},
        {"heater_low_volts", &rule::heaterLowVolts},
        {"tap_flow_margin", &rule::tapFlowMargin},
        {"demand_pump_cycling", &rule::demandPumpCycling},
        {"minimum_fire_too_strong", &rule::minimumFire},
        {"circulator_too_hot", &rule::circulatorTooHot},
        {"loop_without_check", &rule::loopWithoutCheck},
        {"pump_without_own_check", &rule::pumpWithoutOwnCheck},
        {"tank_overfills", &rule::tankOverfills},
        {"regulator_missing", &rule::regulatorMissing},
        {"part_too_hot", &rule::partTooHot},
        {"part_over_pressure", &rule::partOverPressure},
        {"part_not_listed", &rule::partNotListed},
        {"part_volts_exceeded", &rule::partVolts},
        {"trapped_expansion", &rule::trappedExpansion},
        {"wire_drop", &rule::wireDrop},
        {"fuse_above_wire", &rule::fuseAboveWire},
        {"branch_overloaded", &rule::branchOverloaded},
        {"load_without_fuse", &rule::loadWithoutFuse},
        {"outlet_without_supply", &rule::outletWithoutSupply},
        {"open_end", &rule::openEnd},
        {"dead_end", &rule::deadEnd},
        {"winter_trapped", &rule::winterTrapped},
        {"freeze_in_bay", &rule::freezeInBay},
        {"case_without_answer", &rule::caseWithoutAnswer},
        {"rests_on_estimates", &rule::restsOnEstimates},
    };
    return all;
}

std::vector<Finding> review(const document::Drawing& drawing, const study::Prediction& prediction,
                            const study::Assessment& assessment)
{
    std::vector<Finding> findings;
    const Result<study::Plant> plant = study::makePlant(drawing, document::View::After);
    if (!plant) {
        // A part whose values make no model: nothing else can be said before that is put right.
        const document::Part* part = drawing.findTag(plant.error().where);
        Finding finding;
        finding.rule = "part_without_model";
        finding.severity = Severity::Caution;
        finding.what = plant.error().what;
        finding.why = "A part whose values cannot work together keeps the whole coach from being predicted.";
        finding.remedy = plant.error().remedy;
        finding.source = kPractice;
        finding.part = part ? part->id : document::kNoPart;
        findings.push_back(std::move(finding));
    } else {
        const Pipes pipes = pipesOf(drawing, *plant);
        const Seen seen{drawing, prediction, *plant, pipes, assessment};
        for (const Rule& rule : rules()) {
            const std::size_t before = findings.size();
            rule.look(seen, findings);
            for (std::size_t i = before; i < findings.size(); ++i) {
                findings[i].rule = rule.id;
            }
        }
    }
    for (Finding& finding : findings) {
        for (const document::Dismissal& dismissal : drawing.dismissals) {
            if (dismissal.rule == finding.rule && dismissal.part == finding.part) {
                finding.dismissed = true;
                finding.dismissReason = dismissal.reason;
            }
        }
    }
    const auto place = [](const Finding& finding) {
        const auto& all = rules();
        return std::find_if(all.begin(), all.end(), [&](const Rule& rule) { return rule.id == finding.rule; })
               - all.begin();
    };
    std::stable_sort(findings.begin(), findings.end(), [&](const Finding& a, const Finding& b) {
        return std::tuple(-static_cast<int>(a.severity), place(a), a.part)
               < std::tuple(-static_cast<int>(b.severity), place(b), b.part);
    });
    return findings;
}

}  // namespace tapward::review
