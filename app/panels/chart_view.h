// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <memory>
#include <QtCharts/QChartView>
#include <set>
#include <vector>

#include "panels/chart_data.h"

class QLineSeries;
class QValueAxis;

namespace tapward::app {

/// The picture of the warm-up chart: lines by Qt Charts; levels, events and crosshair painted over them
/// from the data itself.
class ChartView final : public QChartView {
    Q_OBJECT
public:
    explicit ChartView(QWidget* parent = nullptr);

    struct Content {
        std::shared_ptr<const study::Prediction> keep;  ///< owns `result`
        const study::CaseResult* result = nullptr;
        ChartAxis axis = ChartAxis::Time;
        UnitSystem units = UnitSystem::Us;
        bool intoColdLine = false;  ///< see chartLevels()
        bool stale = false;
        bool fire = false;
        std::set<std::string> hidden;                   ///< series ids
        bool operator==(const Content&) const = default;
    };
    void show(const Content& content);
    /// The sample under the crosshair.
    std::size_t crosshair() const { return m_crosshair; }
    void setTime(double t_s);
    const Content& content() const { return m_content; }

Q_SIGNALS:
    void crosshairMoved();
    void timePicked(double t_s);

protected:
    void drawForeground(QPainter* painter, const QRectF& rect) override;
    void mouseMoveEvent(QMouseEvent* event) override;
    void mousePressEvent(QMouseEvent* event) override;
    void leaveEvent(QEvent* event) override;
    void keyPressEvent(QKeyEvent* event) override;
    void wheelEvent(QWheelEvent* event) override { event->ignore(); }
    void focusInEvent(QFocusEvent* event) override;
    void focusOutEvent(QFocusEvent* event) override;

private:
    struct Stretch {
        QList<QPointF> points;
        int style;  ///< kFire for the burner's fire
        QValueAxis* vertical;
    };
    void rebuild();
    void showLines(const std::vector<Stretch>& stretches);
    void styleAxes();
    QPen firePen() const;
    void restyle();
    int inTheWay(const QRectF& box, const QRectF& area) const;  ///< pieces of lines that run through the box
    void paintLevels(QPainter& painter, const QRectF& area) const;
    void paintEvents(QPainter& painter, const QRectF& area) const;
    double xOf(double shown, const QRectF& area) const;
    double yOf(double shown, const QRectF& area) const { return yOf(shown, area, *m_left); }
    double yOf(double shown, const QRectF& area, const QValueAxis& axis) const;
    void point(QPointF position);

    Content m_content;
    std::vector<double> m_x;
    std::size_t m_crosshair = 0;
    double m_time = 0;
    bool m_hovering = false;
    QValueAxis *m_bottom, *m_left, *m_right;
    struct Line {
        QLineSeries* line;
        QValueAxis* vertical;
        int style;
    };
    static constexpr int kFire = -1;
    std::vector<Line> m_lines;
};

}  // namespace tapward::app
