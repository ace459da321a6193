// SPDX-License-Identifier: GPL-3.0-or-later
#include "review/winter.h"

#include <algorithm>
#include <cmath>

#include "review/steady.h"
#include "study/loop.h"

namespace tapward::review {
namespace {

using document::PartId;
using parts::Role;
using Piece = Pipes::Piece;

constexpr double kLevel_m = 1e-6;
constexpr double kThrough_m3s = 1e-7;           ///< a flow that carries air or antifreeze along

bool opens(const Piece& piece)
{
    const bool toOutside = piece.u == Pipes::kOutside || piece.v == Pipes::kOutside;
    return toOutside && (piece.part->model.role == Role::Outlet || piece.part->model.role == Role::HandValve);
}

/// Emptied by hand in a step of its own: heaters, and canisters that keep a bowlful below their ports.
bool byHand(const Piece& piece)
{
    const Role role = piece.part->model.role;
    return role == Role::Tankless || role == Role::StorageHeater
           || document::kindOf(*piece.part->part).field("cartridge");
}

/// Somebody noted heights: not everything stands at one.
bool heightsKnown(const Pipes& pipes)
{
    const auto [low, high] = std::minmax_element(pipes.height_m.begin(), pipes.height_m.end());
    return low != pipes.height_m.end() && *high - *low > kLevel_m;
}

/// Places from which water runs out by its weight through open taps and drains.
std::vector<char> emptying(const Pipes& pipes, bool asTheyStand)
{
    std::vector<char> empties(pipes.height_m.size(), 0);
    if (!heightsKnown(pipes)) {
        return empties;
    }
    std::vector<int> waiting;
    const auto enter = [&](int place) {
        if (place != Pipes::kOutside && !empties[static_cast<std::size_t>(place)]) {
            empties[static_cast<std::size_t>(place)] = 1;
            waiting.push_back(place);
        }
    };
    for (const Piece& piece : pipes.pieces) {
        if (opens(piece)) {
            enter(piece.u == Pipes::kOutside ? piece.v : piece.u);
        }
    }
    while (!waiting.empty()) {
        const int low = waiting.back();
        waiting.pop_back();
        for (const int index : pipes.at[static_cast<std::size_t>(low)]) {
            const Piece& piece = pipes.pieces[static_cast<std::size_t>(index)];
            const int high = piece.other(low);
            if (high == Pipes::kOutside || opens(piece) || (asTheyStand && piece.shut) || !piece.leads(high)) {
                continue;
            }
            const auto& height = pipes.height_m;
            if (height[static_cast<std::size_t>(high)] >= height[static_cast<std::size_t>(low)] - kLevel_m) {
                enter(high);
            }
        }
    }
    return empties;
}

bool drains(const Pipes& pipes, const Piece& piece, const std::vector<char>& empties)
{
    if (piece.u == Pipes::kOutside || piece.v == Pipes::kOutside) {
        const int inside = piece.u == Pipes::kOutside ? piece.v : piece.u;
        return inside != Pipes::kOutside && empties[static_cast<std::size_t>(inside)];
    }
    const auto u = static_cast<std::size_t>(piece.u), v = static_cast<std::size_t>(piece.v);
    const double fall_m = pipes.height_m[u] - pipes.height_m[v];
    return (fall_m >= -kLevel_m && empties[v]) || (fall_m <= kLevel_m && empties[u]);
}

/// Links with a flow through them when taps and drains are opened one at a time.
void markFlows(const study::Plant& plant, network::Network& network, std::vector<char>& through)
{
    const auto mark = [&] {
        const auto& flows = network.solve().flow_m3s;
        for (std::size_t link = 0; link < flows.size(); ++link) {
            through[link] = through[link] || std::abs(flows[link]) > kThrough_m3s;
        }
    };
    for (const study::PlantPart& part : plant.parts) {
        if (part.model.role == Role::Outlet) {
            for (const double share : {1.0, 0.0}) {
                open(network, part, share);
                mark();
            }
            close(network, part);
        } else if (part.model.role == Role::HandValve && part.model.paths.front().to == parts::Path::kOutside) {
            open(network, part);
            mark();
            close(network, part);
        }
    }
}

void openValves(const study::Plant& plant, network::Network& network)
{
    for (const study::PlantPart* valve : plant.withRole(Role::MotorValve)) {
        open(network, *valve);
    }
    for (const study::PlantPart* valve : plant.withRole(Role::HandValve)) {
        if (valve->model.paths.front().to != parts::Path::kOutside) {
            open(network, *valve);
        }
    }
}

/// Links that are blown out or flushed.
std::vector<char> cleared(const study::Plant& plant, bool asTheyStand)
{
    std::vector<char> through(plant.chains.size(), 0);
    if (has(plant, Supply::City)) {
        network::Network air = onSupply(plant, Supply::City, 0);
        if (!asTheyStand) {
            openValves(plant, air);
        }
        markFlows(plant, air, through);
    }
    if (has(plant, Supply::Pump)) {
        network::Network antifreeze = onRunningPump(plant);
        if (!asTheyStand) {
            openValves(plant, antifreeze);
        }
        markFlows(plant, antifreeze, through);
    }
    return through;
}

std::vector<char> roundTheLoop(const study::Plant& plant)
{
    std::vector<char> through(plant.chains.size(), 0);
    network::Network network = plant.makeNetwork();
    study::setAtRest(plant, network);
    const auto& flows = study::runLoop(plant, network, study::batterySupply(plant)).flow_m3s;
    for (std::size_t link = 0; link < flows.size(); ++link) {
        through[link] = std::abs(flows[link]) > kThrough_m3s;
    }
    return through;
}

void sortIds(std::vector<PartId>& ids)
{
    std::sort(ids.begin(), ids.end());
    ids.erase(std::unique(ids.begin(), ids.end()), ids.end());
}

/// Pieces that stay full, grouped by the places they share.
std::vector<WinterSegment> group(const Pipes& pipes, const std::vector<char>& stays, const std::vector<char>& loopFlows,
                                 const std::vector<char>& opened)
{
    std::vector<WinterSegment> segments;
    std::vector<char> taken(pipes.pieces.size(), 0);
    for (std::size_t first = 0; first < pipes.pieces.size(); ++first) {
        if (!stays[first] || taken[first]) {
            continue;
        }
        WinterSegment segment;
        segment.loopClearsIt = segment.valvesClearIt = true;
        double lowest_m = 1e9;
        std::vector<std::size_t> waiting{first};
        taken[first] = 1;
        while (!waiting.empty()) {
            const std::size_t index = waiting.back();
            waiting.pop_back();
            const Piece& piece = pipes.pieces[index];
            if (piece.volume_m3 > 0) {
                segment.parts.push_back(piece.part->id);
            }
            segment.volume_m3 += piece.volume_m3;
            if (piece.volume_m3 > 0) {
                segment.loopClearsIt = segment.loopClearsIt && loopFlows[static_cast<std::size_t>(piece.link)];
                segment.valvesClearIt = segment.valvesClearIt && opened[index];
            }
            if (piece.shut && !opens(piece)) {
                segment.valves.push_back(piece.part->id);
            }
            for (const int place : {piece.u, piece.v}) {
                if (place == Pipes::kOutside) {
                    continue;
                }
                if (pipes.height_m[static_cast<std::size_t>(place)] < lowest_m && piece.isPipe) {
                    lowest_m = pipes.height_m[static_cast<std::size_t>(place)];
                    segment.lowest = piece.part->id;
                }
                for (const int next : pipes.at[static_cast<std::size_t>(place)]) {
                    const auto n = static_cast<std::size_t>(next);
                    const Piece& neighbour = pipes.pieces[n];
                    if (neighbour.shut && !opens(neighbour) && !stays[n]) {
                        segment.valves.push_back(neighbour.part->id);
                    }
                    if (stays[n] && !taken[n]) {
                        taken[n] = 1;
                        waiting.push_back(n);
                    }
                }
            }
        }
        sortIds(segment.parts);
        sortIds(segment.valves);
        // A fitting on its own holds drops.
        constexpr double kDrops_m3 = 2e-5;
        if (segment.volume_m3 > kDrops_m3) {
            segments.push_back(std::move(segment));
        }
    }
    return segments;
}

}  // namespace

WinterPlan winterPlan(const document::Drawing& drawing, const study::Plant& plant, const Pipes& pipes)
{
    WinterPlan plan;
    const std::vector<char> empties = emptying(pipes, true), emptiesOpen = emptying(pipes, false);
    const std::vector<char> through = cleared(plant, true), throughOpen = cleared(plant, false);
    std::vector<char> stays(pipes.pieces.size(), 0), opened(pipes.pieces.size(), 0);
    for (std::size_t i = 0; i < pipes.pieces.size(); ++i) {
        const Piece& piece = pipes.pieces[i];
        const auto link = static_cast<std::size_t>(piece.link);
        if (opens(piece) && piece.part->model.role == Role::HandValve) {
            plan.drains.push_back(piece.part->id);
        }
        if (byHand(piece) || (piece.u == Pipes::kOutside || piece.v == Pipes::kOutside)) {
            continue;
        }
        const bool falls = drains(pipes, piece, empties);
        if (piece.isPipe && falls) {
            plan.drained.push_back(piece.part->id);
        } else if (piece.isPipe && through[link]) {
            plan.cleared.push_back(piece.part->id);
        }
        stays[i] = !falls && !through[link];
        opened[i] = drains(pipes, piece, emptiesOpen) || throughOpen[link];
    }
    for (std::vector<PartId>* ids : {&plan.drains, &plan.drained, &plan.cleared}) {
        sortIds(*ids);
    }
    plan.full = group(pipes, stays, roundTheLoop(plant), opened);
    plan.heightsKnown = heightsKnown(pipes);
    plan.steps = winterSteps(drawing, plant, plan);
    return plan;
}

WinterPlan winterPlan(const document::Drawing& drawing)
{
    const Result<study::Plant> plant = study::makePlant(drawing, document::View::After);
    return plant && !plant->chains.empty() ? winterPlan(drawing, *plant, pipesOf(drawing, *plant)) : WinterPlan{};
}

}  // namespace tapward::review
