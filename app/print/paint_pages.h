// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QPagedPaintDevice>
#include <QPainter>

#include "print/page_text.h"

namespace tapward::app::print {

/// Every page of a layout (it has pages() and paint(QPainter&, int)) on the device, whose margins and orientation
/// are set. @return pages painted, 0 when the device refused.
template <class Layout>
int paintEveryPage(QPagedPaintDevice& device, const Layout& layout)
{
    QPainter painter;
    if (!painter.begin(&device))
        return 0;
    painter.setRenderHint(QPainter::Antialiasing);
    for (int page = 0; page < layout.pages(); ++page) {
        if (page > 0 && !device.newPage())
            return 0;
        painter.save();
        painter.scale(device.logicalDpiX() / (72.0 * kPoint), device.logicalDpiY() / (72.0 * kPoint));
        layout.paint(painter, page);
        painter.restore();
    }
    return painter.end() ? layout.pages() : 0;
}

}  // namespace tapward::app::print
