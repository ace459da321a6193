// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <map>
#include <QAbstractTableModel>
#include <vector>

#include "document/survey.h"
#include "session/session.h"

namespace tapward::app {

/// One survey sheet of the session's drawing. A text that cannot be taken stays in its cell, marked and with
/// the reason, until it is put right or discarded; the drawing keeps its old value meanwhile.
class SurveyModel final : public QAbstractTableModel {
    Q_OBJECT
public:
    SurveyModel(Session& session, document::SurveySheet sheet, QObject* parent = nullptr);

    static constexpr int kSortRole = Qt::UserRole;
    static constexpr int kDecimalsRole = Qt::UserRole + 2;  ///< the most that a number of this column has
    static constexpr int kTitleRole = Qt::UserRole + 1;  ///< of a column, without the unit

    int rowCount(const QModelIndex& parent = {}) const override;
    int columnCount(const QModelIndex& parent = {}) const override;
    QVariant data(const QModelIndex& index, int role) const override;
    QVariant headerData(int section, Qt::Orientation orientation, int role) const override;
    Qt::ItemFlags flags(const QModelIndex& index) const override;
    bool setData(const QModelIndex& index, const QVariant& value, int role) override;

    document::PartId part(int row) const { return m_rows[static_cast<std::size_t>(row)]; }
    int rowOf(document::PartId id) const;  ///< -1 if none
    QStringList choices(const QModelIndex& index) const;
    /// All cells at once, one undo step; what cannot be taken stays in its cell. @return what happened, in words
    QString take(std::vector<document::SurveyCell> cells, int burst = 0);
    document::SurveySheet sheet() const { return m_sheet; }
    /// Basis given to what is typed; none keeps each value's own.
    void setBasis(std::optional<parts::Basis> basis) { m_basis = basis; }
    std::size_t refusedCount() const { return m_refused.size(); }
    QModelIndex firstRefused() const;
    void discardRefused();

Q_SIGNALS:
    /// What happened with the last text typed or pasted; empty when there is nothing to say.
    void said(const QString& text);
    void refusedChanged();

private:
    struct Refused {
        QString typed, why;
    };
    int decimalsIn(int column) const;
    const Refused* refusedAt(const QModelIndex& index) const;
    void drawingChanged();
    void redraw();

    Session& m_session;
    document::SurveySheet m_sheet;
    const std::vector<document::SurveyColumn>& m_columns;
    std::vector<document::PartId> m_rows;
    mutable std::map<int, int> m_decimals;  // of columns that were looked at
    std::map<std::pair<document::PartId, int>, Refused> m_refused;
    std::optional<parts::Basis> m_basis;
};

}  // namespace tapward::app
