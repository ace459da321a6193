// SPDX-License-Identifier: GPL-3.0-or-later
#include "panels/catch_up.h"

#include <QEvent>
#include <QList>
#include <QRect>
#include <QTimerEvent>
#include <QWidget>
#include <utility>

namespace tapward::app {

namespace {

/// Panes that wait for their turn. Only the first has a timer running: timers that run out together are served
/// together, and nothing would come between them.
QList<CatchUp*>& waiting()
{
    static QList<CatchUp*> panes;
    return panes;
}

}  // namespace

CatchUp::CatchUp(QWidget& pane, std::function<void()> refresh)
    : QObject(&pane), m_pane(pane), m_refresh(std::move(refresh))
{
    pane.installEventFilter(this);
}

CatchUp::~CatchUp() { leave(); }

bool CatchUp::isSeen(const QWidget& pane)
{
    if (!pane.isVisible())
        return false;
    QRect seen = pane.rect();  // not the visible region: that leaves out what the pane's own children cover
    for (const QWidget* inner = &pane; !inner->isWindow() && !seen.isEmpty(); inner = inner->parentWidget())
        seen = seen.translated(inner->pos()) & inner->parentWidget()->rect();
    return !seen.isEmpty();
}

void CatchUp::later()
{
    m_due = true;
    if (isSeen(m_pane))
        wait();
}

void CatchUp::now()
{
    while (m_due)
        step();
}

void CatchUp::step()
{
    m_due = false;
    ++m_refreshes;
    m_refresh();
}

void CatchUp::wait()
{
    if (waiting().contains(this))
        return;
    waiting() << this;
    if (waiting().size() == 1)
        m_timer = startTimer(0);
}

void CatchUp::leave()
{
    if (m_timer != 0)
        killTimer(std::exchange(m_timer, 0));
    waiting().removeOne(this);
    if (!waiting().isEmpty() && waiting().first()->m_timer == 0)
        waiting().first()->m_timer = waiting().first()->startTimer(0);
}

void CatchUp::timerEvent(QTimerEvent*)
{
    leave();
    if (m_due && isSeen(m_pane))
        step();
}

void CatchUp::cameToSight(const QWidget& root)
{
    for (auto* behind : root.findChildren<CatchUp*>())
        if (behind->m_pane.isVisible())
            behind->now();
}

bool CatchUp::eventFilter(QObject* watched, QEvent* event)
{
    // At once, before old figures are painted.
    if (event->type() == QEvent::Show)
        now();
    else if (event->type() == QEvent::Resize && m_due)
        wait();
    return QObject::eventFilter(watched, event);
}

}  // namespace tapward::app
