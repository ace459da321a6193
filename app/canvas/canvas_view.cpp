// SPDX-License-Identifier: GPL-3.0-or-later
#include "canvas/canvas_view.h"

#include <algorithm>
#include <cmath>
#include <QCursor>
#include <utility>

#include "canvas/canvas_accessible.h"

namespace tapward::app {

namespace {

constexpr double kWorld = 60000;  // canvas units each way: room to pan without end stops in sight

}  // namespace

CanvasView::CanvasView(Session& session, QWidget* parent)
    : QGraphicsView(parent), m_session(session), m_tool(&m_idleTool)
{
    setScene(&m_scene);
    m_scene.setSceneRect(-kWorld, -kWorld, 2 * kWorld, 2 * kWorld);
    // The items are few and change together: an index costs more than it saves, and previews would
    // leave it stale.
    m_scene.setItemIndexMethod(QGraphicsScene::NoIndex);
    setHorizontalScrollBarPolicy(Qt::ScrollBarAlwaysOff);
    setVerticalScrollBarPolicy(Qt::ScrollBarAlwaysOff);
    setTransformationAnchor(NoAnchor);
    setResizeAnchor(NoAnchor);
    setViewportUpdateMode(FullViewportUpdate);
    setOptimizationFlag(DontSavePainterState);
    setRenderHint(QPainter::Antialiasing);
    setFrameShape(NoFrame);
    setMouseTracking(true);
    viewport()->setMouseTracking(true);
    setFocusPolicy(Qt::StrongFocus);
    installCanvasAccessibility();
    setAccessibleName(tr("Drawing"));
    setAccessibleDescription(tr("The coach's plumbing. Tab walks through the parts, Insert adds one, C connects, "
                                "the Menu key lists what can be done. The outline pane says the same in words."));
    setMinimumSize(240, 130);  // at 200 % on a small screen the case bar takes two lines
    centerOn(0, 0);

    connect(&session, &Session::changed, this, [this] {
        m_preview.reset();
        rebuild();
    });
    connect(&session, &Session::viewChanged, this, [this] {
        refreshOptions();
        showMoment();
        rebuild();
    });
    connect(&session, &Session::predictionChanged, this, [this] {
        showMoment();
        if (const auto chosen = m_session.selection(); hasFocus() && chosen.size() == 1 && !m_session.isStale())
            tellChange(*this, chosen.front());
    });
    connect(&session, &Session::caseChanged, this, &CanvasView::showMoment);
    connect(&session, &Session::timeChanged, this, &CanvasView::showMoment);
    connect(&session, &Session::selectionChanged, this, [this] { viewport()->update(); });
    connect(&session, &Session::jumpTo, this, &CanvasView::showPart);
    refreshOptions();
    rebuild();
}

CanvasView::~CanvasView() = default;

void CanvasView::refreshOptions()
{
    m_options.view = m_session.view();
    m_options.units = m_session.units();
    m_options.theme = Theme::of(palette());
    m_options.openPortMarks = true;
    m_options.keptPictures = true;
    // Letters keep their size on screen between limits; in steps, so that a zoom rarely moves a label. In a small
    // drawing they stay readable and there are fewer of them.
    constexpr double kLetters_px = 11;
    const double factor = std::clamp(1.0 / zoom(), 0.6, 2.6);
    m_options.labelSize = std::round(kLetters_px * factor * 4) / 4;
    m_options.hideCrowded = zoom() < 0.75;
}

void CanvasView::showMoment()
{
    const study::Snapshot* snapshot = nullptr;
    m_heatSource = m_session.sharedPrediction();
    if (m_session.showsMoment() && !m_session.isStale())
        if (const auto* now = m_session.currentCase(); now != nullptr && !now->snapshot.empty())
            snapshot = &now->snapshot;
    const bool switched = (snapshot == nullptr) != (m_options.snapshot == nullptr);
    m_options.snapshot = snapshot;
    m_options.time_s = m_session.time();
    if (switched)
        relabelAll();  // pipes give up their labels to the temperatures
    viewport()->update();
}

void CanvasView::rebuild()
{
    // The drawing just changed, so what was predicted for it is no longer shown as current.
    if (m_session.isStale() || m_preview)
        m_options.snapshot = nullptr;
    m_layout = layoutOf(shown(), m_options, &m_routes);
    m_readingOrder.clear();
    showItems();
}

void CanvasView::relabelAll()
{
    relabel(shown(), m_options, m_layout);
    showItems();
}

void CanvasView::showItems()
{
    std::map<document::PartId, const LabelShape*> labels;
    for (const auto& label : m_layout.labels)
        labels[label.id] = &label;
    const auto labelOf = [&](document::PartId id) {
        const auto found = labels.find(id);
        return found == labels.end() ? std::optional<LabelShape>() : std::optional<LabelShape>(*found->second);
    };
    std::set<document::PartId> alive;
    for (const auto& symbol : m_layout.symbols) {
        auto& item = m_parts[symbol.id];
        if (!item) {
            item = std::make_unique<PartItem>(m_options);
            m_scene.addItem(item.get());
        }
        item->show(symbol, labelOf(symbol.id));
        alive.insert(symbol.id);
    }
    for (const auto& pipe : m_layout.pipes) {
        auto& item = m_pipes[pipe.id];
        if (!item) {
            item = std::make_unique<PipeItem>(m_options);
            m_scene.addItem(item.get());
        }
        item->show(pipe, labelOf(pipe.id));
        alive.insert(pipe.id);
    }
    std::erase_if(m_parts, [&](const auto& item) { return alive.count(item.first) == 0; });
    std::erase_if(m_pipes, [&](const auto& item) { return alive.count(item.first) == 0; });
    viewport()->update();
}

QRectF CanvasView::boxOf(document::PartId id) const
{
    if (const auto* symbol = m_layout.symbol(id))
        return symbol->box();
    if (const auto* pipe = m_layout.pipe(id))
        return pipe->path.controlPointRect().adjusted(-2, -2, 2, 2);
    return {};
}

void CanvasView::preview(const document::Edit& edit)
{
    if (document::refusal(m_session.drawing(), edit)) {
        clearPreview();
        return;
    }
    auto copy = std::make_unique<document::Drawing>(m_session.drawing());
    document::apply(*copy, edit);
    if (!m_preview)
        m_base = std::move(m_layout);
    m_preview = std::move(copy);
    rebuild();
}

void CanvasView::clearPreview()
{
    if (!m_preview)
        return;
    m_preview.reset();
    rebuild();
    showMoment();
}

void CanvasView::setOverlay(Overlay overlay)
{
    m_overlay = std::move(overlay);
    viewport()->update();
}

void CanvasView::setTool(CanvasTool* tool)
{
    if (tool == m_tool)
        return;
    m_tool->cancel();
    m_tool = tool;
    m_pressed = false;
    setOverlay({});
    updateCursor();
}

void CanvasView::updateCursor()
{
    viewport()->setCursor(m_panning ? Qt::ClosedHandCursor : m_spaceHeld ? Qt::OpenHandCursor : m_tool->cursor());
}

QPointF CanvasView::snapped(const QPointF& at, Qt::KeyboardModifiers keys) const
{
    if (!m_snaps || (keys & Qt::AltModifier))
        return at;
    return {std::round(at.x() / kModule) * kModule, std::round(at.y() / kModule) * kModule};
}

Pointer CanvasView::pointerAt(const QPoint& onScreen, Qt::KeyboardModifiers keys) const
{
    return {mapToScene(onScreen), onScreen, keys};
}

std::optional<QPoint> CanvasView::mouseOnView() const
{
    const QPoint at = viewport()->mapFromGlobal(QCursor::pos());
    return viewport()->rect().contains(at) ? std::optional(at) : std::nullopt;
}

void CanvasView::setGridShown(bool on)
{
    m_gridShown = on;
    viewport()->update();
}

void CanvasView::setSnaps(bool on) { m_snaps = on; }

}  // namespace tapward::app
