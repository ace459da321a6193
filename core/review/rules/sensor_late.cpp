// SPDX-License-Identifier: GPL-3.0-or-later
#include <algorithm>
#include <cmath>

#include "base/units.h"
#include "review/rules/rules.h"
#include "review/seen.h"

namespace tapward::review::rule {
namespace {

/// Seconds the water takes from the join at the tap to the sensor in the return; nothing for a sensor elsewhere.
std::optional<double> onTheWay_s(const Seen& seen, const study::PlantPart& sensor)
{
    const study::LoopAnswer& loop = seen.prediction.loop;
    const auto at = std::find(loop.returnPath.begin(), loop.returnPath.end(), sensor.id);
    if (at == loop.returnPath.end() || !loop.flow_m3s || *loop.flow_m3s <= 0) {
        return std::nullopt;
    }
    double held_m3 = 0;
    document::PartId before = document::kNoPart;
    for (auto id = loop.returnPath.begin(); id != at; ++id) {
        if (*id == before) {
            continue;  // a join stands there once for each of its legs
        }
        before = *id;
        for (const Pipes::Piece& piece : seen.pipes.pieces) {
            held_m3 += piece.part->id == *id ? piece.volume_m3 : 0;
        }
    }
    return held_m3 / *loop.flow_m3s;
}

/// Nothing is drawn and nothing is broken.
bool isPlainRun(const document::Drawing& drawing, const std::string& caseName)
{
    const document::Case* script = drawing.findCase(caseName);
    return script && std::none_of(script->actions.begin(), script->actions.end(), [](const document::Action& action) {
               return action.kind == document::ActionKind::OpenOutlet
                      || action.kind == document::ActionKind::StartFault;
           });
}

}  // namespace

void sensorLate(const Seen& seen, Findings& findings)
{
    constexpr double kLate_s = 5;       // some 0.04 gal at 0.5 gpm: common practice, no published source
    constexpr double kOvershoot_K = 3;  // over the stop: common practice, no published source
    for (const study::PlantPart* controller : seen.after.withRole(parts::Role::Controller)) {
        const parts::ControllerModel& box = *controller->model.controller;
        const study::PlantPart* sensor = partCalled(seen, box.stopSensor);
        if (!box.spec.stopByTemperature || !sensor || !sensor->model.sensor) {
            continue;
        }
        const double way_s = onTheWay_s(seen, *sensor).value_or(0);
        const double lag_s = sensor->model.sensor->lag_s;
        // The water at the tap when the run has ended, against the stop. A case that draws shows what the heater
        // gives by then, not what the run left.
        struct {
            double value = -1e9;
            std::string caseName;
        } worst;
        for (const study::CaseResult& result : seen.prediction.cases) {
            const study::Scalar* tap = result.scalar("hottest_tap");
            const bool stopped = std::any_of(result.events.begin(), result.events.end(),
                                             [](const study::Event& event) { return event.id == "stop_temperature"; });
            if (result.view == document::View::After && tap && tap->value && stopped
                && isPlainRun(seen.drawing, result.name) && *tap->value > worst.value) {
                worst = {*tap->value, result.name};
            }
        }
        const double over_K = worst.value - box.spec.stopTemperature_C;
        if (way_s + lag_s < kLate_s || over_K < kOvershoot_K) {
            continue;
        }
        Finding finding;
        finding.severity = Severity::Caution;
        finding.what = {
            "{0} reads late: {1} for the water's way from the tap and {2} of its own. The run is stopped at "
            "{3}, and the tap gets {4}.",
            {sensor->part->tag, Measure{way_s, Quantity::Time}, Measure{lag_s, Quantity::Time},
             Measure{box.spec.stopTemperature_C, Quantity::Temperature}, Measure{worst.value, Quantity::Temperature}}};
        finding.why = {"That is {0} over the stop; every second of delay sends more hot water past the tap.",
                       {Measure{over_K, Quantity::TemperatureDifference}}};
        finding.remedy = "Put the sensor in the water at the join by the tap, or set the stop lower by as much.";
        finding.source = kPractice;
        finding.part = sensor->id;
        finding.caseName = worst.caseName;
        findings.push_back(std::move(finding));
    }
}

}  // namespace tapward::review::rule
