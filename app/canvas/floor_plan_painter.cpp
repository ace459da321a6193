// SPDX-License-Identifier: GPL-3.0-or-later
#include "canvas/floor_plan_painter.h"

#include <algorithm>
#include <map>
#include <optional>
#include <QBuffer>
#include <QCoreApplication>
#include <QImageReader>
#include <QPainter>
#include <string>

#include "canvas/canvas_text.h"
#include "canvas/drawing_layout.h"
#include "canvas/paint_drawing.h"
#include "document/floor_plan.h"

namespace tapward::app {

namespace {

constexpr int kMostSide_px = 2400;  // sharper than a screen, and quick to scale
// On the dark ground a white picture this strong leaves quiet letters 4.5:1 (WCAG 2.2, 1.4.3).
constexpr double kMostOnDark = 0.18;
// On the light ground this much paper over a black picture of full strength does.
constexpr float kUnderLabels = 0.8F;

/// A weak picture gives up less of its strength than a strong one, so that it stays to be seen.
double onDark(double strength)
{
    const double rest = 1 - strength;
    return kMostOnDark * (1 - rest * rest * rest);
}

/// A picture as far as it was needed.
struct Known {
    std::string text;  ///< what it was made from
    std::optional<document::PictureInfo> info;
    std::optional<QImage> image;  ///< decoded once it was painted
};

Known known(const document::Part& plan, const std::string& text)
{
    const auto bytes = document::planPicture(plan);
    const auto info = bytes ? document::pictureInfo(*bytes) : Result<document::PictureInfo>(problem({}, {}));
    return {text, info ? std::optional(*info) : std::nullopt, std::nullopt};
}

QImage decode(const document::Part& plan, const document::PictureInfo& info)
{
    const auto bytes = document::planPicture(plan);
    QByteArray raw = QByteArray::fromRawData(bytes->data(), static_cast<qsizetype>(bytes->size()));
    QBuffer buffer(&raw);
    // The format is the one the bounds were read from: no other reader may guess.
    QImageReader reader(&buffer, info.format == document::PictureFormat::Png ? "png" : "jpeg");
    const QSize size(info.width_px, info.height_px);
    if (reader.size() != size)
        return {};
    if (std::max(size.width(), size.height()) > kMostSide_px)
        reader.setScaledSize(size.scaled(kMostSide_px, kMostSide_px, Qt::KeepAspectRatio).expandedTo(QSize(1, 1)));
    return reader.read().convertToFormat(QImage::Format_ARGB32_Premultiplied);
}

/// Read once for each picture: the same text, the same pixels.
std::map<document::PartId, Known>& allKnown()
{
    static std::map<document::PartId, Known> all;
    return all;
}

/// What stands in the place of a picture that is not shown.
void paintRefusal(QPainter& painter, const QRectF& ground, const Theme& theme)
{
    const QString words = QCoreApplication::translate(
        "tapward::app", "Not shown: the pictures of this drawing have too many pixels together.");
    painter.setPen(QPen(theme.quietText, 1, Qt::DashLine));
    painter.drawRect(ground);
    const double size = std::min(12.0, 0.9 * ground.width() / textWidth(words, 1));
    drawText(painter, {ground.left() + 0.05 * ground.width(), ground.center().y()}, words, size);
}

}  // namespace

void paintFloorPlans(QPainter& painter, const document::Drawing& drawing, const Theme& theme,
                     const std::vector<LabelShape>& labels)
{
    bool seen = false;
    long pixels = 0;
    std::erase_if(allKnown(), [&drawing](const auto& one) { return drawing.find(one.first) == nullptr; });
    for (const auto& part : drawing.parts) {
        if (part.kind != "floor_plan")
            continue;
        const auto values = document::values(part);
        const std::string& text = values.text("picture");
        if (!values.flag("shown") || text.empty())
            continue;
        Known& plan = allKnown()[part.id];
        if (plan.text != text)
            plan = known(part, text);
        if (!plan.info)
            continue;
        pixels += plan.info->pixels();
        const bool tooMany = pixels > document::kMostPicturesPixels;
        if (tooMany)
            plan.image.reset();
        else if (!plan.image)
            plan.image = decode(part, *plan.info);
        if (!tooMany && plan.image->isNull())
            continue;
        const double width = values.number("width_modules") * kModule;
        const QRectF ground(0, 0, width, width * plan.info->height_px / plan.info->width_px);
        painter.save();
        painter.translate(part.at.x * kModule, part.at.y * kModule);
        painter.rotate(90.0 * (part.turn & 3));
        if (tooMany) {
            paintRefusal(painter, ground, theme);
        } else {
            const double strength = values.number("opacity");
            painter.setOpacity(theme.dark ? onDark(strength) : strength);
            painter.setRenderHint(QPainter::SmoothPixmapTransform);
            painter.drawImage(ground, *plan.image, QRectF(plan.image->rect()));
            seen = true;
        }
        painter.restore();
    }
    if (!seen || theme.dark)
        return;
    QColor ground = theme.paper;
    ground.setAlphaF(kUnderLabels);
    for (const auto& label : labels)
        painter.fillRect(label.box, ground);
}

}  // namespace tapward::app
