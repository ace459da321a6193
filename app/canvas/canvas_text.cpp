// SPDX-License-Identifier: GPL-3.0-or-later
#include "canvas/canvas_text.h"

#include <QFont>
#include <QFontMetricsF>
#include <QGlyphRun>
#include <QHash>
#include <QPaintEngine>
#include <QPainter>
#include <QPointF>
#include <QTextLayout>
#include <utility>

namespace tapward::app {

namespace {

// A font takes whole pixels only, so it is made this big and scaled down by the painter.
constexpr int kPixels = 64;

QFont bigFont(bool bold)
{
    QFont font;
    font.setPixelSize(kPixels);
    font.setBold(bold);
    font.setHintingPreference(QFont::PreferNoHinting);
    return font;
}

/// Widths at kPixels. Measuring is dear and the same words come again with every layout.
double bigWidth(const QString& text, bool bold)
{
    static QHash<std::pair<QString, bool>, double> known;
    static QString family;
    if (const QString now = QFont().family(); now != family || known.size() > 20000) {
        known.clear();
        family = now;
    }
    const auto key = std::pair(text, bold);
    auto found = known.constFind(key);
    if (found == known.constEnd())
        found = known.insert(key, QFontMetricsF(bigFont(bold)).horizontalAdvance(text));
    return *found;
}

/// The letters of a text at kPixels, their places found. Finding them is dearer than drawing them.
const QList<QGlyphRun>& bigGlyphs(const QString& text, bool bold)
{
    static QHash<std::pair<QString, bool>, QList<QGlyphRun>> known;
    static QString family;
    if (const QString now = QFont().family(); now != family || known.size() > 20000) {
        known.clear();
        family = now;
    }
    const auto key = std::pair(text, bold);
    auto found = known.constFind(key);
    if (found == known.constEnd()) {
        QTextLayout layout(text, bigFont(bold));
        layout.beginLayout();
        QTextLine line = layout.createLine();
        layout.endLayout();
        line.setPosition({0, -line.ascent()});
        found = known.insert(key, layout.glyphRuns());
    }
    return *found;
}

}  // namespace

double textWidth(const QString& text, double size, bool bold) { return bigWidth(text, bold) * size / kPixels; }

void drawText(QPainter& painter, const QPointF& baseline, const QString& text, double size, bool bold)
{
    painter.save();
    painter.translate(baseline);
    painter.scale(size / kPixels, size / kPixels);
    if (painter.paintEngine()->type() == QPaintEngine::Raster) {
        for (const auto& run : bigGlyphs(text, bold))
            painter.drawGlyphRun({0, 0}, run);
    } else {  // paper and files get text one can search and select
        painter.setFont(bigFont(bold));
        painter.drawText(QPointF(0, 0), text);
    }
    painter.restore();
}

}  // namespace tapward::app
