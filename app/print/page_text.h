// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <functional>
#include <memory>
#include <QColor>
#include <QFont>
#include <QPointF>
#include <QString>
#include <vector>

#include "review/finding.h"

class QPainter;
class QTextLayout;

namespace tapward::app::print {

/// The page is laid out in tenths of a point, so that letter sizes are whole pixels of that grid and the
/// layout is the same on every device.
inline constexpr double kPoint = 10.0;
/// Nothing on paper is smaller than this.
inline constexpr double kSmallest_pt = 7.0;

/// The page's font. Letters stand 0.2 % apart: that keeps "ffi" three letters, so the text can be searched.
QFont pageFont(double size_pt, bool bold = false);

/// A stretch of the page that is never cut: mostly one line of text.
struct Strip {
    double height = 0;
    bool keepWithNext = false;  ///< no column break after it, unless a whole column is too short
    std::function<void(QPainter&, QPointF topLeft)> paint;
};

/// Text broken into lines of a width.
class Lines {
public:
    /// @param boldLetters  so many letters from the start are bold
    Lines(const QString& text, const QFont& font, double width, int boldLetters = 0);
    int count() const;
    double height() const;      ///< of all lines
    double lineHeight() const;
    double widest() const;
    void paint(QPainter& painter, QPointF topLeft, QColor colour, int from = 0, int most = -1) const;

private:
    std::shared_ptr<QTextLayout> m_layout;
};

/// Paints one line, cut with an ellipsis where it is too long.
void paintLine(QPainter& painter, QPointF topLeft, double width, const QString& text, const QFont& font, QColor colour,
               Qt::Alignment alignment = Qt::AlignLeft);

/// The sign of a severity: triangle, diamond or circle with its letter; readable without colour.
void paintSign(QPainter& painter, QPointF topLeft, double size, review::Severity severity);

/// Turns texts into strips of one column.
class Column {
public:
    Column(double width, double text_pt);

    void heading(const QString& text);
    void answer(const QString& label, const QString& value, const QString& note);
    /// "Danger. Text", with its sign.
    void sign(review::Severity severity, const QString& word, const QString& text);
    /// One line of the parts list; `count` and `price` may be empty.
    void part(const QString& count, const QString& item, const QString& tags, const QString& price, bool bold = false);
    void paragraph(const QString& text);
    void rule();

    std::vector<Strip> take() { return std::move(m_strips); }

private:
    /// Lines as strips, kept together when few; the first one also paints `beside`.
    void add(const Lines& lines, double indent, QColor colour, double gapAfter, bool keepWithNext = false,
             std::function<void(QPainter&, QPointF)> beside = {});

    double m_width;
    double m_text_pt, m_small_pt;
    std::vector<Strip> m_strips;
};

}  // namespace tapward::app::print
