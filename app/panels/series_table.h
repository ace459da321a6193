// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <memory>
#include <QAbstractTableModel>

#include "study/prediction.h"

namespace tapward::app {

/// The series of one case as a table: a row per sample, a column per series.
class SeriesTable final : public QAbstractTableModel {
    Q_OBJECT
public:
    using QAbstractTableModel::QAbstractTableModel;
    void show(std::shared_ptr<const study::Prediction> keep, const study::CaseResult* result, UnitSystem units);

    int rowCount(const QModelIndex& parent = {}) const override;
    int columnCount(const QModelIndex& parent = {}) const override;
    QVariant data(const QModelIndex& index, int role) const override;
    QVariant headerData(int section, Qt::Orientation orientation, int role) const override;

private:
    std::shared_ptr<const study::Prediction> m_keep;
    const study::CaseResult* m_result = nullptr;
    UnitSystem m_units = UnitSystem::Us;
};

}  // namespace tapward::app
