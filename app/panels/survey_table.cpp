// SPDX-License-Identifier: GPL-3.0-or-later
#include "panels/survey_table.h"

#include <algorithm>
#include <map>
#include <QApplication>
#include <QClipboard>
#include <QComboBox>
#include <QHeaderView>
#include <QKeyEvent>
#include <QLineEdit>
#include <QRegularExpression>
#include <QStyledItemDelegate>
#include <set>

#include "document/cell_block.h"
#include "panels/figures.h"
#include "panels/say.h"

namespace tapward::app {

namespace {

/// A line to type into; cells with a few choices offer them too.
class CellDelegate final : public FigureDelegate {
public:
    using FigureDelegate::FigureDelegate;

    void initStyleOption(QStyleOptionViewItem* option, const QModelIndex& index) const override
    {
        FigureDelegate::initStyleOption(option, index);
        if (option->displayAlignment & Qt::AlignRight)
            option->text = alignedByPoint(option->text, index.data(SurveyModel::kDecimalsRole).toInt());
    }

    QWidget* createEditor(QWidget* parent, const QStyleOptionViewItem&, const QModelIndex& index) const override
    {
        const auto* order = qobject_cast<const QSortFilterProxyModel*>(index.model());
        const auto* model = qobject_cast<const SurveyModel*>(order->sourceModel());
        const QString name = index.data(Qt::AccessibleTextRole).toString();
        const QStringList choices = model->choices(order->mapToSource(index));
        if (choices.isEmpty()) {
            auto* line = new QLineEdit(parent);
            line->setFrame(false);
            line->setAccessibleName(name);
            return line;
        }
        auto* combo = new QComboBox(parent);
        combo->setEditable(true);
        combo->setInsertPolicy(QComboBox::NoInsert);
        combo->setFrame(false);
        combo->addItems(choices);
        combo->setAccessibleName(name);
        combo->lineEdit()->setAccessibleName(name);
        connect(combo, &QComboBox::activated, this, [this, combo] {
            auto* self = const_cast<CellDelegate*>(this);
            Q_EMIT self->commitData(combo);
            Q_EMIT self->closeEditor(combo);
        });
        return combo;
    }

    void setEditorData(QWidget* editor, const QModelIndex& index) const override
    {
        const QString text = index.data(Qt::EditRole).toString();
        if (auto* combo = qobject_cast<QComboBox*>(editor)) {
            combo->setCurrentIndex(combo->findText(text));
            combo->setEditText(text);
            combo->lineEdit()->selectAll();
        } else {
            qobject_cast<QLineEdit*>(editor)->setText(text);
        }
    }

    void setModelData(QWidget* editor, QAbstractItemModel* model, const QModelIndex& index) const override
    {
        auto* combo = qobject_cast<QComboBox*>(editor);
        model->setData(index, combo ? combo->currentText() : qobject_cast<QLineEdit*>(editor)->text(), Qt::EditRole);
    }
};

}  // namespace

SurveyTable::SurveyTable(Session& session, document::SurveySheet sheet, QWidget* parent)
    : QTableView(parent), m_session(session), m_model(new SurveyModel(session, sheet, this)),
      m_order(new QSortFilterProxyModel(this))
{
    m_order->setSourceModel(m_model);
    m_order->setSortRole(SurveyModel::kSortRole);
    m_order->setFilterKeyColumn(-1);
    m_order->setFilterCaseSensitivity(Qt::CaseInsensitive);
    m_order->setSortLocaleAware(true);
    // A row stays where it is while it is being written in; the next click on a heading sorts again.
    m_order->setDynamicSortFilter(false);
    setModel(m_order);
    setItemDelegate(new CellDelegate(this));
    setAccessibleName(sheet == document::SurveySheet::Runs ? tr("Survey of runs") : tr("Survey of heights"));
    setSelectionMode(QAbstractItemView::ExtendedSelection);
    setEditTriggers(QAbstractItemView::AnyKeyPressed | QAbstractItemView::EditKeyPressed
                    | QAbstractItemView::DoubleClicked);
    setTabKeyNavigation(true);
    setFrameShape(QFrame::NoFrame);
    setAlternatingRowColors(true);
    setSortingEnabled(true);
    sortByColumn(-1, Qt::AscendingOrder);
    setWordWrap(false);
    setHorizontalScrollMode(QAbstractItemView::ScrollPerPixel);
    verticalHeader()->hide();
    verticalHeader()->setDefaultSectionSize(std::max(24, fontMetrics().height() + 8));
    horizontalHeader()->setHighlightSections(false);
    horizontalHeader()->setDefaultAlignment(Qt::AlignLeft | Qt::AlignVCenter);
    connect(selectionModel(), &QItemSelectionModel::selectionChanged, this, &SurveyTable::tellSession);
    connect(&session, &Session::selectionChanged, this, &SurveyTable::followSession);
    connect(m_model, &QAbstractItemModel::modelReset, this, &SurveyTable::followSession);
}

void SurveyTable::filter(const QString& text) { m_order->setFilterFixedString(text.trimmed()); }

void SurveyTable::showEvent(QShowEvent* event)
{
    QTableView::showEvent(event);
    if (m_model->rowCount() > 0 && property("fitted").isNull()) {
        setProperty("fitted", true);
        resizeColumnsToContents();
        const int most = fontMetrics().averageCharWidth() * 32;
        for (int i = 0; i < m_model->columnCount(); ++i)
            setColumnWidth(i, std::min(columnWidth(i) + 8, most));
    }
    followSession();
}

void SurveyTable::tellSession()
{
    if (m_following)
        return;
    std::set<document::PartId> ids;
    for (const QModelIndex& index : selectionModel()->selectedIndexes())
        ids.insert(m_model->part(m_order->mapToSource(index).row()));
    if (ids.empty())
        return;
    m_following = true;
    m_session.select({ids.begin(), ids.end()});
    m_following = false;
}

void SurveyTable::followSession()
{
    if (m_following || !isVisible())
        return;
    m_following = true;
    QItemSelection rows;
    QModelIndex first;
    for (const auto id : m_session.selection()) {
        const int row = m_model->rowOf(id);
        const QModelIndex shown = row < 0 ? QModelIndex() : m_order->mapFromSource(m_model->index(row, 0));
        if (!shown.isValid())
            continue;
        rows.select(shown, shown.siblingAtColumn(m_model->columnCount() - 1));
        if (!first.isValid() || shown.row() < first.row())
            first = shown;
    }
    selectionModel()->select(rows, QItemSelectionModel::ClearAndSelect);
    if (first.isValid()) {
        const QModelIndex at = first.siblingAtColumn(std::max(0, currentIndex().column()));
        selectionModel()->setCurrentIndex(at, QItemSelectionModel::NoUpdate);
        scrollTo(at);
    }
    m_following = false;
}

void SurveyTable::step(int rows, int columns)
{
    const QModelIndex now = currentIndex();
    const int row = now.row() + rows, column = now.column() + columns;
    const QModelIndex next = m_order->index(std::clamp(row, 0, std::max(0, m_order->rowCount() - 1)),
                                            std::clamp(column, 0, m_order->columnCount() - 1));
    if (next.isValid())  // whatever keys are held: Shift+Enter goes up, it does not select
        selectionModel()->setCurrentIndex(next, QItemSelectionModel::ClearAndSelect);
}

void SurveyTable::closeEditor(QWidget* editor, QAbstractItemDelegate::EndEditHint hint)
{
    const bool back = (QGuiApplication::keyboardModifiers() & Qt::ShiftModifier) != 0;
    QTableView::closeEditor(editor, QAbstractItemDelegate::NoHint);
    setFocus();
    if (hint == QAbstractItemDelegate::SubmitModelCache)
        step(back ? -1 : 1, 0);
    else if (hint == QAbstractItemDelegate::EditNextItem)
        step(0, 1);
    else if (hint == QAbstractItemDelegate::EditPreviousItem)
        step(0, -1);
}

void SurveyTable::keyPressEvent(QKeyEvent* event)
{
    if (state() == EditingState) {  // the editor lets Enter through; closeEditor() moves on
        QTableView::keyPressEvent(event);
        return;
    }
    if (event->matches(QKeySequence::Copy)) {
        copy();
    } else if (event->matches(QKeySequence::Paste)) {
        paste();
    } else if (event->key() == Qt::Key_Delete || event->key() == Qt::Key_Backspace) {
        clearCells();
    } else if (event->key() == Qt::Key_Return || event->key() == Qt::Key_Enter) {
        step(event->modifiers() & Qt::ShiftModifier ? -1 : 1, 0);
    } else if (event->key() == Qt::Key_Down && (event->modifiers() & Qt::AltModifier)) {
        edit(currentIndex());
        if (auto* combo = qobject_cast<QComboBox*>(indexWidget(currentIndex())))
            combo->showPopup();
    } else {
        QTableView::keyPressEvent(event);
        return;
    }
    event->accept();
}

void SurveyTable::copy() const
{
    const auto selected = selectionModel()->selectedIndexes();
    if (selected.isEmpty())
        return;
    int top = selected.front().row(), bottom = top, left = selected.front().column(), right = left;
    for (const auto& index : selected) {
        top = std::min(top, index.row());
        bottom = std::max(bottom, index.row());
        left = std::min(left, index.column());
        right = std::max(right, index.column());
    }
    document::CellBlock block(static_cast<std::size_t>(bottom - top + 1),
                              std::vector<std::string>(static_cast<std::size_t>(right - left + 1)));
    for (const auto& index : selected)
        block[static_cast<std::size_t>(index.row() - top)][static_cast<std::size_t>(index.column() - left)] =
            index.data(Qt::EditRole).toString().toStdString();
    QApplication::clipboard()->setText(QString::fromStdString(document::writeCells(block)));
}

void SurveyTable::paste()
{
    const auto block = document::readCells(QApplication::clipboard()->text().toStdString());
    if (!block) {
        Q_EMIT m_model->said(sayProblem(block.error(), m_session.units()));
        return;
    }
    if (!block->empty())
        pasteBlock(*block);
}

void SurveyTable::pasteBlock(const document::CellBlock& block)
{
    auto selected = selectionModel()->selectedIndexes();
    if (selected.isEmpty() && currentIndex().isValid())
        selected << currentIndex();
    const bool takesNew =
        m_model->sheet() == document::SurveySheet::Runs && m_order->filterRegularExpression().pattern().isEmpty();
    if (selected.isEmpty() && !(takesNew && m_order->rowCount() == 0))
        return;
    const auto cellAt = [&](const QModelIndex& at, const std::string& typed) {
        const QModelIndex source = m_order->mapToSource(at);
        return document::SurveyCell{m_model->part(source.row()), static_cast<std::size_t>(source.column()), typed};
    };
    std::vector<document::SurveyCell> cells, below;
    std::set<int> rowsBelow;
    QStringList outside;  // texts that have no cell
    const int rows = m_order->rowCount();
    if (block.size() == 1 && block[0].size() == 1 && !selected.isEmpty()) {
        for (const auto& index : selected)  // one text fills everything that is selected
            cells.push_back(cellAt(index, block[0][0]));
    } else {
        int top = selected.isEmpty() ? 0 : selected.front().row(),
            left = selected.isEmpty() ? 0 : selected.front().column();
        for (const auto& index : selected) {
            top = std::min(top, index.row());
            left = std::min(left, index.column());
        }
        // A line of this table's own headings on top is not a row of values.
        std::size_t from = 1;
        for (std::size_t c = 0; c < block[0].size(); ++c) {
            const int column = left + static_cast<int>(c);
            const QString typed = plain(block[0][c]);
            const bool heading =
                column < m_order->columnCount()
                && (typed == m_order->headerData(column, Qt::Horizontal, Qt::DisplayRole).toString()
                    || typed == m_order->headerData(column, Qt::Horizontal, SurveyModel::kTitleRole).toString());
            from = heading ? from : 0;
        }
        for (std::size_t r = from; r < block.size(); ++r)
            for (std::size_t c = 0; c < block[r].size(); ++c) {
                if (block[r][c].empty())
                    continue;  // an empty cell of a spreadsheet takes nothing away
                const int row = top + static_cast<int>(r - from), column = left + static_cast<int>(c);
                if (const QModelIndex at = m_order->index(row, column); at.isValid()) {
                    cells.push_back(cellAt(at, block[r][c]));
                } else if (takesNew && row >= rows && column < m_order->columnCount()) {
                    rowsBelow.insert(row);
                    below.push_back({row, static_cast<std::size_t>(column), block[r][c]});  // the part comes below
                } else {
                    outside << plain(block[r][c]);
                }
            }
    }
    // Rows below the last one are pipes nobody has drawn yet: they come into the drawing with loose ends.
    const int step = m_session.newBurst();
    QStringList said;
    if (!rowsBelow.empty()) {
        if (const auto why = m_session.perform(
                document::looseRuns(m_session.drawing(), rowsBelow.size(), m_session.newStage()), step)) {
            said << sayProblem(*why, m_session.units());
        } else {
            std::map<int, document::PartId> fresh;
            auto next = m_session.lastAdded().begin();
            for (const int row : rowsBelow)
                fresh[row] = *next++;
            for (auto cell : below) {
                cell.part = fresh.at(static_cast<int>(cell.part));
                cells.push_back(std::move(cell));
            }
        }
    }
    if (!cells.empty())
        if (const QString words = m_model->take(cells, step); !words.isEmpty())
            said << words;
    if (!outside.isEmpty())
        said << tr("%n cell(s) lie outside the table and were left out, from \u201c%1\u201d on; they are still on the "
                   "clipboard. Draw the missing parts, or paste further up or left.",
                   nullptr, static_cast<int>(outside.size()))
                    .arg(outside.front());
    if (!rowsBelow.empty() && said.isEmpty())
        said << tr("%n new pipe(s), below the drawing with loose ends: lay them from port to port.", nullptr,
                   static_cast<int>(rowsBelow.size()));
    Q_EMIT m_model->said(said.join(QLatin1Char(' ')));
}

void SurveyTable::clearCells()
{
    std::vector<document::SurveyCell> cells;
    for (const auto& index : selectionModel()->selectedIndexes()) {
        const QModelIndex source = m_order->mapToSource(index);
        const auto column = static_cast<std::size_t>(source.column());
        // A tag cannot be empty and a basis has no default of its own: nothing to take back.
        if ((source.flags() & Qt::ItemIsEditable) && column > 0)
            cells.push_back({m_model->part(source.row()), column, {}});
    }
    if (!cells.empty())
        Q_EMIT m_model->said(m_model->take(cells));
}

void SurveyTable::showRefused()
{
    const QModelIndex at = m_order->mapFromSource(m_model->firstRefused());
    if (!at.isValid())
        return;
    setCurrentIndex(at);
    scrollTo(at);
    setFocus();
    edit(at);
}

}  // namespace tapward::app
