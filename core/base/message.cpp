// SPDX-License-Identifier: GPL-3.0-or-later
#include "base/message.h"

#include <charconv>

namespace tapward {

namespace {

std::string spoken(const Argument& argument, UnitSystem units)
{
    struct Speak {
        UnitSystem units;
        std::string operator()(const Measure& measure) const
        {
            return (measure.atLeast ? "at least " : "") + show(measure, units);
        }
        std::string operator()(std::int64_t number) const { return std::to_string(number); }
        std::string operator()(const std::string& typed) const { return typed; }
        std::string operator()(Text ours) const { return std::string(ours); }
        std::string operator()(const std::vector<Text>& list) const
        {
            std::string out;
            for (const Text one : list) {
                out += (out.empty() ? "" : ", ") + std::string(one);
            }
            return out;
        }
    };
    return std::visit(Speak{units}, argument);
}

}  // namespace

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
                    out += spoken(message.arguments[index], units);
                    i = close + 1;
                    continue;
                }
            }
        }
        out += pattern[i++];
    }
    return out;
}

std::string inEnglish(const Message& message) { return render(message, UnitSystem::Us); }

}  // namespace tapward
