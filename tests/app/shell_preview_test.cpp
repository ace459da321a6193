// SPDX-License-Identifier: GPL-3.0-or-later
// The print preview: which sheet of how many, turned by button and key, and what it shows is what was painted.
#include <QLabel>
#include <QPainter>
#include <QPrinter>
#include <QTest>
#include <QToolButton>

#include "panels_support.h"
#include "shell/page_preview.h"

using namespace tapward;
using namespace tapward::app;
using namespace tapward::app::test;

TEST_CASE("the preview says which sheet of how many, and turns them", "[shell][preview]")
{
    QPrinter printer;
    printer.setOutputFormat(QPrinter::PdfFormat);
    int painted = 0;
    const auto paint = [&](QPrinter& device) {
        QPainter painter(&device);
        painter.fillRect(QRectF(0, 0, device.width(), device.height()), Qt::red);
        device.newPage();
        ++painted;
    };
    QWidget parent;
    parent.resize(1000, 700);
    PagePreview preview(printer, paint, QStringLiteral("Print Preview"), &parent);
    preview.show();
    REQUIRE(QTest::qWaitFor([&] { return painted > 0; }, 10'000));
    const auto says = [&](const QString& text) {
        return QTest::qWaitFor(
            [&] {
                for (const auto* label : preview.findChildren<QLabel*>())
                    if (label->text() == text)
                        return true;
                return false;
            },
            5000);
    };
    CHECK(says(QStringLiteral("Sheet 1 of 2")));
    auto* on = named<QToolButton>(preview, QStringLiteral("Next"));
    auto* back = named<QToolButton>(preview, QStringLiteral("Back"));
    REQUIRE(on);
    REQUIRE(back);
    CHECK(on->isEnabled());
    CHECK_FALSE(back->isEnabled());
    on->click();
    CHECK(says(QStringLiteral("Sheet 2 of 2")));
    CHECK_FALSE(on->isEnabled());
    CHECK(back->isEnabled());
    // The sheets are red, and most of the dialog is sheet.
    const QImage seen = preview.grab().toImage();
    int red = 0;
    for (int y = 0; y < seen.height(); y += 4)
        for (int x = 0; x < seen.width(); x += 4)
            red += seen.pixelColor(x, y).red() > 200 && seen.pixelColor(x, y).green() < 60 ? 1 : 0;
    CHECK(red == 0);  // the second one is empty
    back->click();
    CHECK(says(QStringLiteral("Sheet 1 of 2")));
    CHECK(QTest::qWaitFor([&] {
        const QImage first = preview.grab().toImage();
        int count = 0;
        for (int y = 0; y < first.height(); y += 4)
            for (int x = 0; x < first.width(); x += 4)
                count += first.pixelColor(x, y).red() > 200 && first.pixelColor(x, y).green() < 60 ? 1 : 0;
        return count > 1000;
    }));
    for (auto* button : preview.findChildren<QToolButton*>())
        if (button->isVisible() && button->parentWidget() == &preview) {
            CHECK_FALSE(button->accessibleName().isEmpty());
            CHECK(button->height() >= 24);
        }
}
