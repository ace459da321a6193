// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <string>
#include <string_view>
#include <vector>

#include "parts/part_kind.h"

// What many kinds share: fields every part has, ports of a part in a line, small conversions.
namespace tapward::parts {

inline constexpr std::string_view kCommonPractice = "common practice, no published source";
inline constexpr std::string_view kFromMemory = "maker data sheets, not checked";

Field nameField();                       ///< "name": where the part is, what people call it
Field priceField();                      ///< "price": of one piece, 0 = not known
Field drinkingWaterField();              ///< "drinking_water": unknown / listed / not_listed
Field temperatureLimitField(double initial_C);  ///< "temperature_limit_C", 0 = not known
Field pressureLimitField();              ///< "pressure_limit_Pa", 0 = not known
Field lossField(double initial_Pa, std::string_view source);       ///< "loss_Pa" at "loss_flow_m3s"
Field lossFlowField(double initial_m3s);
Field coefficientField(double initialCv, std::string_view source);  ///< "flow_coefficient_m3s_sqrtPa"
Field tubeField(std::string_view initial);                          ///< "tube"
Field fittingsField();                                              ///< "fittings": how tube ends are joined
Field bayField();                                                   ///< "bay_C"
Field controllerField();                                            ///< "controller"
/// "wire_length_m" and "wire_gauge" of a load's own wire, battery to load, and "fuse", the branch it hangs on.
Field wireLengthField(std::string_view help = {});
Field wireGaugeField(std::string_view initial);
Field fuseField(std::string_view help);
Field drinkingField(bool initial);       ///< "drinking": somebody drinks from this tap
Field recirculationField();              ///< "recirculation": what a heater's maker says about a loop

/// "inlet" left, "outlet" right: a part in a line, 4 x 4 modules.
std::vector<Port> inLinePorts();

/// R of the square law that loses `loss_Pa` at `flow_m3s`.
double squareLaw(double loss_Pa, double flow_m3s);
/// R from the kind's loss_Pa and loss_flow_m3s.
double lossR(const Values& values);
/// R from the kind's flow coefficient.
double coefficientR(const Values& values);

/// One piece with the price in the `price` field.
std::vector<Material> onePiece(const Values& values, Message item);

/// One path from port 0 to port 1 with one law and no water of its own.
PartModel inLineModel(Role role, network::Law law);
/// Puts the part's temperature and pressure limits into the model.
void setLimits(PartModel& model, const Values& values);

}  // namespace tapward::parts
