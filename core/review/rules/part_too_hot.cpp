// SPDX-License-Identifier: GPL-3.0-or-later
#include <algorithm>
#include <string>

#include "review/rules/rules.h"
#include "review/seen.h"

namespace tapward::review::rule {
namespace {

bool has(const std::vector<document::PartId>& ids, document::PartId id)
{
    return std::find(ids.begin(), ids.end(), id) != ids.end();
}

}  // namespace

void partTooHot(const Seen& seen, Findings& findings)
{
    // What leaves the heater enters the hot way; what reached the join enters the return. Circulators have a
    // rule of their own.
    constexpr double kRounding_K = 0.5;  // what reads the same as the rating is no excess
    const study::LoopAnswer& loop = seen.prediction.loop;
    const auto* heater = hottest(seen, {study::HeatPlace::HeaterOutlet});
    const auto* join = hottest(seen, {study::HeatPlace::Join});
    std::string tubes;
    document::PartId firstTube = document::kNoPart;
    double tubeLimit_C = 0;
    const study::HotPlace* tubeWater = nullptr;
    for (const study::PlantPart& part : seen.after.parts) {
        const double limit_C = part.model.roleTemperatureLimit_C;
        const bool hot = has(loop.hotPath, part.id) || part.id == loop.heater;
        const auto* water = hot ? heater : has(loop.returnPath, part.id) ? join : nullptr;
        if (limit_C <= 0 || !water || water->hottest_C <= limit_C + kRounding_K || part.model.circulator) {
            continue;
        }
        if (document::kindOf(*part.part).isPipe) {  // all tube at once
            tubes += (tubes.empty() ? "" : ", ") + part.part->tag;
            firstTube = firstTube == document::kNoPart ? part.id : firstTube;
            tubeLimit_C = limit_C;
            tubeWater = !tubeWater || water->hottest_C > tubeWater->hottest_C ? water : tubeWater;
            continue;
        }
        Finding finding;
        finding.severity = Severity::Caution;
        finding.what = {"Water in the line of {0} reaches {1}; it is rated for {2}.",
                        {part.part->tag, seen.heat(water->hottest_C), Measure{limit_C, Quantity::Temperature}}};
        finding.why = "Over its rating a part softens, leaks or gives off what it holds.";
        finding.remedy = "Take a part rated for hotter water, set the heater lower, or end the run sooner.";
        finding.source = "the part's own rating";
        finding.part = part.id;
        shownBy(finding, *water);
        findings.push_back(std::move(finding));
    }
    if (!tubeWater) {
        return;
    }
    Finding finding;
    finding.severity = Severity::Danger;
    finding.what = {"Water in {0} reaches {1}; this tube is rated for {2}.",
                    {tubes, seen.heat(tubeWater->hottest_C), Measure{tubeLimit_C, Quantity::Temperature}}};
    finding.why = "Hot tube loses its strength: it can burst under the coach's pressure.";
    finding.remedy = "Keep the heater's water below the tube's rating: a wait between runs, a high limit, a lockout.";
    finding.source = "ASTM F876 and D2846: 100 psi at 180 °F; read the tube's print line";
    finding.part = firstTube;
    shownBy(finding, *tubeWater);
    findings.push_back(std::move(finding));
}

}  // namespace tapward::review::rule
