// SPDX-License-Identifier: GPL-3.0-or-later
#include "print/survey_sheet.h"

#include <functional>
#include <QBuffer>
#include <QCoreApplication>
#include <QHashSeed>
#include <QMarginsF>
#include <QPageSize>
#include <QPainter>
#include <QPdfWriter>

#include "print/page_text.h"
#include "print/paint_pages.h"
#include "print/pdf_finish.h"
#include "session/message_text.h"

namespace tapward::app::print {
namespace {

constexpr double kRow_pt = 19;  // 6.7 mm: a pencil's line
constexpr double kText_pt = 8;
constexpr double kFoot_pt = 14;

/// In the context that lupdate gives the texts of the class below.
QString tr(const char* text) { return QCoreApplication::translate("tapward::app::print::Sheet", text); }
QString say(const std::string& core) { return QCoreApplication::translate("core", core.c_str()); }
QString plain(const std::string& text) { return QString::fromStdString(text); }

/// Puts blocks one under the other on pages; painting comes when all pages are known.
class Sheet {
public:
    Sheet(const report::BlankSurvey& content, QSizeF room) : m_room(room)
    {
        title(content);
        texts(tr("What to measure"), content.measure, QStringLiteral("\u2022"));
        texts(tr("Take care"), content.cautions, QStringLiteral("\u25C6"));
        for (const auto& table : content.tables)
            add(table);
        if (!content.footnotes.empty())
            texts({}, content.footnotes, {});
        m_title = coreText(content.title);
    }

    int pages() const { return m_page + 1; }

    void paint(QPainter& painter, int page) const
    {
        for (const auto& [on, draw] : m_blocks)
            if (on == page)
                draw(painter);
        const double y = m_room.height() - kFoot_pt * kPoint + 3 * kPoint;
        paintLine(painter, QPointF(0, y), m_room.width(), m_title, pageFont(kSmallest_pt), Qt::black);
        paintLine(painter, QPointF(0, y), m_room.width(), tr("Page %1 of %2").arg(page + 1).arg(pages()),
                  pageFont(kSmallest_pt), Qt::black, Qt::AlignRight);
    }

private:
    double bottom() const { return m_room.height() - kFoot_pt * kPoint; }
    void put(std::function<void(QPainter&)> draw) { m_blocks.emplace_back(m_page, std::move(draw)); }
    void newPage()
    {
        ++m_page;
        m_y = 0;
    }

    void text(const QString& words, double size_pt, bool bold, double indent, const QString& mark = {})
    {
        const Lines lines(words, pageFont(size_pt, bold), m_room.width() - indent);
        if (m_y + lines.height() > bottom())
            newPage();
        put([lines, indent, mark, size_pt, at = m_y](QPainter& painter) {
            if (!mark.isEmpty())
                paintLine(painter, QPointF(0, at), indent, mark, pageFont(size_pt), Qt::black);
            lines.paint(painter, QPointF(indent, at), Qt::black);
        });
        m_y += lines.height();
    }

    void title(const report::BlankSurvey& content)
    {
        text(coreText(content.title), 15, true, 0);
        m_y += 4 * kPoint;
        // Label with a line to write on, two beside each other.
        const double width = m_room.width() / 2, gap = 10 * kPoint;
        for (std::size_t i = 0; i < content.header.size(); ++i) {
            const double left = i % 2 == 0 ? 0 : width;
            const QString label = say(content.header[i].first), value = plain(content.header[i].second);
            put([=, at = m_y](QPainter& painter) {
                const QFont font = pageFont(kText_pt);
                const double labelWidth = QFontMetricsF(font).horizontalAdvance(label) + 4 * kPoint;
                const double base = at + 5 * kPoint;
                paintLine(painter, QPointF(left, base), labelWidth, label, font, Qt::black);
                paintLine(painter, QPointF(left + labelWidth, base), width - gap - labelWidth, value,
                          pageFont(kText_pt, true), Qt::black);
                painter.setPen(QPen(Qt::black, 0.5 * kPoint));
                const double y = at + 16 * kPoint;
                painter.drawLine(QPointF(left + labelWidth, y), QPointF(left + width - gap, y));
            });
            if (i % 2 == 1 || i + 1 == content.header.size())
                m_y += 18 * kPoint;
        }
        m_y += 6 * kPoint;
    }

    void texts(const QString& heading, const std::vector<std::string>& lines, const QString& mark)
    {
        if (!heading.isEmpty())
            text(heading, 9.5, true, 0);
        for (const auto& line : lines)
            text(say(line), kText_pt, false, mark.isEmpty() ? 0 : 11 * kPoint, mark);
        m_y += 6 * kPoint;
    }

    void add(const report::BlankTable& table)
    {
        const auto edges = edgesOf(table);
        const double least = kRow_pt * kPoint;
        const double head = headHeight(table, edges);
        if (m_y + 16 * kPoint + head + 3 * least > bottom())
            newPage();
        text(say(table.title), 9.5, true, 0);
        m_y += 2 * kPoint;
        putHead(table, edges, head);
        for (const auto& cells : table.rows) {
            // A cell whose words need two lines makes its row higher: paper has no tip that says the rest.
            std::vector<Lines> words;
            double row = least;
            for (std::size_t c = 0; c < cells.size(); ++c) {
                words.emplace_back(messageText(cells[c], UnitSystem::Us), pageFont(kText_pt),
                                   edges[c + 1] - edges[c] - 6 * kPoint);
                if (!cells[c].empty())
                    row = std::max(row, words.back().height() + 5 * kPoint);
            }
            if (m_y + row > bottom()) {
                newPage();
                text(tr("%1 (continued)").arg(say(table.title)), 9.5, true, 0);
                m_y += 2 * kPoint;
                putHead(table, edges, head);
            }
            put([cells, words, edges, at = m_y, row](QPainter& painter) {
                painter.setPen(QPen(Qt::black, 0.4 * kPoint));
                painter.setBrush(Qt::NoBrush);
                for (std::size_t c = 0; c < cells.size(); ++c) {
                    painter.drawRect(QRectF(edges[c], at, edges[c + 1] - edges[c], row));
                    if (!cells[c].empty())
                        words[c].paint(
                            painter,
                            {edges[c] + 3 * kPoint, at + std::min(4.5 * kPoint, (row - words[c].height()) / 2)},
                            Qt::black);
                }
            });
            m_y += row;
        }
        m_y += 10 * kPoint;
    }

    /// Where the columns end: each has its share, but room for the longest word of its head.
    std::vector<double> edgesOf(const report::BlankTable& table) const
    {
        const QFontMetricsF metrics(pageFont(kSmallest_pt, true));
        std::vector<double> least;
        for (const auto& column : table.columns) {
            double longest = 0;
            for (const auto& word : headOf(column).split(QLatin1Char(' ')))
                longest = std::max(longest, metrics.horizontalAdvance(word));
            least.push_back(longest + 7 * kPoint);
        }
        std::vector<bool> atLeast(least.size());
        std::vector<double> edges;
        for (bool settled = false; !settled;) {
            double shares = 0, room = m_room.width();
            for (std::size_t c = 0; c < least.size(); ++c)
                atLeast[c] ? room -= least[c] : shares += table.columns[c].share;
            edges = {0};
            settled = true;
            for (std::size_t c = 0; c < least.size(); ++c) {
                const double own = atLeast[c] ? least[c] : table.columns[c].share / shares * room;
                edges.push_back(edges.back() + own);
                if (own < least[c] && !atLeast[c]) {
                    atLeast[c] = true;
                    settled = false;
                }
            }
        }
        return edges;
    }

    static QString headOf(const report::BlankTable::Column& column)
    {
        return column.unit.empty() ? say(column.title)
                                   : QStringLiteral("%1 (%2)").arg(say(column.title), plain(column.unit));
    }

    static double headHeight(const report::BlankTable& table, const std::vector<double>& edges)
    {
        double height = 0;
        for (std::size_t c = 0; c < table.columns.size(); ++c)
            height = std::max(height, Lines(headOf(table.columns[c]), pageFont(kSmallest_pt, true),
                                            edges[c + 1] - edges[c] - 6 * kPoint)
                                          .height());
        return height + 4 * kPoint;
    }

    void putHead(const report::BlankTable& table, const std::vector<double>& edges, double height)
    {
        for (std::size_t c = 0; c < table.columns.size(); ++c) {
            const QRectF cell(edges[c], m_y, edges[c + 1] - edges[c], height);
            const Lines lines(headOf(table.columns[c]), pageFont(kSmallest_pt, true), cell.width() - 6 * kPoint);
            put([cell, lines](QPainter& painter) {
                painter.setPen(QPen(Qt::black, 0.8 * kPoint));
                painter.setBrush(QColor(0xee, 0xee, 0xee));
                painter.drawRect(cell);
                lines.paint(painter, cell.topLeft() + QPointF(3 * kPoint, 2 * kPoint), Qt::black);
            });
        }
        m_y += height;
    }

    QSizeF m_room;
    QString m_title;
    std::vector<std::pair<int, std::function<void(QPainter&)>>> m_blocks;
    int m_page = 0;
    double m_y = 0;
};

}  // namespace

int paintSurveySheet(QPagedPaintDevice& device, const report::BlankSurvey& content)
{
    device.setPageMargins(QMarginsF(kMargin_pt, kMargin_pt, kMargin_pt, kMargin_pt), QPageLayout::Point);
    device.setPageOrientation(QPageLayout::Portrait);
    const Sheet sheet(content, device.pageLayout().paintRect(QPageLayout::Point).size() * kPoint);
    return paintEveryPage(device, sheet);
}

std::optional<Problem> surveySheetPdf(const report::BlankSurvey& sheet, PaperSize paper, QByteArray& out)
{
    QHashSeed::setDeterministicGlobalSeed();  // else the PDF's objects come in another order each time
    out.clear();
    QBuffer buffer(&out);
    buffer.open(QIODevice::WriteOnly);
    {
        QPdfWriter writer(&buffer);
        writer.setPageSize(QPageSize(paper == PaperSize::A4 ? QPageSize::A4 : QPageSize::Letter));
        label(writer, coreText(sheet.title), {});
        if (paintSurveySheet(writer, sheet) == 0)
            return Problem{"The survey sheet could not be drawn.", "Try again, or print it from the preview.", {}};
    }
    buffer.close();
    out = withLanguage(out, QCoreApplication::translate("tapward::app", "en").toLatin1());
    return std::nullopt;
}

}  // namespace tapward::app::print
