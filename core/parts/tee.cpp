// SPDX-License-Identifier: GPL-3.0-or-later
#include "parts/tee.h"

#include <numbers>

#include "network/fittings.h"
#include "parts/common.h"
#include "parts/joints.h"
#include "parts/tubing.h"

namespace tapward::parts {
namespace {

/// R of a loss coefficient on the velocity head in this bore, water at 998.2 kg/m³.
double fromK(double k, double bore_m)
{
    const double area = std::numbers::pi / 4 * bore_m * bore_m;
    return k * 998.2 / (2 * area * area);
}

Result<PartModel> model(const Values& values)
{
    const double bore_m = tube(values.text("tube")).bore_m;
    const network::FittingFamily family = fittingFamily(values);
    const double straight = network::fittingK(family, network::FittingShape::TeeRun, bore_m);
    const double turned = network::fittingK(family, network::FittingShape::TeeBranch, bore_m);
    // Split so that run to run loses the run's K and run to branch the branch's K.
    const double run = straight / 2;
    const double branch = turned > run ? turned - run : 0;

    PartModel model;
    for (const auto& [port, k] : {std::pair{0, run}, {1, run}, {2, branch}}) {
        network::ResistanceLaw law;
        law.R = fromK(k, bore_m);
        model.paths.push_back({port, Path::kHub, {law}, {}});
    }
    return model;
}

std::vector<Material> materials(const Values& values)
{
    return onePiece(values, {"Tee, {0}, {1}", {tube(values.text("tube")).title, fittingsTitle(values)}});
}

}  // namespace

const PartKind& tee()
{
    static const PartKind kind{
        .id = "tee",
        .title = "Tee",
        .tagLetter = "T",
        .searchWords = "joint branch fitting",
        .group = TrayGroup::Pipes,
        .width = 2,
        .height = 2,
        .ports = {{"run_a", "Run, one end", Side::Left, -1, 0},
                  {"run_b", "Run, other end", Side::Right, 1, 0},
                  {"branch", "Branch", Side::Bottom, 0, 1}},
        .fields = {nameField(), tubeField("pex_1_2"), fittingsField(), priceField()},
        .model = model,
        .materials = materials,
        .inLine = {"run_a", "run_b"},
    };
    return kind;
}

}  // namespace tapward::parts
