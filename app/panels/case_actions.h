// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <functional>
#include <QTableWidget>

#include "document/drawing.h"
#include "session/session.h"

class QComboBox;

namespace tapward::app {

class ValueEdit;

/// The actions of one case, each a row of editors; the last cell is a form of its own, which names what it asks.
class CaseActions final : public QTableWidget {
    Q_OBJECT
public:
    explicit CaseActions(Session& session, QWidget* parent = nullptr);

    void showCase(const document::Case* one);

    /// How an edited cell changes the action of its row.
    using Change = std::function<void(document::Action&)>;

Q_SIGNALS:
    void actionChanged(int row, const tapward::app::CaseActions::Change& change);
    void complaint(const QString& text);

private:
    void fillRow(int row, const document::Action& action);
    void fillWhat(int row, const document::Action& action);
    void fillWhich(int row, const document::Action& action);
    void fillHow(int row, const document::Action& action);
    QComboBox* faults(int row, const document::Action& action);
    ValueEdit* number(int row, Quantity quantity, double value, const QString& name, double least, double most,
                      std::function<void(document::Action&, double)> set);
    QComboBox* combo(int row, const QString& name);
    void nameBeside(QComboBox* box);

    Session& m_session;
};

}  // namespace tapward::app
