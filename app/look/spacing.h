// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QFont>

// The one grid of distances and the one scale of letters of every pane, bar and dialog.
namespace tapward::app::look {

// Pixels, all of a grid of four.
inline constexpr int kNear = 4;    ///< between what belongs together: a value and its unit, two rows of a list
inline constexpr int kNext = 8;    ///< between controls, and from a pane's edge to what it holds
inline constexpr int kApart = 12;  ///< between groups
inline constexpr int kFar = 24;    ///< around a page

/// Notes under a figure.
inline QFont noteFont(QFont font)
{
    font.setPointSizeF(font.pointSizeF() * 0.92);
    return font;
}
/// Figures, and what they are of where it matters.
inline QFont strongFont(QFont font)
{
    font.setBold(true);
    return font;
}
/// The one answer of a pane; heads of a page.
inline QFont headFont(QFont font)
{
    font.setPointSizeF(font.pointSizeF() * 1.25);
    font.setBold(true);
    return font;
}
/// The name of a page.
inline QFont titleFont(QFont font)
{
    font.setPointSizeF(font.pointSizeF() * 1.9);
    font.setBold(true);
    return font;
}

}  // namespace tapward::app::look
