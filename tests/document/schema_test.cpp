// SPDX-License-Identifier: GPL-3.0-or-later
#include "document/schema.h"

#include <cstdlib>
#include <filesystem>
#include <fstream>

#include <nlohmann/json.hpp>
#include <rapidcheck.h>

#include "document/file.h"
#include "support/catch.h"
#include "support/random_drawing.h"

using namespace tapward;
using Json = nlohmann::ordered_json;

namespace {

namespace fs = std::filesystem;

std::string contents(const fs::path& path)
{
    std::ifstream in(path, std::ios::binary);
    return {std::istreambuf_iterator<char>(in), std::istreambuf_iterator<char>()};
}

/// The few words of JSON Schema that ours uses, and one rule more: no key may be undeclared.
class Checker {
public:
    explicit Checker(const Json& schema) : m_schema(schema) {}

    /// The first thing that does not fit, empty when all does.
    std::string check(const Json& value) { return check(m_schema, value, ""); }

private:
    std::string check(const Json& original, const Json& value, const std::string& where)
    {
        const Json& schema = original.contains("$ref")
                                 ? m_schema.at(Json::json_pointer(original["$ref"].get<std::string>().substr(1)))
                                 : original;
        if (schema.contains("const") && schema["const"] != value) {
            return where + " const";
        }
        if (schema.contains("enum")
            && std::find(schema["enum"].begin(), schema["enum"].end(), value) == schema["enum"].end()) {
            return where + " enum";
        }
        if (schema.contains("type") && !hasType(schema["type"].get<std::string>(), value)) {
            return where + " type";
        }
        if ((schema.contains("minimum") && value < schema["minimum"])
            || (schema.contains("maximum") && value > schema["maximum"])) {
            return where + " range";
        }
        if ((schema.contains("maxLength") && value.get<std::string>().size() > schema["maxLength"].get<std::size_t>())
            || (schema.contains("minLength") && value.get<std::string>().empty())) {
            return where + " text length";
        }
        if ((schema.contains("maxItems") && value.size() > schema["maxItems"].get<std::size_t>())
            || (schema.contains("minItems") && value.size() < schema["minItems"].get<std::size_t>())) {
            return where + " count";
        }
        for (const Json& key : schema.value("required", Json::array())) {
            if (!value.contains(key.get<std::string>())) {
                return where + " lacks " + key.get<std::string>();
            }
        }
        if (value.is_array() && schema.contains("items")) {
            for (std::size_t i = 0; i < value.size(); ++i) {
                if (auto why = check(schema["items"], value[i], where + "/" + std::to_string(i)); !why.empty()) {
                    return why;
                }
            }
        }
        if (value.is_object() && schema.contains("properties")) {
            for (const auto& item : value.items()) {
                if (!schema["properties"].contains(item.key())) {
                    return where + " undeclared key " + item.key();
                }
                if (auto why = check(schema["properties"][item.key()], item.value(), where + "/" + item.key());
                    !why.empty()) {
                    return why;
                }
            }
        }
        for (const Json& choice : schema.value("allOf", Json::array())) {
            const Json& wanted = choice["if"]["properties"]["kind"]["const"];
            if (value["kind"] != wanted) {
                continue;
            }
            for (const Json& key : choice["then"]["required"]) {
                if (!value.contains(key.get<std::string>())) {
                    return where + " lacks " + key.get<std::string>();
                }
            }
            if (value.contains("fields")) {
                return check(choice["then"]["properties"]["fields"], value["fields"], where + "/fields");
            }
        }
        return {};
    }

    static bool hasType(const std::string& type, const Json& value)
    {
        return type == "object"    ? value.is_object()
               : type == "array"   ? value.is_array()
               : type == "string"  ? value.is_string()
               : type == "boolean" ? value.is_boolean()
               : type == "integer" ? value.is_number_integer()
                                   : type == "number" && value.is_number();
    }

    const Json& m_schema;
};

}  // namespace

TEST_CASE("the published schema says what the reader does", "[document]")
{
    const fs::path published = fs::path(TAPWARD_SOURCE_DIR) / "resources" / "schema" / "tapward-1.schema.json";
    // After a change to a part kind: run this test with TAPWARD_WRITE_SCHEMA=1 and commit the file.
    if (std::getenv("TAPWARD_WRITE_SCHEMA")) {
        std::ofstream(published, std::ios::binary) << document::schema();
    }
    CHECK(contents(published) == document::schema());
}

TEST_CASE("the samples keep to the schema", "[document]")
{
    const Json schema = Json::parse(document::schema());
    int count = 0;
    for (const auto& entry : fs::directory_iterator(fs::path(TAPWARD_SOURCE_DIR) / "samples")) {
        if (entry.path().extension() == ".tapward") {
            ++count;
            CAPTURE(entry.path().filename().string());
            CHECK(Checker(schema).check(Json::parse(contents(entry.path()))) == "");
        }
    }
    CHECK(count >= 2);
}

TEST_CASE("what Tapward writes keeps to the schema", "[document][property]")
{
    const Json schema = Json::parse(document::schema());
    CHECK(rc::check("schema", [&schema](std::uint64_t seed) {
        test::RandomOptions options;
        options.sense = seed % 2 == 0;
        const auto why = Checker(schema).check(Json::parse(document::write(test::randomDrawing(seed, options))));
        RC_ASSERT(why == "");
    }));
}

TEST_CASE("the schema refuses what the reader refuses", "[document]")
{
    const Json schema = Json::parse(document::schema());
    const Json good = Json::parse(document::write(test::randomDrawing(3)));
    REQUIRE(Checker(schema).check(good) == "");
    const auto broken = [&](const char* pointer, const Json& value) {
        Json bad = good;
        bad[Json::json_pointer(pointer)] = value;
        CAPTURE(pointer);
        CHECK(Checker(schema).check(bad) != "");
        CHECK_FALSE(document::read(bad.dump()));
    };
    broken("/version", 2);
    broken("/parts/0/kind", "warp_core");
    broken("/parts/0/id", 0);
    broken("/parts/0/stage", "maybe");
    broken("/parts/0/at", Json::array({1}));
    broken("/parts/0/turn", 7);
    broken("/parts/0/fields/setpoint_C/value", 400);
    broken("/parts/0/fields/setpoint_C/value", "hot");
    broken("/job/hours", -1);
    broken("/next_id", 0);
    broken("/cases", Json::object());
}
