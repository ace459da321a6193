// SPDX-License-Identifier: GPL-3.0-or-later
#include "parts/regulator.h"

#include "parts/common.h"

namespace tapward::parts {
namespace {

Result<PartModel> model(const Values& values)
{
    network::ResistanceLaw law;
    law.R = lossR(values);
    PartModel model = inLineModel(Role::None, law);
    model.regulatedPressure_Pa = values.number("set_pressure_Pa");
    return model;
}

std::vector<Material> materials(const Values& values) { return onePiece(values, "Pressure regulator"); }

}  // namespace

const PartKind& regulator()
{
    static const PartKind kind{
        .id = "regulator",
        .title = "Pressure regulator",
        .tagLetter = "PR",
        .searchWords = "pressure reducing city water",
        .group = TrayGroup::Supply,
        .ports = inLinePorts(),
        .fields = {nameField(),
                   {.key = "set_pressure_Pa",
                    .label = "Set pressure",
                    .quantity = Quantity::Pressure,
                    .least = 10e3,
                    .most = 1e6,
                    .initial = 50 * us::kPsi,
                    .source = "40..55 psi, published",
                    .help = "The supply behind it gives no more than this."},
                   lossField(8 * us::kPsi, "droops with flow; common practice, no published source"),
                   lossFlowField(3 * us::kGpm),
                   priceField()},
        .faults = {{"clogged", "screen clogged", FaultEffect::Clogged, 10},
                   {"fails_open", "passes the full supply pressure: not simulated, see the pressure caution",
                    FaultEffect::NotSimulated, 0}},
        .model = model,
        .materials = materials,
        .shownFields = {"set_pressure_Pa"},
        .inLine = {"inlet", "outlet"},
    };
    return kind;
}

}  // namespace tapward::parts
