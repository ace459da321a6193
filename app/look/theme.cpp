// SPDX-License-Identifier: GPL-3.0-or-later
#include "look/theme.h"

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

Theme Theme::of(const QPalette& palette)
{
    return palette.color(QPalette::Window).lightness() < palette.color(QPalette::WindowText).lightness() ? darkOne()
                                                                                                         : light();
}

}  // namespace tapward::app
