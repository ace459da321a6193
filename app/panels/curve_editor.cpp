// SPDX-License-Identifier: GPL-3.0-or-later
#include "panels/curve_editor.h"

#include <algorithm>
#include <cmath>
#include <QHBoxLayout>
#include <QHeaderView>
#include <QLabel>
#include <QPainter>
#include <QTableWidget>
#include <QToolButton>
#include <QVBoxLayout>

#include "base/monotone_curve.h"
#include "look/theme.h"
#include "panels/icons.h"
#include "panels/say.h"

namespace tapward::app {

CurvePlot::CurvePlot(QWidget* parent) : QWidget(parent)
{
    setMinimumHeight(fontMetrics().height() * 4);
    setSizePolicy(QSizePolicy::Expanding, QSizePolicy::Fixed);
}

QSize CurvePlot::sizeHint() const { return {160, fontMetrics().height() * 5}; }

void CurvePlot::setCurve(const parts::Curve& curve)
{
    m_curve = curve;
    update();
}

void CurvePlot::paintEvent(QPaintEvent*)
{
    QPainter painter(this);
    painter.setRenderHint(QPainter::Antialiasing);
    painter.fillRect(rect(), palette().base());
    const QRectF area = QRectF(rect()).adjusted(8, 8, -8, -8);
    painter.setPen(QPen(palette().color(QPalette::Mid), 1));
    painter.drawLine(area.bottomLeft(), area.bottomRight());
    painter.drawLine(area.bottomLeft(), area.topLeft());

    std::vector<MonotoneCurve::Point> points;
    for (const auto& point : m_curve)
        if (std::isfinite(point.x) && std::isfinite(point.y))
            points.push_back({point.x, point.y});
    const bool rising = std::is_sorted(points.begin(), points.end(), [](auto a, auto b) { return a.x <= b.x; });
    if (points.size() < 2 || !rising)
        return;
    double top = 0, bottom = 0;
    for (const auto& point : points) {
        top = std::max(top, point.y);
        bottom = std::min(bottom, point.y);
    }
    const double left = std::min(0.0, points.front().x), right = points.back().x;
    if (top - bottom <= 0 || right - left <= 0)
        return;
    const auto place = [&](double x, double y) {
        return QPointF(area.left() + (x - left) / (right - left) * area.width(),
                       area.bottom() - (y - bottom) / (top - bottom) * area.height());
    };
    const MonotoneCurve curve(points);
    QPolygonF line;
    constexpr int kSteps = 80;
    for (int i = 0; i <= kSteps; ++i) {
        const double x = points.front().x + (right - points.front().x) * i / kSteps;
        line << place(x, curve.at(x));
    }
    const QColor colour = Theme::of(palette()).note;
    painter.setPen(QPen(colour, 1.8));
    painter.drawPolyline(line);
    painter.setBrush(colour);
    painter.setPen(Qt::NoPen);
    for (const auto& point : points)
        painter.drawEllipse(place(point.x, point.y), 3, 3);
}

CurveEditor::CurveEditor(const parts::Field& field, UnitSystem units, QWidget* parent)
    : QWidget(parent), m_field(field), m_units(units), m_table(new QTableWidget(0, 2)), m_add(new QToolButton),
      m_remove(new QToolButton), m_plot(new CurvePlot)
{
    const QString name = say(field.label);
    m_table->setAccessibleName(tr("%1 readings").arg(name));
    m_table->setMinimumWidth(fontMetrics().averageCharWidth() * 20);
    m_table->horizontalHeader()->setMinimumSectionSize(20);
    m_table->setHorizontalScrollBarPolicy(Qt::ScrollBarAlwaysOff);
    m_table->setTabKeyNavigation(false);  // Tab leaves the table, arrows move inside it
    m_table->verticalHeader()->hide();
    m_table->verticalHeader()->setDefaultSectionSize(fontMetrics().height() + 8);
    m_table->horizontalHeader()->setSectionResizeMode(QHeaderView::Stretch);
    m_table->setVerticalScrollBarPolicy(Qt::ScrollBarAlwaysOff);
    m_add->setIcon(look::icon(QStringLiteral("add")));
    m_add->setAccessibleName(tr("Add reading to %1").arg(name));
    m_add->setToolTip(tr("Add a reading"));
    m_remove->setIcon(look::icon(QStringLiteral("remove")));
    m_remove->setAccessibleName(tr("Remove reading from %1").arg(name));
    m_remove->setToolTip(tr("Remove the chosen reading"));
    m_plot->setAccessibleName(tr("%1 drawn").arg(name));

    auto* buttons = new QVBoxLayout;
    buttons->setSpacing(2);
    buttons->addWidget(m_add);
    buttons->addWidget(m_remove);
    buttons->addStretch();
    auto* top = new QHBoxLayout;
    top->addWidget(m_table, 1);
    top->addLayout(buttons);
    auto* all = new QVBoxLayout(this);
    all->setContentsMargins(0, 0, 0, 0);
    all->setSpacing(4);
    all->addLayout(top);
    all->addWidget(m_plot);

    connect(m_table, &QTableWidget::cellChanged, this, &CurveEditor::cellEdited);
    connect(m_add, &QToolButton::clicked, this, &CurveEditor::addReading);
    connect(m_remove, &QToolButton::clicked, this, &CurveEditor::removeReading);
}

void CurveEditor::setCurve(const parts::Curve& curve)
{
    m_mixed = false;
    m_curve = curve;
    fill();
}

void CurveEditor::setMixed()
{
    m_mixed = true;
    m_curve.clear();
    fill();
}

void CurveEditor::setUnits(UnitSystem units)
{
    m_units = units;
    fill();
}

void CurveEditor::fill()
{
    m_filling = true;
    const int row = m_table->currentRow(), column = m_table->currentColumn();
    m_table->setHorizontalHeaderLabels({quantityHead(quantityName(m_field.curveX), m_field.curveX, m_units),
                                        quantityHead(quantityName(m_field.curveY), m_field.curveY, m_units)});
    m_table->setRowCount(static_cast<int>(m_curve.size()));
    for (int i = 0; i < m_table->rowCount(); ++i) {
        const auto& point = m_curve[static_cast<std::size_t>(i)];
        for (int c = 0; c < 2; ++c) {
            auto* item = new QTableWidgetItem(c == 0 ? editableNumber(point.x, m_field.curveX, m_units)
                                                     : editableNumber(point.y, m_field.curveY, m_units));
            item->setTextAlignment(Qt::AlignRight | Qt::AlignVCenter);
            m_table->setItem(i, c, item);
        }
    }
    if (row >= 0 && row < m_table->rowCount())
        m_table->setCurrentCell(row, std::max(0, column));
    m_table->setToolTip(m_mixed ? tr("The chosen parts have different curves") : QString());
    const int height = m_table->horizontalHeader()->sizeHint().height() + 2 * m_table->frameWidth()
                       + std::max(1, m_table->rowCount()) * m_table->verticalHeader()->defaultSectionSize();
    m_table->setFixedHeight(height);
    m_remove->setEnabled(m_table->rowCount() > 2);
    m_add->setEnabled(!m_mixed);
    m_plot->setCurve(m_curve);
    m_filling = false;
}

void CurveEditor::cellEdited(int row, int column)
{
    if (m_filling || row >= static_cast<int>(m_curve.size()))
        return;
    parts::Curve next = m_curve;
    auto& point = next[static_cast<std::size_t>(row)];
    double& number = column == 0 ? point.x : point.y;
    const Quantity quantity = column == 0 ? m_field.curveX : m_field.curveY;
    const QString text = m_table->item(row, column)->text();
    if (text == editableNumber(number, quantity, m_units))
        return;  // the rounded display is never written back
    const auto typed = parseMeasure(text.toStdString(), quantity, m_units);
    if (!typed) {
        Q_EMIT complaint(say(typed.error().what));
        return;
    }
    number = *typed;
    Q_EMIT complaint({});
    Q_EMIT committed(next);
}

void CurveEditor::addReading()
{
    parts::Curve next = m_curve;
    const int row = m_table->currentRow();
    if (next.size() < 2) {
        next.push_back(next.empty() ? parts::CurvePoint{0, 0} : parts::CurvePoint{next[0].x + 1e-5, next[0].y});
    } else if (row >= 0 && row + 1 < static_cast<int>(next.size())) {
        const auto& a = next[static_cast<std::size_t>(row)];
        const auto& b = next[static_cast<std::size_t>(row) + 1];
        next.insert(next.begin() + row + 1, {(a.x + b.x) / 2, (a.y + b.y) / 2});
    } else {
        // After the last reading: halfway between the last two, which every curve rule allows.
        const auto a = next[next.size() - 2], b = next.back();
        next.insert(next.end() - 1, {(a.x + b.x) / 2, (a.y + b.y) / 2});
    }
    Q_EMIT committed(next);
}

void CurveEditor::removeReading()
{
    const int row = m_table->currentRow() < 0 ? m_table->rowCount() - 1 : m_table->currentRow();
    if (row < 0 || row >= static_cast<int>(m_curve.size()))
        return;
    parts::Curve next = m_curve;
    next.erase(next.begin() + row);
    Q_EMIT committed(next);
}

}  // namespace tapward::app
