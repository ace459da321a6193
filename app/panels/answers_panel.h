// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QWidget>

#include "panels/answers.h"
#include "session/session.h"

class QGridLayout;
class QLabel;
class QScrollArea;

namespace tapward::app {

class MarginBar;

/// The key answers beside the drawing. Greyed with "Recalculating" while the drawing is ahead of them.
class AnswersPanel final : public QWidget {
    Q_OBJECT
public:
    explicit AnswersPanel(Session& session, QWidget* parent = nullptr);
    QString asText() const;
    bool looksStale() const;  ///< greyed at the moment
    void copy() const;

protected:
    void contextMenuEvent(QContextMenuEvent* event) override;
    void keyPressEvent(QKeyEvent* event) override;
    void changeEvent(QEvent* event) override;

private:
    void refresh();
    void fill();
    QWidget* answerRow(const Answer& answer);
    QWidget* headBudget();

    Session& m_session;
    Answers m_answers;
    QLabel* m_state;
    QScrollArea* m_scroll;
    QWidget* m_content = nullptr;
};

}  // namespace tapward::app
