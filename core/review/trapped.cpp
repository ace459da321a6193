// SPDX-License-Identifier: GPL-3.0-or-later
#include "review/trapped.h"

#include <algorithm>
#include <set>

#include "parts/tubing.h"
#include "water/iapws.h"

namespace tapward::review {
namespace {

using parts::Role;
using Piece = Pipes::Piece;

constexpr double kWorking_Pa = 4e5;  ///< absolute: the pressure the water's figures are taken at
constexpr double kKelvin = 273.15;

Held heldBy(const Piece& piece)
{
    Held held;
    held.volume_m3 = piece.volume_m3;
    const parts::Values values = document::values(*piece.part->part);
    if (piece.isPipe && values.kind().field("tube")) {
        const parts::Tube tube =
            piece.part->part->kind == "pipe_run" ? parts::tubeOf(values) : parts::tube(values.text("tube"));
        held.bore_m = tube.bore_m;
        held.wall_m = tube.wall_m();
        held.elasticity_Pa = tube.elasticity_Pa;
        held.expansion_1_K = tube.expansion_1_K;
    }
    return held;
}

/// Water that has somewhere to go: a vessel with air, a tank or an end open to the air.
bool gives(const Piece& piece)
{
    const Role role = piece.part->model.role;
    const bool toOutside = piece.u == Pipes::kOutside || piece.v == Pipes::kOutside;
    return role == Role::Accumulator || (toOutside && role == Role::FreshTank && !piece.shut);
}

}  // namespace

double waterGrowth(double from_C, double to_C)
{
    return water::iapws::region1(to_C + kKelvin, kWorking_Pa).volume
               / water::iapws::region1(from_C + kKelvin, kWorking_Pa).volume
           - 1;
}

double trappedRise_Pa(const std::vector<Held>& section, double give_m3_Pa)
{
    double excess_m3 = 0, compliance_m3_Pa = give_m3_Pa;
    for (const Held& held : section) {
        const double middle_K = (held.from_C + held.to_C) / 2 + kKelvin;
        excess_m3 +=
            held.volume_m3 * (waterGrowth(held.from_C, held.to_C) - 3 * held.expansion_1_K * (held.to_C - held.from_C));
        const double stretch = held.elasticity_Pa > 0 ? held.bore_m / (held.wall_m * held.elasticity_Pa) : 0;
        compliance_m3_Pa += held.volume_m3 * (water::iapws::region1(middle_K, kWorking_Pa).compressibility + stretch);
    }
    return compliance_m3_Pa > 0 ? excess_m3 / compliance_m3_Pa : 0;
}

std::vector<ClosedSection> closedSections(const Seen& seen)
{
    std::vector<ClosedSection> sections;
    const study::LoopAnswer& loop = seen.prediction.loop;
    for (const study::PlantPart* heater : heaters(seen.after)) {
        const Piece* own = seen.pipes.find(heater->id);
        if (!own) {
            continue;
        }
        const auto shut = [](const Piece& piece) { return piece.shut; };
        const std::vector<char> inside = seen.pipes.reached({own->u, own->v}, shut);
        const auto isInside = [&](int place) {
            return place != Pipes::kOutside && inside[static_cast<std::size_t>(place)];
        };
        std::set<document::PartId> warmed{heater->id};
        if (loop.heater == heater->id) {
            warmed.insert(loop.hotPath.begin(), loop.hotPath.end());
        }
        ClosedSection section;
        section.heater = heater;
        section.from_C = loop.coldStart_C;
        section.to_C = heater->model.tankless ? heater->model.tankless->setpoint_C : heater->model.storage->setpoint_C;
        std::vector<Held> water;
        double give_m3_Pa = 0;
        bool relieved = false;
        for (const Piece& piece : seen.pipes.pieces) {
            if (!isInside(piece.u) && !isInside(piece.v)) {
                continue;
            }
            relieved = relieved || gives(piece);
            const Role role = piece.part->model.role;
            const bool toOutside = piece.u == Pipes::kOutside || piece.v == Pipes::kOutside;
            const bool edge = !toOutside && !(isInside(piece.u) && isInside(piece.v));
            if (role == Role::CitySupply || (edge && role != Role::Outlet)) {
                section.closedBy.push_back(piece.part->id);
            }
            if (piece.part->model.role == Role::DemandPump && piece.part->model.supply) {
                give_m3_Pa = piece.part->model.supply->compliance_m3_Pa;  // hoses and tubing
            }
            Held held = heldBy(piece);
            held.from_C = section.from_C;
            held.to_C = warmed.contains(piece.part->id) ? section.to_C : section.from_C;
            section.heated_m3 += held.to_C > held.from_C ? held.volume_m3 : 0;
            water.push_back(held);
        }
        if (relieved || section.to_C <= section.from_C) {
            continue;
        }
        std::sort(section.closedBy.begin(), section.closedBy.end());
        section.closedBy.erase(std::unique(section.closedBy.begin(), section.closedBy.end()), section.closedBy.end());
        section.rise_Pa = trappedRise_Pa(water, give_m3_Pa);
        sections.push_back(std::move(section));
    }
    return sections;
}

}  // namespace tapward::review
