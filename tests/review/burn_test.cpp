// SPDX-License-Identifier: GPL-3.0-or-later
#include "review/burn.h"

#include "base/units.h"
#include "support/catch.h"

using namespace tapward;

TEST_CASE("burn times in a row are the lower of the published tables", "[review][burn]")
{
    // US CPSC, tap-water scald safety alert (document 5098): 140 °F 6 s, 130 °F 30 s, 120 °F 5 min;
    // a hospital's burn-prevention table: 140 °F under 5 s; Moritz & Henriques (1947) as printed: 60 °C 3 s.
    CHECK(*review::burnTime(us::celsius(140)).adult_s <= 5);
    CHECK(*review::burnTime(us::celsius(140)).adult_s >= 3);
    CHECK(*review::burnTime(us::celsius(130)).adult_s <= 30);
    CHECK(*review::burnTime(us::celsius(130)).adult_s >= 17);
    CHECK(*review::burnTime(us::celsius(120)).adult_s <= 300);
    CHECK(review::burnTime(us::celsius(140)).hazard == review::BurnHazard::AtOnce);
    CHECK(review::burnTime(us::celsius(130)).hazard == review::BurnHazard::Quick);
}

TEST_CASE("no figure for children is made up, and no temperature is called safe", "[review][burn]")
{
    for (double celsius = 20; celsius < 95; celsius += 2.5) {
        const review::BurnTime burn = review::burnTime(celsius);
        CHECK_FALSE(burn.child_s.has_value());
        CHECK_FALSE(burn.words.empty());
        CHECK(burn.adult_s.has_value() == (celsius >= 44));  // the coolest temperature anybody was burned at
    }
}
