// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <span>
#include <vector>

#include "study/plant.h"
#include "study/prediction.h"
#include "study/wiring_net.h"

namespace tapward::study {

/// A link walked in one direction.
struct Hop {
    int link;
    bool forward;  ///< from -> to
};

/// Where the pump's head goes at the loop's steady flow, on one way around the loop.
struct HeadBudget {
    double flow_m3s = 0;
    double pumpHead_Pa = 0;   ///< given by the circulators on that way
    double sum_Pa = 0;        ///< of the items; equals pumpHead_Pa, heights cancel around a ring
    std::vector<HeadItem> items;  ///< biggest first, one per part
    /// What the list leaves unexplained, as a share of the head.
    double gap() const { return pumpHead_Pa > 0 ? (pumpHead_Pa - sum_Pa) / pumpHead_Pa : 0; }
};

/// The loop as it runs at rest temperatures with every outlet shut: which way the water goes.
struct LoopMap {
    LoopAnswer answer;
    std::vector<Hop> hotWay;     ///< heater outlet to the join where the return leaves
    std::vector<Hop> returnWay;  ///< from there to the heater inlet
    int flowLink = -1;           ///< link that carries the heater's whole flow and no supply water
    bool flowForward = true;     ///< ... and which way
    int countLink = -1;          ///< link where what is pumped is counted: the meter's, else one with all of it
    bool countForward = true;
    int tapJunction = -1;        ///< where the return leaves the hot line
    int coldJunction = -1;       ///< of answer.coldEntry
    HeadBudget budget;           ///< empty when the loop does not run
};

/// Settings for a steady question: outlets shut, drain valves shut, supply connected.
void setAtRest(const Plant& plant, network::Network& network);
/// All water at one temperature.
void setWater(network::Network& network, double celsius);
/// Motorized valves open, circulators at the speed the wiring gives them with this supply, controllers and
/// heater boards working; solved, currents and flows together.
/// @param solved  gets the wiring as solved, where wanted
const network::Solution& runLoop(const Plant& plant, network::Network& network, Supply supply,
                                 WiringNet* solved = nullptr);

/// Water temperature the steady loop question is asked at: the first case that presses a button, else the
/// first case, else a mild day.
double coldStart(const document::Drawing& drawing);

LoopMap findLoop(const document::Drawing& drawing, const Plant& plant, double water_C);

/// Why an open outlet gives no (hot, where it can) water with the network as it is set: nothing feeds it, or a
/// part in the way lets nothing through (named). Empty when some supply reaches it.
Message whyNoWater(const Plant& plant, const network::Network& network, const PlantPart& outlet);

/// Water held between two places along flowing links: from the heater's outlet to a place in a link
/// (volume fraction from its `from` end), or nothing when no way leads there. `flows` says which way the
/// water goes; links at rest are not walked, except the one looked for.
std::optional<double> volumeOnTheWay(const Plant& plant, const thermal::Field& field, std::span<const double> flows,
                                     int fromJunction, int toLink, double toFraction);

}  // namespace tapward::study
