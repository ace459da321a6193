// SPDX-License-Identifier: GPL-3.0-or-later
#include <algorithm>

#include "review/rules/rules.h"
#include "review/seen.h"

namespace tapward::review::rule {

void tankOverfills(const Seen& seen, Findings& findings)
{
    const auto& way = seen.prediction.loop.returnPath;
    for (const study::PlantPart* tank : seen.after.withRole(parts::Role::FreshTank)) {
        if (std::find(way.begin(), way.end(), tank->id) == way.end()) {
            continue;
        }
        for (const study::PlantPart* city : seen.after.withRole(parts::Role::CitySupply)) {
            Finding finding;
            finding.severity = Severity::Caution;
            finding.what = {"With city water on at {0}, each run of the loop pours it into {1}.",
                            {city->part->tag, tank->part->tag}};
            finding.why = "Nothing takes that water out again: the tank fills run by run and then overflows.";
            finding.remedy = {"Shut {0} and run the loop from the tank by the demand pump, or take the return to the "
                              "cold line; tell the customer which.",
                              {city->part->tag}};
            finding.source = kPractice;
            finding.part = tank->id;
            findings.push_back(std::move(finding));
        }
    }
}

}  // namespace tapward::review::rule
