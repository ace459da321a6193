// SPDX-License-Identifier: GPL-3.0-or-later
#include <cmath>
#include <limits>

#include "parts/part_kind.h"
#include "support/catch.h"

using namespace tapward;
using parts::Curve;
using parts::Value;

namespace {

std::string refused(const char* kindId, const char* key, const Value& value)
{
    const parts::PartKind& kind = *parts::find(kindId);
    const auto why = parts::refusal(kind, *kind.field(key), value);
    return why ? render(why->what, UnitSystem::Metric) : "";
}

}  // namespace

TEST_CASE("a number outside its range, not finite or of the wrong type is refused", "[parts]")
{
    CHECK(refused("pipe_run", "length_m", 0.0).empty());
    CHECK(refused("pipe_run", "length_m", 200.0).empty());
    CHECK_FALSE(refused("pipe_run", "length_m", std::nextafter(200.0, 201.0)).empty());
    CHECK_FALSE(refused("pipe_run", "length_m", -1e-9).empty());
    CHECK_FALSE(refused("pipe_run", "length_m", std::numeric_limits<double>::quiet_NaN()).empty());
    CHECK_FALSE(refused("pipe_run", "length_m", std::numeric_limits<double>::infinity()).empty());
    CHECK_FALSE(refused("pipe_run", "length_m", true).empty());
    CHECK_FALSE(refused("pipe_run", "length_m", std::string("5")).empty());
    CHECK_FALSE(refused("pipe_run", "length_m", Curve{{0, 1}, {1, 0}}).empty());
    CHECK(refused("pipe_run", "length_m", 300.0).find("300") != std::string::npos);  // the message carries its number
}

TEST_CASE("a count has to be whole", "[parts]")
{
    CHECK(refused("pipe_run", "elbows", 3.0).empty());
    CHECK_FALSE(refused("pipe_run", "elbows", 2.5).empty());
    CHECK_FALSE(refused("pipe_run", "elbows", -1.0).empty());
}

TEST_CASE("a choice has to be one of those offered", "[parts]")
{
    CHECK(refused("pipe_run", "tube", std::string("copper_l_3_4")).empty());
    CHECK_FALSE(refused("pipe_run", "tube", std::string("garden_hose")).empty());
    CHECK_FALSE(refused("pipe_run", "tube", 1.0).empty());
}

TEST_CASE("a flag is yes or no", "[parts]")
{
    CHECK(refused("controller", "stop_by_time", true).empty());
    CHECK_FALSE(refused("controller", "stop_by_time", 1.0).empty());
    CHECK_FALSE(refused("controller", "stop_by_time", std::string("yes")).empty());
}

TEST_CASE("a text takes any letters but no control characters", "[parts]")
{
    CHECK(refused("note", "text",
                  std::string("Z\xc3\xbc"
                              "rich\nsecond line\ttab"))
              .empty());
    CHECK_FALSE(refused("note", "text", std::string("bell\a")).empty());
    CHECK_FALSE(refused("note", "text", std::string("nul\0", 4)).empty());
    CHECK_FALSE(refused("note", "text", 5.0).empty());
}

TEST_CASE("a reference is empty or the plain number of a part", "[parts]")
{
    CHECK(refused("circulator", "controller", std::string()).empty());
    CHECK(refused("circulator", "controller", std::string("12")).empty());
    for (const char* text : {"C1", "-3", "012", "1e3", "12 ", "99999999999"}) {
        CAPTURE(text);
        CHECK_FALSE(refused("circulator", "controller", std::string(text)).empty());
    }
}

TEST_CASE("a pump curve has two to sixty-four readings, flow rising, head never rising", "[parts]")
{
    CHECK(refused("circulator", "curve", Curve{{0, 3}, {1e-4, 0}}).empty());
    CHECK(refused("circulator", "curve", Curve{{0, 3}, {5e-5, 3}, {1e-4, 0}}).empty());  // flat is allowed
    CHECK_FALSE(refused("circulator", "curve", Curve{}).empty());
    CHECK_FALSE(refused("circulator", "curve", Curve{{0, 3}}).empty());
    CHECK_FALSE(refused("circulator", "curve", Curve{{0, 3}, {0, 2}}).empty());
    CHECK_FALSE(refused("circulator", "curve", Curve{{0, 3}, {1e-4, 4}}).empty());
    CHECK_FALSE(refused("circulator", "curve", Curve{{-1e-5, 3}, {1e-4, 2}}).empty());
    CHECK_FALSE(refused("circulator", "curve", Curve{{0, 3}, {1e-4, std::nan("")}}).empty());
    Curve curve;
    for (int i = 0; i < 65; ++i) {
        curve.push_back({i * 1e-6, 5 - i * 0.01});
    }
    CHECK_FALSE(refused("circulator", "curve", curve).empty());
    curve.pop_back();
    CHECK(refused("circulator", "curve", curve).empty());
    CHECK_FALSE(refused("circulator", "curve", 1.0).empty());
}

TEST_CASE("values stand in front of defaults, and say what they are", "[parts]")
{
    const parts::PartKind& kind = *parts::find("pipe_run");
    parts::Entries entries;
    const parts::Values values(kind, entries);
    CHECK(values.number("length_m") == 1.0);
    CHECK_FALSE(values.isSet("length_m"));
    CHECK(values.basis("length_m") == parts::Basis::Estimated);
    entries["length_m"] = {7.5, parts::Basis::Measured};
    CHECK(values.number("length_m") == 7.5);
    CHECK(values.isSet("length_m"));
    CHECK(values.basis("length_m") == parts::Basis::Measured);
    CHECK(values.text("tube") == "pex_1_2");
}
