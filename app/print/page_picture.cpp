// SPDX-License-Identifier: GPL-3.0-or-later
#include "print/page_picture.h"

#include <algorithm>
#include <QCoreApplication>
#include <QFontMetricsF>
#include <QPainter>

#include "print/page_text.h"

namespace tapward::app::print {
namespace {

constexpr double kLargestScale_pt = 10.0;  // points per module: beyond it a small drawing only looks coarse
constexpr double kHopeless_pt = 1.0;  // no room worth the name
constexpr double kLetters_pt = 1.5;  // a letter would be five modules high: more than most symbols and their gaps
constexpr double kLabel_pt = 7.8;  // tags; lengths beside pipes are written at nine tenths of it
constexpr double kRow = 12 * kPoint, kSample = 19 * kPoint, kSampleGap = 4 * kPoint, kItemGap = 12 * kPoint;

PaintOptions optionsFor(UnitSystem units)
{
    PaintOptions options;
    options.units = units;
    options.theme = Theme::light();
    return options;
}

}  // namespace

DrawingLayout Picture::plainLayout(const document::Drawing& drawing, UnitSystem units)
{
    PaintOptions options = optionsFor(units);
    options.labels = false;
    return layoutOf(drawing, options);
}

Picture::Picture(const document::Drawing& drawing, const DrawingLayout& plain, UnitSystem units, QSizeF space)
    : m_options(optionsFor(units)), m_layout(plain)
{
    // Letters keep their size on paper while the drawing shrinks, and bigger letters widen the drawing:
    // a few rounds settle it. Each round only shrinks, so it ends.
    double scale = kLargestScale_pt;
    for (int round = 0; round < 12; ++round) {
        m_options.labelSize = std::max(7.5, kLabel_pt * kModule / scale);
        relabel(drawing, m_options, m_layout);
        const QRectF& bounds = m_layout.bounds;
        if (bounds.isEmpty()) {
            m_layout.bounds = {};
            return;
        }
        const double across = space.width() / kPoint / (bounds.width() / kModule);
        const double down = space.height() / kPoint / (bounds.height() / kModule);
        const double fitting = std::min({across, down, scale});
        const bool settled = fitting > scale * 0.999;
        scale = fitting;
        if (m_options.labels && scale < kLetters_pt) {
            m_options.labels = false;
            scale = kLargestScale_pt;
        } else if (settled || scale < kHopeless_pt) {
            break;
        }
    }
    m_scale = scale;
}

QSizeF Picture::size() const { return empty() ? QSizeF(0, 0) : m_layout.bounds.size() * (m_scale * kPoint / kModule); }

void Picture::paint(QPainter& painter, QPointF topLeft) const
{
    if (empty())
        return;
    painter.save();
    painter.translate(topLeft);
    const double factor = m_scale * kPoint / kModule;
    painter.scale(factor, factor);
    painter.translate(-m_layout.bounds.topLeft());
    paintLayout(painter, m_layout, m_options);
    painter.restore();
}

Legend::Legend(const document::Drawing& drawing, double width)
{
    const QFontMetricsF metrics(pageFont(kSmallest_pt));
    const double title = QFontMetricsF(pageFont(kSmallest_pt, true))
                             .horizontalAdvance(QCoreApplication::translate("tapward::app", "Legend"))
                         + kItemGap;
    m_firstColumn = title;
    double x = title, y = 0;
    for (const LegendEntry& entry : legendEntries(drawing)) {
        const double need = kSample + kSampleGap + metrics.horizontalAdvance(entry.text);
        if (x > title && x + need > width) {
            x = title;
            y += kRow;
        }
        m_items.push_back({entry, QPointF(x, y)});
        x += need + kItemGap;
    }
    m_height = m_items.empty() ? 0 : y + kRow;
}

void Legend::paint(QPainter& painter, QPointF topLeft) const
{
    if (m_items.empty())
        return;
    const QFont font = pageFont(kSmallest_pt);
    const QFontMetricsF metrics(font);
    const double down = (kRow - metrics.height()) / 2;
    paintLine(painter, topLeft + QPointF(0, down), m_firstColumn, QCoreApplication::translate("tapward::app", "Legend"),
              pageFont(kSmallest_pt, true), Qt::black);
    for (const Item& item : m_items) {
        const QPointF at = topLeft + item.at;
        painter.save();
        paintLegendSample(painter, item.entry, QRectF(at.x(), at.y() + 0.5 * kPoint, kSample, kRow - kPoint));
        painter.restore();
        paintLine(painter, at + QPointF(kSample + kSampleGap, down),
                  metrics.horizontalAdvance(item.entry.text) + kPoint, item.entry.text, font, Qt::black);
    }
}

}  // namespace tapward::app::print
