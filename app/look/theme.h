// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QColor>

class QPalette;

namespace tapward::app {

/// Every colour of the drawing, by role. Two palettes: light (screen, paper, exports) and dark (screen); each has a
/// stronger one, for desktops that are set to pure black and white.
/// Hues: Okabe & Ito, "Color Universal Design" (2008); lightened for the dark ground so that graphics
/// keep 3:1 and text 4.5:1 contrast (WCAG 2.2); of the stronger ones, graphics 4.5:1 and text 7:1.
struct Theme {
    QColor paper;       ///< ground
    QColor grid;
    QColor ink;         ///< existing parts, plain pipes
    QColor text;        ///< tags
    QColor quietText;   ///< values
    QColor cold, hot, returning;
    QColor added;       ///< emphasis of new parts (beside the heavy line)
    QColor removed;     ///< grey
    QColor selection;   ///< halo of selected parts
    QColor target;      ///< halo of a port or pipe that a drop would join
    QColor danger, caution, note;
    bool dark = false;

    static Theme light();
    static Theme darkOne();
    static Theme strongLight();
    static Theme strongDark();
    /// The one that fits the palette's window and text.
    static Theme of(const QPalette& palette);
};

}  // namespace tapward::app
