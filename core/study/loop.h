// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <span>
#include <vector>

#include "study/plant.h"
#include "study/prediction.h"

namespace tapward::study {

/// A link walked in one direction.
struct Hop {
    int link;
    bool forward;  ///< from -> to
};

/// The loop as it runs at rest temperatures with every outlet shut: which way the water goes.
struct LoopMap {
    LoopAnswer answer;
    std::vector<Hop> hotWay;     ///< heater outlet to the join where the return leaves
    std::vector<Hop> returnWay;  ///< from there to the heater inlet
    int flowLink = -1;           ///< link that carries the loop's whole flow and no supply water
    bool flowForward = true;     ///< ... and which way
    int tapJunction = -1;        ///< where the return leaves the hot line
};

/// Settings for a steady question: outlets shut, drain valves shut, supply connected.
void setAtRest(const Plant& plant, network::Network& network);
/// Motorized valves open, circulators at the speed these volts give at their terminals.
void setLoopRunning(const Plant& plant, network::Network& network, double volts);
/// Speed share (1 = rated) of a circulator at this battery voltage with its wire's drop.
double circulatorSpeed(const parts::CirculatorModel& pump, double volts);
double batteryVolts(const Plant& plant);

LoopMap findLoop(const document::Drawing& drawing, const Plant& plant, double water_C);

/// Why an open outlet gives no water with the network as it is set: nothing feeds it, or a part in the way
/// lets nothing through (named). Empty when some supply reaches it.
Message whyNoWater(const Plant& plant, const network::Network& network, const PlantPart& outlet);

/// Water held between two places along flowing links: from the heater's outlet to a place in a link
/// (volume fraction from its `from` end), or nothing when no way leads there. `flows` says which way the
/// water goes; links at rest are not walked, except the one looked for.
std::optional<double> volumeOnTheWay(const Plant& plant, const thermal::Field& field, std::span<const double> flows,
                                     int fromJunction, int toLink, double toFraction);

}  // namespace tapward::study
