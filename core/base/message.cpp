// SPDX-License-Identifier: GPL-3.0-or-later
#include "base/message.h"

#include <charconv>

namespace tapward {

std::string render(const Message& message, UnitSystem units, const std::string& translated)
{
    const std::string& pattern = translated.empty() ? message.text : translated;
    std::string out;
    out.reserve(pattern.size() + 16 * message.arguments.size());
    for (std::size_t i = 0; i < pattern.size();) {
        if (pattern[i] == '{') {
            const std::size_t close = pattern.find('}', i);
            std::size_t index = 0;
            if (close != std::string::npos) {
                const char* first = pattern.data() + i + 1;
                const char* last = pattern.data() + close;
                const auto [end, error] = std::from_chars(first, last, index);
                if (error == std::errc() && end == last && index < message.arguments.size()) {
                    const Argument& argument = message.arguments[index];
                    if (const auto* measure = std::get_if<Measure>(&argument)) {
                        out += (measure->atLeast ? "at least " : "") + show(*measure, units);
                    } else if (const auto* number = std::get_if<std::int64_t>(&argument)) {
                        out += std::to_string(*number);
                    } else {
                        out += std::get<std::string>(argument);
                    }
                    i = close + 1;
                    continue;
                }
            }
        }
        out += pattern[i++];
    }
    return out;
}

}  // namespace tapward
