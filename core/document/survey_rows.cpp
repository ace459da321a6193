// SPDX-License-Identifier: GPL-3.0-or-later
#include <cmath>

#include "document/gesture.h"
#include "document/sheet.h"
#include "document/survey.h"

namespace tapward::document {

Result<Edit> looseRuns(const Drawing& drawing, std::size_t count, Stage stage)
{
    constexpr double kLength = 10, kApart = 2;  // modules
    const Box all = Sheet(drawing).bounds();
    const double left = std::round(all.left), top = std::ceil(all.bottom) + 4;
    Gesture gesture(drawing);
    for (std::size_t i = 0; i < count && !gesture.failed(); ++i) {
        const double y = top + kApart * static_cast<double>(i);
        const auto one = connect(gesture.now(), {kNoPart, {}, {left, y}}, {kNoPart, {}, {left + kLength, y}}, stage);
        if (!one) {
            return one;
        }
        for (const Step& step : one->steps) {
            gesture.make(step);
        }
    }
    return gesture.finish({"Add {0} pipes to the survey", {static_cast<std::int64_t>(count)}});
}

}  // namespace tapward::document
