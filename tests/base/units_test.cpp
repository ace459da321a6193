// SPDX-License-Identifier: GPL-3.0-or-later
#include "base/message.h"
#include "base/units.h"
#include "support/catch.h"

using namespace tapward;

TEST_CASE("a person may type lengths the way they are said", "[units]")
{
    const auto us = [](const char* typed) { return parseMeasure(typed, Quantity::Length, UnitSystem::Us); };
    CHECK_THAT(us("2 ft 3 in").value(), WithinRel(2.25 * 0.3048, 1e-12));
    CHECK_THAT(us("3*0.4 m").value(), WithinRel(1.2, 1e-12));
    CHECK_THAT(us("1/2 in").value(), WithinRel(0.0127, 1e-12));
    CHECK_THAT(us("1 1/2 in").value(), WithinRel(0.0381, 1e-12));
    CHECK_THAT(us("0,7 m").value(), WithinRel(0.7, 1e-12));
    CHECK_THAT(us("12").value(), WithinRel(12 * 0.3048, 1e-12));
    CHECK_THAT(us("(1 m + 20 cm)*2").value(), WithinRel(2.4, 1e-12));
    CHECK_FALSE(us("").has_value());
    CHECK_FALSE(us("two feet").has_value());
    CHECK_FALSE(us("2 ft +").has_value());
    CHECK_FALSE(us("2 gal").has_value());
    CHECK_FALSE(us("1/0").has_value());
    CHECK_FALSE(us(std::string(60, '(').c_str()).has_value());
}

TEST_CASE("long times are told in minutes and seconds, and are read back as the same time", "[units]")
{
    const auto told = [](double seconds) { return show({seconds, Quantity::Time}, UnitSystem::Us); };
    CHECK(told(93) == "93 s");
    CHECK(told(599) == "599 s");
    CHECK(told(600) == "10 min");
    CHECK(told(750.4) == "12 min 30 s");
    CHECK(told(3360) == "56 min");
    for (const double seconds : {600.0, 750.0, 3360.0, 86399.0})
        CHECK(parseMeasure(told(seconds), Quantity::Time, UnitSystem::Us).value() == seconds);
}

TEST_CASE("temperatures convert with 32, differences without", "[units]")
{
    CHECK_THAT(parseMeasure("124", Quantity::Temperature, UnitSystem::Us).value(), WithinAbs(51.1111, 1e-4));
    CHECK_THAT(parseMeasure("51 C", Quantity::Temperature, UnitSystem::Us).value(), WithinAbs(51, 1e-12));
    CHECK_THAT(parseMeasure("-5 F", Quantity::Temperature, UnitSystem::Metric).value(), WithinAbs(-20.5556, 1e-4));
    CHECK_THAT(parseMeasure("9", Quantity::TemperatureDifference, UnitSystem::Us).value(), WithinAbs(5, 1e-12));
}

TEST_CASE("what is shown reads back to the same number for every quantity", "[units]")
{
    for (int q = 0; q <= static_cast<int>(Quantity::Altitude); ++q) {
        for (const UnitSystem units : {UnitSystem::Us, UnitSystem::Metric}) {
            const auto quantity = static_cast<Quantity>(q);
            const double si = 3.7e-3;
            CAPTURE(q);
            CHECK_THAT(fromDisplay(toDisplay({si, quantity}, units), quantity, units), WithinRel(si, 1e-9));
        }
    }
}

TEST_CASE("a number beyond all reason is still read out as a number", "[units]")
{
    CHECK(show({1e308, Quantity::Temperature}, UnitSystem::Us) == "1.8e+308 °F");  // 1.8e308 is beyond a double
    CHECK(show({-1e30, Quantity::Length}, UnitSystem::Metric) == "-1.0e+30 m");
    CHECK(show({1e9, Quantity::Money}, UnitSystem::Us) == "1000000000.00");
}

TEST_CASE("messages carry values that the reader's units decide", "[message]")
{
    const Message message{"{0} at {1}, {2} times, {9}",
                          {Measure{us::kGpm * 0.5, Quantity::Flow}, std::string("P1"), std::int64_t{3}}};
    CHECK(render(message, UnitSystem::Us) == "0.50 gpm at P1, 3 times, {9}");
    CHECK(render(message, UnitSystem::Metric) == "1.89 L/min at P1, 3 times, {9}");
    CHECK(render(message, UnitSystem::Us, "{1}: {0}") == "P1: 0.50 gpm");
}

TEST_CASE("one cubic metre an hour at one bar is 1.156 gallons a minute at one psi", "[units][published]")
{
    // IEC 60534-2-1 / ISA-75.01.01: Cv = 1.1560992284 Kv
    const double cv = fromDisplay(1, Quantity::FlowCoefficient, UnitSystem::Us);
    const double kv = fromDisplay(1, Quantity::FlowCoefficient, UnitSystem::Metric);
    CHECK_THAT(kv / cv, WithinRel(1.1560992284, 1e-6));
}
