// SPDX-License-Identifier: GPL-3.0-or-later
#include "print/page_text.h"

#include <algorithm>
#include <cmath>
#include <QFontMetricsF>
#include <QPainter>
#include <QPainterPath>
#include <QPolygonF>
#include <QTextLayout>

#include "look/theme.h"

namespace tapward::app::print {
namespace {

constexpr double kGap = 1.8 * kPoint;
constexpr int kKeptLines = 8;  // longer paragraphs may be cut between columns

QColor inkColour() { return QColor(0x11, 0x11, 0x11); }
QColor quietColour() { return QColor(0x44, 0x44, 0x44); }

}  // namespace

QFont pageFont(double size_pt, bool bold)
{
    QFont font(QStringLiteral("DejaVu Sans"));
    font.setStyleHint(QFont::SansSerif);
    font.setPixelSize(static_cast<int>(std::lround(size_pt * kPoint)));
    font.setBold(bold);
    font.setHintingPreference(QFont::PreferNoHinting);
    font.setLetterSpacing(QFont::PercentageSpacing, 100.2);
    return font;
}

Lines::Lines(const QString& text, const QFont& font, double width, int boldLetters)
    : m_layout(std::make_shared<QTextLayout>(text, font))
{
    QTextOption option;
    option.setWrapMode(QTextOption::WrapAtWordBoundaryOrAnywhere);
    m_layout->setTextOption(option);
    if (boldLetters > 0) {
        QTextLayout::FormatRange range;
        range.start = 0;
        range.length = boldLetters;
        QFont bold = font;
        bold.setBold(true);
        range.format.setFont(bold);
        m_layout->setFormats({range});
    }
    m_layout->beginLayout();
    double y = 0;
    for (QTextLine line = m_layout->createLine(); line.isValid(); line = m_layout->createLine()) {
        line.setLineWidth(width);
        line.setPosition(QPointF(0, y));
        y += line.height();
    }
    m_layout->endLayout();
}

int Lines::count() const { return m_layout->lineCount(); }

double Lines::lineHeight() const { return count() > 0 ? m_layout->lineAt(0).height() : 0; }

double Lines::height() const
{
    if (count() == 0)
        return 0;
    const QTextLine last = m_layout->lineAt(count() - 1);
    return last.y() + last.height();
}

double Lines::widest() const
{
    double widest = 0;
    for (int i = 0; i < count(); ++i)
        widest = std::max(widest, m_layout->lineAt(i).naturalTextWidth());
    return widest;
}

void Lines::paint(QPainter& painter, QPointF topLeft, QColor colour, int from, int most) const
{
    const int end = most < 0 ? count() : std::min(count(), from + most);
    painter.setPen(colour);
    for (int i = from; i < end; ++i) {
        const QTextLine line = m_layout->lineAt(i);
        line.draw(&painter, QPointF(topLeft.x(), topLeft.y() - m_layout->lineAt(from).y()));
    }
}

void paintLine(QPainter& painter, QPointF topLeft, double width, const QString& text, const QFont& font, QColor colour,
               Qt::Alignment alignment)
{
    const QFontMetricsF metrics(font);
    const QString shown = metrics.elidedText(text, Qt::ElideRight, width);
    double x = topLeft.x();
    if (alignment & Qt::AlignRight)
        x += width - metrics.horizontalAdvance(shown);
    else if (alignment & Qt::AlignHCenter)
        x += (width - metrics.horizontalAdvance(shown)) / 2;
    painter.setFont(font);
    painter.setPen(colour);
    painter.drawText(QPointF(x, topLeft.y() + metrics.ascent()), shown);
}

void paintSign(QPainter& painter, QPointF topLeft, double size, review::Severity severity)
{
    const Theme theme = Theme::light();
    const QRectF box(topLeft, QSizeF(size, size));
    QPainterPath shape;
    QColor colour;
    QPointF markAt = box.center();
    switch (severity) {
    case review::Severity::Danger:
        shape.addPolygon(QPolygonF{QPointF(box.center().x(), box.top()), box.bottomRight(), box.bottomLeft()});
        shape.closeSubpath();
        colour = theme.danger;
        markAt.ry() += size * 0.12;
        break;
    case review::Severity::Caution:
        shape.addPolygon(QPolygonF{QPointF(box.center().x(), box.top()), QPointF(box.right(), box.center().y()),
                                   QPointF(box.center().x(), box.bottom()), QPointF(box.left(), box.center().y())});
        shape.closeSubpath();
        colour = theme.caution;
        break;
    case review::Severity::Note:
        shape.addEllipse(box);
        colour = theme.note;
        break;
    }
    painter.save();
    // A dark edge, because orange alone is too pale on white.
    painter.setPen(QPen(inkColour(), 0.6 * kPoint, Qt::SolidLine, Qt::FlatCap, Qt::MiterJoin));
    painter.setBrush(severity == review::Severity::Danger ? colour : colour.lighter(140));
    painter.drawPath(shape);
    // The mark is drawn, not written: a bar and a dot, so that no letter on the page is under 7 pt.
    const bool info = severity == review::Severity::Note;
    painter.setPen(Qt::NoPen);
    painter.setBrush(severity == review::Severity::Danger ? QColor(Qt::white) : inkColour());
    const double w = size * 0.12, bar = size * 0.28, dot = size * 0.07, gap = size * 0.06;
    const double top = markAt.y() - (bar + gap + 2 * dot) / 2;
    if (info) {
        painter.drawEllipse(QPointF(markAt.x(), top + dot), dot, dot);
        painter.drawRect(QRectF(markAt.x() - w / 2, top + 2 * dot + gap, w, bar));
    } else {
        painter.drawRect(QRectF(markAt.x() - w / 2, top, w, bar));
        painter.drawEllipse(QPointF(markAt.x(), top + bar + gap + dot), dot, dot);
    }
    painter.restore();
}

Column::Column(double width, double text_pt)
    : m_width(width), m_text_pt(text_pt), m_small_pt(std::max(kSmallest_pt, 0.92 * text_pt))
{
}

void Column::add(const Lines& lines, double indent, QColor colour, double gapAfter, bool keepWithNext,
                 std::function<void(QPainter&, QPointF)> beside)
{
    const int count = lines.count();
    for (int i = 0; i < count; ++i) {
        const bool last = i + 1 == count;
        Strip strip;
        strip.height = lines.height() / count + (last ? gapAfter : 0);
        strip.keepWithNext = last ? keepWithNext : count <= kKeptLines;
        strip.paint = [lines, indent, colour, i, beside = i == 0 ? beside : nullptr](QPainter& painter, QPointF at) {
            lines.paint(painter, at + QPointF(indent, 0), colour, i, 1);
            if (beside)
                beside(painter, at);
        };
        m_strips.push_back(std::move(strip));
    }
}

void Column::heading(const QString& text)
{
    const QFont font = pageFont(1.1 * m_text_pt + 0.4, true);
    const double width = m_width, lineHeight = QFontMetricsF(font).height();
    m_strips.push_back({lineHeight + 4.5 * kPoint, true, [=](QPainter& painter, QPointF at) {
                            paintLine(painter, at + QPointF(0, 1.5 * kPoint), width, text, font, inkColour());
                            painter.setPen(QPen(inkColour(), 0.5 * kPoint));
                            const double y = at.y() + lineHeight + 2.2 * kPoint;
                            painter.drawLine(QPointF(at.x(), y), QPointF(at.x() + width, y));
                        }});
}

void Column::answer(const QString& label, const QString& value, const QString& note)
{
    const QFont plain = pageFont(m_text_pt), bold = pageFont(m_text_pt, true), small = pageFont(m_small_pt);
    const double valueWidth = QFontMetricsF(bold).horizontalAdvance(value), gap = 6 * kPoint;
    const double labelWidth = QFontMetricsF(plain).horizontalAdvance(label);
    const double noteWidth = QFontMetricsF(small).horizontalAdvance(note);
    // A short note stands between label and value; a longer one has its own lines below.
    const bool inLine =
        !note.isEmpty() && !note.contains(QLatin1Char('\n')) && labelWidth + noteWidth + valueWidth + 2 * gap < m_width;
    const bool below = !note.isEmpty() && !inLine;
    if (valueWidth < m_width * 0.6) {
        const double x = m_width - valueWidth;
        const double drop = QFontMetricsF(plain).ascent() - QFontMetricsF(small).ascent();
        add(Lines(label, plain, x - gap), 0, inkColour(), below ? 0 : kGap, below, [=](QPainter& painter, QPointF at) {
            paintLine(painter, at + QPointF(x, 0), valueWidth + kPoint, value, bold, inkColour());
            if (inLine)
                paintLine(painter, at + QPointF(labelWidth + gap, drop), noteWidth + kPoint, note, small,
                          quietColour());
        });
    } else {
        add(Lines(label, plain, m_width), 0, inkColour(), 0, true);
        add(Lines(value, bold, m_width), 0, inkColour(), below ? 0 : kGap, below);
    }
    if (below)
        add(Lines(note, small, m_width), 0, quietColour(), kGap);
}

void Column::sign(review::Severity severity, const QString& word, const QString& text)
{
    const QString whole = word + QStringLiteral(". ") + text;
    const double size = 1.1 * m_text_pt * kPoint, indent = size + 3.4 * kPoint;
    add(Lines(whole, pageFont(m_text_pt), m_width - indent, int(word.size()) + 1), indent, inkColour(), kGap, false,
        [=](QPainter& painter, QPointF at) { paintSign(painter, at + QPointF(0, 0.4 * kPoint), size, severity); });
}

void Column::part(const QString& count, const QString& item, const QString& tags, const QString& price, bool bold)
{
    const QFont font = pageFont(m_text_pt, bold);
    const QFontMetricsF metrics(font);
    const double countWidth = metrics.horizontalAdvance(QStringLiteral("104.0 ft")), gap = 5 * kPoint;
    const double priceWidth =
        std::min(m_width * 0.35, std::max(38 * kPoint, metrics.horizontalAdvance(price) + kPoint));
    const double x = m_width - priceWidth, width = m_width;
    const double indent = count.isEmpty() ? 0 : countWidth + gap;
    QString text = item;
    if (!tags.isEmpty())
        text += QStringLiteral(" (") + tags + QLatin1Char(')');
    add(Lines(text, font, x - gap - indent), indent, inkColour(), 1.4 * kPoint, false,
        [=](QPainter& painter, QPointF at) {
            paintLine(painter, at, countWidth, count, font, inkColour(), Qt::AlignRight);
            paintLine(painter, at + QPointF(x, 0), width - x, price, font, inkColour(), Qt::AlignRight);
        });
}

void Column::paragraph(const QString& text)
{
    for (const QString& line : text.split(QLatin1Char('\n'), Qt::SkipEmptyParts))
        add(Lines(line, pageFont(m_small_pt), m_width), 0, quietColour(), kGap);
}

void Column::rule()
{
    const double width = m_width;
    m_strips.push_back({2.4 * kPoint, true, [width](QPainter& painter, QPointF at) {
                            painter.setPen(QPen(quietColour(), 0.3 * kPoint));
                            painter.drawLine(at + QPointF(0, kPoint), at + QPointF(width, kPoint));
                        }});
}

}  // namespace tapward::app::print
