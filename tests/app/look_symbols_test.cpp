// SPDX-License-Identifier: GPL-3.0-or-later
#include <cmath>
#include <QApplication>
#include <QImage>
#include <QPainter>
#include <QWidget>

#include "app/contrast.h"
#include "look/symbols.h"
#include "look/theme.h"
#include "parts/part_kind.h"
#include "support/catch.h"

using namespace tapward;
using namespace tapward::app;
using test::contrast;

namespace {

/// The symbol on white, five pixels to the canvas unit, its centre in the middle.
QImage picture(const parts::PartKind& kind, const SymbolStyle& style)
{
    const double side = 10 * std::max(kind.width, kind.height) + 10;
    QImage image(static_cast<int>(side * 5), static_cast<int>(side * 5), QImage::Format_RGB32);
    image.fill(style.paper);
    QPainter painter(&image);
    painter.setRenderHint(QPainter::Antialiasing);
    painter.translate(image.width() / 2.0, image.height() / 2.0);
    painter.scale(5, 5);
    paintSymbol(painter, kind.id, style);
    return image;
}

bool inkNear(const QImage& image, const QColor& paper, double x, double y)
{
    for (int dy = -7; dy <= 7; ++dy)
        for (int dx = -7; dx <= 7; ++dx) {
            const QPoint at(static_cast<int>(image.width() / 2.0 + 5 * x) + dx,
                            static_cast<int>(image.height() / 2.0 + 5 * y) + dy);
            if (image.valid(at) && QColor(image.pixel(at)) != paper)
                return true;
        }
    return false;
}

}  // namespace

TEST_CASE("every kind has a symbol of its own box whose lines reach its ports", "[look]")
{
    for (const auto* kind : parts::catalogue()) {
        if (kind->isPipe)
            continue;
        CAPTURE(std::string(kind->id));
        REQUIRE(hasSymbol(kind->id));
        const QRectF box = symbolBox(kind->id);
        CHECK(box.width() == 10 * kind->width);
        CHECK(box.height() == 10 * kind->height);
        CHECK(box.center() == QPointF(0, 0));
        const auto image = picture(*kind, {.ink = Qt::black, .paper = Qt::white});
        for (const auto& port : kind->ports) {
            CAPTURE(std::string(port.id));
            CHECK(inkNear(image, Qt::white, 10 * port.x, 10 * port.y));
        }
    }
}

TEST_CASE("what a symbol covers is known: all its ink, and not much more", "[look]")
{
    for (const auto* kind : parts::catalogue()) {
        if (kind->isPipe)
            continue;
        CAPTURE(std::string(kind->id));
        const QRectF ink = symbolInk(kind->id);
        CHECK(symbolBox(kind->id).contains(ink));
        const auto image = picture(*kind, {.ink = Qt::black, .paper = Qt::white});
        QRectF seen;
        for (int y = 0; y < image.height(); ++y)
            for (int x = 0; x < image.width(); ++x)
                if (qGray(image.pixel(x, y)) < 128)
                    seen |= QRectF((x - image.width() / 2.0) / 5, (y - image.height() / 2.0) / 5, 0.2, 0.2);
        // Letters are taken for wide capitals; what leaves the box counts as in it.
        CHECK(ink.adjusted(-1, -1, 1, 1).contains(seen & symbolBox(kind->id)));
        CHECK(seen.adjusted(-3, -3, 3, 3).contains(ink));
    }
}

TEST_CASE("no two symbols look alike", "[look]")
{
    std::vector<std::pair<std::string, QImage>> pictures;
    for (const auto* kind : parts::catalogue())
        if (!kind->isPipe)
            pictures.emplace_back(kind->id, picture(*kind, {.ink = Qt::black, .paper = Qt::white}));
    for (std::size_t i = 0; i < pictures.size(); ++i)
        for (std::size_t k = i + 1; k < pictures.size(); ++k) {
            CAPTURE(pictures[i].first, pictures[k].first);
            CHECK(pictures[i].second != pictures[k].second);
        }
}

TEST_CASE("symbols take the ink they are given, are heavier when added, and turn", "[look]")
{
    const auto& kind = *parts::find("check_valve");
    const auto plain = picture(kind, {.ink = Qt::black, .paper = Qt::white});
    const auto dark = picture(kind, {.ink = QColor(0xee, 0xee, 0xee), .paper = QColor(0x20, 0x20, 0x20)});
    int inked = 0, heavy = 0, blackLeft = 0;
    const auto added = picture(kind, {.ink = Qt::black, .paper = Qt::white, .weight = Weight::Heavy});
    for (int y = 0; y < plain.height(); ++y)
        for (int x = 0; x < plain.width(); ++x) {
            inked += QColor(plain.pixel(x, y)).lightness() < 128;
            heavy += QColor(added.pixel(x, y)).lightness() < 128;
            blackLeft += QColor(dark.pixel(x, y)).lightness() < 20;
        }
    CHECK(heavy > inked * 1.15);
    CHECK(blackLeft == 0);
    const auto turned = picture(kind, {.ink = Qt::black, .paper = Qt::white, .turn = 1});
    CHECK(inkNear(turned, Qt::white, 0, -20));
    CHECK_FALSE(inkNear(turned, Qt::white, -20, 0));
}

TEST_CASE("both palettes keep the contrast WCAG asks for", "[look]")
{
    for (const auto& theme : {Theme::light(), Theme::darkOne()}) {
        CAPTURE(theme.dark);
        // WCAG 2.2, 1.4.3: text 4.5:1; 1.4.11: graphics 3:1.
        CHECK(contrast(theme.text, theme.paper) >= 4.5);
        CHECK(contrast(theme.quietText, theme.paper) >= 4.5);
        for (const auto& colour : {theme.ink, theme.cold, theme.hot, theme.returning, theme.removed, theme.selection,
                                   theme.target, theme.danger, theme.caution, theme.note})
            CHECK(contrast(colour, theme.paper) >= 3.0);
    }
}

namespace {

class OneSymbol final : public QWidget {
public:
    using QWidget::QWidget;

protected:
    void paintEvent(QPaintEvent*) override
    {
        QPainter painter(this);
        painter.translate(60, 50);
        tapward::app::SymbolStyle how;
        how.ink = Qt::black;
        how.paper = Qt::white;
        tapward::app::paintSymbolOnScreen(painter, "circulator", how);
    }
};

QRect inked(const QImage& image)
{
    QRect all;
    for (int y = 0; y < image.height(); ++y)
        for (int x = 0; x < image.width(); ++x)
            if (qGray(image.pixel(x, y)) < 100)
                all |= QRect(x, y, 1, 1);
    return all;
}

}  // namespace

TEST_CASE("a symbol stands where it was painted, also inside a window that paints its parts with an offset", "[look]")
{
    QWidget window;
    window.resize(400, 300);
    window.setPalette(QPalette(Qt::white));
    OneSymbol inside(&window);
    inside.setGeometry(200, 120, 150, 120);
    const QRect seen = inked(window.grab().toImage());
    REQUIRE_FALSE(seen.isEmpty());
    CHECK(std::abs(seen.center().x() - 260) <= 6);
    CHECK(std::abs(seen.center().y() - 170) <= 6);
}

TEST_CASE("the symbol of a chosen row stands out from its bar, also in a high-contrast palette", "[look]")
{
    const QPalette before = QApplication::palette();
    // Bars of a usual blue, and of the yellow with black letters that high-contrast desktops like.
    for (const auto& [bar, letters] : {std::pair(QColor(0x30, 0x8c, 0xc6), QColor(Qt::white)),
                                       std::pair(QColor(0xff, 0xff, 0x00), QColor(Qt::black))}) {
        CAPTURE(bar.name().toStdString());
        QPalette palette = before;
        palette.setColor(QPalette::Highlight, bar);
        palette.setColor(QPalette::HighlightedText, letters);
        QApplication::setPalette(palette);
        for (const auto* kind : parts::catalogue()) {
            CAPTURE(std::string(kind->id));
            // White ink as on a black desktop, black as on a white one.
            for (const QColor ink : {QColor(Qt::white), QColor(Qt::black)}) {
                QImage image(64, 64, QImage::Format_RGB32);
                image.fill(bar);
                QPainter painter(&image);
                symbolIcon(kind->id, ink, QColor(Qt::gray))
                    .paint(&painter, image.rect(), Qt::AlignCenter, QIcon::Selected);
                painter.end();
                int seen = 0;
                for (int y = 0; y < image.height(); ++y)
                    for (int x = 0; x < image.width(); ++x)
                        seen += contrast(image.pixelColor(x, y), bar) >= 3;  // WCAG 2.2, 1.4.11
                CHECK(seen >= 15);
            }
        }
    }
    QApplication::setPalette(before);
}
