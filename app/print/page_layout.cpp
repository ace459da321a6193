// SPDX-License-Identifier: GPL-3.0-or-later
#include "print/page_layout.h"

#include <algorithm>
#include <cmath>
#include <QFontMetricsF>
#include <QPainter>

#include "session/message_text.h"

namespace tapward::app::print {
namespace {

constexpr double kColumnGap = 14 * kPoint, kGap = 6 * kPoint;
constexpr double kLegible_pt = 3.4;      // points per module below which tags crowd each other
constexpr double kComfortable_pt = 6.5;  // beyond it a bigger diagram is no easier to read
constexpr double kCaption = 10 * kPoint;
constexpr double kNoPicture = 30 * kPoint;   // room for the words that say so
constexpr double kPictureShare = 0.62;
constexpr double kText_pt[] = {8.2, 7.8, 7.4, 7.0};
constexpr double kOverflowText_pt = 7.8;
constexpr double kTitle_pt = 13, kSubtitle_pt = 8.4, kLaterTitle_pt = 9, kCell_pt = 7.8;
constexpr double kCellPadding = 6 * kPoint;
constexpr int kCellLines = 2;
constexpr QColor kQuiet(0x44, 0x44, 0x44);

QString text(std::string_view utf8) { return QString::fromUtf8(utf8.data(), qsizetype(utf8.size())); }

QString severityWord(review::Severity severity)
{
    switch (severity) {
    case review::Severity::Danger:
        return QCoreApplication::translate("look", "Danger");
    case review::Severity::Caution:
        return QCoreApplication::translate("look", "Caution");
    case review::Severity::Note:
        break;
    }
    return QCoreApplication::translate("look", "Note");
}

/// "L44-L47, L49, P1": runs of three or more tags in a row are drawn together.
QString tagList(const std::vector<std::string>& tags)
{
    struct Split {
        QString letters;
        int number;
    };
    const auto split = [](const QString& tag) {
        qsizetype digits = tag.size();
        while (digits > 0 && tag[digits - 1].isDigit())
            --digits;
        const bool plain = digits < tag.size() && tag[digits] != QLatin1Char('0') && tag.size() - digits < 7;
        return plain ? Split{tag.left(digits), tag.mid(digits).toInt()} : Split{tag, -1};
    };
    QStringList words;
    for (std::size_t i = 0; i < tags.size();) {
        const Split first = split(text(tags[i]));
        std::size_t end = i + 1;
        while (first.number >= 0 && end < tags.size()) {
            const Split next = split(text(tags[end]));
            if (next.letters != first.letters || next.number != first.number + int(end - i))
                break;
            ++end;
        }
        if (end - i >= 3) {
            words << text(tags[i]) + QChar(0x2013) + text(tags[end - 1]);
            i = end;
        } else {
            words << text(tags[i++]);
        }
    }
    return words.join(QStringLiteral(", "));
}

QString money(double amount, UnitSystem units) { return text(show({amount, Quantity::Money}, units)); }

}  // namespace

PageLayout::PageLayout(const document::Drawing& drawing, const DrawingLayout& plain, const report::PageContent& content,
                       const std::vector<review::Finding>& findings, UnitSystem units, QSizeF sheet)
    : m_sheet(sheet), m_columns(sheet.width() > sheet.height() ? 3 : 2)
{
    m_columnWidth = (sheet.width() - (m_columns - 1) * kColumnGap) / m_columns;
    makeHeader(content, drawing.job.sampleFigures);
    m_legend = std::make_unique<Legend>(drawing, sheet.width() - 2 * kGap);

    const double room = sheet.height() - m_headerHeight;
    const double around = m_legend->height() + kCaption + 2 * kGap;  // frame, caption and gap to the texts
    const double width = sheet.width() - 2 * kGap;
    const auto pictureFor = [&](double height) {
        return std::make_unique<Picture>(drawing, plain, units, QSizeF(width, std::max(0.0, height)));
    };
    const auto height = [&] { return m_picture->empty() ? kNoPicture : m_picture->size().height(); };

    // The diagram as large as a page with texts can have it; then the largest letters with which all stands on
    // one page. If none do, a smaller diagram with the smallest letters; if that gets illegible, a second page.
    m_picture = pictureFor(kPictureShare * (room - around));
    bool onePage = false;
    for (const double text_pt : kText_pt) {
        makeTexts(drawing, content, findings, units, text_pt);
        onePage = leastHeight(0, room - around - height()).has_value();
        if (onePage)
            break;
    }
    if (!onePage) {
        const auto least = leastHeight(0, room - around);
        auto smaller = least ? pictureFor(room - around - *least) : nullptr;
        if (smaller && smaller->pointsPerModule() >= kLegible_pt) {
            m_picture = std::move(smaller);
        } else {
            makeTexts(drawing, content, findings, units, kOverflowText_pt);
            if (!m_picture->empty() && m_picture->pointsPerModule() < kLegible_pt)
                m_picture = pictureFor(room - around);
        }
    }
    m_pictureFrame = QRectF(0, m_headerHeight, sheet.width(), height() + m_legend->height() + kCaption + kGap);
    placeTexts();
}

void PageLayout::placeTexts()
{
    double top = m_pictureFrame.bottom() + kGap;
    std::size_t next = 0;
    for (int page = 0; next < m_strips.size() || page == 0; ++page) {
        double height = m_sheet.height() - top;
        if (const auto least = leastHeight(next, height))
            height = *least;  // the last page: columns of equal length
        next = fill(next, height, page, top, &m_placed);
        m_pages = page + 1;
        top = m_laterHeaderHeight;
    }
}

void PageLayout::makeHeader(const report::PageContent& content, bool sample)
{
    m_title = messageText(content.title, UnitSystem::Us).simplified();
    m_subtitle = coreText(content.subtitle).simplified();
    m_sample = sample;
    // A text too long for its cell is printed among the notes instead of being cut.
    const double longest = m_sheet.width() / 4 * kCellLines * 0.8;
    for (const auto& [label, value] : content.titleBlock) {
        const QString words = text(value).simplified();
        if (QFontMetricsF(pageFont(kCell_pt)).horizontalAdvance(words) > longest)
            m_longTexts << (label == "Notes" ? QString() : coreText(label) + QStringLiteral(": ")) + text(value);
        else if (!words.isEmpty())
            m_titleBlock.push_back({coreText(label), words, 0});
    }
    m_titleBlock.push_back({tr("Page"), QString(), 0});  // its value is known when painted

    // One row of cells, wider ones for longer texts; a second line only where it is needed.
    const QFontMetricsF label(pageFont(kSmallest_pt)), value(pageFont(kCell_pt));
    double sum = 0;
    for (Cell& cell : m_titleBlock) {
        const double words = value.horizontalAdvance(cell.value.isEmpty() ? QStringLiteral("88 of 88") : cell.value);
        const double least = label.horizontalAdvance(cell.label);
        cell.width = std::max(least, std::min(words, m_sheet.width() / 4)) + 9 * kPoint;
        sum += cell.width;
    }
    int most = 1;
    for (Cell& cell : m_titleBlock) {
        cell.width *= m_sheet.width() / sum;
        most = std::max(most, Lines(cell.value, pageFont(kCell_pt), cell.width - kCellPadding).count());
    }
    m_titleBlockHeight = label.height() + value.height() * std::min(most, kCellLines) + 2 * kPoint;

    m_headerHeight = QFontMetricsF(pageFont(kTitle_pt, true)).height() + 2 * kPoint + m_titleBlockHeight + kGap;
    if (!m_subtitle.isEmpty())
        m_headerHeight += QFontMetricsF(pageFont(kSubtitle_pt)).height();
    m_laterHeaderHeight =
        QFontMetricsF(pageFont(kLaterTitle_pt, true)).height() + 2 * kPoint + m_titleBlockHeight + kGap;
}

void PageLayout::makeTexts(const document::Drawing& drawing, const report::PageContent& content,
                           const std::vector<review::Finding>& findings, UnitSystem units, double text_pt)
{
    Column column(m_columnWidth, text_pt);
    if (!content.answers.empty())
        column.heading(tr("Predicted"));
    for (const report::AnswerLine& answer : content.answers) {
        const QString value = answer.has ? text(show(answer.value, units)) : tr("no answer");
        column.answer(coreText(answer.label), value, messageText(answer.has ? answer.note : answer.reason, units));
    }

    bool headed = false;
    const auto head = [&] {
        if (!headed)
            column.heading(tr("Cautions"));
        headed = true;
    };
    std::vector<QString> said;
    for (const review::Finding& finding : findings) {
        if (finding.dismissed || finding.severity == review::Severity::Note)
            continue;
        head();
        const QString what = messageText(finding.what, units), remedy = messageText(finding.remedy, units);
        said.push_back(what);
        column.sign(finding.severity, severityWord(finding.severity),
                    remedy.isEmpty() ? what : what + QLatin1Char(' ') + remedy);
    }
    for (const Message& caution : content.cautions) {
        const QString words = messageText(caution, units);
        if (std::find(said.begin(), said.end(), words) != said.end())
            continue;
        head();
        column.sign(review::Severity::Caution, severityWord(review::Severity::Caution), words);
    }
    for (const review::Finding& finding : findings) {
        if (!finding.dismissed)
            continue;
        head();
        column.sign(review::Severity::Note, tr("Set aside"),
                    tr("%1 Reason given: %2").arg(messageText(finding.what, units), text(finding.dismissReason)));
    }

    const report::PartsList& parts = content.parts;
    if (!parts.lines.empty()) {
        column.heading(tr("Added parts (%1)").arg(text(drawing.job.currency)));
        for (const report::PartLine& line : parts.lines) {
            const QString count = line.metres ? text(show({line.quantity, Quantity::Length}, units))
                                              : text(showNumber({line.quantity, Quantity::None}, units));
            column.part(count, messageText(line.item, units), tagList(line.tags),
                        line.unitPrice > 0 ? money(line.price(), units) : tr("not priced"));
        }
        column.rule();
        column.part({}, parts.allPriced ? tr("Parts") : tr("Parts with a price"), {}, money(parts.partsTotal, units));
        if (parts.labour > 0)
            column.part({}, tr("Labor, %1 h").arg(drawing.job.hours), {}, money(parts.labour, units));
        column.part({}, parts.allPriced ? tr("Total") : tr("Total without the unpriced parts"), {},
                    money(parts.partsTotal + parts.labour, units), true);
    }
    if (!content.footnotes.empty() || !m_longTexts.isEmpty())
        column.heading(tr("Notes"));
    for (const QString& words : m_longTexts)
        column.paragraph(words);
    for (const std::string& note : content.footnotes)
        column.paragraph(coreText(note));
    m_strips = column.take();
}

std::size_t PageLayout::fill(std::size_t from, double height, int page, double top, std::vector<Placed>* placed) const
{
    std::size_t next = from;
    for (int column = 0; column < m_columns && next < m_strips.size(); ++column) {
        const double x = column * (m_columnWidth + kColumnGap);
        double y = 0;
        while (next < m_strips.size()) {
            // A group holds together unless it is longer than any column could be.
            std::size_t end = next;
            double group = 0;
            do {
                group += m_strips[end].height;
            } while (m_strips[end++].keepWithNext && end < m_strips.size());
            if (group > m_sheet.height() - m_laterHeaderHeight) {
                end = next + 1;
                group = m_strips[next].height;
            }
            if (y + group > height + 0.01)
                break;
            for (; next < end; ++next) {
                if (placed)
                    placed->push_back({page, QPointF(x, top + y), next});
                y += m_strips[next].height;
            }
        }
    }
    return next;
}

std::optional<double> PageLayout::leastHeight(std::size_t from, double most) const
{
    if (from >= m_strips.size())
        return 0;
    double total = 0;
    for (std::size_t i = from; i < m_strips.size(); ++i)
        total += m_strips[i].height;
    for (double height = total / m_columns; height <= most; height += kPoint)
        if (fill(from, height, 0, 0, nullptr) == m_strips.size())
            return height;
    return std::nullopt;
}

void PageLayout::paintHeader(QPainter& painter, int page) const
{
    const bool first = page == 0;
    const double width = m_sheet.width();
    double y = 0;
    const QFont titleFont = pageFont(first ? kTitle_pt : kLaterTitle_pt, true);
    double titleWidth = width;
    if (m_sample) {
        const QFont font = pageFont(first ? 8 : kSmallest_pt, true);
        const QString words = tr("SAMPLE FIGURES");
        const double w = QFontMetricsF(font).horizontalAdvance(words) + 10 * kPoint;
        const QRectF badge(width - w, 0, w, QFontMetricsF(font).height() + kPoint);
        painter.setPen(QPen(Qt::black, 0.8 * kPoint));
        painter.setBrush(Qt::NoBrush);
        painter.drawRect(badge);
        paintLine(painter, badge.topLeft() + QPointF(5 * kPoint, 0.5 * kPoint), w, words, font, Qt::black);
        titleWidth -= w + kGap;
    }
    paintLine(painter, QPointF(0, 0), titleWidth, m_title, titleFont, Qt::black);
    y += QFontMetricsF(titleFont).height() + kPoint;
    if (first && !m_subtitle.isEmpty()) {
        paintLine(painter, QPointF(0, y), width, m_subtitle, pageFont(kSubtitle_pt), Qt::black);
        y += QFontMetricsF(pageFont(kSubtitle_pt)).height();
    }
    y += kPoint;

    const QFont small = pageFont(kSmallest_pt), cellFont = pageFont(kCell_pt);
    const double labelHeight = QFontMetricsF(small).height();
    painter.setPen(QPen(Qt::black, 0.4 * kPoint));
    painter.setBrush(Qt::NoBrush);
    painter.drawRect(QRectF(0, y, width, m_titleBlockHeight));
    double x = 0;
    for (const Cell& cell : m_titleBlock) {
        const double inner = cell.width - kCellPadding;
        if (x > 0) {
            painter.setPen(QPen(Qt::black, 0.4 * kPoint));
            painter.drawLine(QPointF(x, y), QPointF(x, y + m_titleBlockHeight));
        }
        const QPointF at(x + kCellPadding / 2, y + kPoint);
        paintLine(painter, at, inner, cell.label, small, kQuiet);
        const bool isPage = cell.value.isEmpty();
        const QString words = isPage ? tr("%1 of %2").arg(page + 1).arg(m_pages) : cell.value;
        const Lines lines(words, cellFont, inner);
        if (lines.count() <= kCellLines)
            lines.paint(painter, at + QPointF(0, labelHeight), Qt::black);
        else
            paintLine(painter, at + QPointF(0, labelHeight), inner, words, cellFont, Qt::black);
        x += cell.width;
    }
}

void PageLayout::paint(QPainter& painter, int page) const
{
    paintHeader(painter, page);
    if (page == 0) {
        painter.setPen(QPen(Qt::black, 0.4 * kPoint));
        painter.setBrush(Qt::NoBrush);
        painter.drawRect(m_pictureFrame);
        const QFont small = pageFont(kSmallest_pt);
        if (m_picture->empty()) {
            paintLine(painter, m_pictureFrame.topLeft() + QPointF(kGap, kGap), m_sheet.width(),
                      tr("Nothing is drawn yet."), pageFont(9), Qt::black);
        } else {
            const QSizeF size = m_picture->size();
            m_picture->paint(painter, QPointF((m_sheet.width() - size.width()) / 2, m_pictureFrame.top() + kGap / 2));
        }
        double y = m_pictureFrame.bottom() - kGap / 2 - m_legend->height();
        m_legend->paint(painter, QPointF(kGap, y));
        y -= kCaption;
        paintLine(painter, QPointF(kGap, y), m_sheet.width() - 2 * kGap,
                  m_picture->hasLabels()
                      ? tr("Diagram of the coach's plumbing, not to scale.")
                      : tr("Diagram of the coach's plumbing, not to scale. Too many parts to name them here."),
                  small, kQuiet, Qt::AlignRight);
    }
    for (const Placed& placed : m_placed)
        if (placed.page == page)
            m_strips[placed.strip].paint(painter, placed.at);
}

TurnedLayout layOut(QPageLayout paper, const document::Drawing& drawing, const report::PageContent& content,
                    const std::vector<review::Finding>& findings, UnitSystem units,
                    std::optional<QPageLayout::Orientation> orientation)
{
    const auto ease = [](const PageLayout& layout) { return std::min(layout.pictureScale(), kComfortable_pt); };
    TurnedLayout best;
    const DrawingLayout plain = Picture::plainLayout(drawing, units);
    for (const auto candidate : {QPageLayout::Portrait, QPageLayout::Landscape}) {
        if (orientation && *orientation != candidate)
            continue;
        paper.setOrientation(candidate);
        const QSizeF sheet = paper.paintRect(QPageLayout::Point).size() * kPoint;
        auto layout = std::make_unique<PageLayout>(drawing, plain, content, findings, units, sheet);
        if (!best.layout || layout->pages() < best.layout->pages()
            || (layout->pages() == best.layout->pages() && ease(*layout) > ease(*best.layout)))
            best = {std::move(layout), candidate};
    }
    return best;
}

}  // namespace tapward::app::print
