// SPDX-License-Identifier: GPL-3.0-or-later
// A solve must not allocate: it runs in the time loop, thousands of times a case.

#include <memory>
#include <vector>

#include "network/network.h"
#include "support/catch.h"
#include "support/count_allocations.h"

using namespace tapward::network;
using tapward::tests::allocations;

TEST_CASE("A solve makes no allocation, from rest, warm, or with a valve thrown", "[network]")
{
    Network n;
    std::vector<int> at;
    for (int i = 0; i < 20; ++i)
        at.push_back(n.addJunction());
    const auto curve = std::make_shared<const PumpCurve>(*PumpCurve::fromReadings({{0, 3}, {1.8e-4, 0}}));
    n.addLink({kOutside, at[0], {{SourceLaw{3.5e5, 1e8}}}});
    for (int i = 0; i < 19; ++i)
        n.addLink({at[i], at[i + 1], {{PipeLaw{1.5}}}});
    std::vector<int> taps;
    for (int i = 0; i < 20; ++i)
        taps.push_back(n.addLink({at[i], kOutside, {{ResistanceLaw{3e13, 1}}}}));
    n.addLink({at[19], at[0], {{PumpLaw{curve, 1, 1e12}}, {CheckLaw{}}}});
    n.prepare();

    const long before = allocations;
    REQUIRE(std::make_unique<int>(1));
    REQUIRE(allocations > before);  // the counter counts

    const long start = allocations;
    long steps = 0;
    for (int i = 0; i < 40; ++i) {
        std::get<ResistanceLaw>(n.elements(taps[static_cast<std::size_t>(i % 20)])[0].law).opening = i < 20 ? 0 : 1;
        if (i % 5 == 0)
            n.forgetStart();
        steps += n.solve().iterations;
    }
    const long made = allocations - start;
    CHECK(made == 0);
    CHECK(steps > 40);
}
