// SPDX-License-Identifier: GPL-3.0-or-later
#include "canvas/floor_plan_painter.h"

#include <algorithm>
#include <map>
#include <QBuffer>
#include <QImageReader>
#include <QPainter>
#include <string>

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

struct Decoded {
    std::string text;  ///< what it was made from
    QImage image;
};

QImage decode(const document::Part& plan)
{
    const auto bytes = document::planPicture(plan);
    const auto info = bytes ? document::pictureInfo(*bytes) : Result<document::PictureInfo>(problem({}, {}));
    if (!info)
        return {};
    QByteArray raw = QByteArray::fromRawData(bytes->data(), static_cast<qsizetype>(bytes->size()));
    QBuffer buffer(&raw);
    // The format is the one the bounds were read from: no other reader may guess.
    QImageReader reader(&buffer, info->format == document::PictureFormat::Png ? "png" : "jpeg");
    const QSize size(info->width_px, info->height_px);
    if (reader.size() != size)
        return {};
    if (std::max(size.width(), size.height()) > kMostSide_px)
        reader.setScaledSize(size.scaled(kMostSide_px, kMostSide_px, Qt::KeepAspectRatio).expandedTo(QSize(1, 1)));
    return reader.read().convertToFormat(QImage::Format_ARGB32_Premultiplied);
}

/// Decoded once for each picture: the same text, the same pixels.
std::map<document::PartId, Decoded>& known()
{
    static std::map<document::PartId, Decoded> all;
    return all;
}

}  // namespace

void paintFloorPlans(QPainter& painter, const document::Drawing& drawing, const Theme& theme,
                     const std::vector<LabelShape>& labels)
{
    bool seen = false;
    std::erase_if(known(), [&drawing](const auto& one) { return drawing.find(one.first) == nullptr; });
    for (const auto& part : drawing.parts) {
        if (part.kind != "floor_plan")
            continue;
        const auto values = document::values(part);
        const std::string& text = values.text("picture");
        if (!values.flag("shown") || text.empty())
            continue;
        Decoded& decoded = known()[part.id];
        if (decoded.text != text)
            decoded = {text, decode(part)};
        if (decoded.image.isNull())
            continue;
        const double width = values.number("width_modules") * kModule;
        const QRectF ground(0, 0, width, width * decoded.image.height() / decoded.image.width());
        painter.save();
        painter.translate(part.at.x * kModule, part.at.y * kModule);
        painter.rotate(90.0 * (part.turn & 3));
        const double strength = values.number("opacity");
        painter.setOpacity(theme.dark ? onDark(strength) : strength);
        painter.setRenderHint(QPainter::SmoothPixmapTransform);
        painter.drawImage(ground, decoded.image, QRectF(decoded.image.rect()));
        painter.restore();
        seen = true;
    }
    if (!seen || theme.dark)
        return;
    QColor ground = theme.paper;
    ground.setAlphaF(kUnderLabels);
    for (const auto& label : labels)
        painter.fillRect(label.box, ground);
}

}  // namespace tapward::app
