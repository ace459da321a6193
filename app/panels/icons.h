// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QColor>
#include <QIcon>
#include <QPalette>
#include <QString>

#include "review/finding.h"

namespace tapward::app::look {

/// Colours come from the drawing's Theme, so that a danger looks the same beside the drawing as in it.
QColor severity(review::Severity severity, const QPalette& palette);

/// An icon drawn from resources/icons/<name>.svg in the palette's text colour (or `colour`), sharp at any
/// scale; it follows a switch between light and dark. The program's own is "tapward": as a plain QIcon of a file it
/// would have Qt load every plugin for icons and pictures before the first frame.
QIcon icon(const QString& name, QColor colour = {});
/// Triangle, diamond or circle: the shape says it without the colour.
QIcon severityIcon(review::Severity severity);
QString severityWord(review::Severity severity);

/// A dark palette for checks and for desktops that tell Qt nothing.
QPalette darkPalette();
/// Black and white, as desktops for eyes that need it have theirs.
QPalette strongPalette(bool dark);

}  // namespace tapward::app::look
