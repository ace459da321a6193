// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QWidget>

#include "session/session.h"

class QButtonGroup;
class QComboBox;
class QToolButton;

namespace tapward::app {

/// Which units are shown; one click is all it takes.
class UnitsSwitch final : public QWidget {
    Q_OBJECT
public:
    explicit UnitsSwitch(Session& session, QWidget* parent = nullptr);
};

/// Above the drawing: which case, which state of the coach, which stage new parts get.
class CaseBar final : public QWidget {
    Q_OBJECT
public:
    explicit CaseBar(Session& session, QWidget* parent = nullptr);
    /// Where nobody draws the stage of new parts only takes room.
    void offerStage(bool offered);

Q_SIGNALS:
    void editCasesRequested();

private:
    void refresh();
    void refreshCases();

    Session& m_session;
    QComboBox *m_case, *m_stage;
    QToolButton* m_keep;
    QButtonGroup* m_view;
    QWidget* m_newParts = nullptr;
};

}  // namespace tapward::app
