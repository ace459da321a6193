// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <cstdint>
#include <string>
#include <variant>
#include <vector>

#include "base/units.h"

namespace tapward {

/// A value inside a message: shown by whoever shows the message, in the reader's units.
using Argument = std::variant<Measure, std::int64_t, std::string>;

/// A sentence with typed values. `text` is English with {0}, {1}, ... where `arguments` go; it is also
/// the key under which a window looks up its translation, so it is never assembled from pieces.
struct Message {
    std::string text;
    std::vector<Argument> arguments = {};

    Message() = default;
    Message(std::string plain) : text(std::move(plain)) {}  // NOLINT(google-explicit-constructor)
    Message(const char* plain) : text(plain) {}             // NOLINT(google-explicit-constructor)
    Message(std::string sentence, std::vector<Argument> values)
        : text(std::move(sentence)), arguments(std::move(values))
    {
    }
    bool empty() const { return text.empty(); }
};

/// The message as one line of text. `translated` stands in for message.text when not empty. A
/// placeholder without an argument stays as it is, so a bad translation cannot crash.
std::string render(const Message& message, UnitSystem units, const std::string& translated = {});

}  // namespace tapward
