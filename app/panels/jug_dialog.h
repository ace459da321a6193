// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QDialog>
#include <vector>

#include "document/jug.h"

class QGridLayout;
class QLabel;
class QPushButton;

namespace tapward::app {

class Session;
class ValueEdit;

/// A fixture's flow by jug and stopwatch: several tries, their mean and spread, the pressure noted, and into
/// the drawing as measured.
class JugDialog final : public QDialog {
    Q_OBJECT
public:
    JugDialog(Session& session, document::PartId part, QWidget* parent = nullptr);

    /// The tries that are filled in whole.
    std::vector<document::JugTry> tries() const;
    ValueEdit& volume(int line) { return *m_lines[static_cast<std::size_t>(line)].volume; }
    ValueEdit& seconds(int line) { return *m_lines[static_cast<std::size_t>(line)].seconds; }
    ValueEdit& pressure() { return *m_pressure; }

    void accept() override;

protected:
    bool event(QEvent* event) override;

private:
    struct Line {
        ValueEdit *volume, *seconds;
        QLabel* flow;
    };
    void addLine();
    void refresh();

    Session& m_session;
    document::PartId m_part;
    QGridLayout* m_grid;
    std::vector<Line> m_lines;
    ValueEdit* m_pressure;
    QLabel *m_result, *m_notes, *m_complaint;
    QPushButton* m_ok;
};

}  // namespace tapward::app
