// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QWidget>

#include "base/units.h"
#include "parts/part_kind.h"

class QTableWidget;
class QToolButton;

namespace tapward::app {

class CurvePlot;

/// The readings of one curve field as a table to type into, with the curve drawn live beneath it.
/// Insert adds a reading, Delete removes one; two columns of a spreadsheet can be pasted as the whole curve.
class CurveEditor final : public QWidget {
    Q_OBJECT
public:
    CurveEditor(const parts::PartKind& kind, const parts::Field& field, UnitSystem units, QWidget* parent = nullptr);

    void setCurve(const parts::Curve& curve);
    void setMixed();
    void setUnits(UnitSystem units);
    const parts::Curve& curve() const { return m_curve; }
    void copy() const;
    void paste();

Q_SIGNALS:
    void committed(const tapward::parts::Curve& curve);
    void complaint(const QString& text);

protected:
    bool eventFilter(QObject* watched, QEvent* event) override;

private:
    void fill();
    void cellEdited(int row, int column);
    void addReading();
    void removeReading();

    const parts::PartKind& m_kind;
    const parts::Field& m_field;
    UnitSystem m_units;
    parts::Curve m_curve;
    bool m_mixed = false, m_filling = false;
    QTableWidget* m_table;
    QToolButton *m_add, *m_remove;
    CurvePlot* m_plot;
};

}  // namespace tapward::app
