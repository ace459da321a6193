// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QWidget>

#include "parts/part_kind.h"

namespace tapward::app {

/// The line through a curve's readings, drawn small with the ends of its axes.
class CurvePlot final : public QWidget {
    Q_OBJECT
public:
    explicit CurvePlot(const parts::Field& field, QWidget* parent = nullptr);
    void setCurve(const parts::Curve& curve, UnitSystem units);
    QSize sizeHint() const override;

protected:
    void paintEvent(QPaintEvent* event) override;

private:
    const parts::Field& m_field;
    parts::Curve m_curve;
    UnitSystem m_units = UnitSystem::Us;
};

}  // namespace tapward::app
