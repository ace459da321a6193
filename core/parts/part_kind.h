// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <array>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "base/message.h"
#include "base/result.h"
#include "base/units.h"
#include "parts/part_model.h"
#include "parts/values.h"

namespace tapward::parts {

enum class TrayGroup { Pipes, Valves, MovingWater, Sensing, Heating, Outlets, Supply, Control, Electric, Notes };
Text title(TrayGroup group);  ///< "Pipes and joins", ... in tray order

/// Which way a port faces on the unturned symbol.
enum class Side { Left, Right, Top, Bottom };

/// A place where a pipe ends. Position in modules (1 module = 1 grid step = 10 units on the canvas)
/// from the symbol's centre, x right, y down.
struct Port {
    std::string_view id;     ///< in files; never changes: "inlet", "outlet", "run_a", "branch", ...
    Text title;              ///< "Inlet"
    Side side;
    double x;
    double y;
    bool optional = false;   ///< may stay without a pipe (a cold-only tap): no open end to complain about
};

#pragma GCC diagnostic push
#pragma GCC diagnostic ignored "-Wshadow"  // g++ 12 takes the enumerators for names of this scope
enum class FieldType { Number, Count, Choice, Flag, Text, PartRef, Curve };
#pragma GCC diagnostic pop

struct Choice {
    std::string_view id;     ///< in files
    Text title;              ///< shown
};

/// One property of a kind, declared once; details panel, file format, checks and parts list read it.
struct Field {
    std::string_view key;    ///< in files, SI unit in the key: "length_m", "rated_flow_m3s", "setpoint_C"
    Text label;              ///< "Length"
    FieldType type = FieldType::Number;
    Quantity quantity = Quantity::None;
    double least = 0;        ///< SI, inclusive
    double most = 1e9;
    Value initial = 0.0;     ///< the default
    Basis basis = Basis::Estimated;
    std::string_view source = "common practice, no published source";  ///< of the default
    std::vector<Choice> choices = {};       ///< for Choice
    Quantity curveX = Quantity::Flow, curveY = Quantity::Head;  ///< for Curve
    std::string_view refKinds = {};         ///< for PartRef: kind ids allowed, space separated
    std::string_view help = {};             ///< one sentence
    /// What 0 means where it is no figure: "not known", "as the tube". Shown in place of 0; clearing the field gives it back.
    std::string_view unset = {};
    bool divides = false;  ///< cut in two with the pipe and added up when it is joined again
};

/// Fault a part of this kind can have; effects are generic settings the simulation applies.
struct Fault {
    std::string_view id;  ///< "stuck_open"
    Text title;  ///< "stuck open"
    FaultEffect effect;
    double amount = 0;  ///< meaning by effect: opening, leak, offset K, share of speed, ...
};

/// One line of the bill of materials.
struct Material {
    Message item;  ///< "Tube, {0}, {1}"; a name somebody gave is an argument
    double quantity = 1;  ///< pieces, or metres when perMetre
    bool perMetre = false;
    double unitPrice = 0;  ///< project currency; 0 = no price known
};

/// Reads a part's fields with the kind's defaults behind them.
class Values {
public:
    Values(const struct PartKind& kind, const Entries& entries) : m_kind(kind), m_entries(entries) {}
    double number(std::string_view key) const;  ///< Number or Count
    bool flag(std::string_view key) const;
    const std::string& text(std::string_view key) const;  ///< Text, Choice id or PartRef (part id)
    Curve curve(std::string_view key) const;
    Basis basis(std::string_view key) const;
    bool isSet(std::string_view key) const;  ///< false = default
    const PartKind& kind() const { return m_kind; }

private:
    const PartKind& m_kind;
    const Entries& m_entries;
};

/// Everything Tapward knows about one kind of part. Data and small functions, no base class.
struct PartKind {
    std::string_view id;  ///< in files and in resources/symbols/<id>.svg; never changes
    Text title;  ///< "Circulator pump"
    std::string_view tagLetter;  ///< "P" -> P1, P2 ...
    std::string_view searchWords = {};
    TrayGroup group;
    double width = 4, height = 4;  ///< symbol box in modules
    std::vector<Port> ports = {};
    std::vector<Field> fields = {};
    std::vector<Fault> faults = {};
    /// Water, heat, control role of one part. Null for notes and wiring-only parts.
    Result<PartModel> (*model)(const Values&) = nullptr;
    /// What is bought for one such part (fields known, pipe length in the values).
    std::vector<Material> (*materials)(const Values&) = nullptr;
    /// Values worth showing beside the symbol, in order ("length_m", "setpoint_C").
    std::vector<std::string_view> shownFields = {};
    std::string_view caution = {};  ///< maker/code/licence caution shown with the part, may be empty
    bool isPipe = false;  ///< drawn as a line between two ports, not as a symbol
    /// The ports a pipe is joined to when the part is dropped on it, left and right on the unturned
    /// symbol, in the direction of the part's flow. Empty names: the part cannot go into a line.
    std::array<std::string_view, 2> inLine = {};

    const Field* field(std::string_view key) const;
    const Port* port(std::string_view id) const;
    int portIndex(std::string_view id) const;  ///< -1 if none
    bool goesInLine() const { return !inLine[0].empty(); }
};

/// Field checked at the door: right type, in range, known choice, finite; a curve has 2 to 64 points, x at
/// zero or above and strictly rising, y at zero or above and never rising. Whether a referred part exists is
/// the document's business.
std::optional<Problem> refusal(const PartKind& kind, const Field& field, const Value& value);

/// All kinds in tray order. The only list.
const std::vector<const PartKind*>& catalogue();
const PartKind* find(std::string_view id);

}  // namespace tapward::parts
