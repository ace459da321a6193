// SPDX-License-Identifier: GPL-3.0-or-later
#include "study/wiring.h"

#include <algorithm>
#include <cmath>

#include "parts/wire_gauge.h"
#include "study/curves.h"
#include "study/loop.h"
#include "study/simulate.h"

namespace tapward::study {
namespace {

constexpr double kTwelve_V = 12;
constexpr double kDay_s = 86400;

bool runs(const Load& load) { return load.kind != Load::Kind::Valve; }

void drawAll(WiringNet& wiring, bool starting)
{
    for (std::size_t i = 0; i < wiring.loads().size(); ++i) {
        const Load& load = wiring.loads()[i];
        WiringNet::Draw& draw = wiring.draws()[i];
        draw.on = runs(load);
        draw.flow_m3s = load.runOut_m3s;
        draw.share = 1;
        if (starting && load.current_A > 0) {
            draw.share = std::max(1.0, load.start_A / load.current_A);
        }
    }
}

/// How long one run lasts: the first run of the first case that presses the button, else the run timer.
struct Press {
    double lasts_s = 90;
    Message note = "No case runs the loop; 90 s assumed.";
};

Result<Press> pressOf(const document::Drawing& drawing, const std::stop_token& stop)
{
    Press press;
    for (const document::Case& one : drawing.cases) {
        const bool presses = std::any_of(one.actions.begin(), one.actions.end(), [](const document::Action& action) {
            return action.kind == document::ActionKind::PressButton;
        });
        if (one.view != document::View::After || !presses) {
            continue;
        }
        Options options;
        options.onlyCase = one.name;
        options.stop = stop;
        options.cell_m = 0.3;
        const auto prediction = predict(drawing, options);
        if (!prediction) {
            return tl::unexpected(prediction.error());
        }
        double began = std::nan("");
        for (const Event& event : prediction->cases.front().events) {
            if (event.id == "run_started" && std::isnan(began)) {
                began = event.t_s;
            } else if (event.id.starts_with("stop_") && std::isfinite(began)) {
                return Press{event.t_s - began, {"First run of the case {0}.", {one.name}}};
            }
        }
        if (std::isfinite(began)) {
            return Press{one.duration_s - began, {"The run of the case {0} was not stopped within it.", {one.name}}};
        }
    }
    return press;
}

/// Energy of one run, wires and battery losses included where `total`.
void countPress(const Plant& plant, const WiringNet& wiring, double press_s, WiringStudy& study)
{
    for (std::size_t i = 0; i < wiring.loads().size(); ++i) {
        const Load& load = wiring.loads()[i];
        LoadAnswer& answer = study.loads[i];
        double works_s = press_s, current_A = answer.current_A, volts = answer.volts;
        if (load.kind == Load::Kind::Valve) {
            works_s = 2 * plant.find(load.part)->model.motorValve->travel_s;  // there and back
            current_A = load.current_A;
        } else if (load.kind == Load::Kind::Heater) {
            works_s += plant.find(load.part)->model.tankless->postPurge_s;
        }
        answer.perPress_C = current_A * works_s;
        answer.perPress_J = answer.perPress_C * volts;
        study.perPress_C += answer.perPress_C;
        study.restPerDay_C += load.rest_A * kDay_s;
    }
    study.perPress_J = study.perPress_C * study.battery_V;
    study.perDay_C = study.pressesPerDay * study.perPress_C + study.restPerDay_C;
    study.perDay_J = study.perDay_C * study.battery_V;
}

void addCautions(const Plant& plant, WiringStudy& study)
{
    const auto tag = [&](document::PartId id) { return plant.find(id)->part->tag; };
    const auto amps = [](double ampere) { return Measure{ampere, Quantity::Current}; };
    const auto volts = [](double volt) { return Measure{volt, Quantity::Voltage}; };
    for (const BranchAnswer& branch : study.branches) {
        if (branch.fuse == document::kNoPart) {
            for (const document::PartId load : branch.loads) {
                study.cautions.emplace_back(
                    "{0} has no fuse drawn: fuse it at the source end, not above what its wire may carry.",
                    std::vector<Argument>{tag(load)});
            }
            continue;
        }
        if (branch.fuseAboveWire) {
            study.cautions.emplace_back("{0} is rated {1}, above the {2} that AWG {3} behind it may carry.",
                                        std::vector<Argument>{tag(branch.fuse), amps(branch.rating_A),
                                                              amps(*branch.wireLimit_A),
                                                              std::int64_t{branch.thinnestGauge}});
        }
        if (branch.socketExceeded) {
            study.cautions.emplace_back(
                "The socket at {0} carries {1}, more than it is rated for.",
                std::vector<Argument>{tag(branch.fuse), amps(branch.steady_A + branch.other_A)});
        }
        if (branch.fuseBelowLoad) {
            study.cautions.emplace_back(
                "{0} is rated {1}; {2} and a quarter more must pass it.",
                std::vector<Argument>{tag(branch.fuse), amps(branch.rating_A), amps(branch.steady_A + branch.other_A)});
        }
    }
    for (const LoadAnswer& load : study.loads) {
        if (!load.works || !load.starts) {
            study.cautions.emplace_back(
                "{0} gets {1}, too little to work.",
                std::vector<Argument>{tag(load.part), volts(load.works ? load.startVolts : load.volts)});
        } else if (!load.worksLow) {
            study.cautions.emplace_back("{0} gets {1} with the battery at {2}, too little to work.",
                                        std::vector<Argument>{tag(load.part), volts(load.lowVolts), volts(10.5)});
        }
        if (load.length_m > 0 && load.warmDropShare > parts::kOtherDrop) {
            study.cautions.emplace_back("The wire to {0}, warm, loses {1}: {2} of 12 V.",
                                        std::vector<Argument>{tag(load.part), volts(load.warmDrop_V),
                                                              Measure{load.warmDropShare, Quantity::Percent}});
        }
    }
}

}  // namespace

BranchAnswer branchAnswer(const WiringNet& wiring, int index)
{
    const Branch& branch = wiring.branches()[static_cast<std::size_t>(index)];
    BranchAnswer answer;
    answer.fuse = branch.fuse;
    answer.rating_A = branch.rating_A;
    answer.other_A = branch.other_A;
    answer.thinnestGauge = branch.gauge;
    for (const Load& load : wiring.loads()) {
        if (load.branch != index) {
            continue;
        }
        answer.loads.push_back(load.part);
        answer.steady_A += load.current_A;
        answer.inrush_A += std::max(load.start_A, load.current_A);
        if (load.length_m > 0) {
            answer.thinnestGauge = std::max(answer.thinnestGauge, load.gauge);
        }
    }
    answer.inrush_A += branch.other_A;
    const double carried = answer.steady_A + branch.other_A;
    answer.wireLimit_A = parts::largestFuse_A(answer.thinnestGauge);
    if (branch.fuse == document::kNoPart) {
        return answer;
    }
    answer.fuseAboveWire = answer.wireLimit_A && branch.rating_A > *answer.wireLimit_A;
    answer.fuseBelowLoad = branch.rating_A < parts::kFuseOverLoad * carried;
    double room = branch.rating_A / parts::kFuseOverLoad;
    if (branch.socket_A > 0) {
        room = std::min(room, branch.socket_A);
        answer.socketExceeded = carried > branch.socket_A;
    }
    answer.spare_A = room - carried;
    return answer;
}

Result<WiringStudy> wiringStudy(const document::Drawing& drawing, const WiringOptions& options)
{
    const auto plant = makePlant(drawing, document::View::After);
    if (!plant) {
        return tl::unexpected(plant.error());
    }
    const Supply supply = batterySupply(*plant);
    WiringStudy study;
    study.battery_V = supply.volts;
    study.internal_ohm = supply.internal_ohm;
    study.pressesPerDay = options.pressesPerDay;

    // The working point: currents and flows together.
    network::Network network = plant->makeNetwork();
    setAtRest(*plant, network);
    setWater(network, coldStart(drawing));
    WiringNet wiring(*plant);
    runLoop(*plant, network, supply, &wiring);
    study.posts_V = wiring.posts_V();
    study.total_A = wiring.total_A();
    WiringNet other(*plant);
    for (std::size_t i = 0; i < wiring.loads().size(); ++i) {
        const Load& load = wiring.loads()[i];
        const Branch& branch = wiring.branches()[static_cast<std::size_t>(load.branch)];
        LoadAnswer answer;
        answer.part = load.part;
        answer.kind = load.kind;
        answer.volts = wiring.volts(static_cast<int>(i));
        answer.current_A = wiring.current_A(static_cast<int>(i));
        answer.works = answer.volts >= load.minimumVolts && answer.volts > 0;
        answer.gauge = load.gauge;
        answer.length_m = load.length_m;
        double shared_A = branch.other_A;
        for (const Load& beside : wiring.loads()) {
            shared_A += beside.branch == load.branch ? beside.current_A : 0;
        }
        answer.warmDrop_V = 2 * parts::kWarmStranded
                            * (load.length_m * parts::wireResistance_ohm_m(load.gauge) * load.current_A
                               + branch.feed_m * parts::wireResistance_ohm_m(branch.gauge) * shared_A);
        answer.warmDropShare = answer.warmDrop_V / kTwelve_V;
        answer.gaugeFor3Percent = parts::minimumGauge(load.current_A, load.length_m, parts::kCriticalDrop, kTwelve_V);
        answer.gaugeFor10Percent = parts::minimumGauge(load.current_A, load.length_m, parts::kOtherDrop, kTwelve_V);
        answer.gaugeForHeat = parts::gaugeForCurrent(load.current_A);
        study.loads.push_back(answer);
    }
    drawAll(other, true);
    other.solve(supply);
    for (std::size_t i = 0; i < study.loads.size(); ++i) {
        study.loads[i].startVolts = other.volts(static_cast<int>(i));
        study.loads[i].starts = study.loads[i].startVolts >= wiring.loads()[i].minimumVolts;
    }
    drawAll(other, false);
    other.solve({10.5, 0});
    for (std::size_t i = 0; i < study.loads.size(); ++i) {
        study.loads[i].lowVolts = other.volts(static_cast<int>(i));
        study.loads[i].worksLow = study.loads[i].lowVolts >= wiring.loads()[i].minimumVolts;
    }
    for (int b = 0; b < static_cast<int>(wiring.branches().size()); ++b) {
        study.branches.push_back(branchAnswer(wiring, b));
    }

    const LoopMap map = findLoop(drawing, *plant, coldStart(drawing));
    for (const double battery_V : kStudyVolts) {
        VoltageAnswer answer;
        answer.battery_V = battery_V;
        const network::Solution& solution = runLoop(*plant, network, {battery_V, 0}, &wiring);
        for (std::size_t i = 0; i < wiring.loads().size(); ++i) {
            const Load& load = wiring.loads()[i];
            if (load.kind == Load::Kind::Circulator) {
                answer.pump_V.push_back(wiring.volts(static_cast<int>(i)));
            } else if (load.kind == Load::Kind::Heater) {
                answer.heaterWorks = answer.heaterWorks && wiring.volts(static_cast<int>(i)) >= load.minimumVolts;
            }
        }
        if (map.answer.exists && map.answer.heater != document::kNoPart) {
            const Place& heater = plant->find(map.answer.heater)->places[0];
            const double flow = solution.flow_m3s[static_cast<std::size_t>(heater.link)];
            answer.flow_m3s = std::max(0.0, heater.reversed ? -flow : flow);
            if (map.answer.activationFlow_m3s) {
                answer.margin = *answer.flow_m3s / *map.answer.activationFlow_m3s;
            }
        }
        study.voltages.push_back(answer);
    }

    const auto press = pressOf(drawing, options.stop);
    if (!press) {
        return tl::unexpected(press.error());
    }
    study.press_s = press->lasts_s;
    study.pressNote = press->note;
    countPress(*plant, wiring, press->lasts_s, study);
    for (const PlantPart& part : plant->parts) {
        if (part.model.battery && part.model.battery->capacity_C > 0 && !study.capacityShare) {
            study.capacityShare = study.perDay_C / part.model.battery->capacity_C;
        }
    }
    addCautions(*plant, study);
    return study;
}

}  // namespace tapward::study
