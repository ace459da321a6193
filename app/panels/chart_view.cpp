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

namespace {

/// The shortest word for what happened; empty for what is not worth a word in the chart.
QString eventWord(const std::string& id)
{
    if (id == "run_started")
        return ChartView::tr("start");
    if (id.starts_with("stop_"))
        return ChartView::tr("stop");
    if (id == "run_refused")
        return ChartView::tr("refused");
    if (id == "burner_lit")
        return ChartView::tr("lit");
    if (id == "burner_out")
        return ChartView::tr("out");
    if (id == "heater_lockout")
        return ChartView::tr("lockout");
    if (id == "tap_opened")
        return ChartView::tr("tap open");
    if (id == "tap_closed")
        return ChartView::tr("tap shut");
    return {};
}

}  // namespace

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
    m_content = content;
    rebuild();
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
    chart()->removeAllSeries();
    styleAxes();
    m_x.clear();
    const study::CaseResult* result = m_content.result;
    if (!result || result->time_s.empty()) {
        m_right->setVisible(false);
        viewport()->update();
        return;
    }
    m_x = chartX(*result, m_content.axis, m_content.units);
    if (m_x.empty())
        m_content.axis = ChartAxis::Time, m_x = chartX(*result, ChartAxis::Time, m_content.units);

    double low = toDisplay({15, Quantity::Temperature}, m_content.units);
    double high = toDisplay({52, Quantity::Temperature}, m_content.units);
    const auto addStretches = [&](const study::Series& series, const QPen& pen, QValueAxis* vertical, bool measure) {
        for (auto& stretch : chartStretches(series, m_x, m_content.units)) {
            if (measure)
                for (const QPointF& p : stretch) {
                    low = std::min(low, p.y());
                    high = std::max(high, p.y());
                }
            auto* line = new QLineSeries;
            line->setPen(pen);
            line->replace(stretch);
            chart()->addSeries(line);
            line->attachAxis(m_bottom);
            line->attachAxis(vertical);
        }
    };
    const auto* fire = result->find("fire");
    const bool showFire = m_content.fire && fire;
    if (showFire) {
        QPen pen(palette().color(m_content.stale ? QPalette::Disabled : QPalette::Active, QPalette::PlaceholderText),
                 1);
        addStretches(*fire, pen, m_right, false);
    }
    for (const auto& line : chartLines(*result))
        if (!m_content.hidden.contains(line.series->id))
            addStretches(*line.series, chartPen(line.style, palette(), m_content.stale), m_left, true);

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
    if (!m_hovering)
        m_crosshair = sampleAt(*result, m_time);
    m_crosshair = std::min(m_crosshair, m_x.size() - 1);
    viewport()->update();
    Q_EMIT crosshairMoved();
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

double ChartView::xOf(double shown, const QRectF& area) const
{
    return area.left() + (shown - m_bottom->min()) / (m_bottom->max() - m_bottom->min()) * area.width();
}

double ChartView::yOf(double shown, const QRectF& area) const
{
    return area.bottom() - (shown - m_left->min()) / (m_left->max() - m_left->min()) * area.height();
}

void ChartView::drawForeground(QPainter* painter, const QRectF&)
{
    if (!m_content.result || m_x.empty())
        return;
    const QRectF area = chart()->mapRectToScene(chart()->plotArea());
    if (area.width() < 20 || area.height() < 20)
        return;
    painter->save();
    painter->setFont(font());
    painter->setRenderHint(QPainter::Antialiasing);
    paintEvents(*painter, area);
    paintLevels(*painter, area);
    // The crosshair stands on a sample, and the readout beside the chart names its values.
    const double x = xOf(m_x[m_crosshair], area);
    painter->setPen(QPen(palette().color(QPalette::WindowText), m_hovering ? 1.0 : 1.6));
    painter->drawLine(QPointF(x, area.top()), QPointF(x, area.bottom()));
    for (const auto& line : chartLines(*m_content.result)) {
        if (m_content.hidden.contains(line.series->id) || m_crosshair >= line.series->values.size())
            continue;
        const double value = line.series->values[m_crosshair];
        if (!std::isfinite(value))
            continue;
        painter->setPen(QPen(palette().color(QPalette::Base), 1));
        painter->setBrush(chartPen(line.style, palette(), m_content.stale).color());
        painter->drawEllipse(QPointF(x, yOf(toDisplay({value, Quantity::Temperature}, m_content.units), area)), 4, 4);
    }
    if (hasFocus()) {
        painter->setBrush(Qt::NoBrush);
        painter->setPen(QPen(palette().color(QPalette::Highlight), 2));
        painter->drawRect(area.adjusted(-1, -1, 1, 1));
    }
    painter->restore();
}

void ChartView::paintLevels(QPainter& painter, const QRectF& area) const
{
    const Theme theme = Theme::of(palette());
    const QFontMetricsF metrics(font());
    int row = 0;
    for (const auto& level : chartLevels(*m_content.result, m_content.units)) {
        const double y = yOf(level.shown, area);
        // The target and the cold-line limit lie a degree apart: their names stand at different ends.
        const bool left = row++ == 0;
        if (y < area.top() || y > area.bottom())
            continue;
        const QColor colour = level.danger ? theme.danger : palette().color(QPalette::WindowText);
        QPen pen(colour, 1.2);
        pen.setDashPattern(level.danger ? QList<qreal>{8, 4} : QList<qreal>{3, 3});
        painter.setPen(pen);
        painter.drawLine(QPointF(area.left(), y), QPointF(area.right(), y));
        const QString text = level.danger ? QStringLiteral("\u25B2 ") + level.text : level.text;
        const double wide = metrics.horizontalAdvance(text) + 8;
        QRectF box(left ? area.left() + 6 : area.right() - wide - 6, y - metrics.height() / 2, wide, metrics.height());
        box.translate(0, left ? -metrics.height() / 2 - 2
                              : (level.danger ? -metrics.height() / 2 - 2 : metrics.height() / 2 + 2));
        QColor ground = palette().color(QPalette::Base);
        ground.setAlpha(225);
        painter.fillRect(box, ground);
        painter.setPen(palette().color(QPalette::WindowText));
        painter.drawText(box, Qt::AlignCenter, text);
    }
}

void ChartView::paintEvents(QPainter& painter, const QRectF& area) const
{
    const Theme theme = Theme::of(palette());
    const QFontMetricsF metrics(font());
    using Weight = study::Event::Weight;
    const auto& events = m_content.result->events;
    const auto place = [&](const study::Event& event) {
        const std::size_t sample = std::min(sampleAt(*m_content.result, event.t_s), m_x.size() - 1);
        return xOf(m_content.axis == ChartAxis::Time ? event.t_s : m_x[sample], area);
    };
    for (const auto& event : events) {
        const QColor colour = event.weight == Weight::Danger    ? theme.danger
                              : event.weight == Weight::Caution ? theme.caution
                                                                : palette().color(QPalette::PlaceholderText);
        painter.setPen(QPen(colour, 1, Qt::DotLine));
        const double x = place(event);
        painter.drawLine(QPointF(x, area.top()), QPointF(x, area.bottom()));
    }
    // A word at the top of the line where there is room; starts and stops of runs first. Every event is
    // also a mark of the time slider, with its whole text.
    std::vector<QRectF> taken;
    for (const bool first : {true, false})
        for (const auto& event : events) {
            const bool run = event.id.starts_with("run_") || event.id.starts_with("stop_");
            const QString word = run == first ? eventWord(event.id) : QString();
            if (word.isEmpty())
                continue;
            const double wide = metrics.horizontalAdvance(word) + 4;
            QRectF box(place(event) - wide / 2, area.top() + 1, wide, metrics.height());
            box.moveLeft(std::clamp(box.left(), area.left() + 1, area.right() - wide));
            if (std::ranges::any_of(taken, [&](const QRectF& other) { return other.intersects(box); }))
                continue;
            taken.push_back(box);
            painter.fillRect(box, palette().color(QPalette::Base));
            painter.setPen(
                palette().color(m_content.stale ? QPalette::Disabled : QPalette::Active, QPalette::WindowText));
            painter.drawText(box, Qt::AlignCenter, word);
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
