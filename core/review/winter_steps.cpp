// SPDX-License-Identifier: GPL-3.0-or-later
#include <algorithm>
#include <functional>
#include <string>
#include <tuple>

#include "base/units.h"
#include "review/winter.h"

namespace tapward::review {
namespace {

using document::PartId;
using parts::Role;

constexpr double kMostAir_Pa = 30 * us::kPsi;  ///< common practice, no published source
constexpr double kRound_s = 120;               ///< antifreeze on its way round: common practice

std::vector<PartId> which(const study::Plant& plant, const std::function<bool(const study::PlantPart&)>& wanted)
{
    std::vector<PartId> ids;
    for (const study::PlantPart& part : plant.parts) {
        if (wanted(part)) {
            ids.push_back(part.id);
        }
    }
    return ids;
}

}  // namespace

std::string tagsInRuns(const document::Drawing& drawing, const std::vector<PartId>& ids)
{
    struct Tag {
        std::string letters;
        int number;
    };
    std::vector<Tag> sorted;
    for (const PartId id : ids) {
        const document::Part* part = drawing.find(id);
        const std::string tag = part ? part->tag : "?";
        const std::size_t digits = tag.find_last_not_of("0123456789") + 1;
        const bool numbered = digits < tag.size() && tag.size() - digits < 7;
        sorted.push_back({numbered ? tag.substr(0, digits) : tag, numbered ? std::stoi(tag.substr(digits)) : -1});
    }
    std::sort(sorted.begin(), sorted.end(),
              [](const Tag& a, const Tag& b) { return std::tie(a.letters, a.number) < std::tie(b.letters, b.number); });
    std::string all;
    for (std::size_t i = 0; i < sorted.size();) {
        const auto name = [&](std::size_t k) {
            return sorted[k].letters + (sorted[k].number < 0 ? std::string() : std::to_string(sorted[k].number));
        };
        std::size_t end = i + 1;
        while (end < sorted.size() && sorted[i].number >= 0 && sorted[end].letters == sorted[i].letters
               && sorted[end].number == sorted[end - 1].number + 1) {
            ++end;
        }
        all += (all.empty() ? "" : ", ") + name(i);
        if (end - i > 2) {
            all += "-" + name(end - 1);
            i = end;
        } else {
            ++i;
        }
    }
    return all;
}

std::vector<WinterStep> winterSteps(const document::Drawing& drawing, const study::Plant& plant, const WinterPlan& plan)
{
    const auto role = [&](Role wanted) {
        return which(plant, [wanted](const study::PlantPart& part) { return part.model.role == wanted; });
    };
    std::vector<WinterStep> steps;
    const auto add = [&](Message text, std::initializer_list<std::vector<PartId>> about) {
        std::vector<PartId> ids;
        for (const std::vector<PartId>& some : about) {
            ids.insert(ids.end(), some.begin(), some.end());
        }
        std::sort(ids.begin(), ids.end());
        ids.erase(std::unique(ids.begin(), ids.end()), ids.end());
        steps.push_back({std::move(text), std::move(ids)});
    };
    const auto say = [&](const char* sentence, const std::vector<PartId>& ids) {
        if (!ids.empty()) {
            add({sentence, {tagsInRuns(drawing, ids)}}, {ids});
        }
    };
    const std::vector<PartId> heaters = which(plant, [](const study::PlantPart& part) {
        return part.model.role == Role::Tankless || part.model.role == Role::StorageHeater;
    });
    const std::vector<PartId> outlets = role(Role::Outlet);
    say("Shut off gas and power to {0}, let its water cool, then relieve the pressure at a tap.", heaters);
    say("Drain {0} by its own plug, the way its maker says.", heaters);
    say("Empty {0} by its own drain.", role(Role::FreshTank));
    say("Take the cartridge out of {0} and empty its bowl.", which(plant, [](const study::PlantPart& part) {
            return document::kindOf(*part.part).field("cartridge") != nullptr;
        }));
    if (plan.drains.empty()) {
        steps.push_back({"No low-point drain is drawn. Open every tap, hot and cold.", outlets});
    } else {
        say("Open the low-point drains {0}, then every tap, hot and cold.", plan.drains);
    }
    if (plan.heightsKnown) {
        say("By their height these empty: {0}.", plan.drained);
    } else {
        steps.push_back({"All parts stand at one height here, so nothing is taken to drain by itself. Note heights to "
                         "see what does.",
                         {}});
    }
    if (const auto city = role(Role::CitySupply); !city.empty() && !outlets.empty()) {
        add({"Blow air in at {0}, at no more than {1}, with one tap open at a time: {2}.",
             {tagsInRuns(drawing, city), Measure{kMostAir_Pa, Quantity::Pressure}, tagsInRuns(drawing, outlets)}},
            {city, outlets});
    }
    if (const auto pumps = role(Role::DemandPump); !pumps.empty() && !outlets.empty()) {
        add({"Or draw antifreeze made for drinking-water lines with {0}, one tap at a time until it runs "
             "colored: {1}.",
             {tagsInRuns(drawing, pumps), tagsInRuns(drawing, outlets)}},
            {pumps, outlets});
    }
    const std::vector<PartId> circulators = role(Role::Circulator), loopValves = role(Role::MotorValve);
    std::vector<PartId> byLoop, byValves, handValves;
    for (const WinterSegment& segment : plan.full) {
        if (segment.loopClearsIt) {
            byLoop.insert(byLoop.end(), segment.parts.begin(), segment.parts.end());
        } else if (segment.valvesClearIt) {
            byValves.insert(byValves.end(), segment.parts.begin(), segment.parts.end());
            handValves.insert(handValves.end(), segment.valves.begin(), segment.valves.end());
        }
    }
    if (!byValves.empty() && !handValves.empty()) {
        add({"Open {0} and do it again: only then {1} clears.",
             {tagsInRuns(drawing, handValves), tagsInRuns(drawing, byValves)}},
            {handValves, byValves});
    }
    if (!circulators.empty()) {
        add(loopValves.empty()
                ? Message("With antifreeze in the lines, run {0} for {1} so that it goes round the loop.",
                          {tagsInRuns(drawing, circulators), Measure{kRound_s, Quantity::Time}})
                : Message("With antifreeze in the lines, open {0} and run {1} for {2} so that it goes "
                          "round the loop; shut and open the valve once while it runs.",
                          {tagsInRuns(drawing, loopValves), tagsInRuns(drawing, circulators),
                           Measure{kRound_s, Quantity::Time}}),
            {circulators, loopValves});
        say("Only this clears {0}: air and open taps do not.", byLoop);
    }
    for (const WinterSegment& segment : plan.full) {
        if (!segment.loopClearsIt && !segment.valvesClearIt) {
            add({"Still full then: {0}, {1} of water. Open a joint or fit a drain at {2}.",
                 {tagsInRuns(drawing, segment.parts), Measure{segment.volume_m3, Quantity::Volume},
                  tagsInRuns(drawing, {segment.lowest})}},
                {segment.parts});
        }
    }
    steps.push_back({"Leave taps and drains open, and ball valves half open so that no water is shut in them.", {}});
    steps.push_back(
        {"Before use: shut the drains, flush, sanitize (50 ppm chlorine for 4 h or more), flush again.", {}});
    return steps;
}

}  // namespace tapward::review
