// SPDX-License-Identifier: GPL-3.0-or-later
#include "panels/curve_plot.h"

#include <algorithm>
#include <cmath>
#include <QPainter>

#include "base/monotone_curve.h"
#include "look/theme.h"
#include "panels/say.h"

namespace tapward::app {

CurvePlot::CurvePlot(const parts::Field& field, QWidget* parent) : QWidget(parent), m_field(field)
{
    setMinimumHeight(fontMetrics().height() * 7);
    setSizePolicy(QSizePolicy::Expanding, QSizePolicy::Fixed);
}

QSize CurvePlot::sizeHint() const { return {160, fontMetrics().height() * 8}; }

void CurvePlot::setCurve(const parts::Curve& curve, UnitSystem units)
{
    m_curve = curve;
    m_units = units;
    QStringList readings;
    for (const auto& point : curve)
        readings << tr("%1 at %2")
                        .arg(sayMeasure(point.y, m_field.curveY, units), sayMeasure(point.x, m_field.curveX, units));
    setAccessibleDescription(readings.join(QStringLiteral("; ")));
    update();
}

void CurvePlot::paintEvent(QPaintEvent*)
{
    QPainter painter(this);
    painter.setRenderHint(QPainter::Antialiasing);
    painter.fillRect(rect(), palette().base());
    std::vector<MonotoneCurve::Point> points;
    for (const auto& point : m_curve)
        if (std::isfinite(point.x) && std::isfinite(point.y))
            points.push_back({point.x, point.y});
    const bool rising = std::is_sorted(points.begin(), points.end(), [](auto a, auto b) { return a.x <= b.x; });
    double top = 0;
    for (const auto& point : points)
        top = std::max(top, point.y);
    const double right = points.empty() ? 0 : points.back().x;
    if (points.size() < 2 || !rising || top <= 0 || right <= 0)
        return;
    // Room for the ends of the axes: the greatest value above, the last one at the right below.
    const double line = fontMetrics().height();
    const QRectF area = QRectF(rect()).adjusted(8, line + 6, -8, -line - 6);
    painter.setPen(QPen(palette().color(QPalette::Mid), 1));
    painter.drawLine(area.bottomLeft(), area.bottomRight());
    painter.drawLine(area.bottomLeft(), area.topLeft());
    painter.setPen(palette().color(QPalette::Text));
    painter.drawText(QRectF(area.left(), 2, area.width(), line), Qt::AlignLeft,
                     tr("%1 %2").arg(quantityName(m_field.curveY), sayMeasure(top, m_field.curveY, m_units)));
    painter.drawText(QRectF(area.left(), area.bottom() + 3, area.width(), line), Qt::AlignRight,
                     tr("%1 %2").arg(quantityName(m_field.curveX), sayMeasure(right, m_field.curveX, m_units)));

    const auto place = [&](double x, double y) {
        return QPointF(area.left() + x / right * area.width(), area.bottom() - y / top * area.height());
    };
    const MonotoneCurve curve(points);
    QPolygonF shape;
    constexpr int kSteps = 80;
    for (int i = 0; i <= kSteps; ++i) {
        const double x = points.front().x + (right - points.front().x) * i / kSteps;
        shape << place(x, curve.at(x));
    }
    const QColor colour = Theme::of(palette()).note;
    painter.setPen(QPen(colour, 1.8));
    painter.drawPolyline(shape);
    painter.setBrush(colour);
    painter.setPen(Qt::NoPen);
    for (const auto& point : points)
        painter.drawEllipse(place(point.x, point.y), 3, 3);
}

}  // namespace tapward::app
