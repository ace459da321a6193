// SPDX-License-Identifier: GPL-3.0-or-later
#include "review/burn.h"

#include "review/scald.h"

namespace tapward::review {

std::string_view id(BurnHazard hazard)
{
    switch (hazard) {
    case BurnHazard::BelowTables:
        return "below_tables";
    case BurnHazard::Slow:
        return "slow";
    case BurnHazard::Burns:
        return "burns";
    case BurnHazard::Quick:
        return "quick";
    case BurnHazard::AtOnce:
        return "at_once";
    }
    return "";
}

Text title(BurnHazard hazard)
{
    switch (hazard) {
    case BurnHazard::BelowTables:
        return "Below the burn tables";
    case BurnHazard::Slow:
        return "Burns in minutes";
    case BurnHazard::Burns:
        return "Burns in a minute or more";
    case BurnHazard::Quick:
        return "Burns in seconds";
    case BurnHazard::AtOnce:
        return "Burns at once";
    }
    return "";
}

BurnTime burnTime(double celsius)
{
    constexpr double kRounding_K = 1e-6;
    BurnTime burn;
    burn.adult_s = wholeBurnSeconds(celsius);
    if (!burn.adult_s) {
        burn.words =
            Message("Below the published burn tables; that is not the same as safe, least of all for children.");
        return burn;
    }
    const Measure adult{*burn.adult_s, Quantity::Time};
    burn.hazard = *burn.adult_s <= 5                         ? BurnHazard::AtOnce
                  : *burn.adult_s < 60                       ? BurnHazard::Quick
                  : celsius > kScaldGuidance_C + kRounding_K ? BurnHazard::Burns
                                                             : BurnHazard::Slow;
    burn.words = Message("A serious burn in {0} for an adult, sooner for a child.", {adult});
    return burn;
}

}  // namespace tapward::review
