// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <functional>
#include <QObject>

class QWidget;

namespace tapward::app {

/// Keeps a pane up to date without keeping anybody waiting: later() notes that it is behind, and it is refreshed in a
/// turn of the event loop of its own, one pane a turn, so that keys and mouse come between. A pane that cannot be seen
/// only remembers; it catches up as it comes to sight. Whoever reads it, or acts on what it shows, calls now() first.
class CatchUp final : public QObject {
    Q_OBJECT
public:
    CatchUp(QWidget& pane, std::function<void()> refresh);
    ~CatchUp() override;
    void later();  ///< within a refresh: the rest of it in another turn
    void now();
    bool isDue() const { return m_due; }
    int refreshes() const { return m_refreshes; }  ///< how often it has caught up so far

    /// For whoever brings panes to the front of others: everything under `root` that is behind catches up.
    static void cameToSight(const QWidget& root);
    /// A pane behind another one's tab still counts as visible; it lies where nothing of it can be seen.
    static bool isSeen(const QWidget& pane);

protected:
    bool eventFilter(QObject* watched, QEvent* event) override;
    void timerEvent(QTimerEvent* event) override;

private:
    void step();
    void wait();
    void leave();

    QWidget& m_pane;
    std::function<void()> m_refresh;
    bool m_due = false;
    int m_refreshes = 0;
    int m_timer = 0;  ///< runs while it is this pane's turn
};

}  // namespace tapward::app
