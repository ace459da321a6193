// SPDX-License-Identifier: GPL-3.0-or-later
#include "review/pipes.h"

#include <algorithm>
#include <cmath>
#include <limits>
#include <numbers>

#include "study/loop.h"

namespace tapward::review {
namespace {

constexpr double kUnknown = std::numeric_limits<double>::quiet_NaN();

double volumeOf(const thermal::Stretch& stretch)
{
    return stretch.length_m > 0 ? stretch.length_m * std::numbers::pi / 4 * stretch.bore_m * stretch.bore_m
                                : stretch.volume_m3;
}

/// What the pipe's end sits on, in the drawing: an absent part's height counts where it was bridged.
double endHeight(const document::Drawing& drawing, const document::Part& pipe, std::size_t end)
{
    for (const std::size_t e : {end, 1 - end}) {
        if (const document::Part* part = drawing.find(pipe.ends[e].part)) {
            return part->height_m;
        }
    }
    return 0;
}

}  // namespace

std::vector<char> Pipes::reached(const std::vector<int>& from, const std::function<bool(const Piece&)>& bars) const
{
    std::vector<char> seen(height_m.size(), 0);
    std::vector<int> waiting;
    const auto enter = [&](int place) {
        if (place != kOutside && !seen[static_cast<std::size_t>(place)]) {
            seen[static_cast<std::size_t>(place)] = 1;
            waiting.push_back(place);
        }
    };
    for (const int place : from) {
        enter(place);
    }
    while (!waiting.empty()) {
        const int place = waiting.back();
        waiting.pop_back();
        for (const int index : at[static_cast<std::size_t>(place)]) {
            const Piece& piece = pieces[static_cast<std::size_t>(index)];
            if (piece.leads(place) && !bars(piece)) {
                enter(piece.other(place));
            }
        }
    }
    return seen;
}

std::vector<int> Pipes::supplies() const
{
    std::vector<int> places;
    for (const Piece& piece : pieces) {
        const parts::Role role = piece.part->model.role;
        const int inside = piece.u == kOutside ? piece.v : piece.u;
        // The tank's first path is its outlet; its open return only lets water out.
        if ((role == parts::Role::CitySupply || role == parts::Role::FreshTank) && piece.path == 0
            && inside != kOutside) {
            places.push_back(inside);
        }
    }
    return places;
}

const Pipes::Piece* Pipes::find(document::PartId id) const
{
    const auto found =
        std::find_if(pieces.begin(), pieces.end(), [&](const Piece& piece) { return piece.part->id == id; });
    return found == pieces.end() ? nullptr : &*found;
}

Pipes pipesOf(const document::Drawing& drawing, const study::Plant& plant)
{
    Pipes pipes;
    pipes.height_m.assign(static_cast<std::size_t>(plant.junctions), kUnknown);
    network::Network network = plant.makeNetwork();
    study::setAtRest(plant, network);

    for (std::size_t c = 0; c < plant.chains.size(); ++c) {
        const study::Plant::Chain& chain = plant.chains[c];
        const auto elements = network.elements(static_cast<int>(c));
        int place = chain.from;
        for (std::size_t k = 0; k < chain.partsInOrder.size(); ++k) {
            Pipes::Piece piece{};
            piece.part = plant.find(chain.partsInOrder[k]);
            piece.link = static_cast<int>(c);
            for (std::size_t path = piece.part->places.size(); path-- > 0;) {
                piece.path = piece.part->places[path].link == static_cast<int>(c) ? path : piece.path;
            }
            piece.isPipe = document::kindOf(*piece.part->part).isPipe;
            piece.u = place;
            if (k + 1 == chain.partsInOrder.size()) {
                piece.v = chain.to;
            } else {
                piece.v = static_cast<int>(pipes.height_m.size());
                pipes.height_m.push_back(kUnknown);
            }
            place = piece.v;
            for (std::size_t s = 0; s < chain.stretches.size(); ++s) {
                piece.volume_m3 += chain.stretchParts[s] == piece.part->id ? volumeOf(chain.stretches[s]) : 0;
            }
            for (std::size_t e = 0; e < elements.size(); ++e) {
                if (chain.elementParts[e] != piece.part->id) {
                    continue;
                }
                if (network::isShut(elements[e].law)) {
                    piece.shut = true;
                    continue;
                }
                const network::Ways ways = network::ways(elements[e].law);
                piece.uToV = piece.uToV && (elements[e].reversed ? ways.backward : ways.forward);
                piece.vToU = piece.vToU && (elements[e].reversed ? ways.forward : ways.backward);
            }
            pipes.pieces.push_back(piece);
        }
    }

    pipes.at.resize(pipes.height_m.size());
    for (std::size_t i = 0; i < pipes.pieces.size(); ++i) {
        const Pipes::Piece& piece = pipes.pieces[i];
        for (const int place : {piece.u, piece.v}) {
            if (place == Pipes::kOutside) {
                continue;
            }
            const auto p = static_cast<std::size_t>(place);
            pipes.at[p].push_back(static_cast<int>(i));
            if (!piece.isPipe) {
                pipes.height_m[p] = piece.part->part->height_m;
            }
        }
    }
    // A cap, or two pipes joined where a part was taken out.
    for (const Pipes::Piece& piece : pipes.pieces) {
        if (!piece.isPipe) {
            continue;
        }
        const bool reversed = piece.part->places.front().reversed;
        for (const auto& [place, end] : {std::pair{piece.u, reversed ? 1 : 0}, {piece.v, reversed ? 0 : 1}}) {
            if (place != Pipes::kOutside && std::isnan(pipes.height_m[static_cast<std::size_t>(place)])) {
                pipes.height_m[static_cast<std::size_t>(place)] =
                    endHeight(drawing, *piece.part->part, static_cast<std::size_t>(end));
            }
        }
    }
    return pipes;
}

}  // namespace tapward::review
