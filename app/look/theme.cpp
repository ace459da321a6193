// SPDX-License-Identifier: GPL-3.0-or-later
#include "look/theme.h"

#include <cstdlib>
#include <QPalette>

namespace tapward::app {

Theme Theme::light()
{
    Theme t;
    t.paper = QColor(0xff, 0xff, 0xff);
    t.grid = QColor(0xd5, 0xda, 0xde);
    t.ink = QColor(0x1c, 0x1c, 0x1c);
    t.text = QColor(0x10, 0x10, 0x10);
    t.quietText = QColor(0x4a, 0x50, 0x56);
    t.cold = QColor(0x00, 0x72, 0xb2);
    t.hot = QColor(0xd5, 0x5e, 0x00);
    t.returning = QColor(0xb0, 0x5a, 0x8a);  // purple #CC79A7, darker for 3:1 on white
    t.added = QColor(0x10, 0x10, 0x10);
    t.removed = QColor(0x76, 0x76, 0x76);
    t.selection = QColor(0x1a, 0x73, 0xc9);
    t.target = QColor(0x00, 0x8a, 0x64);
    t.danger = QColor(0xd5, 0x5e, 0x00);
    t.caution = QColor(0xb3, 0x7a, 0x00);
    t.note = QColor(0x00, 0x72, 0xb2);
    return t;
}

Theme Theme::darkOne()
{
    Theme t;
    t.paper = QColor(0x1d, 0x1f, 0x22);
    t.grid = QColor(0x3a, 0x3e, 0x43);
    t.ink = QColor(0xe4, 0xe6, 0xe8);
    t.text = QColor(0xf4, 0xf5, 0xf6);
    t.quietText = QColor(0xb4, 0xba, 0xc0);
    t.cold = QColor(0x56, 0xb4, 0xe9);
    t.hot = QColor(0xff, 0x8b, 0x3d);
    t.returning = QColor(0xe3, 0x9b, 0xc4);
    t.added = QColor(0xff, 0xff, 0xff);
    t.removed = QColor(0x8e, 0x93, 0x98);
    t.selection = QColor(0x6c, 0xb8, 0xff);
    t.target = QColor(0x2f, 0xd0, 0xa0);
    t.danger = QColor(0xff, 0x8b, 0x3d);
    t.caution = QColor(0xe6, 0x9f, 0x00);
    t.note = QColor(0x56, 0xb4, 0xe9);
    t.dark = true;
    return t;
}

Theme Theme::strongLight()
{
    Theme t = light();
    t.grid = QColor(0x9a, 0xa0, 0xa6);
    t.ink = t.text = t.added = Qt::black;
    t.quietText = QColor(0x26, 0x2a, 0x2e);
    t.cold = t.note = QColor(0x00, 0x50, 0x8a);
    t.hot = t.danger = QColor(0x9a, 0x3c, 0x00);
    t.returning = QColor(0x8a, 0x2f, 0x62);
    t.removed = QColor(0x55, 0x55, 0x55);
    t.selection = QColor(0x00, 0x4f, 0x9e);
    t.target = QColor(0x00, 0x5c, 0x42);
    t.caution = QColor(0x7a, 0x50, 0x00);
    return t;
}

Theme Theme::strongDark()
{
    Theme t = darkOne();
    t.paper = Qt::black;
    t.grid = QColor(0x60, 0x66, 0x6c);
    t.ink = t.text = t.added = Qt::white;
    t.quietText = QColor(0xe0, 0xe3, 0xe6);
    t.removed = QColor(0xa4, 0xa9, 0xae);
    return t;
}

Theme Theme::of(const QPalette& palette)
{
    const QColor ground = palette.color(QPalette::Window), text = palette.color(QPalette::WindowText);
    const bool dark = ground.lightness() < text.lightness();
    const bool strong = std::abs(ground.lightness() - text.lightness()) == 255;
    return dark ? (strong ? strongDark() : darkOne()) : (strong ? strongLight() : light());
}

}  // namespace tapward::app
