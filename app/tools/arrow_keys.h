// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <algorithm>
#include <cmath>
#include <limits>
#include <optional>
#include <QKeyEvent>
#include <QPointF>
#include <utility>

// Walking among places by the keyboard: arrows go to the nearest one that way, Tab goes round.
namespace tapward::app {

inline bool isArrow(int key)
{
    return key == Qt::Key_Left || key == Qt::Key_Right || key == Qt::Key_Up || key == Qt::Key_Down;
}

inline bool isTab(int key) { return key == Qt::Key_Tab || key == Qt::Key_Backtab; }

/// How far `to` is in the arrow's direction; nothing for what lies beside or behind. Twice as far aside counts like
/// straight ahead.
inline std::optional<double> stepsAhead(const QPointF& from, const QPointF& to, int arrow)
{
    const QPointF way = arrow == Qt::Key_Left    ? QPointF(-1, 0)
                        : arrow == Qt::Key_Right ? QPointF(1, 0)
                        : arrow == Qt::Key_Up    ? QPointF(0, -1)
                                                 : QPointF(0, 1);
    const QPointF d = to - from;
    const double ahead = QPointF::dotProduct(d, way);
    const double aside = std::abs(d.x() * way.y() - d.y() * way.x());
    return ahead > 0.5 ? std::optional(ahead + 2 * aside) : std::nullopt;
}

/// The nearest of `places` (anything with `.at`) that way, or null.
template <class Places>
auto nearestAhead(const Places& places, const QPointF& from, int arrow) -> decltype(&*places.begin())
{
    decltype(&*places.begin()) best = nullptr;
    double least = std::numeric_limits<double>::infinity();
    for (const auto& place : places)
        if (const auto cost = stepsAhead(from, place.at, arrow); cost && *cost < least) {
            least = *cost;
            best = &place;
        }
    return best;
}

/// The one after `here` for Tab, before it for Shift+Tab, round and round; `places` is not empty.
template <class Places, class Iterator>
auto& nextByTab(const Places& places, Iterator here, int key)
{
    const auto count = static_cast<std::ptrdiff_t>(places.size());
    const std::ptrdiff_t place = here == places.end() ? (key == Qt::Key_Tab ? -1 : 0) : here - places.begin();
    return places[static_cast<std::size_t>((place + (key == Qt::Key_Tab ? 1 : count - 1)) % count)];
}

/// What the tools that join two places do with a key: Esc, arrows, Tab, Enter. False for any other key.
template <class Cancel, class Step, class Take>
bool walkByKey(const QKeyEvent& event, Cancel cancel, Step step, Take take)
{
    if (event.key() == Qt::Key_Escape)
        cancel();
    else if (isArrow(event.key()) || isTab(event.key()))
        step(event.key());
    else if (event.key() == Qt::Key_Return || event.key() == Qt::Key_Enter)
        take();
    else
        return false;
    return true;
}

}  // namespace tapward::app
