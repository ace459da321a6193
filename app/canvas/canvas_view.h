// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <map>
#include <memory>
#include <optional>
#include <QBasicTimer>
#include <QGraphicsScene>
#include <QGraphicsView>
#include <QLineF>
#include <set>
#include <vector>

#include "canvas/canvas_tool.h"
#include "canvas/drawing_layout.h"
#include "canvas/hit.h"
#include "canvas/part_item.h"
#include "canvas/pipe_item.h"
#include "session/session.h"

namespace tapward::app {

/// What a gesture shows over the drawing.
struct Overlay {
    std::set<document::PartId> joinTargets;  ///< pipes and parts a release would join
    std::vector<QPointF> ports;              ///< places one can connect to
    std::optional<QPointF> port;             ///< the one a release would take
    std::vector<QPointF> line;               ///< the pipe being drawn
    std::optional<QRectF> band;              ///< rubber band
    std::vector<QLineF> guides;              ///< from the part in hand to what it is in line with
};

/// The drawing on screen: zoom, pan, grid, and what is under the mouse. Shows the session's drawing, or
/// a preview of it while a gesture runs; redraws from Session::changed() only. What the mouse does is the
/// current tool's affair.
class CanvasView : public QGraphicsView {
    Q_OBJECT
public:
    explicit CanvasView(Session& session, QWidget* parent = nullptr);
    ~CanvasView() override;

    Session& session() { return m_session; }
    const document::Drawing& shown() const { return m_preview ? *m_preview : m_session.drawing(); }
    const DrawingLayout& layoutShown() const { return m_layout; }
    /// Hit testing is on the drawing itself, not on the preview, so that a gesture cannot chase its own tail.
    const DrawingLayout& layoutOfDrawing() const { return m_preview ? m_base : m_layout; }
    HitTest hits() const { return HitTest(m_session.drawing(), layoutOfDrawing()); }
    const PaintOptions& paintOptions() const { return m_options; }

    // The drawing in words (canvas_reading.cpp)
    /// "Circulator pump P1, between T3 and V2, running, 0.62 gpm"
    QString spokenName(document::PartId id) const;
    QString spokenDetails(document::PartId id) const;  ///< values, ports, stage
    /// Every part shown, about as the water goes: how Tab and a screen reader walk.
    const std::vector<document::PartId>& readingOrder() const;
    QRectF boxOf(document::PartId id) const;           ///< symbol or pipe, canvas units; null when not shown
    QRectF selectionBox() const;                       ///< of everything selected

    /// Shows the drawing as `edit` would leave it. An edit that is refused shows the drawing as it is.
    void preview(const document::Edit& edit);
    void clearPreview();
    bool hasPreview() const { return m_preview != nullptr; }
    void setOverlay(Overlay overlay);
    void setTool(CanvasTool* tool);          ///< not owned; never null
    CanvasTool* tool() const { return m_tool; }

    double zoom() const { return transform().m11(); }
    /// The canvas point under `fixed` (viewport pixels) stays where it is.
    void zoomAbout(const QPointF& fixed, double newZoom);
    double toUnits(double pixels) const { return pixels / zoom(); }
    QPointF snapped(const QPointF& at, Qt::KeyboardModifiers keys) const;
    Pointer pointerAt(const QPoint& onScreen, Qt::KeyboardModifiers keys) const;
    std::optional<QPoint> mouseOnView() const;

    bool gridShown() const { return m_gridShown; }
    bool snaps() const { return m_snaps; }

public Q_SLOTS:
    void zoomIn();
    void zoomOut();
    void resetZoom();
    void setZoom(double zoom);               ///< about the middle; 0.1 to 8
    void fitDrawing();
    void fitSelection();
    void showSelectionToo();                 ///< when part of it is out of sight: steps back, no more than needed
    void setGridShown(bool on);
    void setSnaps(bool on);
    void showPart(document::PartId id);      ///< centres it, zooms in if it would be tiny, points it out

Q_SIGNALS:
    void zoomChanged(double zoom);
    void message(const QString& text);       ///< for the status bar; empty clears it
    /// A pipe was drawn to where nothing is: `end` (0 or 1) of it hangs there.
    void looseEndMade(tapward::document::PartId pipe, int end);
    void detailsRequested(tapward::document::PartId part);
    void toolLaidDown();  ///< nothing is at the pointer any more: it was used, or given up

protected:
    void drawBackground(QPainter* painter, const QRectF& rect) override;
    void drawForeground(QPainter* painter, const QRectF& rect) override;
    void wheelEvent(QWheelEvent* event) override;
    void mousePressEvent(QMouseEvent* event) override;
    void mouseMoveEvent(QMouseEvent* event) override;
    void mouseReleaseEvent(QMouseEvent* event) override;
    void mouseDoubleClickEvent(QMouseEvent* event) override;
    void keyPressEvent(QKeyEvent* event) override;
    void keyReleaseEvent(QKeyEvent* event) override;
    void changeEvent(QEvent* event) override;
    void resizeEvent(QResizeEvent* event) override;  ///< a drawing that was fitted stays so
    void timerEvent(QTimerEvent* event) override;
    void leaveEvent(QEvent* event) override;
    bool viewportEvent(QEvent* event) override;
    void focusOutEvent(QFocusEvent* event) override;

    static constexpr double kZoomStep = 1.189207115;  // fourth root of two

private:
    void rebuild();                          // layout and items from shown()
    void relabelAll();                       // only the letters changed
    void showItems();
    void refreshOptions();
    std::vector<document::PartId> makeReadingOrder() const;
    void showMoment();
    void pan(const QPointF& pixels);
    void fitWithin(double most);
    bool m_fitted = false;                   // nobody has zoomed or panned since it was fitted
    void updateCursor();
    void paintGrid(QPainter& painter) const;
    void paintOverlay(QPainter& painter) const;
    QRectF scaleBox() const;  ///< of the temperatures' colors: in the corner where it covers least, in pixels
    void paintPipeEnds(QPainter& painter) const;
    void paintSelection(QPainter& painter, document::PartId id, const QColor& colour, double pixels,
                        const DrawingLayout& layout) const;

    Session& m_session;
    QGraphicsScene m_scene;
    PaintOptions m_options;
    document::RouteMemory m_routes;
    DrawingLayout m_layout;
    DrawingLayout m_base;                    // of the drawing itself while a preview is shown
    std::shared_ptr<const study::Prediction> m_heatSource;  // keeps m_options.snapshot alive
    std::unique_ptr<document::Drawing> m_preview;
    std::map<document::PartId, std::unique_ptr<PartItem>> m_parts;
    std::map<document::PartId, std::unique_ptr<PipeItem>> m_pipes;
    mutable std::vector<document::PartId> m_readingOrder;  // empty: to be made
    Overlay m_overlay;
    CanvasTool* m_tool = nullptr;
    CanvasTool m_idleTool;
    document::PartId m_pointedOut = document::kNoPart;
    QBasicTimer m_pointOutTimer, m_edgeTimer;
    QPoint m_lastMouse;
    // Scrolling is by whole pixels: while one zooms at one place, all steps aim at the same canvas point,
    // so that the roundings do not add up.
    QPointF m_zoomFixed, m_zoomPoint;
    QTransform m_zoomedTo;
    bool m_gridShown = true, m_snaps = true;
    bool m_spaceHeld = false, m_panning = false, m_pressed = false;
};

}  // namespace tapward::app
