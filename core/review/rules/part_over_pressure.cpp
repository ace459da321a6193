// SPDX-License-Identifier: GPL-3.0-or-later
#include <algorithm>
#include <cmath>

#include "review/pressure_rating.h"
#include "review/rules/rules.h"
#include "review/seen.h"
#include "review/steady.h"

namespace tapward::review::rule {
namespace {

/// Highest standing pressure at each junction on any supply.
std::vector<double> standing(const study::Plant& plant)
{
    std::vector<double> most(static_cast<std::size_t>(plant.junctions), 0);
    double cutOut_Pa = 0;
    for (const study::PlantPart* pump : plant.withRole(parts::Role::DemandPump)) {
        cutOut_Pa = std::max(cutOut_Pa, pump->model.supply ? pump->model.supply->cutOut_Pa : 0);
    }
    for (const Supply supply : {Supply::City, Supply::Pump}) {
        if (!has(plant, supply)) {
            continue;
        }
        network::Network network = onSupply(plant, supply, cutOut_Pa);
        const auto& pressures = network.solve().pressure_Pa;
        for (std::size_t j = 0; j < most.size(); ++j) {
            most[j] = std::isfinite(pressures[j]) ? std::max(most[j], pressures[j]) : most[j];
        }
    }
    return most;
}

}  // namespace

void partOverPressure(const Seen& seen, Findings& findings)
{
    const std::vector<double> most = standing(seen.after);
    std::string tubes;
    document::PartId firstTube = document::kNoPart;
    double tube_Pa = 0, tubeLimit_Pa = 0;
    for (const study::PlantPart& part : seen.after.parts) {
        const double limit_Pa = part.model.rolePressureLimit_Pa;
        double pressure_Pa = 0;
        for (const study::Place& place : part.places) {
            if (place.link < 0) {
                continue;
            }
            const auto& chain = seen.after.chains[static_cast<std::size_t>(place.link)];
            for (const int junction : {chain.from, chain.to}) {
                pressure_Pa =
                    junction < 0 ? pressure_Pa : std::max(pressure_Pa, most[static_cast<std::size_t>(junction)]);
            }
        }
        // A regulator's rounding and a metre of height are no overload.
        if (limit_Pa <= 0 || pressure_Pa <= 1.02 * limit_Pa) {
            continue;
        }
        if (document::kindOf(*part.part).isPipe) {  // all tube at once
            tubes += (tubes.empty() ? "" : ", ") + part.part->tag;
            firstTube = firstTube == document::kNoPart ? part.id : firstTube;
            tube_Pa = std::max(tube_Pa, pressure_Pa);
            tubeLimit_Pa = limit_Pa;
            continue;
        }
        Finding finding;
        finding.severity = Severity::Danger;
        finding.what = {
            "{0} is rated for {1}; the supply can put {2} on it.",
            {part.part->tag, Measure{limit_Pa, Quantity::Pressure}, Measure{pressure_Pa, Quantity::Pressure}}};
        finding.why = "Over its rating a part can leak or burst, and hot water sprays.";
        finding.remedy = "Fit or lower the pressure regulator, or take a part with a higher rating.";
        finding.source = "the part's own rating";
        finding.part = part.id;
        findings.push_back(std::move(finding));
    }
    if (firstTube != document::kNoPart) {
        Finding finding;
        finding.severity = Severity::Danger;
        finding.what = {"The supply can put {0} on {1}; this tube is rated for {2}, hot.",
                        {Measure{tube_Pa, Quantity::Pressure}, tubes, Measure{tubeLimit_Pa, Quantity::Pressure}}};
        finding.why = "Over its rating tube and joints can leak or burst, and hot water sprays.";
        finding.remedy = "Fit or lower the pressure regulator.";
        finding.source = "ASTM F876 and D2846: 100 psi at 180 °F; read the tube's print line";
        finding.part = firstTube;
        findings.push_back(std::move(finding));
    }
}

}  // namespace tapward::review::rule
