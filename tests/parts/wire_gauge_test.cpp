// SPDX-License-Identifier: GPL-3.0-or-later
#include "parts/wire_gauge.h"

#include "base/units.h"
#include "support/catch.h"

using namespace tapward;

TEST_CASE("wire resistance agrees with the standard copper wire table", "[parts][published]")
{
    struct Row {
        int awg;
        double ohm_per_1000_ft;  // solid copper, 20 °C: ASTM B258 / NBS Handbook 100, as in a university wire table
        double warm_ohm_per_1000_ft;  // stranded uncoated copper, 75 °C: NEC (NFPA 70) chapter 9, table 8
    };
    const Row row = GENERATE(Row{18, 6.385, 7.95}, Row{16, 4.016, 4.99}, Row{14, 2.525, 3.14}, Row{12, 1.588, 1.98},
                             Row{10, 0.9989, 1.24}, Row{8, 0.6282, 0.778}, Row{6, 0.3951, 0.491});
    CAPTURE(row.awg);
    const double ohm = parts::wireResistance_ohm_m(row.awg) * 1000 * us::kFoot;
    CHECK_THAT(ohm, WithinRel(row.ohm_per_1000_ft, 0.001));
    // 75 °C: 1.216 times (copper's temperature coefficient 0.00393/K from 20 °C), lay of strands 2 % more; the
    // table is printed to three digits.
    CHECK_THAT(ohm * 1.216 * 1.02, WithinRel(row.warm_ohm_per_1000_ft, 0.01));
}

TEST_CASE("three gauges thicker halve the resistance", "[parts]")
{
    // A property of the geometric series: 92^(6/39) = 2.005.
    CHECK_THAT(parts::wireResistance_ohm_m(18) / parts::wireResistance_ohm_m(15), WithinAbs(2.005, 0.001));
}

TEST_CASE("every gauge offered can be read back", "[parts]")
{
    int last = 100;
    for (const parts::Choice& choice : parts::wireGaugeChoices()) {
        const int awg = parts::wireGauge(choice.id);
        CHECK(std::to_string(awg) == choice.id);
        CHECK(awg < last);
        last = awg;
    }
}
