// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <string>
#include <string_view>

#include <tl/expected.hpp>

namespace tapward {

/// What a number measures. Inside Tapward every number is SI (temperatures °C); these say which units
/// a person sees.
enum class Quantity {
    None,                   ///< plain number
    Percent,                ///< stored as a fraction 0..1, shown as %
    Length,                 ///< m; ft or m
    Bore,                   ///< m; in or mm
    Volume,                 ///< m³; gal or L
    Flow,                   ///< m³/s; gpm or L/min
    Pressure,               ///< Pa gauge or difference; psi or kPa
    Head,                   ///< m of water; ft or m
    Temperature,            ///< °C; °F or °C
    TemperatureDifference,  ///< K; °F or K, no 32
    Power,                  ///< W; BTU/h or kW
    ElectricPower,          ///< W; W
    Energy,                 ///< J, heat; BTU or MJ
    ElectricEnergy,         ///< J; Wh
    Time,                   ///< s; s
    Mass,                   ///< kg; lb or kg
    Voltage,                ///< V
    Current,                ///< A
    Resistance,             ///< ohm
    Charge,                 ///< C; Ah
    FlowCoefficient,        ///< m³/s at 1 Pa water; Cv (gpm at 1 psi) or Kv (m³/h at 1 bar)
    Conductivity,           ///< W/(m K)
    Speed,                  ///< m/s; ft/s or m/s
    Money,                  ///< currency units of the project
    Altitude                ///< m; ft or m
};

enum class UnitSystem { Us, Metric };

/// A number with what it measures, SI.
struct Measure {
    double si = 0;
    Quantity quantity = Quantity::None;
    bool atLeast = false;  ///< more may be found yet: a message says so before the figure
    friend bool operator==(const Measure&, const Measure&) = default;
};

/// How a quantity is shown: shown = si * scale + offset.
struct DisplayUnit {
    std::string_view symbol;  ///< "gpm", "°F", "" for a plain number
    double scale = 1;
    double offset = 0;
    int decimals = 2;  ///< fit for a readout
};

DisplayUnit displayUnit(Quantity quantity, UnitSystem units);
double toDisplay(Measure measure, UnitSystem units);
double fromDisplay(double shown, Quantity quantity, UnitSystem units);

/// SI unit as written in files and JSON results: "m3/s", "degC", "" for plain numbers.
std::string_view siSymbol(Quantity quantity);

/// A figure and its unit, for surfaces that set them apart; a time of minutes and seconds stands whole in `number`.
struct Shown {
    std::string number;  ///< "0.48", "12 min 30 s", an en dash
    std::string unit;    ///< "gpm", "" for a plain number
};
Shown shown(Measure measure, UnitSystem units);
/// "0.48 gpm"; a time from ten minutes on in minutes: "56 min", "12 min 30 s". Always '.' as the decimal sign;
/// not-a-number shows as an en dash.
std::string show(Measure measure, UnitSystem units);
std::string showNumber(Measure measure, UnitSystem units);  ///< without the symbol

/// Why a typed value was not understood; plain words.
struct UnitError {
    std::string what;
};

/// Reads what a person types: "2 ft 3 in", "3*0.4 m", "1/2", "1 1/2 in", "0,7 m", "124", "51 C".
/// A bare number means the shown unit. A temperature difference converts without 32. Comma and dot are
/// both decimal signs. `+ - * / ( )` work on plain numbers and between measures of one kind.
/// @return the SI value.
tl::expected<double, UnitError> parseMeasure(std::string_view typed, Quantity quantity, UnitSystem units);

namespace us {
inline constexpr double kFoot = 0.3048;                    // m, exact
inline constexpr double kInch = 0.0254;                    // m, exact
inline constexpr double kGallon = 3.785411784e-3;          // m³, exact
inline constexpr double kGpm = kGallon / 60.0;             // m³/s
inline constexpr double kPsi = 6894.757293168361;          // Pa
inline constexpr double kBtuPerHour = 0.29307107017222;    // W (international table BTU)
inline constexpr double kPound = 0.45359237;               // kg, exact
inline constexpr double celsius(double fahrenheit) { return (fahrenheit - 32.0) / 1.8; }
inline constexpr double fahrenheit(double celsius) { return celsius * 1.8 + 32.0; }
}  // namespace us

}  // namespace tapward
