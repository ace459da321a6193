// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <cstdint>
#include <string>
#include <string_view>
#include <variant>
#include <vector>

#include "base/units.h"

namespace tapward {

/// Words of ours, in English, which a window may say in the reader's language. Only a literal becomes one: what somebody
/// typed stays a std::string and is shown as typed, also where it reads like a word of ours.
class Text {
public:
    constexpr Text() = default;
    consteval Text(const char* literal) : m_english(literal) {}  // NOLINT(google-explicit-constructor)

    constexpr std::string_view english() const { return m_english; }
    constexpr operator std::string_view() const { return m_english; }  // NOLINT(google-explicit-constructor)
    constexpr bool empty() const { return m_english.empty(); }
    friend constexpr bool operator==(const Text&, const Text&) = default;
    friend constexpr bool operator==(const Text& a, std::string_view b) { return a.m_english == b; }
    friend constexpr bool operator==(const Text& a, const char* b) { return a.m_english == b; }

private:
    std::string_view m_english;
};

/// A value inside a message: shown by whoever shows the message, in the reader's units and language; a std::string is
/// somebody's own (a tag, a name, what was typed) and stays as it is. A list has commas between.
using Argument = std::variant<Measure, std::int64_t, std::string, Text, std::vector<Text>>;

/// A sentence with typed values. `text` is English with {0}, {1}, ... where `arguments` go; it is also
/// the key under which a window looks up its translation, so it is never assembled from pieces.
struct Message {
    std::string text;
    std::vector<Argument> arguments = {};

    Message() = default;
    Message(std::string plain) : text(std::move(plain)) {}  // NOLINT(google-explicit-constructor)
    Message(const char* plain) : text(plain) {}  // NOLINT(google-explicit-constructor)
    Message(Text plain) : text(plain.english()) {}  // NOLINT(google-explicit-constructor)
    Message(std::string sentence, std::vector<Argument> values)
        : text(std::move(sentence)), arguments(std::move(values))
    {
    }
    bool empty() const { return text.empty(); }
    friend bool operator==(const Message&, const Message&) = default;
};

/// The message as one line of text. `translated` stands in for message.text when not empty. A
/// placeholder without an argument stays as it is, so a bad translation cannot crash.
std::string render(const Message& message, UnitSystem units, const std::string& translated = {});
/// A message without measures in English: labels in files, tables and JSON.
std::string inEnglish(const Message& message);

}  // namespace tapward
