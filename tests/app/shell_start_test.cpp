// SPDX-License-Identifier: GPL-3.0-or-later
// What the program looks like: the start page on a small screen and with large letters, tick boxes in the dark.
#include <QApplication>
#include <QFile>
#include <QPainter>
#include <QScrollArea>
#include <QScrollBar>
#include <QStyleOptionViewItem>
#include <QTemporaryDir>
#include <QTest>

#include "app/contrast.h"
#include "panels/icons.h"
#include "shell/language.h"
#include "shell/link_button.h"
#include "shell/main_window.h"
#include "shell/places.h"
#include "shell/start_page.h"
#include "shell/window_style.h"
#include "support/catch.h"

using namespace tapward;
using namespace tapward::app;

namespace {

/// Recent files that exist, as long as it lives.
struct Recent {
    explicit Recent(int count)
    {
        RecentFiles().clear();
        for (int i = 0; i < count; ++i) {
            QFile file(folder.filePath(QStringLiteral("coach of customer %1.tapward").arg(i)));
            REQUIRE(file.open(QIODevice::WriteOnly));
            RecentFiles().add(file.fileName());
        }
    }
    ~Recent() { RecentFiles().clear(); }
    QTemporaryDir folder;
};

struct Letters {
    explicit Letters(double points) : before(QApplication::font())
    {
        QFont font = before;
        font.setPointSizeF(points);
        QApplication::setFont(font);
    }
    ~Letters() { QApplication::setFont(before); }
    QFont before;
};

}  // namespace

TEST_CASE("the start page does not scroll on a small laptop, in English and in Spanish, with ten recent drawings",
          "[shell]")
{
    for (const auto& language : {QStringLiteral("en"), QStringLiteral("es")})
        for (const int files : {0, 5, RecentFiles::kMost}) {
            CAPTURE(language.toStdString(), files);
            const Recent recent(files);
            speak(language);
            {
                MainWindow window;
                window.resize(1366, 720);  // of 768 the desktop takes some for its bar and the title
                window.show();
                QTest::qWait(30);
                const auto* page = window.findChild<StartPage*>();
                REQUIRE(page);
                const auto* scroll = page->findChild<QScrollArea*>();
                REQUIRE(scroll);
                CHECK(scroll->verticalScrollBar()->maximum() == 0);
                CHECK(scroll->horizontalScrollBar()->maximum() == 0);
            }
            speak(QStringLiteral("en"));
        }
}

TEST_CASE("the start page's links have the desktop's letters, and take the lines they need", "[shell]")
{
    const auto inked = [](LinkButton& link) {
        QImage image(link.size(), QImage::Format_RGB32);
        image.fill(Qt::white);
        link.render(&image);
        int rows = 0;
        for (int y = 0; y < image.height(); ++y)
            for (int x = link.iconSize().width() + 12; x < image.width() - 4; ++x)
                if (qGray(image.pixel(x, y)) < 100) {
                    ++rows;
                    break;
                }
        return rows;
    };
    int small = 0, large = 0, wrapped = 0;
    for (int* rows : {&small, &large, &wrapped}) {
        const Letters letters(rows == &small ? 9 : 14);
        LinkButton link({}, QStringLiteral("Open a drawing of a coach"), QStringLiteral("It opens as a copy"));
        const int width = rows == &wrapped ? link.minimumSizeHint().width() : link.sizeHint().width();
        link.resize(width, link.heightForWidth(width));
        *rows = inked(link);
        CHECK(link.height() >= 24);
    }
    CHECK(large > 1.3 * small);
    CHECK(wrapped > 1.5 * large);

    const Letters letters(14);
    const Recent recent(5);
    StartPage page;
    page.resize(1366, 768);
    page.show();
    const auto links = page.findChildren<LinkButton*>();
    REQUIRE(links.size() >= 9);
    (void)QTest::qWaitFor(
        [&] {  // the layout comes when it comes
            return std::ranges::all_of(
                links, [](const LinkButton* link) { return link->height() >= link->heightForWidth(link->width()); });
        },
        60'000);
    for (const auto* link : links) {
        CAPTURE(link->text().toStdString());
        CHECK(link->width() >= link->minimumSizeHint().width());
        CHECK(link->height() >= link->heightForWidth(link->width()));
    }
    CHECK(page.findChild<QScrollArea*>()->horizontalScrollBar()->maximum() == 0);
}

TEST_CASE("a box without a tick is seen in the dark, and the light palette is left alone", "[shell]")
{
    const auto paint = [](QStyle& style, const QPalette& palette, QStyle::PrimitiveElement element) {
        QStyleOptionViewItem option;
        option.palette = palette;
        option.state = QStyle::State_Enabled | QStyle::State_Off;
        option.rect = QRect(4, 4, 14, 14);
        QImage image(22, 22, QImage::Format_RGB32);
        image.fill(palette.color(QPalette::Base));
        QPainter painter(&image);
        style.drawPrimitive(element, &option, &painter, nullptr);
        return image;
    };
    WindowStyle seen;
    QProxyStyle usual;
    for (const auto element : {QStyle::PE_IndicatorCheckBox, QStyle::PE_IndicatorItemViewItemCheck}) {
        const QPalette dark = look::darkPalette();
        const QColor ground = dark.color(QPalette::Base);
        const QImage image = paint(seen, dark, element);
        int outlined = 0;
        for (int x = 4; x < 18; ++x)
            outlined += test::contrast(image.pixelColor(x, 4), ground) >= 3;  // WCAG 2.2, 1.4.11
        CHECK(outlined >= 12);
        QPalette light;
        light.setColor(QPalette::Base, Qt::white);
        light.setColor(QPalette::Text, Qt::black);
        CHECK(paint(seen, light, element) == paint(usual, light, element));
    }
}

TEST_CASE("a menu bar's sign for menus without room looks as the style draws it", "[shell]")
{
    WindowStyle ours;
    const QProxyStyle usual;
    for (const QIcon::Mode mode : {QIcon::Normal, QIcon::Disabled}) {
        const auto image = [&](const QStyle& style) {
            return style.standardIcon(QStyle::SP_ToolBarHorizontalExtensionButton)
                .pixmap(QSize(16, 16), mode)
                .toImage();
        };
        REQUIRE_FALSE(image(usual).isNull());
        CHECK(image(ours) == image(usual));
    }
}
