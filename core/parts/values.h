// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <map>
#include <string>
#include <string_view>
#include <variant>
#include <vector>

namespace tapward::parts {

/// Where a value comes from. Every value a person sees carries one.
enum class Basis { Measured, DataSheet, Estimated };

/// One reading of a curve field, in the SI units of the field's two axes.
struct CurvePoint {
    double x;
    double y;
    friend bool operator==(const CurvePoint&, const CurvePoint&) = default;
};
using Curve = std::vector<CurvePoint>;

/// A field's content: a number (SI), a flag, a text / choice id / part reference, or a curve.
using Value = std::variant<double, bool, std::string, Curve>;

struct Entry {
    Value value;
    Basis basis = Basis::Estimated;
    friend bool operator==(const Entry&, const Entry&) = default;
};

/// What was set on a part, by field key. A field that is not here has the kind's default.
using Entries = std::map<std::string, Entry, std::less<>>;

}  // namespace tapward::parts
