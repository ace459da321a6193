// SPDX-License-Identifier: GPL-3.0-or-later
#include "base/units.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <limits>
#include <utility>

#include <fmt/format.h>

#include "base/unit_factors.h"

namespace tapward {
namespace {

struct Row {
    Quantity quantity;
    std::string_view si;
    DisplayUnit us, metric;
};

/// One row a quantity, in the order of the enumeration.
const std::array kRows{
    Row{Quantity::None, "", {"", 1, 0, 3}, {"", 1, 0, 3}},
    Row{Quantity::Percent, "", {"%", 100, 0, 0}, {"%", 100, 0, 0}},
    Row{Quantity::Length, "m", {"ft", 1 / us::kFoot, 0, 1}, {"m", 1, 0, 2}},
    Row{Quantity::Bore, "m", {"in", 1 / us::kInch, 0, 3}, {"mm", 1e3, 0, 1}},
    Row{Quantity::Volume, "m3", {"gal", 1 / us::kGallon, 0, 2}, {"L", 1e3, 0, 2}},
    Row{Quantity::Flow, "m3/s", {"gpm", 1 / us::kGpm, 0, 2}, {"L/min", kMinute / kLitre, 0, 2}},
    Row{Quantity::Pressure, "Pa", {"psi", 1 / us::kPsi, 0, 1}, {"kPa", 1e-3, 0, 1}},
    Row{Quantity::Head, "m", {"ft", 1 / us::kFoot, 0, 1}, {"m", 1, 0, 2}},
    Row{Quantity::Temperature, "degC", {"°F", 1.8, 32, 0}, {"°C", 1, 0, 1}},
    Row{Quantity::TemperatureDifference, "K", {"°F", 1.8, 0, 1}, {"K", 1, 0, 1}},
    Row{Quantity::Power, "W", {"BTU/h", 1 / us::kBtuPerHour, 0, 0}, {"kW", 1e-3, 0, 2}},
    Row{Quantity::ElectricPower, "W", {"W", 1, 0, 1}, {"W", 1, 0, 1}},
    Row{Quantity::Energy, "J", {"BTU", 1 / (us::kBtuPerHour * kHour), 0, 0}, {"MJ", 1e-6, 0, 2}},
    Row{Quantity::ElectricEnergy, "J", {"Wh", 1 / kHour, 0, 2}, {"Wh", 1 / kHour, 0, 2}},
    Row{Quantity::Time, "s", {"s", 1, 0, 0}, {"s", 1, 0, 0}},
    Row{Quantity::Mass, "kg", {"lb", 1 / us::kPound, 0, 1}, {"kg", 1, 0, 2}},
    Row{Quantity::Voltage, "V", {"V", 1, 0, 1}, {"V", 1, 0, 1}},
    Row{Quantity::Current, "A", {"A", 1, 0, 2}, {"A", 1, 0, 2}},
    Row{Quantity::Resistance, "ohm", {"ohm", 1, 0, 3}, {"ohm", 1, 0, 3}},
    Row{Quantity::Charge, "C", {"Ah", 1 / kHour, 0, 1}, {"Ah", 1 / kHour, 0, 1}},
    Row{Quantity::FlowCoefficient, "m3/s/Pa^0.5", {"Cv", 1 / oneCv(), 0, 2}, {"Kv", 1 / oneKv(), 0, 2}},
    Row{Quantity::Conductivity, "W/(m K)", {"W/mK", 1, 0, 3}, {"W/mK", 1, 0, 3}},
    Row{Quantity::Speed, "m/s", {"ft/s", 1 / us::kFoot, 0, 1}, {"m/s", 1, 0, 2}},
    Row{Quantity::Money, "", {"", 1, 0, 2}, {"", 1, 0, 2}},
    Row{Quantity::Altitude, "m", {"ft", 1 / us::kFoot, 0, 0}, {"m", 1, 0, 0}},
};

const Row& row(Quantity quantity) { return kRows[static_cast<std::size_t>(quantity)]; }

}  // namespace

DisplayUnit displayUnit(Quantity quantity, UnitSystem units)
{
    return units == UnitSystem::Us ? row(quantity).us : row(quantity).metric;
}

std::string_view siSymbol(Quantity quantity) { return row(quantity).si; }

double toDisplay(Measure measure, UnitSystem units)
{
    const DisplayUnit unit = displayUnit(measure.quantity, units);
    return measure.si * unit.scale + unit.offset;
}

double fromDisplay(double shown, Quantity quantity, UnitSystem units)
{
    const DisplayUnit unit = displayUnit(quantity, units);
    return (shown - unit.offset) / unit.scale;
}

std::string showNumber(Measure measure, UnitSystem units)
{
    if (!std::isfinite(measure.si)) {
        return "–";
    }
    const DisplayUnit unit = displayUnit(measure.quantity, units);
    // Its size in another unit may be beyond all numbers; and no readout is helped by 300 digits.
    const double shown = std::clamp(measure.si * unit.scale + unit.offset, std::numeric_limits<double>::lowest(),
                                    std::numeric_limits<double>::max());
    if (constexpr double kMostDigits = 1e15; std::abs(shown) >= kMostDigits) {
        return fmt::format("{:.1e}", shown);
    }
    std::string text = fmt::format("{:.{}f}", shown, unit.decimals);
    // "-0.00" reads as a fault.
    if (text.find_first_not_of("-0.") == std::string::npos && text.front() == '-') {
        text.erase(0, 1);
    }
    // Plain numbers lose their trailing zeros; readouts keep their decimals so that they do not jump.
    if (measure.quantity == Quantity::None && text.find('.') != std::string::npos) {
        while (text.back() == '0') {
            text.pop_back();
        }
        if (text.back() == '.') {
            text.pop_back();
        }
    }
    return text;
}

Shown shown(Measure measure, UnitSystem units)
{
    if (constexpr double kLong_s = 600, kMost_s = 1e9;
        measure.quantity == Quantity::Time && measure.si >= kLong_s && measure.si < kMost_s) {
        const long long seconds = std::llround(measure.si);
        return seconds % 60 == 0 ? Shown{fmt::format("{}", seconds / 60), "min"}
                                 : Shown{fmt::format("{} min {} s", seconds / 60, seconds % 60), {}};
    }
    return {showNumber(measure, units), std::string(displayUnit(measure.quantity, units).symbol)};
}

std::string show(Measure measure, UnitSystem units)
{
    Shown text = shown(measure, units);
    return text.unit.empty() ? std::move(text.number) : text.number + ' ' + text.unit;
}

}  // namespace tapward
