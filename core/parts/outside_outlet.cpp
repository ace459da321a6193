// SPDX-License-Identifier: GPL-3.0-or-later
#include "parts/outside_outlet.h"

#include "parts/common.h"
#include "parts/outlets.h"

namespace tapward::parts {
namespace {

Result<PartModel> model(const Values& values) { return outletModel(values); }

std::vector<Material> materials(const Values& values) { return onePiece(values, "Outside outlet"); }

std::vector<Field> fields()
{
    std::vector<Field> all = outletFields(2.0 * us::kGpm, kFromMemory, 2.0 * us::kGpm, 0.5);
    all.push_back(servesField("hot_cold"));
    all.push_back(priceField());
    return all;
}

}  // namespace

const PartKind& outsideOutlet()
{
    static const PartKind kind{
        .id = "outside_outlet",
        .title = "Outside outlet",
        .tagLetter = "OS",
        .searchWords = "outside shower spray port hose bib",
        .group = TrayGroup::Outlets,
        .ports = outletPorts(),
        .fields = fields(),
        .faults = {{"drips", "left running thin", FaultEffect::HoldOpening, 0.05},
                   // Both valves open behind a shut hand piece would cross hot and cold; the outlet has no
                   // path between its lines.
                   {"crossover",
                    "hot and cold left open behind a shut hand piece: not simulated, the outlet is drawn "
                    "without a passage between its lines",
                    FaultEffect::NotSimulated, 0}},
        .model = model,
        .materials = materials,
        .shownFields = {"name"},
        .caution = "Hot water can burn; children, elders and people with reduced feeling burn sooner.",
    };
    return kind;
}

}  // namespace tapward::parts
