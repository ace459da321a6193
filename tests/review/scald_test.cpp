// SPDX-License-Identifier: GPL-3.0-or-later
#include "review/scald.h"

#include <rapidcheck.h>

#include <algorithm>
#include <cmath>

#include "base/units.h"
#include "support/catch.h"

using tapward::review::burnSeconds;
using tapward::review::wholeBurnSeconds;
using tapward::us::celsius;

TEST_CASE("the time to a burn is never longer than any published table says", "[review][published]")
{
    struct Row {
        double celsius, seconds;
    };
    // Third-degree burn, most adults: US CPSC tap-water scald alert (document 5098), read on a
    // third-party page. Serious scald: hospital burn-prevention table, published page; "under 5 s" and
    // "under 3 s" rows carry their bound, the 90..120 s row its lower end.
    // Second-degree burn: Moritz & Henriques (1947), Am. J. Pathol. 23, 695-720, as printed by an
    // anti-scald device page.
    const Row row = GENERATE(Row{celsius(120), 300}, Row{celsius(130), 30}, Row{celsius(140), 6}, Row{celsius(150), 2},
                             Row{celsius(125), 90}, Row{celsius(130), 30}, Row{celsius(135), 10}, Row{celsius(140), 5},
                             Row{celsius(145), 3}, Row{celsius(150), 1.5}, Row{celsius(155), 1}, Row{45, 7200},
                             Row{47, 1200}, Row{48, 900}, Row{49, 480}, Row{51, 120}, Row{55, 17}, Row{60, 3});
    CAPTURE(row.celsius);
    REQUIRE(burnSeconds(row.celsius));
    CHECK(*burnSeconds(row.celsius) <= row.seconds * (1 + 1e-9));
}

TEST_CASE("the lower of the published tables governs", "[review][published]")
{
    struct Row {
        double celsius, seconds;
    };
    // At these points one table is lower than what the others give at or around it; sources as above.
    const Row row = GENERATE(Row{47, 1200},              // skin table alone reaches down here
                             Row{celsius(120), 300},     // CPSC 5 min against 8 min at 49 °C
                             Row{60, 3},                 // skin table 3 s against CPSC 6 s
                             Row{celsius(150), 1.5},     // hospital 1.5 s against CPSC 2 s
                             Row{celsius(155), 1});      // hospital
    CAPTURE(row.celsius);
    REQUIRE(burnSeconds(row.celsius));
    CHECK_THAT(*burnSeconds(row.celsius), WithinRel(row.seconds, 1e-6));
}

TEST_CASE("between two published points the logarithm of the time is interpolated", "[review]")
{
    // Skin table 47 °C 1200 s, 48 °C 900 s: half way the geometric mean (plain arithmetic).
    CHECK_THAT(burnSeconds(47.5).value(), WithinRel(1039.2304845, 1e-9));
}

TEST_CASE("at 120 °F, read to a whole degree, the time is the table's 5 min and does not leap", "[review][published]")
{
    // CPSC and hospital tables: 5 min at 120 °F. All of these read "120 °F".
    for (const double fahrenheit : {119.6, 119.9, 120.0, 120.2, 120.4}) {
        CAPTURE(fahrenheit);
        CHECK_THAT(burnSeconds(celsius(fahrenheit)).value(), WithinRel(300.0, 0.35));
    }
    // Skin table 48 °C (118.4 °F) 15 min, 49 °C 8 min: the tap tables' 5 min at 120 °F is the next point after 48 °C.
    // Half way between them in temperature: sqrt(900 * 300) (plain arithmetic).
    CHECK_THAT(burnSeconds(0.5 * (48 + celsius(120))).value(), WithinRel(519.615, 1e-5));
    // No step of 0.1 °F anywhere changes the time by more than a fifth: the steepest published stretch is 15 min to
    // 5 min in 1.6 °F, 7 % for a tenth of a degree; 6 h to 2 h in 1.8 °F, 6 %.
    for (double fahrenheit = 111.3; fahrenheit < 160; fahrenheit += 0.1) {
        CAPTURE(fahrenheit);
        CHECK(*burnSeconds(celsius(fahrenheit + 0.1)) >= 0.9 * *burnSeconds(celsius(fahrenheit)));
    }
}

TEST_CASE("below the coolest published point there is no figure and above the hottest no extrapolation", "[review]")
{
    CHECK_FALSE(burnSeconds(43.9));
    CHECK_FALSE(burnSeconds(-5));
    // Moritz & Henriques (1947): six hours at 44 °C was the longest exposure that did harm.
    CHECK_THAT(burnSeconds(44).value(), WithinRel(21600.0, 1e-9));
    CHECK(burnSeconds(90).value() == Approx(1.0));
}

TEST_CASE("a time that people read is rounded to the short side and is never nothing", "[review]")
{
    CHECK(wholeBurnSeconds(60) == 3.0);  // exact at a published point
    REQUIRE(burnSeconds(59.5).value() > 3.5);
    CHECK(wholeBurnSeconds(59.5) == 3.0);
    CHECK(wholeBurnSeconds(90) == 1.0);
    // Half minutes from two on, whole ones from ten on, never longer than the figure itself.
    for (double celsius = 44; celsius < 52; celsius += 0.125) {
        const double exact = *tapward::review::burnSeconds(celsius), told = *wholeBurnSeconds(celsius);
        const double step = exact < 120 ? 1 : exact < 600 ? 30 : 60;
        CHECK(told <= exact + 1e-6);
        CHECK(std::fmod(told, step) == 0);
        CHECK(told > exact - step);
    }
    CHECK_FALSE(wholeBurnSeconds(40));
}

TEST_CASE("hotter water never takes longer to burn", "[review][property]")
{
    CHECK(rc::check([](unsigned short a, unsigned short b) {
        const double low = 44 + 50.0 * std::min(a, b) / 65535;
        const double high = 44 + 50.0 * std::max(a, b) / 65535;
        RC_ASSERT(burnSeconds(high).value() <= burnSeconds(low).value() * (1 + 1e-12));
    }));
}
