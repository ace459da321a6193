// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <functional>
#include <optional>
#include <vector>

#include "canvas/canvas_view.h"
#include "document/proposal.h"

namespace tapward::app {

/// Proposing a preheat loop: drag from a place on the hot side to a place on the cold side, or click one and then the
/// other. By keyboard: arrows and Tab walk the places where it can begin, Enter takes one, then the same for its end.
class ProposeTool final : public CanvasTool {
public:
    explicit ProposeTool(CanvasView& view) : m_view(view) {}
    void setVariant(document::Variant variant) { m_variant = variant; }
    document::Variant variant() const { return m_variant; }
    std::function<void()> done;  ///< called when nothing is in hand any more

    void begin();                ///< says what to do; a loop that is there already is said at once
    /// Begins here, as a drop from the tray does. False when it cannot; the status message says why.
    bool startAt(const Pointer& pointer);
    /// Whether a loop can begin under the pointer; shows it.
    bool hover(const Pointer& pointer);

    void press(const Pointer& pointer) override;
    void move(const Pointer& pointer, bool pressed) override;
    void release(const Pointer& pointer) override;
    bool key(const QKeyEvent& event) override;
    bool cancel() override;
    Qt::CursorShape cursor() const override { return m_allowed ? Qt::CrossCursor : Qt::ForbiddenCursor; }

private:
    struct Spot {
        document::Place place;
        QPointF at;
    };
    std::optional<Spot> spotAt(const Pointer& pointer) const;
    std::optional<Problem> why(const std::optional<Spot>& spot) const;
    void follow(const Pointer& pointer);
    void take(const Spot& hot);
    bool finish(const std::optional<Spot>& cold);
    void say(const Problem& problem);
    void show(const std::optional<Spot>& spot, bool allowed);
    void showPicked();
    Spot middleOf(const document::Place& place) const;
    std::vector<Spot> choices() const;
    void step(int key);

    CanvasView& m_view;
    document::Variant m_variant;
    std::optional<Spot> m_hot;
    std::optional<Spot> m_picked;  ///< by keyboard
    Pointer m_start{};
    bool m_dragged = false, m_second = false, m_allowed = true;
};

}  // namespace tapward::app
