// SPDX-License-Identifier: GPL-3.0-or-later
#include "panels/safety_table.h"

#include <algorithm>
#include <cmath>
#include <QAction>
#include <QApplication>
#include <QClipboard>
#include <QHeaderView>
#include <QKeyEvent>
#include <QScopedValueRollback>
#include <QScrollBar>

#include "document/cell_block.h"
#include "panels/figures.h"
#include "panels/icons.h"
#include "panels/say.h"

namespace tapward::app {

namespace {

constexpr int kRow = Qt::UserRole, kOrder = Qt::UserRole + 1;

class OrderedItem final : public QTableWidgetItem {
public:
    bool operator<(const QTableWidgetItem& other) const override
    {
        const QVariant mine = data(kOrder), others = other.data(kOrder);
        if (mine.isValid() && others.isValid())
            return mine.toDouble() < others.toDouble();
        if (mine.isValid() != others.isValid())
            return others.isValid();  // nothing known stays below everything known
        return text().localeAwareCompare(other.text()) < 0;
    }
};

}  // namespace

SafetyCell SafetyCell::measure(std::optional<double> si, Quantity quantity, UnitSystem units)
{
    SafetyCell cell;
    cell.number = true;
    if (si && std::isfinite(*si)) {
        cell.text = sayMeasure(*si, quantity, units);
        cell.unit = plain(shown({*si, quantity}, units).unit);
        cell.order = *si;
    } else {
        cell.text = QStringLiteral("\u2013");
    }
    return cell;
}

SafetyCell SafetyCell::severity(review::Severity severity)
{
    SafetyCell cell(look::severityWord(severity));
    cell.weight = severity;
    cell.order = -static_cast<int>(severity);
    return cell;
}

SafetyTable::SafetyTable(const QString& accessibleName, QWidget* parent) : QTableWidget(parent)
{
    setAccessibleName(accessibleName);
    setItemDelegate(new FigureDelegate(this));
    setEditTriggers(QAbstractItemView::NoEditTriggers);
    setSelectionBehavior(QAbstractItemView::SelectRows);
    setSelectionMode(QAbstractItemView::SingleSelection);
    setAlternatingRowColors(true);
    setWordWrap(true);
    setTabKeyNavigation(false);
    setFrameShape(QFrame::NoFrame);
    setHorizontalScrollMode(QAbstractItemView::ScrollPerPixel);
    setVerticalScrollMode(QAbstractItemView::ScrollPerPixel);
    verticalHeader()->hide();
    horizontalHeader()->setDefaultAlignment(Qt::AlignLeft | Qt::AlignVCenter);
    horizontalHeader()->setHighlightSections(false);
    auto* copyRows = new QAction(tr("Copy Table"), this);
    copyRows->setShortcut(QKeySequence::Copy);
    copyRows->setShortcutContext(Qt::WidgetShortcut);
    addAction(copyRows);
    setContextMenuPolicy(Qt::ActionsContextMenu);
    connect(copyRows, &QAction::triggered, this, &SafetyTable::copy);
    connect(this, &QTableWidget::cellClicked, this, [this] { Q_EMIT rowOpened(chosenRow()); });
    connect(horizontalHeader(), &QHeaderView::sectionResized, this, [this] { fitRows(); });
}

void SafetyTable::fill(const QStringList& heads, const std::vector<std::vector<SafetyCell>>& rows)
{
    const int chosen = chosenRow();
    const bool same = m_filled && columnCount() == heads.size();
    const int sortedBy = same && isSortingEnabled() ? horizontalHeader()->sortIndicatorSection() : -1;
    const auto order = horizontalHeader()->sortIndicatorOrder();
    setSortingEnabled(false);
    clearContents();
    setColumnCount(static_cast<int>(heads.size()));
    setHorizontalHeaderLabels(heads);
    setRowCount(static_cast<int>(rows.size()));
    for (int row = 0; row < rowCount(); ++row)
        for (int column = 0; column < columnCount(); ++column) {
            auto* item = new OrderedItem;
            const auto& cells = rows[static_cast<std::size_t>(row)];
            if (static_cast<std::size_t>(column) < cells.size()) {
                const SafetyCell& cell = cells[static_cast<std::size_t>(column)];
                item->setText(cell.text);
                item->setData(kOrder, cell.order);
                item->setData(FigureDelegate::kUnitRole, cell.unit);
                item->setToolTip(cell.text);
                if (cell.weight)
                    item->setIcon(look::severityIcon(*cell.weight));
                item->setTextAlignment((cell.number ? Qt::AlignRight : Qt::AlignLeft) | Qt::AlignVCenter);
            }
            item->setData(kRow, row);
            setItem(row, column, item);
        }
    horizontalHeader()->setSortIndicator(sortedBy, order);  // -1: the order given
    setSortingEnabled(true);
    if (!same) {
        const int widest = fontMetrics().averageCharWidth() * 34;
        horizontalHeader()->setStretchLastSection(false);
        resizeColumnsToContents();
        for (int column = 0; column < columnCount(); ++column)
            setColumnWidth(column, std::min(columnWidth(column), widest));
        if (const int last = columnCount() - 1; last >= 0)  // its words may break, its head and its numbers not
            m_last = std::max(horizontalHeader()->sectionSizeHint(last),
                              std::min(columnWidth(last), fontMetrics().averageCharWidth() * 20));
    }
    m_filled = true;
    stretchLast();
    fitRows();
    if (chosen >= 0)
        chooseRow(chosen);
}

void SafetyTable::fitRows()
{
    const int least = std::max(24, fontMetrics().height() + 8);
    verticalHeader()->setMinimumSectionSize(least);
    resizeRowsToContents();
}

void SafetyTable::stretchLast()
{
    // Stretched, the last column takes what is left, be it too little: then the table is rather wider.
    const int last = columnCount() - 1;
    if (last < 0)
        return;
    const bool fits = columnViewportPosition(last) + horizontalScrollBar()->value() + m_last <= viewport()->width();
    horizontalHeader()->setStretchLastSection(fits);
    if (!fits)
        setColumnWidth(last, m_last);
}

int SafetyTable::chosenRow() const
{
    const auto rows = selectionModel() ? selectionModel()->selectedRows() : QModelIndexList();
    return rows.isEmpty() ? -1 : rows.constFirst().data(kRow).toInt();
}

void SafetyTable::chooseRow(int row)
{
    for (int i = 0; i < rowCount(); ++i)
        if (item(i, 0) && item(i, 0)->data(kRow).toInt() == row) {
            setCurrentCell(i, 0);
            selectRow(i);
            return;
        }
}

void SafetyTable::hideRows(const std::vector<bool>& hidden)
{
    for (int i = 0; i < rowCount(); ++i) {
        const auto row = static_cast<std::size_t>(item(i, 0)->data(kRow).toInt());
        setRowHidden(i, row < hidden.size() && hidden[row]);
    }
}

void SafetyTable::resizeEvent(QResizeEvent* event)
{
    QTableWidget::resizeEvent(event);
    if (m_fitting)
        return;  // a scroll bar came or went
    const QScopedValueRollback<bool> fitting(m_fitting, true);
    stretchLast();
    fitRows();  // the last column takes what is left, and its words break elsewhere
}

QString SafetyTable::asText(bool onlySelected) const
{
    document::CellBlock block(1);
    for (int column = 0; column < columnCount(); ++column)
        block.front().push_back(horizontalHeaderItem(column)->text().toStdString());
    for (int row = 0; row < rowCount(); ++row) {
        if (isRowHidden(row) || (onlySelected && !item(row, 0)->isSelected()))
            continue;
        auto& cells = block.emplace_back();
        for (int column = 0; column < columnCount(); ++column)
            cells.push_back(item(row, column)->text().toStdString());
    }
    return QString::fromStdString(document::writeCells(block)).chopped(1);
}

void SafetyTable::copy() { QApplication::clipboard()->setText(asText()); }

void SafetyTable::keyPressEvent(QKeyEvent* event)
{
    if ((event->key() == Qt::Key_Return || event->key() == Qt::Key_Enter) && chosenRow() >= 0) {
        Q_EMIT rowOpened(chosenRow());
        return;
    }
    QTableWidget::keyPressEvent(event);
}

void SafetyTable::changeEvent(QEvent* event)
{
    QTableWidget::changeEvent(event);
    if (event->type() == QEvent::FontChange) {
        m_filled = false;  // the columns are measured anew at the next filling
        fitRows();
    }
}

}  // namespace tapward::app
