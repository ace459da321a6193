// SPDX-License-Identifier: GPL-3.0-or-later
// The canvas by keyboard: walking from part to part, moving parts, what is said of them.
#include <algorithm>
#include <limits>
#include <QKeyEvent>
#include <QLineF>
#include <QMouseEvent>
#include <utility>

#include "canvas/canvas_accessible.h"
#include "session/message_text.h"
#include "tools/arrow_keys.h"
#include "tools/editing_canvas.h"

namespace tapward::app {

namespace {

constexpr qint64 kBurstPause_ms = 1000;

}  // namespace

void EditingCanvas::keyPressEvent(QKeyEvent* event)
{
    const bool resting = tool() == &m_select;
    const bool arrow = isArrow(event->key());
    if (resting && arrow) {
        if ((event->modifiers() & Qt::ShiftModifier) && !session().selection().empty())
            nudge(event->key(), event->modifiers());
        else
            walk(event->key());
        event->accept();
        return;
    }
    if (resting && (event->key() == Qt::Key_Return || event->key() == Qt::Key_Enter)
        && session().selection().size() == 1) {
        Q_EMIT detailsRequested(session().selection().front());
        event->accept();
        return;
    }
    CanvasView::keyPressEvent(event);
}

void EditingCanvas::nudge(int key, Qt::KeyboardModifiers keys)
{
    const double step = keys & Qt::AltModifier ? 0.1 : 1.0;
    const double dx = key == Qt::Key_Left ? -step : key == Qt::Key_Right ? step : 0;
    const double dy = key == Qt::Key_Up ? -step : key == Qt::Key_Down ? step : 0;
    const auto chosen = session().selection();
    if (m_nudgeBurst == 0 || !m_lastNudge.isValid() || m_lastNudge.elapsed() > kBurstPause_ms || m_nudged != chosen)
        m_nudgeBurst = session().newBurst();
    m_nudged = chosen;
    m_lastNudge.start();
    perform(document::moveParts(session().drawing(), chosen, dx, dy), m_nudgeBurst);
}

void EditingCanvas::focusPart(document::PartId id)
{
    session().select({id});
    QRectF box;
    if (const auto* symbol = layoutShown().symbol(id))
        box = symbol->box();
    else if (const auto* pipe = layoutShown().pipe(id))
        box = QRectF(pipe->path.pointAtPercent(0.5), QSizeF(1, 1));
    if (!box.isNull() && !mapToScene(viewport()->rect()).boundingRect().contains(box))
        centerOn(box.center());
    const QString details = spokenDetails(id);
    Q_EMIT message(details.isEmpty() ? spokenName(id) : tr("%1, %2").arg(spokenName(id), details));
    tellFocus(*this, id);
}

bool EditingCanvas::focusNextPrevChild(bool next)
{
    if (tool() != &m_select)
        return false;  // the tool takes Tab as a key
    if (cycleUnderPointer(next))
        return true;
    const auto& order = readingOrder();
    const auto chosen = session().selection();
    auto place = chosen.empty() ? order.end() : std::ranges::find(order, chosen.front());
    if (order.empty())
        return CanvasView::focusNextPrevChild(next);
    if (place == order.end())
        place = next ? order.begin() : order.end() - 1;
    else if (next ? place + 1 == order.end() : place == order.begin()) {
        session().select({});
        return CanvasView::focusNextPrevChild(next);  // past the last part: on to the next pane
    } else
        place += next ? 1 : -1;
    focusPart(*place);
    return true;
}

bool EditingCanvas::cycleUnderPointer(bool next)
{
    // Only right after a click: a Tab that follows other keys walks through the drawing.
    if (!m_clicked)
        return false;
    const auto under = hits().allAt(mapToScene(*m_clicked), toUnits(kPipeReach), toUnits(kLeastTarget));
    const auto chosen = session().selection();
    const auto place = chosen.size() == 1 ? std::ranges::find(under, chosen.front()) : under.end();
    if (under.size() < 2 || place == under.end())
        return false;
    const auto count = static_cast<std::ptrdiff_t>(under.size());
    focusPart(under[static_cast<std::size_t>((place - under.begin() + (next ? 1 : count - 1)) % count)]);
    return true;
}

void EditingCanvas::mousePressEvent(QMouseEvent* event)
{
    m_clicked = event->position().toPoint();
    CanvasView::mousePressEvent(event);
}

void EditingCanvas::walk(int key)
{
    m_clicked.reset();
    const auto& layout = layoutShown();
    const auto chosen = session().selection();
    QPointF at = mapToScene(viewport()->rect().center());
    document::PartId from = document::kNoPart;
    if (!chosen.empty()) {
        from = chosen.front();
        if (const auto* symbol = layout.symbol(from))
            at = symbol->at;
        else if (const auto* pipe = layout.pipe(from))
            at = pipe->path.pointAtPercent(0.5);
    }
    document::PartId best = document::kNoPart;
    double least = std::numeric_limits<double>::infinity();
    for (const auto& symbol : layout.symbols) {
        const auto cost =
            from == document::kNoPart ? QLineF(at, symbol.at).length() : stepsAhead(at, symbol.at, key).value_or(least);
        if (symbol.id == from || cost >= least)
            continue;
        least = cost;
        best = symbol.id;
    }
    if (best != document::kNoPart)
        focusPart(best);
}

}  // namespace tapward::app
