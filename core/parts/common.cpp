// SPDX-License-Identifier: GPL-3.0-or-later
#include "parts/common.h"

#include "network/fittings.h"
#include "parts/tubing.h"
#include "parts/wire_gauge.h"

namespace tapward::parts {

Field nameField()
{
    return {.key = "name",
            .label = "Name",
            .type = FieldType::Text,
            .initial = std::string{},
            .source = "the survey",
            .help = "What people call it: galley sink, rear bath."};
}

Field priceField()
{
    return {.key = "price",
            .label = "Price each",
            .quantity = Quantity::Money,
            .most = 1e6,
            .initial = 0.0,
            .source = "none; 0 means not known",
            .help = "For the parts list.",
            .unset = "not known"};
}

Field drinkingWaterField()
{
    return {.key = "drinking_water",
            .label = "Drinking-water listing",
            .type = FieldType::Choice,
            .initial = std::string{"unknown"},
            .source = "read the part's marking",
            .choices = {{"unknown", "Not known"}, {"listed", "Listed"}, {"not_listed", "Not listed"}},
            .help = "Wetted parts carry a drinking-water mark (NSF/ANSI/CAN 61 and 372)."};
}

Field temperatureLimitField(double initial_C)
{
    return {.key = "temperature_limit_C",
            .label = "Highest water temperature",
            .quantity = Quantity::Temperature,
            .least = 0,
            .most = 200,
            .initial = initial_C,
            .source = kFromMemory,
            .help = "Rating of the wetted parts.",
            .unset = "not known"};
}

Field pressureLimitField()
{
    return {.key = "pressure_limit_Pa",
            .label = "Highest pressure",
            .quantity = Quantity::Pressure,
            .least = 0,
            .most = 5e6,
            .initial = 0.0,
            .source = "none; 0 means not known",
            .help = "Rating of the part.",
            .unset = "not known"};
}

Field lossField(double initial_Pa, std::string_view source)
{
    return {.key = "loss_Pa",
            .label = "Pressure loss",
            .quantity = Quantity::Pressure,
            .least = 0,
            .most = 1e6,
            .initial = initial_Pa,
            .source = source,
            .help = "One reading from the data sheet, at the flow below."};
}

Field lossFlowField(double initial_m3s)
{
    return {.key = "loss_flow_m3s",
            .label = "... at flow",
            .quantity = Quantity::Flow,
            .least = 1e-6,
            .most = 1e-2,
            .initial = initial_m3s,
            .source = "the flow the loss was read at",
            .help = "The loss grows with the square of flow from there."};
}

Field coefficientField(double initialCv, std::string_view source)
{
    return {.key = "flow_coefficient_m3s_sqrtPa",
            .label = "Flow coefficient",
            .quantity = Quantity::FlowCoefficient,
            .least = network::coefficientFromCv(0.01),
            .most = network::coefficientFromCv(1000),
            .initial = network::coefficientFromCv(initialCv),
            .source = source,
            .help = "Cv is the flow in gpm that loses 1 psi, fully open."};
}

Field tubeField(std::string_view initial)
{
    return {.key = "tube",
            .label = "Tube",
            .type = FieldType::Choice,
            .initial = std::string(initial),
            .source = "coach plumbing is 1/2 in nearly everywhere, some 3/8 in: published advice pages",
            .choices = tubeChoices(),
            .help = "Read the print line on the tube."};
}

Field fittingsField()
{
    return {.key = "fittings",
            .label = "Fittings",
            .type = FieldType::Choice,
            .initial = std::string{"polymer_insert"},
            .source = "coaches are built with plastic insert fittings: common practice, no published source",
            .choices = {{"brass_insert", "Brass insert (crimp, clamp)"},
                        {"polymer_insert", "Plastic insert (crimp, clamp)"},
                        {"expansion", "Cold expansion"},
                        {"soldered", "Soldered or cemented socket"}},
            .help = "How ends are joined decides the bore of every fitting."};
}

Field bayField()
{
    return {.key = "bay_C",
            .label = "Air around it",
            .quantity = Quantity::Temperature,
            .least = -50,
            .most = 80,
            .initial = us::celsius(70),
            .source = kCommonPractice,
            .help = "Temperature of the compartment; a case may set another one for everything."};
}

Field controllerField()
{
    return {.key = "controller",
            .label = "Switched by",
            .type = FieldType::PartRef,
            .initial = std::string{},
            .source = "the wiring",
            .refKinds = "controller",
            .help = "Empty: the only controller in the drawing."};
}

Field wireLengthField(std::string_view help)
{
    return {.key = "wire_length_m",
            .label = "Wire, one way",
            .quantity = Quantity::Length,
            .most = 100,
            .initial = 0.0,
            .source = "measure from battery to part; 0 means not known",
            .help = help.empty() ? "The current runs out and back, so twice this counts." : help,
            .unset = "not measured"};
}

Field wireGaugeField(std::string_view initial)
{
    return {.key = "wire_gauge",
            .label = "Wire gauge",
            .type = FieldType::Choice,
            .initial = std::string(initial),
            .source = kCommonPractice,
            .choices = wireGaugeChoices()};
}

Field fuseField(std::string_view help)
{
    return {.key = "fuse",
            .label = "Fused by",
            .type = FieldType::PartRef,
            .initial = std::string{},
            .source = "the wiring",
            .refKinds = "fuse",
            .help = help};
}

Field drinkingField(bool initial)
{
    return {.key = "drinking",
            .label = "People drink from it",
            .type = FieldType::Flag,
            .initial = initial,
            .source = kCommonPractice,
            .help = "Warm water left in the line then is a caution."};
}

Field recirculationField()
{
    return {.key = "recirculation",
            .label = "Maker on a loop",
            .type = FieldType::Choice,
            .initial = std::string{"unknown"},
            .source = "read its manual",
            .choices = {{"unknown", "Not known"}, {"allowed", "Allowed"}, {"not_allowed", "Not allowed"}},
            .help = "Whether the heater's maker allows a recirculation loop."};
}

std::vector<Port> inLinePorts()
{
    return {{"inlet", "Inlet", Side::Left, -2, 0}, {"outlet", "Outlet", Side::Right, 2, 0}};
}

double squareLaw(double loss_Pa, double flow_m3s) { return loss_Pa / (flow_m3s * flow_m3s); }

double lossR(const Values& values) { return squareLaw(values.number("loss_Pa"), values.number("loss_flow_m3s")); }

double coefficientR(const Values& values)
{
    return network::resistanceFromCoefficient(values.number("flow_coefficient_m3s_sqrtPa"));
}

std::vector<Material> onePiece(const Values& values, Message item)
{
    return {{std::move(item), 1, false, values.number("price")}};
}

PartModel inLineModel(Role role, network::Law law)
{
    PartModel model;
    model.role = role;
    model.paths.push_back({0, 1, {std::move(law)}, {}});
    return model;
}

void setLimits(PartModel& model, const Values& values)
{
    model.roleTemperatureLimit_C = values.number("temperature_limit_C");
    model.rolePressureLimit_Pa = values.number("pressure_limit_Pa");
}

}  // namespace tapward::parts
