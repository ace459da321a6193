// SPDX-License-Identifier: GPL-3.0-or-later
#include "document/sides.h"

#include <algorithm>
#include <set>
#include <tuple>

#include "parts/tubing.h"

namespace tapward::document {
namespace {

bool endsWalk(const parts::PartKind& kind)
{
    return kind.group == parts::TrayGroup::Outlets || kind.group == parts::TrayGroup::Heating || kind.id == "fresh_tank"
           || kind.id == "demand_pump" || kind.id == "circulator" || kind.id == "motor_valve"
           || kind.id == "mixing_valve";
}

struct PipeOf {
    const Part* pipe;
    std::size_t end;
};

/// Present pipes by the part they end on.
std::multimap<PartId, PipeOf> pipesByPart(const Drawing& drawing)
{
    std::multimap<PartId, PipeOf> pipes;
    for (const Part& part : drawing.parts) {
        if (kindOf(part).isPipe && isPresent(part.stage, View::After)) {
            for (std::size_t end = 0; end < 2; ++end) {
                if (part.ends[end].part != kNoPart) {
                    pipes.emplace(part.ends[end].part, PipeOf{&part, end});
                }
            }
        }
    }
    return pipes;
}

}  // namespace

double tubeLength_m(const Part& pipe)
{
    return kindOf(pipe).field("length_m") ? values(pipe).number("length_m") : 0;  // a dimension is a line too
}

double tubeVolume_m3(const Part& pipe)
{
    return tubeLength_m(pipe) * parts::tube(values(pipe).text("tube")).volume_m3_m();
}

Walk walkFrom(const Drawing& drawing, PartId from, std::string_view port, PartId stop)
{
    Walk met;
    const auto pipes = pipesByPart(drawing);
    // Length, pipe, end by which it is entered, volume.
    std::set<std::tuple<double, PartId, std::size_t, double>> open;
    const auto leave = [&](PartId part, std::string_view only, double length_m, double volume_m3) {
        const auto [first, last] = pipes.equal_range(part);
        for (auto one = first; one != last; ++one) {
            if (only.empty() || one->second.pipe->ends[one->second.end].port == only) {
                open.emplace(length_m, one->second.pipe->id, one->second.end, volume_m3);
            }
        }
    };
    leave(from, port, 0, 0);
    while (!open.empty()) {
        const auto [length_m, id, end, volume_m3] = *open.begin();
        open.erase(open.begin());
        if (!met.emplace(id, Met{length_m, volume_m3, end, static_cast<int>(met.size())}).second) {
            continue;
        }
        const Part& pipe = *drawing.find(id);
        const Part* next = drawing.find(pipe.ends[1 - end].part);
        if (next && next->id != stop && !endsWalk(kindOf(*next))) {
            leave(next->id, {}, length_m + tubeLength_m(pipe), volume_m3 + tubeVolume_m3(pipe));
        }
    }
    return met;
}

Sides::Sides(const Drawing& drawing)
{
    for (const std::string_view wanted : {"tankless_heater", "storage_heater"}) {
        for (const Part& part : drawing.parts) {
            if (heater == kNoPart && part.kind == wanted && isPresent(part.stage, View::After)
                && drawing.pipeAt(part.id, "hot") && drawing.pipeAt(part.id, "cold")) {
                heater = part.id;
            }
        }
    }
    if (heater != kNoPart) {
        hot = walkFrom(drawing, heater, "hot");
        cold = walkFrom(drawing, heater, "cold");
    }
}

WaterSide Sides::of(PartId pipe) const
{
    const auto warm = hot.find(pipe);
    const auto cool = cold.find(pipe);
    if (warm == hot.end() && cool == cold.end()) {
        return WaterSide::None;
    }
    // A pipe that both reach (a crossover is drawn) counts to the side it is nearer to.
    if (warm == hot.end() || (cool != cold.end() && cool->second.length_m < warm->second.length_m)) {
        return WaterSide::Cold;
    }
    return WaterSide::Hot;
}

std::vector<PartId> Sides::inOrder(const Walk& walk)
{
    std::vector<PartId> ids(walk.size());
    for (const auto& [id, met] : walk) {
        ids[static_cast<std::size_t>(met.order)] = id;
    }
    return ids;
}

}  // namespace tapward::document
