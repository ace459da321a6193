// SPDX-License-Identifier: GPL-3.0-or-later
#include "review/rules/rules.h"
#include "review/seen.h"

namespace tapward::review::rule {

void circulatorTooHot(const Seen& seen, Findings& findings)
{
    constexpr double kRounding_K = 0.5;  // what reads the same as the rating is no excess
    // The pumps stand behind the join where the loop leaves the hot line: what passes them passed the join.
    const auto* join = hottest(seen, {study::HeatPlace::Join});
    const auto* heater = hottest(seen, {study::HeatPlace::HeaterOutlet});
    for (const study::PlantPart* pump : seen.after.withRole(parts::Role::Circulator)) {
        const double rated_C = pump->model.circulator->temperatureLimit_C;
        const double limit_C = rated_C + kRounding_K;
        const bool reached = join && join->hottest_C > limit_C;
        if (rated_C <= 0 || (!reached && !(heater && heater->hottest_C > limit_C))) {
            continue;
        }
        const study::HotPlace& worst = reached ? *join : *heater;
        Finding finding;
        finding.severity = reached ? Severity::Caution : Severity::Note;
        finding.what =
            reached ? Message("Water of {0} reaches {1}, which is rated for {2}.",
                              {seen.heat(worst.hottest_C), pump->part->tag, Measure{rated_C, Quantity::Temperature}})
                    : Message("Water of {0} leaves the heater; {1} is rated for {2}.",
                              {seen.heat(worst.hottest_C), pump->part->tag, Measure{rated_C, Quantity::Temperature}});
        finding.why = reached ? Message("Hotter than its rating, seals and bearings wear out early.")
                              : Message("If a run went on, the pump would meet this water.");
        finding.remedy = "Take a hot-rated pump, set the heater lower, or end the run sooner.";
        finding.source = "the pump's own rating";
        finding.part = pump->id;
        shownBy(finding, worst);
        findings.push_back(std::move(finding));
    }
}

}  // namespace tapward::review::rule
