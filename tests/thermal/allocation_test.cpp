// SPDX-License-Identifier: GPL-3.0-or-later
#include <cstdlib>
#include <new>
#include <vector>

#include "support/catch.h"
#include "thermal/run.h"

using namespace tapward::thermal;

// This program's memory goes through here, so that a step can be seen to ask for none.
namespace {
std::size_t asked = 0;
}

// g++ 12 does not see that this program's own new and delete belong together.
#pragma GCC diagnostic ignored "-Wpragmas"
#pragma GCC diagnostic ignored "-Wmismatched-new-delete"

void* operator new(std::size_t size)
{
    ++asked;
    if (void* memory = std::malloc(size == 0 ? 1 : size))
        return memory;
    throw std::bad_alloc();
}
void* operator new(std::size_t size, const std::nothrow_t&) noexcept
{
    ++asked;
    return std::malloc(size == 0 ? 1 : size);
}
void operator delete(void* memory, const std::nothrow_t&) noexcept { std::free(memory); }
void operator delete(void* memory) noexcept { std::free(memory); }
void operator delete(void* memory, std::size_t) noexcept { std::free(memory); }

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
    const std::size_t before = asked;
    for (int k = 0; k < 200; ++k) {
        field.setSource(heater, 1, k % 7 * 1000.0);
        field.setAmbient(heater, 0, 20 + k % 5);
        field.setSupply(3, 15 + k % 3);
        for (double& q : flow)
            q = k % 50 == 49 ? 0 : k % 60 == 59 ? -q * 40 : q * 1.001;
        field.step(0.1 + 0.05 * (k % 11), flow);
    }
    CHECK(asked == before);
    CHECK(field.outletTemperature(heater) > 15);
}
