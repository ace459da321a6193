// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QColor>
#include <QIcon>
#include <QRectF>
#include <QSize>
#include <string_view>

class QPainter;

namespace tapward::app {

/// How heavy a symbol's lines are.
enum class Weight { Normal, Heavy, Dashed };

/// How to draw one symbol.
struct SymbolStyle {
    QColor ink;
    QColor paper;    ///< inside of closed shapes, so that lines behind do not show through
    Weight weight = Weight::Normal;
    int turn = 0;    ///< quarter turns clockwise
    bool flipped = false;  ///< mirrored left-right before turning
};

/// Paints the symbol of a kind (resources/symbols/<id>.svg) with its centre at the painter's origin, in
/// canvas units (10 per module). Lines turn and flip; letters stay upright. A kind without a symbol file
/// is drawn as a box with a question mark.
void paintSymbol(QPainter& painter, std::string_view kind, const SymbolStyle& style);

/// The same from a picture kept for this size, for many symbols in every frame. Falls back to paintSymbol()
/// for paper, files and very large symbols.
void paintSymbolOnScreen(QPainter& painter, std::string_view kind, const SymbolStyle& style);

/// The unturned symbol's box in canvas units, centred on the origin: the file's viewBox.
QRectF symbolBox(std::string_view kind);
bool hasSymbol(std::string_view kind);
/// What of that box is drawn on: some symbols leave a side empty.
QRectF symbolInk(std::string_view kind);

/// The symbol as an icon for lists and menus, sharp at any device pixel ratio.
QIcon symbolIcon(std::string_view kind, const QColor& ink, const QColor& paper);

}  // namespace tapward::app
