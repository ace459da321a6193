// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "document/edit.h"
#include "document/picture.h"

// Floor plans behind the drawing, and lengths read off them.
namespace tapward::document {

/// The ground a plan's picture covers on the canvas, in modules.
struct PlanArea {
    double left, top, right, bottom;
    bool holds(const Point& point) const
    {
        return point.x >= left && point.x <= right && point.y >= top && point.y <= bottom;
    }
};

/// The picture's own bytes; none without a picture.
std::optional<std::string> planPicture(const Part& plan);
std::optional<PlanArea> planArea(const Part& plan);
/// Real metres for one module over this plan; none while it is not scaled.
std::optional<double> metresPerModule(const Part& plan);

/// Why a text is no picture for a plan (bounds of picture.h); an empty one is none.
std::optional<Problem> pictureFlaw(std::string_view base64);

/// Puts a picture into a plan. Errors: bytes that are no picture within bounds, alone or
/// with the other pictures; a part that is no plan.
Result<Edit> setPlanPicture(const Drawing& drawing, PartId plan, std::string_view bytes, std::string name);
/// Scales a plan: the way from `a` to `b` on the canvas is `length_m` in the coach. Errors: no picture, points too
/// near each other, a length that cannot be.
Result<Edit> scalePlan(const Drawing& drawing, PartId plan, Point a, Point b, double length_m);

/// A pipe that lies wholly over a scaled plan, and the length its drawn line has there; the difference in height
/// of its two ends is added. A proposal, nothing is changed.
struct TracedLength {
    PartId pipe = kNoPart;
    double traced_m = 0;
    double now_m = 0;
    /// Whether somebody already measured it or has it from papers: such a length is worth more than a trace.
    bool better = false;
};
/// For these pipes, or for all when empty; those already of that length are left out.
std::vector<TracedLength> tracedLengths(const Drawing& drawing, const std::vector<PartId>& ids = {});
/// Takes proposals as estimated lengths, one step.
Result<Edit> takeTraced(const Drawing& drawing, const std::vector<TracedLength>& lengths);

}  // namespace tapward::document
