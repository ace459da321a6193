// SPDX-License-Identifier: GPL-3.0-or-later
#include "batch/study.h"

#include <string>

#include "batch/pace.h"
#include "report/stop_report.h"
#include "report/study_report.h"

namespace tapward::app::batch {

Result<std::string> study(const document::Drawing& drawing, const StudyAsked& asked, const std::string& fileName,
                          UnitSystem units)
{
    Pace pace;
    if (asked.presses) {
        tapward::study::PressesOptions options;
        options.progress = [&pace](double share) { pace.tell(share); };
        const auto found = tapward::study::studyPresses(drawing, options);
        if (!found) {
            return tl::unexpected(found.error());
        }
        return asked.json ? report::pressesJson(drawing, *found, fileName)
                          : report::pressesText(drawing, *found, units);
    }
    if (asked.faults) {
        tapward::study::FaultsOptions options;
        options.pairs = asked.pairs;
        options.progress = [&pace](double share) { pace.tell(share); };
        const auto found = tapward::study::studyFaults(drawing, options);
        if (!found) {
            return tl::unexpected(found.error());
        }
        return asked.json ? report::faultsJson(drawing, *found, fileName) : report::faultsText(drawing, *found, units);
    }
    if (asked.stop) {
        tapward::study::StopOptions options;
        options.progress = [&pace](int done, int count) { pace.tell(count > 0 ? 1.0 * done / count : 0.0); };
        const auto found = tapward::study::suggestStop(drawing, options);
        if (!found) {
            return tl::unexpected(found.error());
        }
        return asked.json ? report::stopJson(drawing, *found, fileName) : report::stopText(drawing, *found, units);
    }
    if (asked.protections) {
        tapward::study::PressesOptions options;
        options.progress = [&pace](double share) { pace.tell(share); };
        const auto found = tapward::study::findSafeSet(drawing, options);
        if (!found) {
            return tl::unexpected(found.error());
        }
        return asked.json ? report::safeSetJson(drawing, *found, fileName)
                          : report::safeSetText(drawing, *found, units);
    }
    if (asked.wiring) {
        const auto found = tapward::study::wiringStudy(drawing);
        if (!found) {
            return tl::unexpected(found.error());
        }
        const auto curves = tapward::study::loopCurves(drawing);
        const auto budget = tapward::study::headBudget(drawing);
        const auto* curvesOrNone = curves ? &*curves : nullptr;
        const auto* budgetOrNone = budget ? &*budget : nullptr;
        return asked.json ? report::wiringJson(drawing, *found, curvesOrNone, budgetOrNone, fileName)
                          : report::wiringText(drawing, *found, curvesOrNone, budgetOrNone, units);
    }
    return problem("No study was asked for.", "Say --presses, --protections, --faults, --stop or --wiring.");
}

}  // namespace tapward::app::batch
