// SPDX-License-Identifier: GPL-3.0-or-later
#include <cmath>

#include "review/rules/rules.h"
#include "review/scald.h"
#include "review/seen.h"

namespace tapward::review::rule {

namespace {

/// The outlet gives cold water only: by its build, or because the case opens it on its cold side.
bool isDrawnCold(const document::Case& script, const study::PlantPart& outlet)
{
    if (outlet.model.outlet->hotPath < 0) {
        return true;
    }
    bool opened = false;
    for (const document::Action& action : script.actions) {
        if (action.kind != document::ActionKind::OpenOutlet || action.part != outlet.id) {
            continue;
        }
        const double share = action.second < 0 ? outlet.model.outlet->defaultHotShare : action.second;
        if (share > 0) {
            return false;
        }
        opened = true;
    }
    return opened;
}

}  // namespace

void coldOutletWarm(const Seen& seen, Findings& findings)
{
    for (const study::PlantPart* outlet : seen.after.withRole(parts::Role::Outlet)) {
        if (!outlet->model.outlet) {
            continue;
        }
        double hottest_C = kColdLineLimit_C;
        std::string caseName;
        for (const study::CaseResult& result : seen.prediction.cases) {
            const document::Case* script = seen.drawing.findCase(result.name);
            const study::Series* series = result.find("tap." + outlet->part->tag);
            if (!script || !series || result.view != document::View::After || !isDrawnCold(*script, *outlet)) {
                continue;
            }
            for (const double celsius : series->values) {
                if (std::isfinite(celsius) && celsius > hottest_C) {
                    hottest_C = celsius;
                    caseName = result.name;
                }
            }
        }
        if (caseName.empty()) {
            continue;
        }
        Finding finding;
        finding.severity = hottest_C > kScaldGuidance_C ? Severity::Danger : Severity::Caution;
        finding.what = outlet->model.outlet->drinking
                           ? Message("Cold water at {0} reaches {1}, and people drink from it.",
                                     {outlet->part->tag, Measure{hottest_C, Quantity::Temperature}})
                           : Message("Cold water at {0} reaches {1}.",
                                     {outlet->part->tag, Measure{hottest_C, Quantity::Temperature}});
        finding.why = hasFault(seen.drawing, caseName)
                          ? Message("With this fault the cold line draws hot water; nobody expects it there.")
                          : Message("The loop leaves warm water in the cold line; nobody expects it there.");
        finding.remedy = "Return the water by a line of its own, add a check valve, or keep the run short enough that "
                         "the line stays cool.";
        finding.source = "IECC C404, demand recirculation: water entering the cold pipe not above 104 °F (40 °C)";
        finding.part = outlet->id;
        finding.caseName = caseName;
        findings.push_back(std::move(finding));
    }
}

}  // namespace tapward::review::rule
