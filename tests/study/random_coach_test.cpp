// SPDX-License-Identifier: GPL-3.0-or-later
// Properties of predictions on coaches nobody drew: whatever can be drawn has an answer or a reason, mass and
// heat balance, and water never runs backward through a sound check valve.
#include <cmath>

#include "study/loop.h"
#include "study/simulate.h"
#include "support/catch.h"
#include "support/random_drawing.h"
#include "water/water.h"

using namespace tapward;

TEST_CASE("whatever can be drawn has an answer or a reason, in balance", "[study][property]")
{
    int answered = 0;
    for (std::uint64_t seed = 1; seed <= 120; ++seed) {
        test::RandomOptions random;
        random.sense = seed % 3 != 0;
        random.taps = 1 + static_cast<int>(seed % 6);
        const document::Drawing drawing = test::randomDrawing(seed, random);
        const auto prediction = study::predict(drawing);
        CAPTURE(seed);
        if (!prediction) {
            // Only a part whose own values make no model stops the whole question, and it says which.
            CHECK_FALSE(prediction.error().what.empty());
            CHECK_FALSE(prediction.error().where.empty());
            continue;
        }
        CHECK((prediction->loop.flow_m3s.value_or(0) > 0 || !prediction->loop.reason.empty()));
        for (const study::CaseResult& result : prediction->cases) {
            CAPTURE(result.name);
            if (result.noAnswer) {
                CHECK_FALSE(result.noAnswer->what.empty());
                continue;
            }
            ++answered;
            CHECK(*result.scalar("mass_residual")->value < 1e-9);
            CHECK(*result.scalar("heat_residual")->value < 1e-6);
            for (const study::Series& series : result.series) {
                // Water gets no hotter than the highest setting of a heater's over-temperature switch, nor colder than
                // the coldest bay a case can have. A sensor may be off by 50 K of its own and read 150 K too much
                // when it is shorted, 5 K too little when it reads low.
                const bool sensor = series.id.starts_with("sensor.");
                for (const double value : series.values) {
                    if (series.quantity == Quantity::Temperature && std::isfinite(value)) {
                        CHECK(value > (sensor ? -50 - 50 - 5 : -50));
                        CHECK(value < (sensor ? 130 + 50 + 150 : 130));
                    }
                }
            }
        }
    }
    CHECK(answered > 100);
}

TEST_CASE("water never runs backward through a sound check valve of a random coach", "[study][property]")
{
    int checks = 0;
    for (std::uint64_t seed = 200; seed < 320; ++seed) {
        test::RandomOptions random;
        random.sense = seed % 2 == 0;
        const document::Drawing drawing = test::randomDrawing(seed, random);
        const auto plant = study::makePlant(drawing, document::View::After);
        if (!plant) {
            continue;
        }
        network::Network network = plant->makeNetwork();
        study::setAtRest(*plant, network);
        study::runLoop(*plant, network, {12.6, 0});
        const network::Solution& solution = network.solve();
        CAPTURE(seed);
        CHECK(solution.outcome == network::Outcome::Solved);
        for (const study::PlantPart* check : plant->withRole(parts::Role::CheckValve)) {
            for (const study::Place& place : check->places) {
                if (place.link >= 0) {
                    const double flow = solution.flow_m3s[static_cast<std::size_t>(place.link)];
                    CHECK((place.reversed ? -flow : flow) >= 0);
                    ++checks;
                }
            }
        }
    }
    CHECK(checks > 50);
}
