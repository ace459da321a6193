// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QWidget>

#include "session/session.h"

class QButtonGroup;
class QComboBox;
class QHBoxLayout;
class QToolButton;

namespace tapward::app {

/// Above the drawing: which case, which state of the coach, which stage new parts get, which units.
class CaseBar final : public QWidget {
    Q_OBJECT
public:
    explicit CaseBar(Session& session, QWidget* parent = nullptr);

Q_SIGNALS:
    void editCasesRequested();

private:
    QButtonGroup* addSwitch(QHBoxLayout* line, const QString& name, const QList<QPair<QString, int>>& choices,
                            const QStringList& tips);
    void refresh();
    void refreshCases();

    Session& m_session;
    QComboBox *m_case, *m_stage;
    QToolButton* m_keep;
    QButtonGroup *m_view, *m_units;
};

}  // namespace tapward::app
