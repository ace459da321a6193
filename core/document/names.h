// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <array>
#include <optional>
#include <string_view>
#include <utility>

#include "document/drawing.h"

// Words of the file format for enumerations; private to this room.
namespace tapward::document {

template <class T, std::size_t N>
using Names = std::array<std::pair<T, std::string_view>, N>;

inline constexpr Names<Stage, 3> kStages{
    {{Stage::Existing, "existing"}, {Stage::Added, "added"}, {Stage::Removed, "removed"}}};
inline constexpr Names<View, 2> kViews{{{View::Before, "before"}, {View::After, "after"}}};
inline constexpr Names<parts::Basis, 3> kBases{{{parts::Basis::Measured, "measured"},
                                                {parts::Basis::DataSheet, "data_sheet"},
                                                {parts::Basis::Estimated, "estimated"}}};
inline constexpr Names<ActionKind, 10> kActions{{{ActionKind::OpenOutlet, "open_outlet"},
                                                 {ActionKind::CloseOutlet, "close_outlet"},
                                                 {ActionKind::PressButton, "press_button"},
                                                 {ActionKind::SetValve, "set_valve"},
                                                 {ActionKind::UseCity, "use_city"},
                                                 {ActionKind::UsePump, "use_pump"},
                                                 {ActionKind::UseNothing, "use_nothing"},
                                                 {ActionKind::SetVoltage, "set_voltage"},
                                                 {ActionKind::StartFault, "start_fault"},
                                                 {ActionKind::EndFault, "end_fault"}}};

template <class T, std::size_t N>
std::string_view nameOf(const Names<T, N>& names, T value)
{
    for (const auto& [one, name] : names) {
        if (one == value) {
            return name;
        }
    }
    return names[0].second;
}

template <class T, std::size_t N>
std::optional<T> named(const Names<T, N>& names, std::string_view wanted)
{
    for (const auto& [one, name] : names) {
        if (name == wanted) {
            return one;
        }
    }
    return std::nullopt;
}

}  // namespace tapward::document
