// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <span>
#include <utility>
#include <vector>

#include "study/loop.h"

namespace tapward::study {

inline constexpr double kNothing_m3s = 1e-9;  ///< below this a loop does not run

inline int endJunction(const Plant::Chain& chain, bool forward) { return forward ? chain.to : chain.from; }
inline int startJunction(const Plant::Chain& chain, bool forward) { return forward ? chain.from : chain.to; }

bool hasRole(const Plant& plant, const Plant::Chain& chain, parts::Role role);

/// Shortest way (in number of links) from one junction to another over links with water in them, ignoring
/// what is shut; supplies, outlets and the links left out are not walked. Used to say what blocks a loop.
std::vector<Hop> anyWay(const Plant& plant, int from, int to, const std::vector<int>& without = {});

/// What the circulators move together: what they deliver, less what goes from one of them straight into another.
double pumpedFlow(const Plant& plant, std::span<const double> flows);

/// A link that lets water back from the return into the hot line past the heater, or -1. Ways through pumps, motorized
/// valves, mixers, outlets and what is shut are not looked at.
/// @param hot, cold  junctions at the heater's ends
int bypassLink(const Plant& plant, const network::Network& network, std::span<const double> flows, int heaterLink,
               int hot, int cold);

/// The check valve on the way that takes the most to open, and how much, Pa; none on a way without.
std::pair<document::PartId, double> stiffestCheck(const Plant& plant, const network::Network& network,
                                                  const std::vector<Hop>& way);
/// What on this way lets nothing through in the walked direction.
document::PartId blockedPart(const Plant& plant, const network::Network& network, const std::vector<Hop>& way);

}  // namespace tapward::study
