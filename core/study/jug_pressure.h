// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <vector>

#include "document/jug.h"

// The pressure that stood at an outlet while its flow was measured, where no gauge was read.
namespace tapward::study {

/// Supplies that are drawn and can feed this outlet's measurement: UseCity, UsePump, both or none, in that order.
std::vector<document::ActionKind> jugSupplies(const document::Drawing& drawing, document::PartId outlet);

/// The pressure with which a case gives the flow that was measured: the outlet alone, fully open (its cold side where it
/// has one), fed by `supply`, its flow regulator left out; the coach as it is, or with the loop where the outlet is part
/// of the proposal. Some ten short runs of a case.
/// Errors: the part takes no jug; the flow is not above 0; the drawing passes less than was measured however wide the
/// outlet is (then a pipe, a height or the supply is not drawn as it is).
Result<document::JugPressure> jugPressure(const document::Drawing& drawing, document::PartId outlet, double flow_m3s,
                                          document::ActionKind supply);

}  // namespace tapward::study
