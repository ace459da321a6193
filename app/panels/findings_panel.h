// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QWidget>
#include <vector>

#include "session/session.h"

class QLabel;
class QListWidget;
class QPushButton;

namespace tapward::app {

class CatchUp;

/// What the drawing and its prediction show that a careful technician would want to know.
class FindingsPanel final : public QWidget {
    Q_OBJECT
public:
    explicit FindingsPanel(Session& session, QWidget* parent = nullptr);

    int openCount() const;             ///< findings not set aside
    QString summary() const;           ///< "1 danger, 2 cautions", or "No findings"
    /// Chooses the next (or previous) open finding and shows its part; goes round.
    void step(int direction);
    /// Sets the chosen finding aside with a reason; an empty reason is refused.
    void dismissCurrent(const QString& reason);
    /// Makes the chosen finding's quick fix, one undo step; nothing when it has none.
    void fixCurrent();
    int current() const;               ///< index in session.findings(), -1 = none

Q_SIGNALS:
    void countChanged();

protected:
    void contextMenuEvent(QContextMenuEvent* event) override;
    void changeEvent(QEvent* event) override;

private:
    void refresh();
    void fillList();
    const review::Finding* chosen() const;
    void showDetail();
    void jump();
    void askDismiss();
    void takeBack();
    QString text(const review::Finding& finding) const;

    Session& m_session;
    QListWidget* m_list;
    QLabel *m_detail, *m_empty;
    QWidget* m_detailArea = nullptr;
    QPushButton *m_jump, *m_fix, *m_dismiss, *m_restore;
    CatchUp* m_catchUp;
};

}  // namespace tapward::app
