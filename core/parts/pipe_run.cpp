// SPDX-License-Identifier: GPL-3.0-or-later
#include "parts/pipe_run.h"

#include "network/fittings.h"
#include "parts/common.h"
#include "parts/joints.h"
#include "parts/tubing.h"

namespace tapward::parts {
namespace {

Result<PartModel> model(const Values& values)
{
    const Tube size = tubeOf(values);
    const network::FittingFamily family = fittingFamily(values);
    network::PipeLaw law;
    law.length_m = values.number("length_m");
    law.bore_m = size.bore_m;
    law.roughness_m = size.roughness_m;
    law.minorK = values.number("elbows") * network::fittingK(family, network::FittingShape::Elbow, size.bore_m)
                 + values.number("couplings") * network::fittingK(family, network::FittingShape::Coupling, size.bore_m)
                 + values.number("extra_k");

    thermal::Stretch tubeOfWater;
    tubeOfWater.length_m = law.length_m;
    tubeOfWater.bore_m = size.bore_m;
    tubeOfWater.wall_m = size.wall_m();
    tubeOfWater.wallConductivity = size.conductivity_W_mK;
    tubeOfWater.wallVolumeHeat = size.volumeHeat_J_m3K;
    tubeOfWater.insulation_m = values.number("insulation_m");
    tubeOfWater.insulationConductivity = values.number("insulation_conductivity_W_mK");
    tubeOfWater.loss_W_mK = values.number("measured_loss_W_mK");
    tubeOfWater.ambient = values.number("bay_C");

    PartModel model;
    model.paths.push_back({0, 1, {law}, tubeOfWater});
    model.roleTemperatureLimit_C = size.limit_C;
    model.rolePressureLimit_Pa = size.limit_Pa;
    return model;
}

std::vector<Material> materials(const Values& values)
{
    const Tube& size = tube(values.text("tube"));
    const Text ends = fittingsTitle(values);
    std::vector<Material> bought;
    bought.push_back({{"Tube, {0}, {1}", {size.title, std::string(size.standard)}},
                      values.number("length_m"),
                      true,
                      values.number("price_per_m")});
    if (const double elbows = values.number("elbows"); elbows > 0) {
        bought.push_back({{"Elbow, {0}, {1}", {size.title, ends}}, elbows, false, values.number("fitting_price")});
    }
    if (const double couplings = values.number("couplings"); couplings > 0) {
        bought.push_back(
            {{"Coupling, {0}, {1}", {size.title, ends}}, couplings, false, values.number("fitting_price")});
    }
    if (const double insulation_m = values.number("insulation_m"); insulation_m > 0) {
        bought.push_back({{"Pipe insulation, {0}", {size.title}}, values.number("length_m"), true, 0});
    }
    return bought;
}

}  // namespace

const PartKind& pipeRun()
{
    static const PartKind kind{
        .id = "pipe_run",
        .title = "Pipe run",
        .tagLetter = "L",
        .searchWords = "tube line hose pex copper cpvc connector",
        .group = TrayGroup::Pipes,
        .width = 0,
        .height = 0,
        .fields =
            {
                nameField(),
                tubeField("pex_1_2"),
                {.key = "length_m",
                 .label = "Length",
                 .quantity = Quantity::Length,
                 .most = 200,
                 .initial = 1.0,
                 .source = "measure the run; the drawing is not to scale",
                 .help = "Real length of the tube, apart from what is drawn.",
                 .divides = true},
                {.key = "elbows",
                 .label = "Elbows",
                 .type = FieldType::Count,
                 .most = 200,
                 .initial = 0.0,
                 .source = "count them",
                 .help = "Elbow fittings, not bends of the tube.",
                 .divides = true},
                {.key = "couplings",
                 .label = "Couplings",
                 .type = FieldType::Count,
                 .most = 200,
                 .initial = 0.0,
                 .source = "count them",
                 .help = "Straight joints and adapters at the ends.",
                 .divides = true},
                fittingsField(),
                {.key = "extra_k",
                 .label = "Further loss (K)",
                 .most = 1000,
                 .initial = 0.0,
                 .source = "none",
                 .help = "For anything else in the run, on the velocity head in the tube.",
                 .divides = true},
                {.key = "insulation_m",
                 .label = "Insulation thickness",
                 .quantity = Quantity::Bore,
                 .most = 0.1,
                 .initial = 0.0,
                 .source = "look",
                 .help = "0 is a bare tube."},
                {.key = "insulation_conductivity_W_mK",
                 .label = "Insulation conductivity",
                 .quantity = Quantity::Conductivity,
                 .least = 0.01,
                 .most = 1.0,
                 .initial = 0.038,
                 .source = "polyethylene foam 0.035..0.040 W/(m K), test-bench data record"},
                {.key = "own_bore_m",
                 .label = "Bore, measured",
                 .quantity = Quantity::Bore,
                 .most = 0.1,
                 .initial = 0.0,
                 .source = "a caliper at a cut end; 0 means the tube's",
                 .help = "For tube that is in no table, flexible connectors too.",
                 .unset = "as the tube"},
                {.key = "own_wall_m",
                 .label = "Wall thickness, measured",
                 .quantity = Quantity::Bore,
                 .most = 0.02,
                 .initial = 0.0,
                 .source = "a caliper at a cut end; 0 means the tube's",
                 .unset = "as the tube"},
                {.key = "own_conductivity_W_mK",
                 .label = "Conductivity of the wall",
                 .quantity = Quantity::Conductivity,
                 .most = 500,
                 .initial = 0.0,
                 .source = "the maker's sheet; 0 means the tube's",
                 .unset = "as the tube"},
                {.key = "own_wall_heat_J_m3K",
                 .label = "Heat capacity of the wall (J/(m³ K))",
                 .most = 1e7,
                 .initial = 0.0,
                 .source = "density times specific heat, the maker's sheet; 0 means the tube's",
                 .unset = "as the tube"},
                {.key = "measured_loss_W_mK",
                 .label = "Heat loss, measured (W/(m K))",
                 .most = 20,
                 .initial = 0.0,
                 .source = "a cool-down of standing water; 0 means not measured",
                 .help =
                     "Per meter of standing tube and kelvin above the bay's air. It takes the place of insulation and "
                     "outside air.",
                 .unset = "not measured"},
                bayField(),
                {.key = "carries",
                 .label = "Carries",
                 .type = FieldType::Choice,
                 .initial = std::string{"auto"},
                 .source = "the drawing",
                 .choices = {{"auto", "As the drawing shows"},
                             {"cold", "Cold water"},
                             {"hot", "Hot water"},
                             {"return", "Hot water return"},
                             {"drain", "Drain"}},
                 .help = "Decides the line pattern only."},
                {.key = "price_per_m",
                 .label = "Price per meter",
                 .quantity = Quantity::Money,
                 .most = 1e6,
                 .initial = 0.0,
                 .source = "none; 0 means not known",
                 .unset = "not known"},
                {.key = "fitting_price",
                 .label = "Price of a fitting",
                 .quantity = Quantity::Money,
                 .most = 1e6,
                 .initial = 0.0,
                 .source = "none; 0 means not known",
                 .unset = "not known"},
            },
        .faults = {{"clogged", "partly blocked", FaultEffect::Clogged, 10}},
        .model = model,
        .materials = materials,
        .shownFields = {"length_m"},
        .caution =
            "Relieve pressure and cool the water before opening a joint; leak-test and sanitize before drinking.",
        .isPipe = true,
    };
    return kind;
}

}  // namespace tapward::parts
