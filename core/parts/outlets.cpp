// SPDX-License-Identifier: GPL-3.0-or-later
#include "parts/outlets.h"

#include "parts/common.h"

namespace tapward::parts {

std::vector<Field> outletFields(double ratedFlow_m3s, std::string_view flowSource, double capFlow_m3s, double hotShare)
{
    return {
        nameField(),
        {.key = "rated_flow_m3s",
         .label = "Flow, fully open",
         .quantity = Quantity::Flow,
         .least = 1e-6,
         .most = 1e-2,
         .initial = ratedFlow_m3s,
         .source = flowSource},
        {.key = "rated_pressure_Pa",
         .label = "... at pressure",
         .quantity = Quantity::Pressure,
         .least = 1e3,
         .most = 2e6,
         .initial = 60 * us::kPsi,
         .source = "pressure taps are rated at in the US, published",
         .help = "Flow grows with the square root of pressure from there."},
        {.key = "cap_flow_m3s",
         .label = "Flow regulator",
         .quantity = Quantity::Flow,
         .most = 1e-2,
         .initial = capFlow_m3s,
         .source = kCommonPractice,
         .help = "Flow it never passes.",
         .unset = "none"},
        {.key = "hot_share",
         .label = "Usual hot share",
         .quantity = Quantity::Percent,
         .most = 1,
         .initial = hotShare,
         .source = kCommonPractice,
         .help = "Share of the hot line when it is opened; 0 is all cold."},
    };
}

Field servesField(std::string_view initial)
{
    return {.key = "serves",
            .label = "Lines",
            .type = FieldType::Choice,
            .initial = std::string(initial),
            .source = "look",
            .choices = {{"hot_cold", "Hot and cold"}, {"hot", "Hot only"}, {"cold", "Cold only"}}};
}

std::vector<Port> outletPorts()
{
    return {{"hot", "Hot", Side::Bottom, -1, 2, true}, {"cold", "Cold", Side::Bottom, 1, 2, true}};
}

Result<PartModel> outletModel(const Values& values, int hotPort, int coldPort)
{
    PartModel model;
    model.role = Role::Outlet;
    OutletModel outlet;
    outlet.ratedFlow_m3s = values.number("rated_flow_m3s");
    outlet.ratedPressure_Pa = values.number("rated_pressure_Pa");
    network::ResistanceLaw orifice;
    orifice.R = squareLaw(outlet.ratedPressure_Pa, outlet.ratedFlow_m3s);
    orifice.opening = 0;
    orifice.capFlow_m3s = values.number("cap_flow_m3s");
    if (hotPort >= 0) {
        outlet.hotPath = static_cast<int>(model.paths.size());
        model.paths.push_back({hotPort, Path::kOutside, {orifice}, {}});
    }
    if (coldPort >= 0) {
        outlet.coldPath = static_cast<int>(model.paths.size());
        model.paths.push_back({coldPort, Path::kOutside, {orifice}, {}});
    }
    outlet.defaultHotShare = hotPort < 0 ? 0 : coldPort < 0 ? 1 : values.number("hot_share");
    model.outlet = outlet;
    return model;
}

Result<PartModel> outletModel(const Values& values)
{
    const std::string& serves = values.text("serves");
    return outletModel(values, serves == "cold" ? -1 : 0, serves == "hot" ? -1 : 1);
}

}  // namespace tapward::parts
