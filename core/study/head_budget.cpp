// SPDX-License-Identifier: GPL-3.0-or-later
#include "study/head_budget.h"

#include <algorithm>
#include <map>

namespace tapward::study {

HeadBudget headBudget(const Plant& plant, const network::Network& network, std::span<const Hop> around)
{
    HeadBudget budget;
    std::map<document::PartId, double> losses;
    std::vector<double> lost;
    for (const Hop& hop : around) {
        const Plant::Chain& chain = plant.chains[static_cast<std::size_t>(hop.link)];
        lost.assign(chain.elements.size(), 0);
        network.elementLosses(hop.link, lost);
        for (std::size_t e = 0; e < lost.size(); ++e) {
            const double loss = hop.forward ? lost[e] : -lost[e];
            const bool pump = std::holds_alternative<network::PumpLaw>(chain.elements[e].law);
            if (pump && loss < 0) {
                budget.pumpHead_Pa -= loss;
            } else {
                losses[chain.elementParts[e]] += loss;  // a pump that is pushed through counts as a loss
                budget.sum_Pa += loss;
            }
        }
    }
    for (const auto& [part, loss] : losses) {
        if (loss != 0) {
            budget.items.push_back({part, loss, loss / budget.sum_Pa});
        }
    }
    std::stable_sort(budget.items.begin(), budget.items.end(),
                     [](const HeadItem& a, const HeadItem& b) { return a.loss_Pa > b.loss_Pa; });
    return budget;
}

Result<HeadBudget> headBudget(const document::Drawing& drawing)
{
    const auto plant = makePlant(drawing, document::View::After);
    if (!plant) {
        return tl::unexpected(plant.error());
    }
    LoopMap map = findLoop(drawing, *plant, coldStart(drawing));
    if (map.budget.items.empty()) {
        return problem(map.answer.reason, "See what blocks the loop.");
    }
    return std::move(map.budget);
}

}  // namespace tapward::study
