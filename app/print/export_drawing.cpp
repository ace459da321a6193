// SPDX-License-Identifier: GPL-3.0-or-later
#include "print/export_drawing.h"

#include <algorithm>
#include <cmath>
#include <QBuffer>
#include <QImage>
#include <QPainter>
#include <QRegularExpression>
#include <QSet>
#include <QSvgGenerator>

#include "canvas/paint_drawing.h"
#include "print/page_picture.h"
#include "print/page_text.h"

namespace tapward::app::print {
namespace {

constexpr double kBorder = kModule;          // canvas units round the drawing
constexpr double kLegendScale = 1.3 / kPoint;  // the legend is laid out in tenths of a point; letters as the labels
constexpr double kMostPixels = 120e6;

const Problem kNothing{"There is nothing to export: the drawing is empty.", "Draw a part first.", {}};

/// What is exported, in canvas units, top left at (0, 0).
struct Plan {
    PaintOptions paint;
    QRectF bounds;
    std::optional<Legend> legend;
    QSizeF size;
};

std::optional<Plan> planFor(const document::Drawing& drawing, const ExportOptions& options)
{
    Plan plan;
    plan.paint.view = options.view;
    plan.paint.units = options.units;
    plan.paint.theme = Theme::light();
    plan.bounds = drawingBounds(drawing, plan.paint);
    if (plan.bounds.isEmpty())
        return std::nullopt;
    const double width = std::max(plan.bounds.width(), 24 * kModule);
    plan.size = QSizeF(width + 2 * kBorder, plan.bounds.height() + 2 * kBorder);
    if (options.legend) {
        plan.legend.emplace(drawing, width / kLegendScale);
        plan.size.rheight() += plan.legend->height() * kLegendScale + kBorder;
    }
    return plan;
}

void paintPlan(QPainter& painter, const document::Drawing& drawing, const Plan& plan, bool transparent)
{
    if (!transparent)
        painter.fillRect(QRectF(QPointF(0, 0), plan.size), Qt::white);
    painter.save();
    painter.translate(QPointF(kBorder, kBorder) - plan.bounds.topLeft());
    paintDrawing(painter, drawing, plan.paint);
    painter.restore();
    if (plan.legend) {
        painter.save();
        painter.translate(kBorder, 2 * kBorder + plan.bounds.height());
        painter.scale(kLegendScale, kLegendScale);
        plan.legend->paint(painter, QPointF(0, 0));
        painter.restore();
    }
}

/// Qt's SVG writer knows no ids: give each tag's text element the tag as its id, once.
QByteArray withTagIds(const QByteArray& svg, const document::Drawing& drawing)
{
    QSet<QString> tags;
    for (const document::Part& part : drawing.parts)
        tags.insert(QString::fromStdString(part.tag).toHtmlEscaped());
    static const QRegularExpression element(QStringLiteral("<text ([^>]*)>\\s*([^<]*?)\\s*</text>"));
    static const QRegularExpression plainId(QStringLiteral("^[A-Za-z_][A-Za-z0-9_.-]*$"));  // what XML allows in an id
    const QString text = QString::fromUtf8(svg);
    QString out;
    out.reserve(text.size() + 16 * qsizetype(drawing.parts.size()));
    qsizetype done = 0;
    for (auto it = element.globalMatch(text); it.hasNext();) {
        const QRegularExpressionMatch match = it.next();
        const QString tag = match.captured(2);
        if (!tags.contains(tag) || !plainId.match(tag).hasMatch())
            continue;
        tags.remove(tag);
        out += QStringView(text).mid(done, match.capturedStart(1) - done);
        out += QStringLiteral("id=\"%1\" ").arg(tag);
        done = match.capturedStart(1);
    }
    out += QStringView(text).mid(done);
    return out.toUtf8();
}

/// Qt writes a title as it is, "&" and "<" too: put it in here, made safe.
QByteArray withTitle(QByteArray svg, const std::string& title)
{
    for (const auto& [opens, closes] : {std::pair{"<title>", "</title>"}, std::pair{"<desc>", "</desc>"}}) {
        const qsizetype from = svg.indexOf(opens);
        const qsizetype to = from < 0 ? -1 : svg.indexOf(closes, from);
        if (to >= 0)
            svg.remove(from, to + static_cast<qsizetype>(qstrlen(closes)) - from);
    }
    const qsizetype root = svg.indexOf("<svg");
    const qsizetype end = root < 0 ? -1 : svg.indexOf('>', root);
    if (end < 0)
        return svg;
    QString words;
    for (const QChar c : QString::fromStdString(title))  // XML 1.0 has no way to write control characters
        words += c.unicode() < 0x20 ? QChar(QLatin1Char(' ')) : c;
    const QString head =
        QStringLiteral("\n<title>%1</title>\n<desc>Plumbing of a coach with its preheat loop, drawn with "
                       "Tapward; not to scale.</desc>")
            .arg(words.toHtmlEscaped());
    return svg.insert(end + 1, head.toUtf8());
}

}  // namespace

std::optional<Problem> exportSvg(const document::Drawing& drawing, const ExportOptions& options, QByteArray& out)
{
    const auto plan = planFor(drawing, options);
    if (!plan)
        return kNothing;
    out.clear();
    QBuffer buffer(&out);
    buffer.open(QIODevice::WriteOnly);
    QSvgGenerator generator;
    generator.setOutputDevice(&buffer);
    generator.setResolution(72);
    generator.setSize(plan->size.toSize() + QSize(1, 1));
    generator.setViewBox(QRectF(QPointF(0, 0), plan->size));
    QPainter painter;
    if (!painter.begin(&generator))
        return Problem{"The drawing could not be written as SVG.", "Export it as PNG or print it as PDF.", {}};
    paintPlan(painter, drawing, *plan, options.transparent);
    painter.end();
    buffer.close();
    out = withTitle(withTagIds(out, drawing), drawing.job.title);
    return std::nullopt;
}

std::optional<Problem> exportPng(const document::Drawing& drawing, const ExportOptions& options, QByteArray& out)
{
    const auto plan = planFor(drawing, options);
    if (!plan)
        return kNothing;
    const double scale = std::clamp(options.dpi, 72.0, 1200.0) / 72.0;
    const QSizeF size = plan->size * scale;
    if (size.width() * size.height() > kMostPixels)
        return Problem{{"The picture would have {0} million dots.",
                        {std::int64_t(std::llround(size.width() * size.height() / 1e6))}},
                       "Choose fewer dots per inch.",
                       {}};
    QImage image(size.toSize(), QImage::Format_ARGB32_Premultiplied);
    image.setDotsPerMeterX(int(std::lround(scale * 72 / 0.0254)));
    image.setDotsPerMeterY(image.dotsPerMeterX());
    image.fill(Qt::transparent);
    QPainter painter(&image);
    painter.setRenderHint(QPainter::Antialiasing);
    painter.scale(scale, scale);
    paintPlan(painter, drawing, *plan, options.transparent);
    painter.end();
    out.clear();
    QBuffer buffer(&out);
    buffer.open(QIODevice::WriteOnly);
    if (!image.save(&buffer, "PNG"))
        return Problem{"The picture could not be written.", "Export it as SVG instead.", {}};
    return std::nullopt;
}

}  // namespace tapward::app::print
