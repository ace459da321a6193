// SPDX-License-Identifier: GPL-3.0-or-later
#include <cmath>
#include <filesystem>
#include <set>

#include "parts/part_kind.h"
#include "support/catch.h"

using namespace tapward;
using parts::FieldType;

TEST_CASE("the catalogue holds the kinds of part a coach is drawn with", "[parts]")
{
    for (const char* id : {"pipe_run",
                           "tee",
                           "check_valve",
                           "hand_valve",
                           "motor_valve",
                           "circulator",
                           "flow_sensor",
                           "temperature_sensor",
                           "tankless_heater",
                           "storage_heater",
                           "faucet",
                           "shower",
                           "toilet",
                           "outside_outlet",
                           "appliance",
                           "city_inlet",
                           "demand_pump",
                           "fresh_tank",
                           "accumulator",
                           "regulator",
                           "filter",
                           "drain_valve",
                           "mixing_valve",
                           "controller",
                           "push_button",
                           "battery",
                           "fuse",
                           "note",
                           "dimension",
                           "floor_plan"}) {
        CAPTURE(id);
        REQUIRE(parts::find(id));
        CHECK(parts::find(id)->id == id);
    }
    CHECK(parts::catalogue().size() == 30);
    CHECK_FALSE(parts::find("perpetual_motion"));
}

TEST_CASE("kinds do not share ids, titles or tag letters, and stand in tray order", "[parts]")
{
    std::set<std::string_view> ids, titles, letters;
    auto group = parts::TrayGroup::Pipes;
    for (const parts::PartKind* kind : parts::catalogue()) {
        CAPTURE(kind->id);
        CHECK(ids.insert(kind->id).second);
        CHECK(titles.insert(kind->title).second);
        CHECK(letters.insert(kind->tagLetter).second);
        CHECK_FALSE(kind->tagLetter.empty());
        CHECK(kind->group >= group);
        CHECK_FALSE(parts::title(kind->group).empty());
        group = kind->group;
    }
}

TEST_CASE("every kind of part keeps its own rules", "[parts]")
{
    const parts::PartKind& kind = *GENERATE(from_range(parts::catalogue()));
    CAPTURE(kind.id);

    // Ports on whole modules, on the edge of the symbol, on the side they face.
    std::set<std::string_view> portIds;
    for (const parts::Port& port : kind.ports) {
        CAPTURE(port.id);
        CHECK(portIds.insert(port.id).second);
        CHECK(port.x == std::round(port.x));
        CHECK(port.y == std::round(port.y));
        switch (port.side) {
        case parts::Side::Left:
            CHECK(port.x == -kind.width / 2);
            break;
        case parts::Side::Right:
            CHECK(port.x == kind.width / 2);
            break;
        case parts::Side::Top:
            CHECK(port.y == -kind.height / 2);
            break;
        case parts::Side::Bottom:
            CHECK(port.y == kind.height / 2);
            break;
        }
        CHECK(std::abs(port.x) <= kind.width / 2);
        CHECK(std::abs(port.y) <= kind.height / 2);
    }
    if (kind.goesInLine()) {
        REQUIRE(kind.port(kind.inLine[0]));
        REQUIRE(kind.port(kind.inLine[1]));
        CHECK(kind.port(kind.inLine[0])->side == parts::Side::Left);
        CHECK(kind.port(kind.inLine[1])->side == parts::Side::Right);
        CHECK(kind.port(kind.inLine[0])->y == kind.port(kind.inLine[1])->y);
    }
    CHECK(kind.portIndex("no such port") == -1);

    // Fields: unique keys, defaults that would be accepted, a source for each.
    std::set<std::string_view> keys;
    for (const parts::Field& field : kind.fields) {
        CAPTURE(field.key);
        CHECK(keys.insert(field.key).second);
        CHECK_FALSE(field.label.empty());
        CHECK_FALSE(field.source.empty());
        CHECK_FALSE(parts::refusal(kind, field, field.initial));
        CHECK((field.type == FieldType::Choice) == !field.choices.empty());
        CHECK((field.type == FieldType::PartRef) == !field.refKinds.empty());
        if (field.type == FieldType::Number || field.type == FieldType::Count) {
            CHECK(field.least < field.most);
        }
        if (field.divides) {
            CHECK(field.least == 0);
            CHECK((field.type == FieldType::Number || field.type == FieldType::Count));
        }
    }
    for (const std::string_view shown : kind.shownFields) {
        CHECK(kind.field(shown));
    }
    CHECK_FALSE(kind.field("no such field"));

    std::set<std::string_view> faultIds;
    for (const parts::Fault& fault : kind.faults) {
        CHECK(faultIds.insert(fault.id).second);
        CHECK_FALSE(fault.title.empty());
        if (fault.effect == parts::FaultEffect::NotSimulated) {
            CHECK(fault.title.english().find("not simulated") != std::string_view::npos);
        }
    }
}

TEST_CASE("every kind makes a model and a parts list from its defaults", "[parts]")
{
    const parts::PartKind& kind = *GENERATE(from_range(parts::catalogue()));
    CAPTURE(kind.id);
    const parts::Entries none;
    const parts::Values values(kind, none);
    if (!kind.model) {
        CHECK(kind.ports.empty());
        return;
    }
    const auto model = kind.model(values);
    REQUIRE(model);
    const int ports = kind.isPipe ? 2 : static_cast<int>(kind.ports.size());
    std::set<int> used;
    for (const parts::Path& path : model->paths) {
        CHECK(path.from >= parts::Path::kOutside);
        CHECK(path.to >= parts::Path::kOutside);
        CHECK(path.from < ports);
        CHECK(path.to < ports);
        CHECK(path.from != path.to);
        used.insert({path.from, path.to});
        CHECK(path.body.volume_m3 >= 0);
    }
    for (int port = 0; port < ports; ++port) {
        CHECK(used.count(port) == 1);  // water can get in at every port
    }
    if (kind.materials) {
        for (const parts::Material& material : kind.materials(values)) {
            CHECK_FALSE(material.item.empty());
            CHECK(material.quantity > 0);
            CHECK(material.unitPrice == 0);  // unknown until somebody gives one
        }
    }
}

TEST_CASE("every kind has its symbol", "[parts]")
{
    const parts::PartKind& kind = *GENERATE(from_range(parts::catalogue()));
    CAPTURE(kind.id);
    const std::filesystem::path symbol =
        std::filesystem::path(TAPWARD_SOURCE_DIR) / "resources" / "symbols" / (std::string(kind.id) + ".svg");
    CHECK((kind.isPipe || std::filesystem::exists(symbol)));
}
