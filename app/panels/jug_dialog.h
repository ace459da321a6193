// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QDialog>
#include <vector>

#include "document/jug.h"

class QComboBox;
class QGridLayout;
class QLabel;
class QPushButton;

namespace tapward::app {

class Session;
class ValueEdit;

/// A fixture's flow by jug and stopwatch: several tries, their mean and spread, the pressure noted or reckoned from the
/// drawing, and into the drawing as measured.
class JugDialog final : public QDialog {
    Q_OBJECT
public:
    JugDialog(Session& session, document::PartId part, QWidget* parent = nullptr);

    /// The tries that are filled in whole.
    std::vector<document::JugTry> tries() const;
    ValueEdit& volume(int line) { return *m_lines[static_cast<std::size_t>(line)].volume; }
    ValueEdit& seconds(int line) { return *m_lines[static_cast<std::size_t>(line)].seconds; }
    ValueEdit& pressure() { return *m_pressure; }
    QComboBox& fedBy() { return *m_fedBy; }

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
    void takePressure(const Result<document::JugFlow>& flow);

    Session& m_session;
    document::PartId m_part;
    QGridLayout* m_grid;
    std::vector<Line> m_lines;
    ValueEdit* m_pressure;
    QComboBox* m_fedBy;  ///< where no pressure is noted
    std::optional<document::JugPressure> m_taken;
    std::optional<Problem> m_noPressure;
    double m_reckonedFlow_m3s = 0;  ///< for which m_taken or m_noPressure was found ...
    document::ActionKind m_reckonedFor = document::ActionKind::UseNothing;  ///< ... on this supply
    QLabel *m_result, *m_notes, *m_complaint;
    QPushButton* m_ok;
};

}  // namespace tapward::app
