// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <cmath>
#include <QPageLayout>
#include <QPaintDevice>
#include <QPaintEngine>
#include <QPainter>
#include <QPainterPath>
#include <QRectF>
#include <QString>
#include <QTransform>
#include <vector>

#include "print/page.h"
#include "print/page_layout.h"

namespace tapward::app {

/// A paper that remembers what is written on it: each text with its letter size and place in points from
/// the paper's corner, and whether anything else than vectors came.
class Recorder final : public QPaintDevice {
public:
    struct Written {
        int page;
        QString text;
        double size_pt;
        QRectF box_pt;
    };

    explicit Recorder(QPageSize::PageSizeId paper)
        : m_paper(QPageSize(paper), QPageLayout::Portrait,
                  QMarginsF(print::kMargin_pt, print::kMargin_pt, print::kMargin_pt, print::kMargin_pt),
                  QPageLayout::Point)
    {
    }

    /// Lays the page out and takes it down. @return the number of pages
    int take(const document::Drawing& drawing, const report::PageContent& content,
             const std::vector<review::Finding>& findings, UnitSystem units)
    {
        const print::TurnedLayout turned = print::layOut(m_paper, drawing, content, findings, units);
        m_paper.setOrientation(turned.orientation);
        QPainter painter(this);
        for (m_page = 0; m_page < turned.layout->pages(); ++m_page) {
            painter.save();
            painter.scale(kDpi / (72 * print::kPoint), kDpi / (72 * print::kPoint));
            turned.layout->paint(painter, m_page);
            painter.restore();
        }
        return turned.layout->pages();
    }

    QPaintEngine* paintEngine() const override { return &m_engine; }
    QRectF paper_pt() const { return m_paper.fullRect(QPageLayout::Point); }

    std::vector<Written> written;
    std::vector<QRectF> painted;  ///< everything, in points from the paper's corner
    int bitmaps = 0;

protected:
    int metric(PaintDeviceMetric metric) const override
    {
        const QSizeF size = m_paper.paintRect(QPageLayout::Inch).size() * kDpi;
        switch (metric) {
        case PdmWidth:
            return int(size.width());
        case PdmHeight:
            return int(size.height());
        case PdmWidthMM:
            return int(size.width() / kDpi * 25.4);
        case PdmHeightMM:
            return int(size.height() / kDpi * 25.4);
        case PdmDpiX:
        case PdmDpiY:
        case PdmPhysicalDpiX:
        case PdmPhysicalDpiY:
            return kDpi;
        case PdmNumColors:
            return 1 << 24;
        case PdmDepth:
            return 24;
        case PdmDevicePixelRatio:
            return 1;
        case PdmDevicePixelRatioScaled:
            return int(devicePixelRatioFScale());
        default:
            return 0;
        }
    }

private:
    static constexpr int kDpi = 1200;
    friend class Engine;

    class Engine final : public QPaintEngine {
    public:
        explicit Engine(Recorder& recorder) : QPaintEngine(AllFeatures), m_recorder(recorder) {}
        bool begin(QPaintDevice*) override { return true; }
        bool end() override { return true; }
        void updateState(const QPaintEngineState& now) override
        {
            if (now.state() & DirtyTransform)
                m_transform = now.transform();
        }
        void drawPath(const QPainterPath& path) override { keep(path.boundingRect()); }
        void drawPolygon(const QPointF* points, int count, PolygonDrawMode) override
        {
            QPolygonF polygon;
            for (int i = 0; i < count; ++i)
                polygon << points[i];
            keep(polygon.boundingRect());
        }
        void drawPixmap(const QRectF&, const QPixmap&, const QRectF&) override { ++m_recorder.bitmaps; }
        void drawImage(const QRectF&, const QImage&, const QRectF&, Qt::ImageConversionFlags) override
        {
            ++m_recorder.bitmaps;
        }
        void drawTiledPixmap(const QRectF&, const QPixmap&, const QPointF&) override { ++m_recorder.bitmaps; }
        void drawTextItem(const QPointF& at, const QTextItem& item) override
        {
            const QFont font = item.font();
            const double pixels = font.pixelSize() > 0 ? font.pixelSize() : font.pointSizeF() * kDpi / 72;
            const QRectF box(at.x(), at.y() - item.ascent(), item.width(), item.ascent() + item.descent());
            const double scale = std::sqrt(std::abs(m_transform.determinant()));
            m_recorder.written.push_back({m_recorder.m_page, item.text(), pixels * scale * 72 / kDpi, keep(box)});
        }
        Type type() const override { return User; }

    private:
        QRectF keep(const QRectF& box)
        {
            const QRectF device = m_transform.mapRect(box);
            const QPointF corner = m_recorder.m_paper.paintRect(QPageLayout::Point).topLeft();
            const double toPoint = 72.0 / kDpi;
            const QRectF placed(device.topLeft() * toPoint + corner, device.size() * toPoint);
            m_recorder.painted.push_back(placed);
            return placed;
        }

        Recorder& m_recorder;
        QTransform m_transform;
    };

    mutable Engine m_engine{*this};
    QPageLayout m_paper;
    int m_page = 0;
};

}  // namespace tapward::app
