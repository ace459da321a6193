// SPDX-License-Identifier: GPL-3.0-or-later
#include "base/units.h"
#include "review/heat_weight.h"
#include "support/catch.h"

using namespace tapward;
using review::Severity;
using study::HeatPlace;

TEST_CASE("water above 120 °F at an outlet is a danger, above a yardstick elsewhere a caution", "[review]")
{
    // 120 °F delivered: US CPSC; ASTM F444; ASSE 1016/1070. 104 °F entering the cold line: IECC C404.
    CHECK(review::heatSeverity(HeatPlace::OutletHot, us::celsius(121)) == Severity::Danger);
    CHECK(review::heatSeverity(HeatPlace::OutletHot, us::celsius(119)) == Severity::Note);
    CHECK(review::heatSeverity(HeatPlace::OutletCold, us::celsius(121)) == Severity::Danger);
    CHECK(review::heatSeverity(HeatPlace::OutletCold, us::celsius(105)) == Severity::Caution);
    CHECK(review::heatSeverity(HeatPlace::OutletCold, us::celsius(103)) == Severity::Note);
    CHECK(review::heatSeverity(HeatPlace::ColdEntry, us::celsius(105)) == Severity::Caution);
    CHECK(review::heatSeverity(HeatPlace::ColdEntry, us::celsius(103)) == Severity::Note);
    // A return by a line of its own: nobody draws cold water from it.
    CHECK(review::heatSeverity(HeatPlace::Join, us::celsius(105)) == Severity::Note);
    CHECK(review::heatSeverity(HeatPlace::HeaterInlet, us::celsius(105)) == Severity::Note);
    CHECK(review::heatSeverity(HeatPlace::HeaterOutlet, us::celsius(119)) == Severity::Note);
    CHECK(review::heatSeverity(HeatPlace::HeaterOutlet, us::celsius(150)) == Severity::Caution);
}
