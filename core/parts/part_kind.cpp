// SPDX-License-Identifier: GPL-3.0-or-later
#include "parts/part_kind.h"

#include <algorithm>
#include <cassert>
#include <cmath>

namespace tapward::parts {
namespace {

constexpr std::size_t kMostCurvePoints = 64;

Argument argument(const Field& field, double si) { return Measure{si, field.quantity}; }

std::optional<Problem> wrongType(const Field& field)
{
    const Text label = field.label;
    switch (field.type) {
    case FieldType::Number:
    case FieldType::Count:
        return Problem{{"{0} is not a number.", {label}}, "Type a number.", {}};
    case FieldType::Flag:
        return Problem{{"{0} is neither yes nor no.", {label}}, "Choose yes or no.", {}};
    case FieldType::Choice:
        return Problem{{"{0} is none of its choices.", {label}}, "Choose one that is offered.", {}};
    case FieldType::Text:
        return Problem{{"{0} is not a text.", {label}}, "Type a text.", {}};
    case FieldType::PartRef:
        return Problem{{"{0} is not the number of a part.", {label}}, "Choose a part, or none.", {}};
    case FieldType::Curve:
        return Problem{{"{0} is not a list of readings.", {label}}, "Enter readings from the data sheet.", {}};
    }
    return std::nullopt;
}

std::optional<Problem> numberRefusal(const Field& field, double number)
{
    if (!std::isfinite(number)) {
        return Problem{{"{0} is not a finite number.", {field.label}}, "Type an ordinary number.", {}};
    }
    if (number < field.least || number > field.most) {
        return Problem{
            {"{0} is {1}, outside {2} to {3}.",
             {field.label, argument(field, number), argument(field, field.least), argument(field, field.most)}},
            "Check the reading and its unit.",
            {}};
    }
    if (field.type == FieldType::Count && number != std::floor(number)) {
        return Problem{
            {"{0} is {1}, which is not a whole number.", {field.label, argument(field, number)}}, "Count pieces.", {}};
    }
    return std::nullopt;
}

std::optional<Problem> curveRefusal(const Field& field, const Curve& curve)
{
    if (curve.size() < 2 || curve.size() > kMostCurvePoints) {
        return Problem{
            {"{0} has {1} readings; it needs 2 to {2}.",
             {field.label, static_cast<std::int64_t>(curve.size()), static_cast<std::int64_t>(kMostCurvePoints)}},
            "Add readings from the data sheet, or leave some out.",
            {}};
    }
    for (std::size_t i = 0; i < curve.size(); ++i) {
        const auto number = static_cast<std::int64_t>(i + 1);
        const CurvePoint& point = curve[i];
        if (!std::isfinite(point.x) || !std::isfinite(point.y) || point.x < 0 || point.y < 0 || point.x > field.most
            || point.y > field.most) {
            return Problem{{"Reading {0} of {1} has a value below zero or too large.", {number, field.label}},
                           "Check the reading.",
                           {}};
        }
        if (i > 0 && point.x <= curve[i - 1].x) {
            return Problem{{"Reading {0} of {1}, at {2}, is not beyond the one before it.",
                            {number, field.label, Measure{point.x, field.curveX}}},
                           "Put the readings in rising order, each flow once.",
                           {}};
        }
        if (i > 0 && point.y > curve[i - 1].y) {
            return Problem{{"Reading {0} of {1}, at {2}, is higher than the one before it.",
                            {number, field.label, Measure{point.x, field.curveX}}},
                           "Check the reading; the curve of a pump falls with flow.",
                           {}};
        }
    }
    return std::nullopt;
}

/// Text no screen or file can take: control characters other than line ends and tabs.
bool hasControls(const std::string& text)
{
    return std::any_of(text.begin(), text.end(), [](char c) {
        const auto byte = static_cast<unsigned char>(c);
        return (byte < 0x20 && c != '\n' && c != '\t') || byte == 0x7f;
    });
}

bool isPartNumber(const std::string& text)
{
    return text.size() <= 10 && text[0] != '0'
           && std::all_of(text.begin(), text.end(), [](char c) { return c >= '0' && c <= '9'; });
}

const std::string kNoText;

}  // namespace

Text title(TrayGroup group)
{
    switch (group) {
    case TrayGroup::Pipes:
        return "Pipes and joins";
    case TrayGroup::Valves:
        return "Valves";
    case TrayGroup::MovingWater:
        return "Moving water";
    case TrayGroup::Sensing:
        return "Sensing";
    case TrayGroup::Heating:
        return "Heating";
    case TrayGroup::Outlets:
        return "Taps and appliances";
    case TrayGroup::Supply:
        return "Supply";
    case TrayGroup::Control:
        return "Control";
    case TrayGroup::Electric:
        return "12 V";
    case TrayGroup::Notes:
        return "Notes";
    }
    return {};
}

const Field* PartKind::field(std::string_view key) const
{
    const auto at = std::find_if(fields.begin(), fields.end(), [key](const Field& field) { return field.key == key; });
    return at == fields.end() ? nullptr : &*at;
}

const Port* PartKind::port(std::string_view portId) const
{
    const int index = portIndex(portId);
    return index < 0 ? nullptr : &ports[static_cast<std::size_t>(index)];
}

int PartKind::portIndex(std::string_view portId) const
{
    const auto at = std::find_if(ports.begin(), ports.end(), [portId](const Port& port) { return port.id == portId; });
    return at == ports.end() ? -1 : static_cast<int>(at - ports.begin());
}

namespace {

/// What was set, else the default; an entry of the wrong type counts as not set.
template <class T>
const T* held(const PartKind& kind, const Entries& entries, std::string_view key)
{
    if (const auto at = entries.find(key); at != entries.end()) {
        if (const T* value = std::get_if<T>(&at->second.value)) {
            return value;
        }
    }
    const Field* field = kind.field(key);
    assert(field && "the kind has no such field");
    return field ? std::get_if<T>(&field->initial) : nullptr;
}

}  // namespace

double Values::number(std::string_view key) const
{
    const double* value = held<double>(m_kind, m_entries, key);
    return value ? *value : 0.0;
}

bool Values::flag(std::string_view key) const
{
    const bool* value = held<bool>(m_kind, m_entries, key);
    return value && *value;
}

const std::string& Values::text(std::string_view key) const
{
    const std::string* value = held<std::string>(m_kind, m_entries, key);
    return value ? *value : kNoText;
}

Curve Values::curve(std::string_view key) const
{
    const Curve* value = held<Curve>(m_kind, m_entries, key);
    return value ? *value : Curve{};
}

Basis Values::basis(std::string_view key) const
{
    if (const auto at = m_entries.find(key); at != m_entries.end()) {
        return at->second.basis;
    }
    const Field* field = m_kind.field(key);
    return field ? field->basis : Basis::Estimated;
}

bool Values::isSet(std::string_view key) const { return m_entries.find(key) != m_entries.end(); }

std::optional<Problem> refusal(const PartKind&, const Field& field, const Value& value)
{
    switch (field.type) {
    case FieldType::Number:
    case FieldType::Count:
        if (const double* number = std::get_if<double>(&value)) {
            return numberRefusal(field, *number);
        }
        return wrongType(field);
    case FieldType::Flag:
        return std::holds_alternative<bool>(value) ? std::nullopt : wrongType(field);
    case FieldType::Curve:
        if (const Curve* curve = std::get_if<Curve>(&value)) {
            return curveRefusal(field, *curve);
        }
        return wrongType(field);
    case FieldType::Choice:
    case FieldType::Text:
    case FieldType::PartRef:
        break;
    }
    const std::string* text = std::get_if<std::string>(&value);
    if (!text) {
        return wrongType(field);
    }
    if (field.type == FieldType::Choice) {
        const bool known = std::any_of(field.choices.begin(), field.choices.end(),
                                       [text](const Choice& choice) { return choice.id == *text; });
        if (!known) {
            return Problem{
                {"{0} has no choice called \"{1}\".", {field.label, *text}}, "Choose one that is offered.", {}};
        }
    } else if (field.type == FieldType::PartRef) {
        if (!text->empty() && !isPartNumber(*text)) {
            return wrongType(field);
        }
    } else if (hasControls(*text)) {
        return Problem{{"{0} holds characters that cannot be shown.", {field.label}}, "Type the text again.", {}};
    }
    return std::nullopt;
}

}  // namespace tapward::parts
