// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "parts/part_kind.h"

namespace tapward::parts {

/// Fields every tap has: rated flow at rated pressure, its flow regulator, hot share.
std::vector<Field> outletFields(double ratedFlow_m3s, std::string_view flowSource, double capFlow_m3s, double hotShare);
/// "serves": which lines come to it. Not for kinds that only take cold.
Field servesField(std::string_view initial);
/// "hot" and "cold" on the lower edge, hot on the left as at a sink.
std::vector<Port> outletPorts();

/// Model from those fields: each line has its own orifice to the open air, shut at rest.
/// @param hotPort,coldPort  port index or -1
Result<PartModel> outletModel(const Values& values, int hotPort, int coldPort);
/// The same, ports as in outletPorts() and the lines the "serves" field names.
Result<PartModel> outletModel(const Values& values);

}  // namespace tapward::parts
