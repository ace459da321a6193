// SPDX-License-Identifier: GPL-3.0-or-later
#include "support/recorded.h"

#include <algorithm>
#include <array>
#include <cctype>
#include <charconv>
#include <cmath>
#include <map>
#include <set>
#include <string_view>

#include <fmt/format.h>

namespace tapward::test {
namespace {

using Json = nlohmann::ordered_json;

struct Tolerance {
    std::string_view unit;
    double absolute, share;
    int decimals;  ///< when written by written(); below zero: significant digits
};

/// What two compilers may differ by at most, and far less than anybody would cut a pipe for.
constexpr std::array kTolerances{
    Tolerance{"°C", 0.05, 0, 3},        Tolerance{"K", 0.05, 0, 3},         Tolerance{"°F", 0.09, 0, 2},
    Tolerance{"s", 0.5, 0.001, 2},      Tolerance{"%", 0.5, 0, 2},          Tolerance{"share", 0.005, 0, 4},
    Tolerance{"m3/s", 1e-9, 0.002, -6}, Tolerance{"m3", 1e-8, 0.002, -6},   Tolerance{"L/min", 1e-4, 0.002, -6},
    Tolerance{"L", 1e-4, 0.002, -6},    Tolerance{"gpm", 1e-4, 0.002, -6},  Tolerance{"gal", 1e-4, 0.002, -6},
    Tolerance{"Pa", 2, 0.002, -6},      Tolerance{"kPa", 0.002, 0.002, -6}, Tolerance{"psi", 0.001, 0.002, -6},
    Tolerance{"m", 1e-4, 0.002, -6},    Tolerance{"ft", 1e-3, 0.002, -6},   Tolerance{"mm", 1e-3, 0.002, -6},
    Tolerance{"V", 1e-3, 0.002, -6},    Tolerance{"A", 1e-4, 0.002, -6},    Tolerance{"ohm", 1e-5, 0.002, -6},
    Tolerance{"J", 1, 0.002, -6},       Tolerance{"As", 0.1, 0.002, -6},    Tolerance{"Ah", 1e-3, 0.002, -6},
    Tolerance{"Wh", 1e-3, 0.002, -6},   Tolerance{"W", 0.1, 0.002, -6},     Tolerance{"kW", 1e-3, 0.002, -6},
    Tolerance{"kg", 1e-4, 0.002, -6},   Tolerance{"", 1e-6, 0.002, -6},
};

const Tolerance* toleranceOf(std::string_view unit)
{
    const auto at =
        std::find_if(kTolerances.begin(), kTolerances.end(), [&](const Tolerance& one) { return one.unit == unit; });
    return at == kTolerances.end() ? nullptr : &*at;
}

std::string unitOfKey(const std::string& key)
{
    // Coulombs share their letter with degrees.
    static const std::set<std::string> charges{"per_run_C", "run_C", "day_C", "rest_per_day_C"};
    static const std::set<std::string> shares{
        "share",        "reaches",       "keeps",    "both",   "both_error",       "both_if_lit",
        "comes_if_lit", "heater_lights", "rank_fit", "window", "rank_coefficient", "battery_share_per_day",
        "flow_margin"};
    static const std::map<std::string, std::string> units{{"C", "°C"},     {"K", "K"},   {"s", "s"}, {"m3", "m3"},
                                                          {"m3s", "m3/s"}, {"Pa", "Pa"}, {"V", "V"}, {"A", "A"},
                                                          {"J", "J"},      {"m", "m"},   {"W", "W"}, {"ohm", "ohm"}};
    if (charges.count(key) > 0) {
        return "As";
    }
    if (shares.count(key) > 0) {
        return "share";
    }
    const auto found = units.find(key.substr(key.rfind('_') + 1));
    return found != units.end() && found->first != key ? found->second : std::string();
}

/// As written in a document's "unit" member.
std::string unitOfSymbol(const std::string& symbol) { return symbol == "degC" ? "°C" : symbol == "C" ? "As" : symbol; }

std::string nameOf(const Json& element, std::size_t place)
{
    std::string name;
    // Not by a sentence: its numbers would be part of the key, and keys are exact.
    for (const char* key : {"part", "name", "id", "kind", "arrangement", "fuse", "place", "fault", "battery_V"}) {
        const auto member = element.is_object() ? element.find(key) : element.end();
        if (element.is_object() && member != element.end() && !member->is_null()) {
            name += (name.empty() ? "" : " ") + (member->is_string() ? member->get<std::string>() : member->dump());
        }
    }
    // Colons end the key of a line.
    std::replace(name.begin(), name.end(), ':', ' ');
    std::replace(name.begin(), name.end(), '/', ' ');
    return name.empty() ? std::to_string(place) : name;
}

std::string leaf(const Json& value, const std::string& unit)
{
    if (value.is_number_float()) {
        return written(value.get<double>(), unit);
    }
    if (value.is_number()) {
        return value.dump() + (unit.empty() ? "" : " " + unit);
    }
    return value.is_string() ? value.get<std::string>() : value.dump();
}

void flatten(const Json& value, const std::string& path, const std::string& unit,
             const std::vector<std::string>& leaveOut, Lines& out)
{
    if (value.is_object()) {
        const std::string given = value.contains("unit") && value["unit"].is_string()
                                      ? unitOfSymbol(value["unit"].get<std::string>())
                                      : std::string();
        for (const auto& member : value.items()) {
            if (std::find(leaveOut.begin(), leaveOut.end(), member.key()) == leaveOut.end()) {
                const std::string own = unitOfKey(member.key());
                flatten(member.value(), path + '/' + member.key(), own.empty() ? given : own, leaveOut, out);
            }
        }
        return;
    }
    const bool list = value.is_array();
    const bool plain =
        list && std::none_of(value.begin(), value.end(), [](const Json& one) { return one.is_structured(); });
    if (list && !plain) {
        std::map<std::string, int> seen;
        for (std::size_t i = 0; i < value.size(); ++i) {
            std::string name = nameOf(value[i], i);
            if (const int times = ++seen[name]; times > 1) {
                name += '#' + std::to_string(times);
            }
            flatten(value[i], path + '/' + name, unit, leaveOut, out);
        }
        return;
    }
    std::string text;
    if (list) {
        // A long list is a curve: a dozen of its values tell it from any other.
        const std::size_t most = 13, count = std::min(value.size(), most);
        for (std::size_t i = 0; i < count; ++i) {
            const std::size_t at = value.size() <= most ? i : i * (value.size() - 1) / (most - 1);
            text += (i == 0 ? "" : " | ") + leaf(value[at], unit);
        }
    } else {
        text = leaf(value, unit);
    }
    std::replace(text.begin(), text.end(), '\n', ' ');
    out.push_back(path.substr(1) + ": " + text);
}

/// The number that begins here, if one does; moves `at` behind it and says how many decimals it shows.
bool readNumber(const std::string& text, std::size_t& at, double& value, int& decimals, bool& whole)
{
    const bool sign = text[at] == '-' || text[at] == '+';
    const std::size_t start = at + (sign ? 1 : 0);
    // A digit inside a word ("WH1", "F2") belongs to the word.
    const bool inWord = at > 0 && (std::isalnum(static_cast<unsigned char>(text[at - 1])) || text[at - 1] == '_');
    if (start >= text.size() || !std::isdigit(static_cast<unsigned char>(text[start])) || inWord) {
        return false;
    }
    const auto read = std::from_chars(text.data() + start, text.data() + text.size(), value);
    const auto end = static_cast<std::size_t>(read.ptr - text.data());
    const std::string_view digits(text.data() + start, end - start);
    value = text[at] == '-' ? -value : value;
    whole = digits.find_first_of(".eE") == std::string_view::npos;
    const std::size_t dot = digits.find('.');
    const std::size_t power = digits.find_first_of("eE");
    decimals = 0;
    if (dot != std::string_view::npos) {
        decimals = static_cast<int>(std::min(power, digits.size()) - dot - 1);
    }
    if (power != std::string_view::npos) {
        decimals -= std::stoi(std::string(digits.substr(power + 1)));
    }
    at = end;
    return true;
}

std::string unitAt(const std::string& text, std::size_t at)
{
    if (at >= text.size() || text[at] != ' ') {
        return {};
    }
    const std::size_t end = text.find_first_of(" ,;)|", at + 1);
    std::string unit = text.substr(at + 1, end == std::string::npos ? end : end - at - 1);
    while (!unit.empty() && (unit.back() == '.' || unit.back() == ':')) {
        unit.pop_back();
    }
    return unit;
}

}  // namespace

std::string written(double value, const std::string& unit)
{
    if (!std::isfinite(value)) {
        return "none";
    }
    const Tolerance* tolerance = toleranceOf(unit);
    std::string text = tolerance && tolerance->decimals >= 0 ? fmt::format("{:.{}f}", value, tolerance->decimals)
                                                             : fmt::format("{:.6g}", value);
    if (text.front() == '-' && text.find_first_not_of("-0.") == std::string::npos) {
        text.erase(0, 1);
    }
    return unit.empty() ? text : text + ' ' + unit;
}

Lines flattened(const nlohmann::ordered_json& document, const std::vector<std::string>& leaveOut)
{
    Lines out;
    flatten(document, "", "", leaveOut, out);
    return out;
}

bool sameWithin(const std::string& before, const std::string& now)
{
    std::size_t a = 0, b = 0;
    while (a < before.size() && b < now.size()) {
        double was = 0, is = 0;
        int wasDecimals = 0, isDecimals = 0;
        bool wasWhole = false, isWhole = false;
        std::size_t nextA = a, nextB = b;
        const bool number = readNumber(before, nextA, was, wasDecimals, wasWhole);
        if (number != readNumber(now, nextB, is, isDecimals, isWhole)) {
            return false;
        }
        if (!number) {
            if (before[a++] != now[b++]) {
                return false;
            }
            continue;
        }
        a = nextA;
        b = nextB;
        const Tolerance* known = toleranceOf(unitAt(before, a));
        const Tolerance& tolerance = known ? *known : *toleranceOf("");
        if (tolerance.unit.empty() && wasWhole && isWhole) {
            if (was != is) {
                return false;
            }
            continue;
        }
        const double place = std::pow(10.0, -std::min(wasDecimals, isDecimals));
        const double allowed = std::max({tolerance.absolute, tolerance.share * std::abs(was), place});
        if (!(std::abs(was - is) <= allowed * (1 + 1e-9))) {
            return false;
        }
    }
    return a == before.size() && b == now.size();
}

Lines differences(const Lines& before, const Lines& now)
{
    // A key that comes twice is told apart by its number.
    struct Line {
        std::string key, text;
    };
    const auto keyed = [](const Lines& lines) {
        std::vector<Line> out;
        std::map<std::string, int> seen;
        for (const std::string& line : lines) {
            const std::size_t colon = line.find(": ");
            std::string key = line.substr(0, colon);
            if (const int times = ++seen[key]; times > 1) {
                key += '#' + std::to_string(times);
            }
            out.push_back({std::move(key), colon == std::string::npos ? std::string() : line.substr(colon + 2)});
        }
        return out;
    };
    const std::vector<Line> old = keyed(before);
    std::map<std::string, std::string> was;
    for (const Line& line : old) {
        was[line.key] = line.text;
    }
    Lines out;
    std::set<std::string> met;
    for (const Line& line : keyed(now)) {
        met.insert(line.key);
        const auto found = was.find(line.key);
        if (found == was.end()) {
            out.push_back(line.key + "\n    was  (not there)\n    now  " + line.text);
        } else if (!sameWithin(found->second, line.text)) {
            out.push_back(line.key + "\n    was  " + found->second + "\n    now  " + line.text);
        }
    }
    for (const Line& line : old) {
        if (met.count(line.key) == 0) {
            out.push_back(line.key + "\n    was  " + line.text + "\n    now  (gone)");
        }
    }
    return out;
}

}  // namespace tapward::test
