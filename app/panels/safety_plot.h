// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QPointF>
#include <QPolygonF>
#include <QString>
#include <QStringList>
#include <QWidget>
#include <vector>

#include "base/units.h"

class QStackedWidget;
class QToolButton;

namespace tapward::app {

class SafetyTable;

/// What a chart of the safety pane shows; every number in shown units. Lines are told apart by dashes and
/// names, areas by hatching and letters, marks by shape: colour only helps.
struct PlotContent {
    struct Line {
        QString name;            ///< in the key; empty: not in the key
        QString end;             ///< written where the line begins (left) or ends
        QPolygonF points;
        int style = 0;           ///< pen: colour and dashes
        bool heavy = false;
        bool nameAtStart = true;
    };
    enum class Shape { Circle, Square, Triangle };
    struct Mark {
        QPointF at;
        Shape shape = Shape::Circle;
        bool hollow = false;
        int style = 0;
        QString text;
    };
    struct Level {
        double at = 0;
        bool upright = false;    ///< a value of the bottom axis
        QString text;
        bool danger = false;
    };
    struct Area {
        QString name;            ///< in the key
        QPolygonF outline;
        Qt::BrushStyle hatch = Qt::BDiagPattern;
        int style = 0;
        bool faint = false;      ///< a ground for lines that run over it, with its border drawn
    };
    /// A name in the middle of a place; left out where the place is too small for it.
    struct Note {
        QRectF place;
        QString text;
    };
    Quantity bottom = Quantity::None, left = Quantity::None;
    QString bottomName, leftName;
    UnitSystem units = UnitSystem::Us;
    std::vector<QString> rowNames;  ///< names along the left axis, from below, one per unit, in place of numbers
    double fromX = 0, toX = 1, fromY = 0, toY = 1;
    std::vector<Area> areas;
    std::vector<Line> lines;
    std::vector<Level> levels;
    std::vector<Mark> marks;
    std::vector<Note> notes;
    /// Says what the picture says, for who cannot see it.
    QString description;
    bool stale = false;
};

/// The picture.
class SafetyPlot final : public QWidget {
    Q_OBJECT
public:
    explicit SafetyPlot(const QString& accessibleName, QWidget* parent = nullptr);
    void show(PlotContent content);
    const PlotContent& content() const { return m_content; }
    QSize sizeHint() const override { return {480, 240}; }
    QSize minimumSizeHint() const override { return {240, 150}; }

protected:
    void paintEvent(QPaintEvent* event) override;

private:
    QRectF plotArea() const;
    QPointF place(QPointF shown, const QRectF& area) const;
    void paintAxes(QPainter& painter, const QRectF& area) const;
    void paintAreas(QPainter& painter, const QRectF& area) const;
    QColor areaColour(const PlotContent::Area& region) const;
    void paintNotes(QPainter& painter, const QRectF& area) const;
    void paintLevels(QPainter& painter, const QRectF& area) const;
    void paintLevelNames(QPainter& painter, const QRectF& area);
    QPen levelPen(bool danger) const;
    void paintKey(QPainter& painter, const QRectF& area) const;
    bool paintText(QPainter& painter, const std::vector<QRectF>& places, const QRectF& inside, const QString& text,
                   bool needed = true) const;
    double keyWidth() const;
    QStringList keyNames() const;

    PlotContent m_content;
    mutable std::vector<QRectF> m_taken;  ///< where texts stand in the picture that is being painted
};

/// A chart with the table of its figures behind a button.
class ChartAndTable final : public QWidget {
    Q_OBJECT
public:
    /// @param beside  shown left of the Table button, may be null
    ChartAndTable(const QString& name, QWidget* beside = nullptr, QWidget* parent = nullptr);
    SafetyPlot& plot() { return *m_plot; }
    SafetyTable& table() { return *m_table; }

private:
    SafetyPlot* m_plot;
    SafetyTable* m_table;
    QStackedWidget* m_stack;
    QToolButton* m_asTable;
};

}  // namespace tapward::app
