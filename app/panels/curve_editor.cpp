// SPDX-License-Identifier: GPL-3.0-or-later
#include "panels/curve_editor.h"

#include <algorithm>
#include <QApplication>
#include <QClipboard>
#include <QHBoxLayout>
#include <QHeaderView>
#include <QKeyEvent>
#include <QTableWidget>
#include <QToolButton>
#include <QVBoxLayout>

#include "document/curve_cells.h"
#include "look/spacing.h"
#include "panels/curve_plot.h"
#include "panels/icons.h"
#include "panels/say.h"

namespace tapward::app {

CurveEditor::CurveEditor(const parts::PartKind& kind, const parts::Field& field, UnitSystem units, QWidget* parent)
    : QWidget(parent), m_kind(kind), m_field(field), m_units(units), m_table(new QTableWidget(0, 2)),
      m_add(new QToolButton), m_remove(new QToolButton), m_plot(new CurvePlot(field))
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
    buttons->setSpacing(look::kNear);
    buttons->addWidget(m_add);
    buttons->addWidget(m_remove);
    buttons->addStretch();
    auto* top = new QHBoxLayout;
    top->addWidget(m_table, 1);
    top->addLayout(buttons);
    auto* all = new QVBoxLayout(this);
    all->setContentsMargins(0, 0, 0, 0);
    all->setSpacing(look::kNear);
    all->addLayout(top);
    all->addWidget(m_plot);

    m_table->installEventFilter(this);
    m_table->setToolTip(tr("Insert adds a reading, Delete removes it, Ctrl+V takes two columns from a spreadsheet"));
    m_table->setAccessibleDescription(m_table->toolTip());
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
    m_table->setToolTip(m_mixed ? tr("The chosen parts have different curves; pasting one sets them all")
                                : m_table->accessibleDescription());
    const int height = m_table->horizontalHeader()->sizeHint().height() + 2 * m_table->frameWidth()
                       + std::max(1, m_table->rowCount()) * m_table->verticalHeader()->defaultSectionSize();
    m_table->setFixedHeight(height);
    m_remove->setEnabled(m_table->rowCount() > 2);
    m_add->setEnabled(!m_mixed);
    m_plot->setCurve(m_curve, m_units);
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

bool CurveEditor::eventFilter(QObject* watched, QEvent* event)
{
    if (watched != m_table || event->type() != QEvent::KeyPress)
        return QWidget::eventFilter(watched, event);
    const auto* key = static_cast<QKeyEvent*>(event);
    if (key->matches(QKeySequence::Copy))
        copy();
    else if (key->matches(QKeySequence::Paste))
        paste();
    else if (key->key() == Qt::Key_Insert && !m_mixed)
        addReading();
    else if (key->key() == Qt::Key_Delete && m_remove->isEnabled())
        removeReading();
    else
        return false;
    return true;
}

void CurveEditor::copy() const
{
    const auto cells = document::writeCells(document::curveCells(m_curve, m_field, m_units));
    QApplication::clipboard()->setText(QString::fromStdString(cells));
}

void CurveEditor::paste()
{
    const auto block = document::readCells(QApplication::clipboard()->text().toStdString());
    if (!block) {
        Q_EMIT complaint(sayProblem(block.error(), m_units));
        return;
    }
    auto* item = m_table->currentItem();
    if (item && block->size() == 1 && block->front().size() == 1) {
        item->setText(plain(block->front().front()));  // one number goes into one cell
        return;
    }
    const auto curve = document::readCurve(*block, m_kind, m_field, m_units);
    if (!curve) {
        Q_EMIT complaint(sayProblem(curve.error(), m_units));
        return;
    }
    Q_EMIT complaint({});
    Q_EMIT committed(*curve);
}

}  // namespace tapward::app
