// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <functional>
#include <QObject>
#include <vector>

#include "canvas/canvas_view.h"
#include "tools/propose_tool.h"

namespace tapward::app {

/// Puts down a kept assembly: follows the mouse, a click or Enter puts it there, Esc gives up.
class OwnAssemblyTool final : public CanvasTool {
public:
    explicit OwnAssemblyTool(CanvasView& view) : m_view(view) {}
    void setParts(std::vector<document::Part> parts);
    std::function<void()> done;

    /// False when it cannot be put down here; the status message says why.
    bool follow(const QPointF& at);
    bool finish(const QPointF& at);

    void move(const Pointer& pointer, bool) override { follow(m_view.snapped(pointer.at, pointer.keys)); }
    void release(const Pointer& pointer) override { finish(m_view.snapped(pointer.at, pointer.keys)); }
    bool key(const QKeyEvent& event) override;
    bool cancel() override;
    Qt::CursorShape cursor() const override { return Qt::CrossCursor; }

private:
    Result<document::Edit> editFor(const QPointF& at) const;

    CanvasView& m_view;
    std::vector<document::Part> m_parts;
    QPointF m_middle;  ///< of the parts, canvas units
    std::optional<QPointF> m_at;
};

/// Assemblies on a canvas: the two tools, and what is dragged in from the tray.
class AssemblyHand final : public QObject {
    Q_OBJECT
public:
    /// @param rest  puts the canvas's resting tool back
    AssemblyHand(CanvasView& view, std::function<void()> rest);

    ProposeTool& propose() { return m_propose; }
    void startVariant(const QString& id);
    void startOwn(const QString& file);
    /// Swaps the proposal for another variant; says why it cannot be.
    void swapFor(const document::Variant& variant);

protected:
    bool eventFilter(QObject* watched, QEvent* event) override;

private:
    bool takeUp(const QString& what);

    CanvasView& m_view;
    std::function<void()> m_rest;
    ProposeTool m_propose;
    OwnAssemblyTool m_own;
    bool m_dragsOwn = false;
};

}  // namespace tapward::app
