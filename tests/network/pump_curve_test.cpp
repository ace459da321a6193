// SPDX-License-Identifier: GPL-3.0-or-later
#include "network/pump_curve.h"

#include <cmath>
#include <limits>

#include "base/units.h"
#include "network/law.h"
#include "support/catch.h"

using namespace tapward;
using namespace tapward::network;

namespace {

PumpCurve small() { return *PumpCurve::fromReadings({{0, 3.0}, {5e-5, 2.6}, {1e-4, 1.8}, {1.5e-4, 0.8}, {1.8e-4, 0}}); }

}  // namespace

TEST_CASE("A pump curve meets its readings and falls everywhere", "[network]")
{
    const PumpCurve curve = small();
    for (const auto& r : curve.readings())
        CHECK_THAT(curve.headAt(r.flow_m3s), WithinAbs(r.head_m, 5e-6));
    double before = curve.headAt(-1e-3);
    for (double q = -1e-3 + 1e-6; q < 1e-3; q += 1e-6) {
        const double now = curve.headAt(q);
        CHECK(now < before);
        CHECK(curve.slopeAt(q) < 0);
        before = now;
    }
    CHECK_THAT(curve.shutOffHead(), WithinAbs(3.0, 1e-9));
    CHECK_THAT(curve.runOutFlow(), WithinRel(1.8e-4, 1e-4));
}

TEST_CASE("A pump curve says how far its data sheet goes", "[network]")
{
    const PumpCurve curve = *PumpCurve::fromReadings({{2e-5, 2.6}, {1e-4, 1.8}});
    CHECK_FALSE(curve.covers(1e-5));
    CHECK(curve.covers(2e-5));
    CHECK(curve.covers(1e-4));
    CHECK_FALSE(curve.covers(1.1e-4));
    // 0.8 m fall over 8e-5: the line reaches zero 1.8e-4 further
    CHECK_THAT(curve.runOutFlow(), WithinRel(2.8e-4, 1e-5));
}

TEST_CASE("A sheet that ends level still runs out", "[network]")
{
    const PumpCurve curve = *PumpCurve::fromReadings({{0, 2.0}, {1e-4, 2.0}});
    CHECK(curve.headAt(5e-5) < 2.0);
    CHECK_THAT(curve.headAt(5e-5), WithinAbs(2.0, 1e-5));
    CHECK_THAT(curve.runOutFlow(), WithinRel(2e-4, 1e-4));
}

TEST_CASE("The integral and the slope of a pump curve belong to its head", "[network]")
{
    const PumpCurve curve = small();
    CHECK(curve.integralTo(0) == 0);
    for (double q = -2.05e-4; q < 3e-4; q += 1.1e-6) {
        const double d = 1e-9;
        CHECK_THAT((curve.integralTo(q + d) - curve.integralTo(q - d)) / (2 * d), WithinAbs(curve.headAt(q), 1e-4));
        CHECK_THAT((curve.headAt(q + d) - curve.headAt(q - d)) / (2 * d),
                   WithinAbs(curve.slopeAt(q), 2e-3 * std::abs(curve.slopeAt(q)) + 1));
    }
}

TEST_CASE("Readings that cannot be a pump are refused in plain words", "[network]")
{
    auto what = [](std::vector<PumpCurve::Reading> readings) {
        const auto result = PumpCurve::fromReadings(std::move(readings));
        REQUIRE_FALSE(result.has_value());
        CHECK_FALSE(result.error().remedy.empty());
        return render(result.error().what, UnitSystem::Us);
    };
    CHECK(what({{0, 3}}).find("at least two") != std::string::npos);
    CHECK(what({{0, 3}, {1e-4, 3.5}}).find("Reading 2") != std::string::npos);
    CHECK(what({{0, 3}, {1e-4, 2}, {1e-4, 1}}).find("Reading 3") != std::string::npos);
    CHECK(what({{-1e-5, 3}, {1e-4, 2}}).find("Reading 1") != std::string::npos);
    CHECK(what({{0, 3}, {1e-4, -2}}).find("Reading 2") != std::string::npos);
    CHECK(what({{0, std::numeric_limits<double>::quiet_NaN()}, {1e-4, 2}}).find("Reading 1") != std::string::npos);
    CHECK(what({{0, 0}, {1e-4, 0}}).find("no head") != std::string::npos);
    std::vector<PumpCurve::Reading> many;
    for (int i = 0; i < 65; ++i)
        many.push_back({1e-6 * i, 3.0});
    CHECK(what(many).find("65") != std::string::npos);
}

TEST_CASE("Speed follows the affinity laws", "[network][published]")
{
    // Flow with speed, head with its square: common practice in every pump text (memory).
    const auto curve = std::make_shared<const PumpCurve>(small());
    for (double speed : {0.6, 0.8, 1.0, 1.15})
        for (double q : {0.0, 3e-5, 1e-4, 1.6e-4}) {
            const double full = evaluate(PumpLaw{curve, 1, 0}, q, 998.2, 1e-3).loss;
            const double turned = evaluate(PumpLaw{curve, speed, 0}, q * speed, 998.2, 1e-3).loss;
            CHECK_THAT(turned, WithinAbs(speed * speed * full, 0.05));
        }
}

TEST_CASE("A slowing pump goes over into the stopped one without a jump", "[network]")
{
    const auto curve = std::make_shared<const PumpCurve>(small());
    for (double q : {-1e-4, -1e-5, 0.0, 2e-5, 1e-4}) {
        const double stopped = evaluate(PumpLaw{curve, 0, 1e12}, q, 998.2, 1e-3).loss;
        const double crawling = evaluate(PumpLaw{curve, 2e-3, 1e12}, q, 998.2, 1e-3).loss;
        // A pump at 1/500 speed still pulls a little past its run-out: within 2 % of the stopped loss at 1e-4
        CHECK_THAT(crawling, WithinAbs(stopped, 250));
    }
    CHECK_THAT(evaluate(PumpLaw{curve, 0, 1e12}, 1e-4, 998.2, 1e-3).loss, WithinRel(1e4, 1e-4));
    CHECK_THAT(evaluate(PumpLaw{nullptr, 1, 1e12}, 1e-4, 998.2, 1e-3).loss, WithinRel(1e4, 1e-4));
}
