// SPDX-License-Identifier: GPL-3.0-or-later
#include <QImage>
#include <QSet>
#include <QXmlStreamReader>

#include "document/edit.h"
#include "print/export_drawing.h"
#include "support/catch.h"

using namespace tapward;
using namespace tapward::app;

namespace {

document::Drawing smallDrawing()
{
    document::Drawing drawing;
    drawing.job.title = "Loop & <trunk>";
    double x = 0;
    for (const char* kind : {"tankless_heater", "circulator", "check_valve", "faucet"}) {
        auto edit = document::placePart(drawing, kind, {x, 0}, document::Stage::Added);
        REQUIRE(edit);
        document::apply(drawing, *edit);
        x += 10;
    }
    return drawing;
}

}  // namespace

TEST_CASE("the SVG is well-formed, titled, on white, with the tags as text and as ids", "[print]")
{
    const document::Drawing drawing = smallDrawing();
    QByteArray svg;
    REQUIRE_FALSE(print::exportSvg(drawing, {}, svg));
    QXmlStreamReader xml(svg);
    QString title, viewBox, firstFill;
    QSet<QString> ids, texts;
    bool bitmap = false;
    while (!xml.atEnd()) {
        if (xml.readNext() != QXmlStreamReader::StartElement)
            continue;
        const auto attributes = xml.attributes();
        if (xml.name() == QLatin1String("svg"))
            viewBox = attributes.value(QLatin1String("viewBox")).toString();
        bitmap = bitmap || xml.name() == QLatin1String("image");
        if (firstFill.isEmpty() && xml.name() == QLatin1String("g") && attributes.hasAttribute(QLatin1String("fill"))
            && attributes.value(QLatin1String("fill")) != QLatin1String("none"))
            firstFill = attributes.value(QLatin1String("fill")).toString();
        const QString id = attributes.value(QLatin1String("id")).toString();
        if (xml.name() == QLatin1String("text")) {
            const QString text = xml.readElementText().trimmed();
            texts.insert(text);
            if (!id.isEmpty()) {
                CHECK(id == text);
                CHECK_FALSE(ids.contains(id));
                ids.insert(id);
            }
        } else if (xml.name() == QLatin1String("title")) {
            title = xml.readElementText();
        }
    }
    CAPTURE(xml.errorString().toStdString());
    CHECK_FALSE(xml.hasError());
    CHECK(title.toStdString() == "Loop & <trunk>");
    CHECK(viewBox.split(QLatin1Char(' ')).size() == 4);
    CHECK(firstFill == QStringLiteral("#ffffff"));
    CHECK_FALSE(bitmap);
    for (const document::Part& part : drawing.parts) {
        CAPTURE(part.tag);
        CHECK(texts.contains(QString::fromStdString(part.tag)));
        CHECK(ids.contains(QString::fromStdString(part.tag)));
    }
}

TEST_CASE("the PNG has the asked dots per inch, a white or clear ground, and ink on it", "[print]")
{
    const document::Drawing drawing = smallDrawing();
    QByteArray coarse, fine, clear;
    print::ExportOptions options;
    options.dpi = 100;
    REQUIRE_FALSE(print::exportPng(drawing, options, coarse));
    options.transparent = true;
    REQUIRE_FALSE(print::exportPng(drawing, options, clear));
    options.dpi = 300;
    REQUIRE_FALSE(print::exportPng(drawing, options, fine));
    const QImage image = QImage::fromData(coarse), big = QImage::fromData(fine), bare = QImage::fromData(clear);
    REQUIRE_FALSE(image.isNull());
    CHECK_THAT(double(big.width()), WithinAbs(3.0 * image.width(), 3.0));
    CHECK_THAT(image.dotsPerMeterX() * 0.0254, WithinAbs(100.0, 0.5));
    CHECK(image.pixelColor(0, 0) == QColor(Qt::white));
    CHECK(bare.pixelColor(0, 0).alpha() == 0);
    int dark = 0;
    for (int y = 0; y < image.height(); ++y)
        for (int x = 0; x < image.width(); ++x)
            dark += image.pixelColor(x, y).lightness() < 100;
    CHECK(dark > 200);
}

TEST_CASE("an export of nothing, or of too large a picture, says what to do", "[print]")
{
    QByteArray out;
    const auto nothing = print::exportSvg(document::Drawing{}, {}, out);
    REQUIRE(nothing);
    CHECK_FALSE(nothing->remedy.empty());
    CHECK(print::exportPng(document::Drawing{}, {}, out).has_value());

    document::Drawing wide = smallDrawing();
    wide.parts.back().at.x = 4000;
    print::ExportOptions options;
    options.dpi = 1200;
    const auto large = print::exportPng(wide, options, out);
    REQUIRE(large);
    CHECK_FALSE(large->remedy.empty());
}
