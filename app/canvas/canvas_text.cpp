// SPDX-License-Identifier: GPL-3.0-or-later
#include "canvas/canvas_text.h"

#include <QFont>
#include <QFontMetricsF>
#include <QPainter>
#include <QPointF>

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

}  // namespace

double textWidth(const QString& text, double size, bool bold)
{
    return QFontMetricsF(bigFont(bold)).horizontalAdvance(text) * size / kPixels;
}

void drawText(QPainter& painter, const QPointF& baseline, const QString& text, double size, bool bold)
{
    painter.save();
    painter.translate(baseline);
    painter.scale(size / kPixels, size / kPixels);
    painter.setFont(bigFont(bold));
    painter.drawText(QPointF(0, 0), text);
    painter.restore();
}

}  // namespace tapward::app
