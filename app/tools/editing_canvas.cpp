// SPDX-License-Identifier: GPL-3.0-or-later
#include "tools/editing_canvas.h"

#include <algorithm>
#include <cmath>
#include <deque>
#include <limits>
#include <QAccessible>
#include <QApplication>
#include <QContextMenuEvent>
#include <QDragEnterEvent>
#include <QDropEvent>
#include <QKeyEvent>
#include <QMenu>
#include <QMimeData>
#include <utility>

#include "look/kind_text.h"
#include "session/message_text.h"
#include "session/mime_types.h"
#include "tools/kind_picker.h"

namespace tapward::app {

namespace {

constexpr qint64 kBurstPause_ms = 1000;

std::string draggedKind(const QMimeData* data)
{
    if (data == nullptr || !data->hasFormat(QLatin1String(kKindMime)))
        return {};
    const std::string kind = data->data(QLatin1String(kKindMime)).toStdString();
    return parts::find(kind) != nullptr ? kind : std::string();
}

}  // namespace

EditingCanvas::EditingCanvas(Session& session, QWidget* parent)
    : CanvasView(session, parent), m_select(*this), m_place(*this), m_pipe(*this), m_drop(*this)
{
    m_place.done = [this] { cancelTool(); };
    m_pipe.done = [this] { cancelTool(); };
    setAcceptDrops(true);
    setContextMenuPolicy(Qt::DefaultContextMenu);
    addActions();
    setTool(&m_select);
    connect(&session, &Session::selectionChanged, this, &EditingCanvas::updateActions);
    connect(&session, &Session::changed, this, &EditingCanvas::updateActions);
    updateActions();
}

EditingCanvas::~EditingCanvas() = default;

void EditingCanvas::perform(Result<document::Edit> edit, int burst)
{
    if (const auto problem = session().perform(std::move(edit), burst))
        Q_EMIT message(problemText(*problem, session().units()));
}

void EditingCanvas::remove(bool heal)
{
    perform(document::removeParts(session().drawing(), session().selection(), heal));
}

// --- tools ---

void EditingCanvas::startPlacing(const QString& kind)
{
    const auto* what = parts::find(kind.toStdString());
    if (what == nullptr)
        return;
    if (what->isPipe) {
        startConnecting();
        return;
    }
    m_place.setKind(kind.toStdString());
    setTool(&m_place);
    setFocus();
    Q_EMIT message(tr("Click where the %1 goes, or on a pipe to put it in. R turns it, Esc gives up.")
                       .arg(kindTitle(*what).toLower()));
}

void EditingCanvas::startConnecting()
{
    setTool(&m_pipe);
    setFocus();
    const auto chosen = session().selection();
    m_pipe.begin(chosen.size() == 1 ? chosen.front() : document::kNoPart);
}

void EditingCanvas::cancelTool() { setTool(&m_select); }

void EditingCanvas::insertKind(const QString& kind)
{
    const auto chosen = session().selection();
    const auto id = kind.toStdString();
    const auto* what = parts::find(id);
    if (what == nullptr)
        return;
    if (chosen.size() == 1)
        perform(putAfter(session().drawing(), layoutOfDrawing(), chosen.front(), id, session().newStage()));
    else
        perform(putDown(session().drawing(), id, snapped(mapToScene(viewport()->rect().center()), Qt::NoModifier),
                        std::nullopt, session().newStage(), 0));
    for (const auto added : session().lastAdded())
        if (const auto* part = session().drawing().find(added); part != nullptr && part->kind == id)
            focusPart(added);
}

void EditingCanvas::showPicker()
{
    auto* picker = new KindPicker(this);
    connect(picker, &KindPicker::chosen, this, &EditingCanvas::insertKind);
    QPoint at = viewport()->rect().center();
    if (const auto chosen = session().selection(); chosen.size() == 1)
        if (const auto* symbol = layoutShown().symbol(chosen.front()))
            at = mapFromScene(symbol->box().bottomRight());
    picker->popup(viewport()->mapToGlobal(at));
}

// --- drag and drop from the tray ---

void EditingCanvas::dragEnterEvent(QDragEnterEvent* event)
{
    const std::string kind = draggedKind(event->mimeData());
    if (kind.empty()) {
        event->ignore();
        return;
    }
    cancelTool();
    m_drop.setKind(kind);
    event->setDropAction(Qt::CopyAction);
    event->accept();
}

void EditingCanvas::dragMoveEvent(QDragMoveEvent* event)
{
    if (draggedKind(event->mimeData()).empty()) {
        event->ignore();
        return;
    }
    const bool possible = m_drop.follow(pointerAt(event->position().toPoint(), event->modifiers()));
    event->setDropAction(Qt::CopyAction);
    event->setAccepted(possible);
}

void EditingCanvas::dragLeaveEvent(QDragLeaveEvent* event)
{
    m_drop.cancel();
    event->accept();
}

void EditingCanvas::dropEvent(QDropEvent* event)
{
    const std::string kind = draggedKind(event->mimeData());
    if (kind.empty()) {
        event->ignore();
        return;
    }
    m_drop.setKind(kind);
    if (m_drop.finish(pointerAt(event->position().toPoint(), event->modifiers()))) {
        event->setDropAction(Qt::CopyAction);
        event->accept();
        setFocus();
    } else {
        event->ignore();
    }
}

// --- keyboard ---

void EditingCanvas::keyPressEvent(QKeyEvent* event)
{
    const bool resting = tool() == &m_select;
    const bool arrow = event->key() == Qt::Key_Left || event->key() == Qt::Key_Right || event->key() == Qt::Key_Up
                       || event->key() == Qt::Key_Down;
    if (resting && arrow) {
        if (session().selection().empty() || (event->modifiers() & Qt::ControlModifier))
            walk(event->key());
        else
            nudge(event->key(), event->modifiers());
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
    Q_EMIT message(spoken(id));
    setAccessibleDescription(spoken(id));
    QAccessibleEvent told(this, QAccessible::DescriptionChanged);
    QAccessible::updateAccessibility(&told);
}

QString EditingCanvas::spoken(document::PartId id) const
{
    const auto& drawing = shown();
    const auto* part = drawing.find(id);
    if (part == nullptr)
        return {};
    const auto& kind = document::kindOf(*part);
    QStringList words{tr("%1 %2").arg(kindTitle(kind), toText(part->tag))};
    const auto tagOf = [&](document::PartId other) {
        const auto* neighbour = drawing.find(other);
        return neighbour != nullptr ? toText(neighbour->tag) : tr("a loose end");
    };
    if (kind.isPipe) {
        words << tr("from %1 to %2").arg(tagOf(part->ends[0].part), tagOf(part->ends[1].part));
    } else {
        for (const auto& port : kind.ports) {
            const auto* pipe = drawing.pipeAt(id, port.id);
            words << (pipe != nullptr ? tr("%1 to %2").arg(coreText(port.title), toText(pipe->tag))
                                      : tr("%1 not connected").arg(coreText(port.title)));
        }
    }
    words << shownValues(*part, paintOptions().units);
    if (part->stage == document::Stage::Added)
        words << tr("added");
    if (part->stage == document::Stage::Removed)
        words << tr("removed");
    return words.join(QStringLiteral(", "));
}

std::vector<document::PartId> EditingCanvas::walkOrder() const
{
    // From each part on along its pipes, depth first, starting where the drawing starts at the left top:
    // close to the way the water goes, and stable.
    const auto& layout = layoutShown();
    const auto& drawing = shown();
    std::vector<const SymbolShape*> starts;
    for (const auto& symbol : layout.symbols)
        starts.push_back(&symbol);
    std::ranges::stable_sort(starts, [](const SymbolShape* a, const SymbolShape* b) {
        return std::pair(a->at.x(), a->at.y()) < std::pair(b->at.x(), b->at.y());
    });
    std::vector<document::PartId> order;
    std::set<document::PartId> seen;
    for (const auto* start : starts) {
        std::vector<document::PartId> open{start->id};
        while (!open.empty()) {
            const auto id = open.back();
            open.pop_back();
            const auto* part = drawing.find(id);
            if (part == nullptr || (layout.symbol(id) == nullptr && layout.pipe(id) == nullptr)
                || !seen.insert(id).second)
                continue;
            order.push_back(id);
            const auto& kind = document::kindOf(*part);
            if (kind.isPipe) {
                for (auto end = part->ends.rbegin(); end != part->ends.rend(); ++end)
                    if (end->part != document::kNoPart)
                        open.push_back(end->part);
                continue;
            }
            for (auto port = kind.ports.rbegin(); port != kind.ports.rend(); ++port)
                if (const auto* pipe = drawing.pipeAt(id, port->id))
                    open.push_back(pipe->id);
        }
    }
    for (const auto& pipe : layout.pipes)
        if (seen.insert(pipe.id).second)
            order.push_back(pipe.id);
    return order;
}

bool EditingCanvas::focusNextPrevChild(bool next)
{
    if (tool() != &m_select)
        return false;  // the tool takes Tab as a key
    const auto order = walkOrder();
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

void EditingCanvas::walk(int key)
{
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
    const QPointF way = key == Qt::Key_Left    ? QPointF(-1, 0)
                        : key == Qt::Key_Right ? QPointF(1, 0)
                        : key == Qt::Key_Up    ? QPointF(0, -1)
                                               : QPointF(0, 1);
    document::PartId best = document::kNoPart;
    double least = std::numeric_limits<double>::infinity();
    for (const auto& symbol : layout.symbols) {
        const QPointF d = symbol.at - at;
        const double ahead = QPointF::dotProduct(d, way);
        const double aside = std::abs(d.x() * way.y() - d.y() * way.x());
        const double cost = from == document::kNoPart ? std::hypot(d.x(), d.y()) : ahead + 2 * aside;
        if (symbol.id == from || (from != document::kNoPart && ahead < 1) || cost >= least)
            continue;
        least = cost;
        best = symbol.id;
    }
    if (best != document::kNoPart)
        focusPart(best);
}

}  // namespace tapward::app
