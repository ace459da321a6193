// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <optional>
#include <QWidget>

#include "panels/answers.h"

namespace tapward::app {

/// Loop flow as a bar against the line of the heater's activation flow; the word beside it says the same.
class MarginBar final : public QWidget {
    Q_OBJECT
public:
    explicit MarginBar(QWidget* parent = nullptr);
    void setMargin(const std::optional<Margin>& margin);
    QSize sizeHint() const override;
    QSize minimumSizeHint() const override { return {80, sizeHint().height()}; }

protected:
    void paintEvent(QPaintEvent* event) override;

private:
    std::optional<Margin> m_margin;
};

}  // namespace tapward::app
