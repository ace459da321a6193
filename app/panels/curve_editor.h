// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QWidget>

#include "base/units.h"
#include "parts/part_kind.h"

class QTableWidget;
class QToolButton;

namespace tapward::app {

/// The line through a curve's readings, drawn small.
class CurvePlot final : public QWidget {
    Q_OBJECT
public:
    explicit CurvePlot(QWidget* parent = nullptr);
    void setCurve(const parts::Curve& curve);
    QSize sizeHint() const override;

protected:
    void paintEvent(QPaintEvent* event) override;

private:
    parts::Curve m_curve;
};

/// The readings of one curve field as a table to type into, with the curve drawn live beneath it.
class CurveEditor final : public QWidget {
    Q_OBJECT
public:
    CurveEditor(const parts::Field& field, UnitSystem units, QWidget* parent = nullptr);

    void setCurve(const parts::Curve& curve);
    void setMixed();
    void setUnits(UnitSystem units);
    const parts::Curve& curve() const { return m_curve; }

Q_SIGNALS:
    void committed(const tapward::parts::Curve& curve);
    void complaint(const QString& text);

private:
    void fill();
    void cellEdited(int row, int column);
    void addReading();
    void removeReading();

    const parts::Field& m_field;
    UnitSystem m_units;
    parts::Curve m_curve;
    bool m_mixed = false, m_filling = false;
    QTableWidget* m_table;
    QToolButton *m_add, *m_remove;
    CurvePlot* m_plot;
};

}  // namespace tapward::app
