// SPDX-License-Identifier: GPL-3.0-or-later
#include "panels/chart_view.h"

#include <algorithm>
#include <cmath>
#include <QGraphicsLayout>
#include <QKeyEvent>
#include <QMouseEvent>
#include <QtCharts/QLegend>
#include <QtCharts/QLineSeries>
#include <QtCharts/QValueAxis>

#include "look/theme.h"
#include "panels/say.h"

namespace tapward::app {

ChartView::ChartView(QWidget* parent)
    : QChartView(parent), m_bottom(new QValueAxis), m_left(new QValueAxis), m_right(new QValueAxis)
{
    setRenderHint(QPainter::Antialiasing);
    setMouseTracking(true);
    setFocusPolicy(Qt::StrongFocus);
    setAccessibleName(tr("Warm-up chart"));
    setFrameShape(QFrame::NoFrame);
    chart()->legend()->hide();
    chart()->setDropShadowEnabled(false);
    chart()->setBackgroundRoundness(0);
    chart()->layout()->setContentsMargins(0, 0, 0, 0);
    chart()->setMargins(QMargins(2, 4, 4, 2));
    chart()->addAxis(m_bottom, Qt::AlignBottom);
    chart()->addAxis(m_left, Qt::AlignLeft);
    chart()->addAxis(m_right, Qt::AlignRight);
    setMinimumSize(220, 140);
}

void ChartView::show(const Content& content)
{
    // What only turns grey, or is current again, keeps its lines.
    Content turned = content;
    turned.stale = !content.stale;
    const bool only = m_content.result && turned == m_content;
    m_content = content;
    if (only)
        restyle();
    else
        rebuild();
}

QPen ChartView::firePen() const
{
    return QPen(palette().color(m_content.stale ? QPalette::Disabled : QPalette::Active, QPalette::PlaceholderText), 1);
}

void ChartView::restyle()
{
    styleAxes();
    for (const auto& [line, vertical, style] : m_lines)
        line->setPen(style == kFire ? firePen() : chartPen(style, palette(), m_content.stale));
    viewport()->update();
}

void ChartView::styleAxes()
{
    const QColor text = palette().color(QPalette::WindowText);
    const QColor faint = Theme::of(palette()).grid;
    for (QValueAxis* axis : {m_bottom, m_left, m_right}) {
        axis->setLabelsColor(text);
        axis->setTitleBrush(text);
        axis->setLinePen(QPen(palette().color(QPalette::Mid)));
        axis->setGridLinePen(QPen(faint, 1));
        axis->setLabelsFont(font());
        axis->setTitleFont(font());
        axis->setTickType(QValueAxis::TicksDynamic);
        axis->setTickAnchor(0);
    }
    m_right->setGridLineVisible(false);
    chart()->setBackgroundBrush(palette().base());
    chart()->setPlotAreaBackgroundVisible(false);
    setBackgroundBrush(palette().base());
}

void ChartView::rebuild()
{
    styleAxes();
    m_x.clear();
    const study::CaseResult* result = m_content.result;
    if (!result || result->time_s.empty()) {
        showLines({});
        m_right->setVisible(false);
        viewport()->update();
        return;
    }
    m_x = chartX(*result, m_content.axis, m_content.units);
    if (m_x.empty())
        m_content.axis = ChartAxis::Time, m_x = chartX(*result, ChartAxis::Time, m_content.units);

    std::vector<Stretch> stretches;
    const auto take = [&](const study::Series& series, int style, QValueAxis* vertical) {
        for (auto& points : chartStretches(series, m_x, m_content.units))
            stretches.push_back({std::move(points), style, vertical});
    };
    const auto* fire = result->find("fire");
    const bool showFire = m_content.fire && fire;
    if (showFire)
        take(*fire, kFire, m_right);
    for (const auto& line : chartLines(*result))
        if (!m_content.hidden.contains(line.series->id))
            take(*line.series, line.style, m_left);
    double low = toDisplay({15, Quantity::Temperature}, m_content.units);
    double high = toDisplay({52, Quantity::Temperature}, m_content.units);
    for (const auto& stretch : stretches)
        if (stretch.vertical == m_left)
            for (const QPointF& p : stretch.points) {
                low = std::min(low, p.y());
                high = std::max(high, p.y());
            }

    const double step = niceStep(high - low, std::clamp(height() / 45, 3, 8));
    m_left->setRange(std::floor(low / step) * step, std::ceil((high + step * 0.1) / step) * step);
    m_left->setTickInterval(step);
    m_left->setLabelFormat(step < 1 ? QStringLiteral("%.1f") : QStringLiteral("%.0f"));
    m_left->setTitleText(unitSymbol(Quantity::Temperature, m_content.units));
    const double last = std::max(m_x.back(), 1e-9);
    const double along = niceStep(last, std::clamp(width() / 90, 3, 10));
    m_bottom->setRange(0, last);
    m_bottom->setTickInterval(along);
    m_bottom->setLabelFormat(along < 0.1 ? QStringLiteral("%.2f")
                             : along < 1 ? QStringLiteral("%.1f")
                                         : QStringLiteral("%.0f"));
    m_bottom->setTitleText(m_content.axis == ChartAxis::Time
                               ? quantityHead(tr("Time"), Quantity::Time, m_content.units)
                               : quantityHead(tr("Volume pumped"), Quantity::Volume, m_content.units));
    m_right->setVisible(showFire);
    m_right->setRange(0, 100);
    m_right->setTickInterval(50);
    m_right->setLabelFormat(QStringLiteral("%.0f"));
    m_right->setTitleText(tr("Fire %"));
    showLines(stretches);
    if (!m_hovering)
        m_crosshair = sampleAt(*result, m_time);
    m_crosshair = std::min(m_crosshair, m_x.size() - 1);
    viewport()->update();
    Q_EMIT crosshairMoved();
}

void ChartView::showLines(const std::vector<Stretch>& stretches)
{
    // Lines that are there are used again: taking them away and adding others costs the chart ten times as much.
    std::size_t kept = 0;
    while (kept < std::min(stretches.size(), m_lines.size()) && m_lines[kept].vertical == stretches[kept].vertical)
        ++kept;
    for (std::size_t i = kept; i < m_lines.size(); ++i) {
        chart()->removeSeries(m_lines[i].line);
        delete m_lines[i].line;
    }
    m_lines.resize(kept);
    for (std::size_t i = 0; i < stretches.size(); ++i) {
        const auto& [points, style, vertical] = stretches[i];
        auto* line = i < kept ? m_lines[i].line : new QLineSeries;
        line->setPen(style == kFire ? firePen() : chartPen(style, palette(), m_content.stale));
        line->replace(points);
        if (i < kept) {
            m_lines[i].style = style;
            continue;
        }
        chart()->addSeries(line);
        line->attachAxis(m_bottom);
        line->attachAxis(vertical);
        m_lines.push_back({line, vertical, style});
    }
}

void ChartView::setTime(double t_s)
{
    m_time = t_s;
    if (m_content.result && !m_hovering && !m_x.empty()) {
        m_crosshair = std::min(sampleAt(*m_content.result, t_s), m_x.size() - 1);
        viewport()->update();
        Q_EMIT crosshairMoved();
    }
}

void ChartView::point(QPointF position)
{
    if (!m_content.result || m_x.empty())
        return;
    const QRectF area = chart()->mapRectToScene(chart()->plotArea());
    const double x = mapToScene(position.toPoint()).x();
    const double shown =
        m_bottom->min() + (x - area.left()) / std::max(1.0, area.width()) * (m_bottom->max() - m_bottom->min());
    m_crosshair = m_content.axis == ChartAxis::Time ? sampleAt(*m_content.result, shown) : sampleReaching(m_x, shown);
    m_crosshair = std::min(m_crosshair, m_x.size() - 1);
    viewport()->update();
    Q_EMIT crosshairMoved();
}

void ChartView::mouseMoveEvent(QMouseEvent* event)
{
    m_hovering = true;
    point(event->position());
    if (event->buttons() & Qt::LeftButton)
        if (m_content.result && !m_x.empty())
            Q_EMIT timePicked(m_content.result->time_s[m_crosshair]);
}

void ChartView::mousePressEvent(QMouseEvent* event)
{
    if (event->button() != Qt::LeftButton)
        return QChartView::mousePressEvent(event);
    m_hovering = true;
    point(event->position());
    if (m_content.result && !m_x.empty())
        Q_EMIT timePicked(m_content.result->time_s[m_crosshair]);
}

void ChartView::leaveEvent(QEvent* event)
{
    QChartView::leaveEvent(event);
    m_hovering = false;
    setTime(m_time);
}

void ChartView::keyPressEvent(QKeyEvent* event)
{
    const double step = event->key() == Qt::Key_Right      ? 1
                        : event->key() == Qt::Key_Left     ? -1
                        : event->key() == Qt::Key_PageUp   ? 10
                        : event->key() == Qt::Key_PageDown ? -10
                                                           : 0;
    m_hovering = false;
    if (step != 0)
        Q_EMIT timePicked(m_time + step);
    else if (event->key() == Qt::Key_Home)
        Q_EMIT timePicked(0);
    else if (event->key() == Qt::Key_End && m_content.result)
        Q_EMIT timePicked(m_content.result->duration_s);
    else
        event->ignore();
}

void ChartView::focusInEvent(QFocusEvent* event)
{
    QChartView::focusInEvent(event);
    viewport()->update();
}

void ChartView::focusOutEvent(QFocusEvent* event)
{
    QChartView::focusOutEvent(event);
    viewport()->update();
}

}  // namespace tapward::app
