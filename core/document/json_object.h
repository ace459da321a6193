// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <algorithm>
#include <optional>
#include <string>
#include <utility>
#include <vector>

#include <fmt/format.h>

#include "base/result.h"
#include "document/check.h"
#include "document/json_text.h"
#include "document/names.h"

// Reading typed members out of a JSON tree; private to this room.
namespace tapward::document {

/// The first thing found wrong; reading goes on with harmless values until the next chance to stop.
struct Trouble {
    std::optional<Problem> first;

    void add(Message what, Message remedy, std::string where)
    {
        if (!first) {
            first = Problem{std::move(what), std::move(remedy), std::move(where)};
        }
    }
};

/// Reads the members of one object by name and keeps the rest.
class Object {
public:
    Object(Trouble& trouble, const Json& json, std::string where)
        : m_trouble(trouble), m_json(json), m_where(std::move(where))
    {
        if (!json.is_object()) {
            m_trouble.add("An object in braces is missing here.", "Open a saved copy.", m_where);
        }
    }

    const Json* member(const char* key)
    {
        if (!m_json.is_object()) {
            return nullptr;
        }
        m_known.push_back(key);
        const auto at = m_json.find(key);
        return at == m_json.end() ? nullptr : &*at;
    }

    const Json* required(const char* key)
    {
        const Json* json = member(key);
        if (!json && m_json.is_object()) {
            m_trouble.add({"The key \"{0}\" is missing.", {std::string(key)}}, "Open a saved copy, or add it.",
                          m_where);
        }
        return json;
    }

    std::string where(const char* key) const { return fmt::format("{}/{}", m_where, key); }
    const std::string& where() const { return m_where; }

    double number(const char* key, const Json* json, double otherwise)
    {
        if (!json) {
            return otherwise;
        }
        if (!json->is_number()) {
            m_trouble.add({"\"{0}\" is not a number.", {std::string(key)}}, "Give a number.", where(key));
            return otherwise;
        }
        return json->get<double>();
    }
    double number(const char* key, double otherwise) { return number(key, member(key), otherwise); }
    double requiredNumber(const char* key) { return number(key, required(key), 0); }
    std::optional<double> optionalNumber(const char* key)
    {
        const Json* json = member(key);
        return json ? std::optional(number(key, json, 0)) : std::nullopt;
    }

    PartId id(const char* key, const Json* json, PartId otherwise, PartId most = kMostId)
    {
        if (!json) {
            return otherwise;
        }
        const bool whole = json->is_number_integer() || json->is_number_unsigned();
        const double value = whole ? json->get<double>() : 0;
        if (!whole || value < 1 || value > most) {
            m_trouble.add(
                {"\"{0}\" is not a whole number from 1 to {1}.", {std::string(key), static_cast<std::int64_t>(most)}},
                "Give the number of a part.", where(key));
            return otherwise;
        }
        return json->get<PartId>();
    }
    PartId id(const char* key) { return id(key, member(key), kNoPart); }
    PartId requiredId(const char* key) { return id(key, required(key), kNoPart); }

    bool flag(const char* key, bool otherwise)
    {
        const Json* json = member(key);
        if (json && !json->is_boolean()) {
            m_trouble.add({"\"{0}\" is neither true nor false.", {std::string(key)}}, "Give true or false.",
                          where(key));
        }
        return json && json->is_boolean() ? json->get<bool>() : otherwise;
    }

    std::string text(const char* key, const Json* json, std::string otherwise)
    {
        if (json && !json->is_string()) {
            m_trouble.add({"\"{0}\" is not a text.", {std::string(key)}}, "Give a text in quotes.", where(key));
        }
        return json && json->is_string() ? json->get<std::string>() : std::move(otherwise);
    }
    std::string text(const char* key, std::string otherwise = {})
    {
        return text(key, member(key), std::move(otherwise));
    }
    std::string requiredText(const char* key) { return text(key, required(key), {}); }

    template <class T, std::size_t N>
    T word(const char* key, const Names<T, N>& names, const Json* json, T otherwise)
    {
        if (!json) {
            return otherwise;
        }
        const std::string given = text(key, json, {});
        const auto found = named(names, given);
        if (!found) {
            m_trouble.add({"\"{0}\" is not a word Tapward knows for \"{1}\".", {given, std::string(key)}},
                          "Use one of the words in the format's description.", where(key));
        }
        return found.value_or(otherwise);
    }

    Point point(const char* key, const Json* json) { return json ? pointAt(m_trouble, *json, where(key)) : Point{}; }

    static Point pointAt(Trouble& trouble, const Json& json, const std::string& where)
    {
        if (!json.is_array() || json.size() != 2 || !json[0].is_number() || !json[1].is_number()) {
            trouble.add("A place is not a pair of numbers.", "Give [x, y].", where);
            return {};
        }
        return {json[0].get<double>(), json[1].get<double>()};
    }

    /// The members of an array, none when it is missing; too many are refused.
    const Json::array_t& list(const char* key, const Json* json, std::size_t most)
    {
        static const Json::array_t kNone;
        if (!json) {
            return kNone;
        }
        if (!json->is_array()) {
            m_trouble.add({"\"{0}\" is not a list.", {std::string(key)}}, "Give a list in brackets.", where(key));
            return kNone;
        }
        if (json->size() > most) {
            m_trouble.add(
                {"\"{0}\" holds {1} entries; {2} are allowed.",
                 {std::string(key), static_cast<std::int64_t>(json->size()), static_cast<std::int64_t>(most)}},
                "Divide the drawing.", where(key));
            return kNone;
        }
        return json->get_ref<const Json::array_t&>();
    }

    /// Everything not asked for.
    void keepRest(Unknown& unknown, const std::string& pointer = {}) const
    {
        if (!m_json.is_object()) {
            return;
        }
        for (const auto& item : m_json.items()) {
            const bool known =
                std::any_of(m_known.begin(), m_known.end(), [&item](const char* key) { return item.key() == key; });
            if (!known) {
                unknown.emplace(fmt::format("{}/{}", pointer, pointerStep(item.key())), compactJson(item.value()));
            }
        }
    }

private:
    Trouble& m_trouble;
    const Json& m_json;
    std::string m_where;
    std::vector<const char*> m_known;
};

}  // namespace tapward::document
