// SPDX-License-Identifier: GPL-3.0-or-later
#include "tools/scale_tool.h"

#include <QCoreApplication>
#include <QKeyEvent>
#include <utility>

#include "canvas/paint_drawing.h"

namespace tapward::app {

namespace {
QString tr(const char* text) { return QCoreApplication::translate("tapward::app::ScaleTool", text); }
}  // namespace

void ScaleTool::begin()
{
    m_first.reset();
    m_view.setTool(this);
    m_view.setFocus();
    Q_EMIT m_view.message(tr("Click the first of two points whose distance you know, such as one end of the coach."));
}

void ScaleTool::press(const Pointer& pointer)
{
    if (!m_first) {
        m_first = pointer.at;
        Q_EMIT m_view.message(tr("Click the other point. Esc gives up."));
        return;
    }
    const QPointF first = *std::exchange(m_first, std::nullopt), second = pointer.at;
    m_view.setOverlay({});
    Q_EMIT m_view.message({});
    if (done)
        done();
    if (picked)
        picked({first.x() / kModule, first.y() / kModule}, {second.x() / kModule, second.y() / kModule});
}

void ScaleTool::move(const Pointer& pointer, bool)
{
    if (!m_first)
        return;
    Overlay overlay;
    overlay.line = {*m_first, pointer.at};
    m_view.setOverlay(std::move(overlay));
}

bool ScaleTool::key(const QKeyEvent& event)
{
    if (event.key() != Qt::Key_Escape)
        return false;
    cancel();
    if (done)
        done();
    return true;
}

bool ScaleTool::cancel()
{
    const bool had = m_first.has_value();
    m_first.reset();
    m_view.setOverlay({});
    Q_EMIT m_view.message({});
    return had;
}

}  // namespace tapward::app
