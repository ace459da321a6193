// SPDX-License-Identifier: GPL-3.0-or-later
#include <string>

#include "base/units.h"
#include "review/rules/rules.h"
#include "review/seen.h"
#include "study/cold_return.h"

namespace tapward::review::rule {

void drinkingBranchWarm(const Seen& seen, Findings& findings)
{
    constexpr double kGrowth_C = us::celsius(77);  // 77 to 108 °F favours growth: ASHRAE Guideline 12 (from memory)
    const study::ColdReturn way = coldReturn(seen.after, seen.prediction.loop);
    const auto* warmest = hottest(seen, {study::HeatPlace::ColdEntry});
    if (!way.byColdLine || !warmest || warmest->hottest_C < kGrowth_C) {
        return;
    }
    std::string tags;
    document::PartId first = document::kNoPart;
    for (const document::PartId id : way.outlets) {
        const study::PlantPart* outlet = seen.after.find(id);
        if (outlet && outlet->model.outlet && outlet->model.outlet->drinking) {
            tags += (tags.empty() ? "" : ", ") + outlet->part->tag;
            first = first == document::kNoPart ? id : first;
        }
    }
    if (first == document::kNoPart) {
        return;
    }
    Finding finding;
    finding.severity = Severity::Caution;
    finding.what = {"Water of {0} comes from the loop into the cold line that people drink from: {1}.",
                    {seen.heat(warmest->hottest_C), tags}};
    finding.why = {"Water standing between {0} and {1} favors bacteria, and it tastes of the hot line.",
                   {Measure{kGrowth_C, Quantity::Temperature}, Measure{us::celsius(108), Quantity::Temperature}}};
    finding.remedy = "Return the water by a line of its own, or let the cold tap run cool before drinking.";
    finding.source = "ASHRAE Guideline 12, growth range of Legionella, not checked";
    finding.part = first;
    shownBy(finding, *warmest);
    findings.push_back(std::move(finding));
}

}  // namespace tapward::review::rule
