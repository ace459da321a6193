// SPDX-License-Identifier: GPL-3.0-or-later
#include <vector>

#include "support/catch.h"
#include "support/count_allocations.h"
#include "thermal/run.h"

using namespace tapward::thermal;
using tapward::tests::allocations;

TEST_CASE("a step asks for no memory, whatever the water does", "[field]")
{
    Field field;
    const int a = field.addJunction(), b = field.addJunction();
    Stretch tube, body;
    tube.length_m = 3;
    body.volume_m3 = 0.3e-3;
    body.body_J_K = 500;
    const int heater = field.addRun(a, b, {tube, body, tube});
    field.addRun(b, a, {tube});
    field.addRun(b, -1, {tube});
    field.addRun(-1, a, {body});
    field.prepare();
    field.fill(20);
    std::vector<double> flow{4e-5, 2e-5, 2e-5, 2e-5};
    const long before = allocations;
    for (int k = 0; k < 200; ++k) {
        field.setSource(heater, 1, k % 7 * 1000.0);
        field.setAmbient(heater, 0, 20 + k % 5);
        field.setSupply(3, 15 + k % 3);
        for (double& q : flow)
            q = k % 50 == 49 ? 0 : k % 60 == 59 ? -q * 40 : q * 1.001;
        field.step(0.1 + 0.05 * (k % 11), flow);
    }
    CHECK(allocations == before);
    CHECK(field.outletTemperature(heater) > 15);
}
