// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

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

/// What on this way lets nothing through in the walked direction.
document::PartId blockedPart(const Plant& plant, const network::Network& network, const std::vector<Hop>& way);

}  // namespace tapward::study
