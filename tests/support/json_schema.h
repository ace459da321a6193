// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <algorithm>
#include <string>
#include <vector>

#include <nlohmann/json.hpp>

namespace tapward::test {

/// Checks a document against one of our schemas: type, const, enum, required, properties, items, minItems,
/// maxItems, oneOf, allOf with if/then, and $ref into $defs (JSON Schema 2020-12). Stricter than a schema in one
/// thing: a member that is not declared is wrong, since nobody could know what it means.
class JsonSchema {
public:
    explicit JsonSchema(nlohmann::json schema) : m_schema(std::move(schema)) {}
    /// Where the document is wrong; empty when it holds.
    std::vector<std::string> faults(const nlohmann::json& document) const
    {
        std::vector<std::string> found;
        check(document, m_schema, "", found);
        return found;
    }

private:
    using Json = nlohmann::json;
    static bool hasType(const Json& value, const std::string& type)
    {
        return (type == "object" && value.is_object()) || (type == "array" && value.is_array())
               || (type == "string" && value.is_string()) || (type == "boolean" && value.is_boolean())
               || (type == "null" && value.is_null()) || (type == "number" && value.is_number())
               || (type == "integer" && value.is_number_integer());
    }
    void check(const Json& value, const Json& written, const std::string& at, std::vector<std::string>& found) const
    {
        const Json& rule = written.contains("$ref")
                               ? m_schema.at(Json::json_pointer(written.at("$ref").get<std::string>().substr(1)))
                               : written;
        if (rule.contains("type")) {
            const Json types = rule["type"].is_array() ? rule["type"] : Json::array({rule["type"]});
            if (std::none_of(types.begin(), types.end(), [&](const Json& type) { return hasType(value, type); })) {
                found.push_back(at + ": " + value.dump().substr(0, 40) + " is not of type " + types.dump());
                return;
            }
        }
        if (rule.contains("const") && value != rule["const"]) {
            found.push_back(at + " is not " + rule["const"].dump());
        }
        if (rule.contains("enum") && std::find(rule["enum"].begin(), rule["enum"].end(), value) == rule["enum"].end()) {
            found.push_back(at + ": " + value.dump().substr(0, 40) + " is none of " + rule["enum"].dump());
        }
        if (rule.contains("oneOf")) {
            const auto fits = std::count_if(rule["oneOf"].begin(), rule["oneOf"].end(), [&](const Json& one) {
                std::vector<std::string> inside;
                check(value, one, at, inside);
                return inside.empty();
            });
            if (fits != 1) {
                found.push_back(at + " fits " + std::to_string(fits) + " of oneOf");
            }
        }
        if (value.is_object()) {
            checkMembers(value, rule, at, found);
        }
        if (value.is_array() && rule.contains("items")) {
            if ((rule.contains("minItems") && value.size() < rule["minItems"].get<std::size_t>())
                || (rule.contains("maxItems") && value.size() > rule["maxItems"].get<std::size_t>())) {
                found.push_back(at + " has " + std::to_string(value.size()) + " items");
            }
            for (std::size_t i = 0; i < value.size(); ++i) {
                check(value[i], rule["items"], at + "/" + std::to_string(i), found);
            }
        }
    }
    void checkMembers(const Json& value, const Json& rule, const std::string& at, std::vector<std::string>& found) const
    {
        const auto require = [&](const Json& names) {
            for (const Json& name : names) {
                if (!value.contains(name.get<std::string>())) {
                    found.push_back(at + " lacks " + name.dump());
                }
            }
        };
        require(rule.value("required", Json::array()));
        for (const Json& part : rule.value("allOf", Json::array())) {
            const Json& condition = part.at("if").at("properties");
            const bool holds = std::all_of(condition.items().begin(), condition.items().end(), [&](const auto& one) {
                return value.contains(one.key()) && value[one.key()] == one.value().at("const");
            });
            if (holds) {
                require(part.at("then").at("required"));
            }
        }
        if (!rule.contains("properties")) {
            return;
        }
        for (const auto& member : value.items()) {
            if (rule["properties"].contains(member.key())) {
                check(member.value(), rule["properties"][member.key()], at + "/" + member.key(), found);
            } else {
                found.push_back(at + "/" + member.key() + " is not declared");
            }
        }
    }

    Json m_schema;
};

}  // namespace tapward::test
