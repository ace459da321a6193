// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QPointF>

#include "parts/part_kind.h"

namespace tapward::app {

using parts::Side;

/// The way a port on this side looks.
constexpr QPointF outward(Side side)
{
    return side == Side::Left    ? QPointF(-1, 0)
           : side == Side::Right ? QPointF(1, 0)
           : side == Side::Top   ? QPointF(0, -1)
                                 : QPointF(0, 1);
}

constexpr Side opposite(Side side)
{
    return side == Side::Left    ? Side::Right
           : side == Side::Right ? Side::Left
           : side == Side::Top   ? Side::Bottom
                                 : Side::Top;
}

}  // namespace tapward::app
