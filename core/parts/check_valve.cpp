// SPDX-License-Identifier: GPL-3.0-or-later
#include "parts/check_valve.h"

#include "parts/common.h"

namespace tapward::parts {
namespace {

Result<PartModel> model(const Values& values)
{
    network::CheckLaw law;
    law.crack_Pa = values.number("crack_Pa");
    law.R = coefficientR(values);
    PartModel model = inLineModel(Role::CheckValve, law);
    setLimits(model, values);
    return model;
}

std::vector<Material> materials(const Values& values) { return onePiece(values, "Check valve"); }

}  // namespace

const PartKind& checkValve()
{
    static const PartKind kind{
        .id = "check_valve",
        .title = "Check valve",
        .tagLetter = "CV",
        .searchWords = "one-way nonreturn backflow",
        .group = TrayGroup::Valves,
        .ports = inLinePorts(),
        .fields = {nameField(),
                   {.key = "crack_Pa",
                    .label = "Cracking pressure",
                    .quantity = Quantity::Pressure,
                    .most = 100e3,
                    .initial = 0.5 * us::kPsi,
                    .source = "spring type 0.2..1.0 psi, 0.5 usual: common practice, no published source",
                    .help = "Difference at which it first opens; 0.5 psi is 1.2 ft of head."},
                   coefficientField(3.5, "Cv 2..5, not checked"),
                   temperatureLimitField(0),
                   pressureLimitField(),
                   drinkingWaterField(),
                   priceField()},
        .faults = {{"stuck_open", "stuck open", FaultEffect::CheckStuckOpen, 0},
                   {"stuck_shut", "stuck shut", FaultEffect::CheckStuckShut, 0},
                   {"backward", "put in backward: not simulated as a fault, turn the valve in the drawing to see it",
                    FaultEffect::NotSimulated, 0},
                   // A tenth of a gpm backward at 1 psi.
                   {"leaks", "leaks backward", FaultEffect::CheckLeaks, 0.1 * us::kGpm / us::kPsi}},
        .model = model,
        .materials = materials,
        .inLine = {"inlet", "outlet"},
    };
    return kind;
}

}  // namespace tapward::parts
