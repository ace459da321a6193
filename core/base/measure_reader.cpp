// SPDX-License-Identifier: GPL-3.0-or-later
// What a person types, read: "2 ft 3 in", "3*0.4 m", "1 1/2 in".
#include <cctype>
#include <charconv>
#include <cmath>
#include <optional>
#include <string>
#include <utility>
#include <vector>

#include <fmt/format.h>

#include "base/unit_factors.h"
#include "base/units.h"

namespace tapward {
namespace {

struct Symbol {
    std::string_view text;
    double scale;   ///< SI per unit
    double offset;  ///< SI = shown * scale + offset
};

/// Every unit a person may type for a quantity; the first ones are not special.
std::vector<Symbol> typedUnits(Quantity quantity)
{
    switch (quantity) {
    case Quantity::Length:
    case Quantity::Bore:
    case Quantity::Head:
    case Quantity::Altitude:
        return {{"ft", us::kFoot, 0}, {"feet", us::kFoot, 0}, {"foot", us::kFoot, 0}, {"'", us::kFoot, 0},
                {"in", us::kInch, 0}, {"inch", us::kInch, 0}, {"\"", us::kInch, 0},   {"m", 1, 0},
                {"cm", 0.01, 0},      {"mm", 0.001, 0}};
    case Quantity::Volume:
        return {{"gal", us::kGallon, 0},
                {"qt", us::kGallon / 4, 0},
                {"L", kLitre, 0},
                {"l", kLitre, 0},
                {"mL", 1e-6, 0},
                {"ml", 1e-6, 0},
                {"m3", 1, 0},
                {"m³", 1, 0},
                {"oz", us::kGallon / 128, 0}};
    case Quantity::Flow:
        return {{"gpm", us::kGpm, 0},
                {"gal/min", us::kGpm, 0},
                {"L/min", kLitre / kMinute, 0},
                {"l/min", kLitre / kMinute, 0},
                {"lpm", kLitre / kMinute, 0},
                {"L/s", kLitre, 0},
                {"m3/s", 1, 0},
                {"m³/s", 1, 0},
                {"m3/h", 1 / kHour, 0},
                {"gph", us::kGallon / kHour, 0}};
    case Quantity::Pressure:
        return {{"psi", us::kPsi, 0}, {"kPa", 1e3, 0},  {"Pa", 1, 0},
                {"bar", 1e5, 0},      {"mbar", 100, 0}, {"MPa", 1e6, 0}};
    case Quantity::Temperature:
        return {{"°F", 1 / 1.8, -32 / 1.8},
                {"F", 1 / 1.8, -32 / 1.8},
                {"f", 1 / 1.8, -32 / 1.8},
                {"°C", 1, 0},
                {"C", 1, 0},
                {"c", 1, 0},
                {"K", 1, -273.15}};
    case Quantity::TemperatureDifference:
        return {{"°F", 1 / 1.8, 0}, {"F", 1 / 1.8, 0}, {"°C", 1, 0}, {"C", 1, 0}, {"K", 1, 0}};
    case Quantity::Power:
        return {{"BTU/h", us::kBtuPerHour, 0},
                {"Btu/h", us::kBtuPerHour, 0},
                {"btu/h", us::kBtuPerHour, 0},
                {"kW", 1e3, 0},
                {"W", 1, 0}};
    case Quantity::ElectricPower:
        return {{"W", 1, 0}, {"kW", 1e3, 0}};
    case Quantity::Energy:
        return {{"BTU", us::kBtuPerHour * kHour, 0},
                {"Btu", us::kBtuPerHour * kHour, 0},
                {"MJ", 1e6, 0},
                {"kJ", 1e3, 0},
                {"J", 1, 0}};
    case Quantity::ElectricEnergy:
        return {{"Wh", kHour, 0}, {"kWh", 1e3 * kHour, 0}, {"kJ", 1e3, 0}, {"J", 1, 0}};
    case Quantity::Time:
        return {{"s", 1, 0}, {"sec", 1, 0}, {"min", kMinute, 0}, {"h", kHour, 0}, {"ms", 1e-3, 0}};
    case Quantity::Mass:
        return {{"lb", us::kPound, 0}, {"kg", 1, 0}, {"g", 1e-3, 0}, {"oz", us::kPound / 16, 0}};
    case Quantity::Voltage:
        return {{"V", 1, 0}, {"mV", 1e-3, 0}};
    case Quantity::Current:
        return {{"A", 1, 0}, {"mA", 1e-3, 0}};
    case Quantity::Resistance:
        return {{"ohm", 1, 0}, {"Ω", 1, 0}, {"mohm", 1e-3, 0}};
    case Quantity::Charge:
        return {{"Ah", kHour, 0}};
    case Quantity::FlowCoefficient:
        return {{"Cv", oneCv(), 0}, {"Kv", oneKv(), 0}};
    case Quantity::Conductivity:
        return {{"W/mK", 1, 0}, {"W/(m K)", 1, 0}};
    case Quantity::Speed:
        return {{"ft/s", us::kFoot, 0}, {"m/s", 1, 0}};
    case Quantity::Percent:
        return {{"%", 0.01, 0}};
    case Quantity::None:
    case Quantity::Money:
        return {};
    }
    return {};
}

/// Recursive descent over sums of products; a measure is one or more "number unit" written side by side.
class Reader {
public:
    Reader(std::string_view text, Quantity quantity, UnitSystem units)
        : m_text(text), m_units(typedUnits(quantity)), m_bare(displayUnit(quantity, units))
    {
    }

    tl::expected<double, UnitError> read()
    {
        const auto value = sum();
        skipSpace();
        if (!m_error.empty()) {
            return tl::unexpected(UnitError{m_error});
        }
        if (m_at != m_text.size()) {
            return tl::unexpected(UnitError{fmt::format("Not understood: {}", m_text.substr(m_at))});
        }
        // A bare number means the unit that is shown.
        const double si = value.hasUnit ? value.number : (value.number - m_bare.offset) / m_bare.scale;
        if (!std::isfinite(si)) {
            return tl::unexpected(UnitError{"The result is not a number."});
        }
        return si;
    }

private:
    struct Term {
        double number = 0;
        bool hasUnit = false;
    };

    Term sum()
    {
        Term left = product();
        for (;;) {
            skipSpace();
            if (m_at >= m_text.size() || (m_text[m_at] != '+' && m_text[m_at] != '-')) {
                return left;
            }
            const char sign = m_text[m_at++];
            const Term right = product();
            if (left.hasUnit != right.hasUnit) {
                fail("Give every term a unit, or none.");
            }
            left.number += sign == '+' ? right.number : -right.number;
        }
    }

    Term product()
    {
        Term left = factor();
        for (;;) {
            skipSpace();
            if (m_at >= m_text.size() || (m_text[m_at] != '*' && m_text[m_at] != '/')) {
                return left;
            }
            const char sign = m_text[m_at++];
            // What stands under a fraction is a plain number: in "1/2 in" the unit belongs to the whole.
            const Term right = sign == '/' ? divisor() : factor();
            if (sign == '*') {
                if (left.hasUnit && right.hasUnit) {
                    fail("Two measures cannot be multiplied.");
                }
                left.number *= right.number;
            } else {
                if (right.hasUnit) {
                    fail("A measure cannot be divided by.");
                }
                left.number /= right.number;
            }
            // "1/2 in" or "1/2": a unit behind the fraction belongs to the whole of it.
            left.hasUnit = left.hasUnit || right.hasUnit;
            if (sign == '/' && !left.hasUnit) {
                if (const Symbol* unit = unitHere()) {
                    left.number = left.number * unit->scale + unit->offset;
                    left.hasUnit = true;
                }
            }
        }
    }

    Term divisor()
    {
        skipSpace();
        if (m_at < m_text.size() && m_text[m_at] == '(') {
            return factor();
        }
        const auto number = numberHere();
        if (!number) {
            fail("A number is missing.");
        }
        return {number.value_or(1), false};
    }

    Term factor()
    {
        skipSpace();
        if (++m_depth > 40) {
            fail("Too many brackets.");
            return {};
        }
        Term term;
        if (m_at < m_text.size() && m_text[m_at] == '(') {
            ++m_at;
            term = sum();
            skipSpace();
            if (m_at < m_text.size() && m_text[m_at] == ')') {
                ++m_at;
            } else {
                fail("A closing bracket is missing.");
            }
            if (!term.hasUnit) {
                takeUnit(term);
            }
        } else if (m_at < m_text.size() && (m_text[m_at] == '-' || m_text[m_at] == '+')) {
            const bool minus = m_text[m_at++] == '-';
            // The sign belongs to the number, before its unit: -5 °F is not -(5 °F).
            const auto number = numberHere();
            if (!number) {
                fail("A number is missing.");
            } else {
                term.number = minus ? -*number : *number;
                takeUnit(term);
            }
        } else {
            term = measure();
        }
        --m_depth;
        return term;
    }

    /// "5", "5 ft", "2 ft 3 in", "1 1/2 in"
    Term measure()
    {
        const auto first = numberHere();
        if (!first) {
            fail("A number is missing.");
            return {};
        }
        Term term{*first, false};
        if (const auto fraction = fractionHere()) {
            term.number += *fraction;
        }
        takeUnit(term);
        while (term.hasUnit && m_error.empty()) {
            const std::size_t back = m_at;
            const auto next = numberHere();
            if (!next) {
                m_at = back;
                break;
            }
            Term more{*next, false};
            if (const auto fraction = fractionHere()) {
                more.number += *fraction;
            }
            takeUnit(more);
            if (!more.hasUnit) {
                m_at = back;
                break;
            }
            term.number += more.number;
        }
        return term;
    }

    /// After "1": the " 1/2" of "1 1/2 in".
    std::optional<double> fractionHere()
    {
        const std::size_t back = m_at;
        if (m_at < m_text.size() && m_text[m_at] == ' ') {
            if (const auto over = numberHere()) {
                skipSpace();
                if (m_at < m_text.size() && m_text[m_at] == '/') {
                    ++m_at;
                    const auto under = numberHere();
                    if (under && *under != 0) {
                        return *over / *under;
                    }
                }
            }
        }
        m_at = back;
        return std::nullopt;
    }

    std::optional<double> numberHere()
    {
        skipSpace();
        std::string digits;
        std::size_t end = m_at;
        bool point = false;
        while (end < m_text.size()) {
            const char c = m_text[end];
            if (std::isdigit(static_cast<unsigned char>(c))) {
                digits += c;
            } else if ((c == '.' || c == ',') && !point) {
                digits += '.';
                point = true;
            } else if ((c == 'e' || c == 'E') && !digits.empty() && end + 1 < m_text.size()
                       && (std::isdigit(static_cast<unsigned char>(m_text[end + 1]))
                           || ((m_text[end + 1] == '-' || m_text[end + 1] == '+') && end + 2 < m_text.size()
                               && std::isdigit(static_cast<unsigned char>(m_text[end + 2]))))) {
                digits += c;
                digits += m_text[++end];
            } else {
                break;
            }
            ++end;
        }
        double value = 0;
        const auto [stop, error] = std::from_chars(digits.data(), digits.data() + digits.size(), value);
        if (digits.empty() || error != std::errc() || stop != digits.data() + digits.size()) {
            return std::nullopt;
        }
        m_at = end;
        return value;
    }

    const Symbol* unitHere()
    {
        skipSpace();
        const Symbol* best = nullptr;
        for (const Symbol& unit : m_units) {
            if (m_text.substr(m_at, unit.text.size()) == unit.text && (!best || unit.text.size() > best->text.size())) {
                best = &unit;
            }
        }
        if (best) {
            m_at += best->text.size();
        }
        return best;
    }

    void takeUnit(Term& term)
    {
        if (const Symbol* unit = unitHere()) {
            term.number = term.number * unit->scale + unit->offset;
            term.hasUnit = true;
        }
    }

    void skipSpace()
    {
        while (m_at < m_text.size() && (m_text[m_at] == ' ' || m_text[m_at] == '\t')) {
            ++m_at;
        }
    }

    void fail(std::string why)
    {
        if (m_error.empty()) {
            m_error = std::move(why);
        }
        m_at = m_text.size();
    }

    std::string_view m_text;
    std::vector<Symbol> m_units;
    DisplayUnit m_bare;
    std::size_t m_at = 0;
    int m_depth = 0;
    std::string m_error;
};

}  // namespace

tl::expected<double, UnitError> parseMeasure(std::string_view typed, Quantity quantity, UnitSystem units)
{
    if (typed.size() > 200) {
        return tl::unexpected(UnitError{"The text is too long."});
    }
    if (typed.find_first_not_of(" \t") == std::string_view::npos) {
        return tl::unexpected(UnitError{"Nothing was typed."});
    }
    return Reader(typed, quantity, units).read();
}

}  // namespace tapward
