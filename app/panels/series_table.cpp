// SPDX-License-Identifier: GPL-3.0-or-later
#include "panels/series_table.h"

#include "panels/say.h"

namespace tapward::app {

void SeriesTable::show(std::shared_ptr<const study::Prediction> keep, const study::CaseResult* result, UnitSystem units)
{
    beginResetModel();
    m_keep = std::move(keep);
    m_result = result;
    m_units = units;
    endResetModel();
}

int SeriesTable::rowCount(const QModelIndex& parent) const
{
    return parent.isValid() || !m_result ? 0 : static_cast<int>(m_result->time_s.size());
}

int SeriesTable::columnCount(const QModelIndex& parent) const
{
    return parent.isValid() || !m_result ? 0 : static_cast<int>(m_result->series.size()) + 1;
}

QVariant SeriesTable::data(const QModelIndex& index, int role) const
{
    if (!m_result || !index.isValid())
        return {};
    if (role == Qt::TextAlignmentRole)
        return int(Qt::AlignRight | Qt::AlignVCenter);
    if (role != Qt::DisplayRole)
        return {};
    const auto row = static_cast<std::size_t>(index.row());
    if (index.column() == 0)
        return QString::number(m_result->time_s[row], 'f', 1);
    const auto& series = m_result->series[static_cast<std::size_t>(index.column()) - 1];
    if (row >= series.values.size())
        return {};
    return QString::fromStdString(showNumber({series.values[row], series.quantity}, m_units));
}

QVariant SeriesTable::headerData(int section, Qt::Orientation orientation, int role) const
{
    if (!m_result || orientation != Qt::Horizontal || role != Qt::DisplayRole)
        return {};
    if (section == 0)
        return quantityHead(tr("Time"), Quantity::Time, m_units);
    const auto& series = m_result->series[static_cast<std::size_t>(section) - 1];
    return quantityHead(sayMessage(series.label, m_units), series.quantity, m_units);
}

}  // namespace tapward::app
