// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QDialog>

#include "document/floor_plan.h"

class QLabel;
class QPushButton;
class QTableWidget;

namespace tapward::app {

class Session;

/// Lengths read off a scaled floor plan, offered pipe by pipe. Measured lengths are listed but not ticked.
class TraceDialog final : public QDialog {
    Q_OBJECT
public:
    explicit TraceDialog(Session& session, QWidget* parent = nullptr);
    QTableWidget& table() { return *m_table; }
    void accept() override;

private:
    std::vector<document::TracedLength> ticked() const;

    Session& m_session;
    std::vector<document::TracedLength> m_lengths;
    QTableWidget* m_table;
    QLabel* m_complaint;
    QPushButton* m_take;
};

}  // namespace tapward::app
