// SPDX-License-Identifier: GPL-3.0-or-later
#include "panels/survey_model.h"

#include <algorithm>
#include <QGuiApplication>
#include <QPalette>

#include "look/theme.h"
#include "panels/figures.h"
#include "panels/say.h"
#include "session/message_text.h"

namespace tapward::app {

using document::SurveyColumn;

SurveyModel::SurveyModel(Session& session, document::SurveySheet sheet, QObject* parent)
    : QAbstractTableModel(parent), m_session(session), m_sheet(sheet), m_columns(document::surveyColumns(sheet)),
      m_rows(document::surveyRows(session.drawing(), sheet))
{
    connect(&session, &Session::changed, this, &SurveyModel::drawingChanged);
    connect(&session, &Session::viewChanged, this, [this] {
        redraw();
        Q_EMIT headerDataChanged(Qt::Horizontal, 0, columnCount() - 1);
    });
}

int SurveyModel::rowCount(const QModelIndex& parent) const
{
    return parent.isValid() ? 0 : static_cast<int>(m_rows.size());
}

int SurveyModel::columnCount(const QModelIndex& parent) const
{
    return parent.isValid() ? 0 : static_cast<int>(m_columns.size());
}

const SurveyModel::Refused* SurveyModel::refusedAt(const QModelIndex& index) const
{
    const auto found = m_refused.find({part(index.row()), index.column()});
    return found == m_refused.end() ? nullptr : &found->second;
}

int SurveyModel::decimalsIn(int column) const
{
    if (const auto known = m_decimals.find(column); known != m_decimals.end())
        return known->second;
    const SurveyColumn& shown = m_columns[static_cast<std::size_t>(column)];
    int most = 0;
    for (const auto id : m_rows)
        if (const auto* part = m_session.drawing().find(id); part != nullptr && document::surveyNumber(*part, shown))
            most = std::max(
                most, decimalsOf(plain(document::surveyText(m_session.drawing(), *part, shown, m_session.units()))));
    return m_decimals[column] = most;
}

QVariant SurveyModel::data(const QModelIndex& index, int role) const
{
    const document::Part* shown = m_session.drawing().find(part(index.row()));
    if (!shown)
        return {};
    const SurveyColumn& column = m_columns[static_cast<std::size_t>(index.column())];
    const Refused* refused = refusedAt(index);
    const UnitSystem units = m_session.units();
    const auto text = [&] {
        if (column.holds == SurveyColumn::Holds::From || column.holds == SurveyColumn::Holds::To)
            return messageText(document::surveyEnd(m_session.drawing(),
                                                   shown->ends[column.holds == SurveyColumn::Holds::From ? 0 : 1]),
                               units);
        const std::string raw = document::surveyText(m_session.drawing(), *shown, column, units);
        const bool words =
            column.holds == SurveyColumn::Holds::Kind || !document::surveyChoices(*shown, column).empty();
        return words ? say(raw) : plain(raw);
    };
    switch (role) {
    case Qt::DisplayRole:
        if (refused)
            return QStringLiteral("\u25B2 %1").arg(refused->typed);
        return text();
    case Qt::EditRole:
        return refused ? refused->typed : text();
    case kSortRole: {
        const auto number = document::surveyNumber(*shown, column);
        return number ? QVariant(*number) : QVariant(text());
    }
    case Qt::ToolTipRole:
        return refused ? refused->why : text();
    case Qt::AccessibleTextRole: {
        // The row and the column are spoken with the value: a cell read alone means little.
        const QString value = refused ? tr("%1, not taken").arg(refused->typed) : text();
        const QString unit = unitSymbol(column.quantity, units);
        return tr("%1 of %2: %3")
            .arg(say(column.title), plain(shown->tag),
                 value.isEmpty()  ? tr("empty")
                 : unit.isEmpty() ? value
                                  : value + QLatin1Char(' ') + unit);
    }
    case Qt::AccessibleDescriptionRole:
        return refused ? QVariant(refused->why) : QVariant();
    case Qt::TextAlignmentRole:
        return int((document::surveyNumber(*shown, column) ? Qt::AlignRight : Qt::AlignLeft) | Qt::AlignVCenter);
    case kDecimalsRole:
        return refused ? 0 : decimalsIn(index.column());
    case Qt::ForegroundRole:
        if (refused)
            return Theme::of(QGuiApplication::palette()).danger;
        return column.readOnly() ? QVariant(Theme::of(QGuiApplication::palette()).quietText) : QVariant();
    default:
        return {};
    }
}

QVariant SurveyModel::headerData(int section, Qt::Orientation orientation, int role) const
{
    if (orientation == Qt::Vertical)
        return role == Qt::DisplayRole ? QVariant(section + 1) : QVariant();
    const SurveyColumn& column = m_columns[static_cast<std::size_t>(section)];
    if (role == kTitleRole)
        return plain(column.title);
    if (role == Qt::DisplayRole || role == Qt::ToolTipRole)
        return quantityHead(say(column.title), column.quantity, m_session.units());
    return {};
}

Qt::ItemFlags SurveyModel::flags(const QModelIndex& index) const
{
    const bool fixed = m_columns[static_cast<std::size_t>(index.column())].readOnly();
    return Qt::ItemIsSelectable | Qt::ItemIsEnabled | (fixed ? Qt::NoItemFlags : Qt::ItemIsEditable);
}

bool SurveyModel::setData(const QModelIndex& index, const QVariant& value, int role)
{
    if (role != Qt::EditRole)
        return false;
    const QString typed = value.toString().trimmed();
    if (const Refused* refused = refusedAt(index); refused ? typed == refused->typed : typed == data(index, role))
        return true;  // left as it was
    Q_EMIT said(take({{part(index.row()), static_cast<std::size_t>(index.column()), typed.toStdString()}}));
    return true;
}

QStringList SurveyModel::choices(const QModelIndex& index) const
{
    QStringList titles;
    if (const document::Part* shown = m_session.drawing().find(part(index.row())))
        for (const auto& title : document::surveyChoices(*shown, m_columns[static_cast<std::size_t>(index.column())]))
            titles << say(title);
    return titles;
}

QString SurveyModel::take(std::vector<document::SurveyCell> cells, int burst)
{
    const UnitSystem units = m_session.units();
    for (auto& cell : cells)  // choices are written in the reader's language
        if (const document::Part* held = m_session.drawing().find(cell.part))
            for (const auto& title : document::surveyChoices(*held, m_columns[cell.column]))
                if (plain(cell.typed) == say(title))
                    cell.typed = title;
    auto change = document::surveyChange(m_session.drawing(), m_sheet, cells, units, m_basis);
    const std::size_t before = m_refused.size();
    for (const auto& cell : cells)
        m_refused.erase({cell.part, static_cast<int>(cell.column)});
    QString words;
    for (const auto& [cell, why] : change.refused) {
        const document::Part* held = m_session.drawing().find(cell.part);
        const QString reason = sayProblem(why, units);
        if (held)
            m_refused.insert_or_assign(std::pair{cell.part, static_cast<int>(cell.column)},
                                       Refused{plain(cell.typed), reason});
        if (words.isEmpty() && held)
            words = tr("%1, %2: %3").arg(plain(held->tag), say(m_columns[cell.column].title), reason);
        else if (words.isEmpty())
            words = reason;
    }
    if (change.refused.size() > 1)
        words = tr("%n cell(s) could not be taken; they keep what was written. First: %1", nullptr,
                   static_cast<int>(change.refused.size()))
                    .arg(words);
    if (change.edit)
        if (const auto refused = m_session.perform(std::move(*change.edit), burst))
            words = sayProblem(*refused, units);
    if (before != m_refused.size() || !change.refused.empty())
        Q_EMIT refusedChanged();
    redraw();
    return words;
}

int SurveyModel::rowOf(document::PartId id) const
{
    const auto at = std::ranges::find(m_rows, id);
    return at == m_rows.end() ? -1 : static_cast<int>(at - m_rows.begin());
}

QModelIndex SurveyModel::firstRefused() const
{
    if (m_refused.empty())
        return {};
    const auto& [part, column] = m_refused.begin()->first;
    const int row = rowOf(part);
    return row < 0 ? QModelIndex() : index(row, column);
}

void SurveyModel::discardRefused()
{
    m_refused.clear();
    redraw();
    Q_EMIT refusedChanged();
    Q_EMIT said({});
}

void SurveyModel::drawingChanged()
{
    auto rows = document::surveyRows(m_session.drawing(), m_sheet);
    if (rows == m_rows) {
        redraw();
        return;
    }
    beginResetModel();
    m_decimals.clear();
    m_rows = std::move(rows);
    const auto dropped = std::erase_if(m_refused, [this](const auto& one) { return rowOf(one.first.first) < 0; });
    endResetModel();
    if (dropped > 0)
        Q_EMIT refusedChanged();
}

void SurveyModel::redraw()
{
    m_decimals.clear();
    if (!m_rows.empty())
        Q_EMIT dataChanged(index(0, 0), index(rowCount() - 1, columnCount() - 1));
}

}  // namespace tapward::app
