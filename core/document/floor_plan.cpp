// SPDX-License-Identifier: GPL-3.0-or-later
#include "document/floor_plan.h"

#include <algorithm>
#include <cmath>

#include "document/base64.h"

namespace tapward::document {
namespace {

constexpr std::string_view kKind = "floor_plan";
constexpr std::string_view kPicture = "picture";
constexpr std::string_view kRealWidth = "picture_width_m";

bool isPlan(const Part* part) { return part && part->kind == kKind; }

tl::unexpected<Problem> noPlan() { return problem("This is no floor plan.", "Select a floor plan."); }

double height_m(const Drawing& drawing, const PipeEnd& end)
{
    const Part* part = drawing.find(end.part);
    return part ? part->height_m : 0;
}

}  // namespace

std::optional<std::string> planPicture(const Part& plan)
{
    if (!isPlan(&plan) || values(plan).text(kPicture).empty()) {
        return std::nullopt;
    }
    return fromBase64(values(plan).text(kPicture));
}

std::optional<PlanArea> planArea(const Part& plan)
{
    const auto bytes = planPicture(plan);
    const auto info = bytes ? pictureInfo(*bytes) : problem({}, {});
    if (!info) {
        return std::nullopt;
    }
    // The symbol stands at the picture's top left corner and turns it.
    double x = values(plan).number("width_modules");
    double y = x * info->height_px / info->width_px;
    for (int i = 0; i < (plan.turn & 3); ++i) {
        const double turned = -y;
        y = x;
        x = turned;
    }
    return PlanArea{plan.at.x + std::min(x, 0.0), plan.at.y + std::min(y, 0.0), plan.at.x + std::max(x, 0.0),
                    plan.at.y + std::max(y, 0.0)};
}

std::optional<double> metresPerModule(const Part& plan)
{
    if (!isPlan(&plan)) {
        return std::nullopt;
    }
    const double width_m = values(plan).number(kRealWidth);
    return width_m > 0 ? std::optional(width_m / values(plan).number("width_modules")) : std::nullopt;
}

std::optional<Problem> pictureFlaw(std::string_view base64)
{
    if (base64.empty()) {
        return std::nullopt;
    }
    const auto bytes = fromBase64(base64);
    if (!bytes) {
        return Problem{"The picture is not base 64 text.", "Choose the picture again.", {}};
    }
    const auto info = pictureInfo(*bytes);
    return info ? std::nullopt : std::optional(info.error());
}

Result<Edit> setPlanPicture(const Drawing& drawing, PartId id, std::string_view bytes, std::string name)
{
    const Part* plan = drawing.find(id);
    if (!isPlan(plan)) {
        return noPlan();
    }
    const auto info = pictureInfo(bytes);
    if (!info) {
        return tl::unexpected(info.error());
    }
    long together = info->pixels();
    for (const Part& other : drawing.parts) {
        const auto held = other.id == id ? std::nullopt : planPicture(other);
        const auto holds = held ? pictureInfo(*held) : problem({}, {});
        together += holds ? holds->pixels() : 0;
    }
    if (together > kMostPicturesPixels) {
        return problem({"The pictures of the drawing would have {0} pixels together; {1} are allowed.",
                        {static_cast<std::int64_t>(together), static_cast<std::int64_t>(kMostPicturesPixels)}},
                       "Choose a smaller picture, or take another one out.");
    }
    Edit edit{{"Picture of {0}", {plan->tag}}, {}};
    edit.steps.emplace_back(SetField{id, std::string(kPicture), parts::Entry{toBase64(bytes), parts::Basis::Measured}});
    if (values(*plan).text("name").empty() && !name.empty()) {
        edit.steps.emplace_back(SetField{id, "name", parts::Entry{std::move(name), parts::Basis::Estimated}});
    }
    edit.steps.emplace_back(SetField{id, std::string(kRealWidth), std::nullopt});  // another picture, another scale
    if (auto why = refusal(drawing, edit)) {
        return tl::unexpected(std::move(*why));
    }
    return edit;
}

Result<Edit> scalePlan(const Drawing& drawing, PartId id, Point a, Point b, double length_m)
{
    const Part* plan = drawing.find(id);
    if (!isPlan(plan)) {
        return noPlan();
    }
    if (!planArea(*plan)) {
        return problem({"{0} has no picture.", {plan->tag}}, "Choose a picture first.");
    }
    const double modules = std::hypot(b.x - a.x, b.y - a.y);
    if (!(modules >= 0.5)) {
        return problem("The two points lie on one another.",
                       "Choose two points far apart, such as the ends of the coach.");
    }
    if (!(length_m >= 0.05 && length_m <= 50)) {
        return problem({"{0} is no length on a coach's floor plan.", {Measure{length_m, Quantity::Length}}},
                       "Type the real length between the two points.");
    }
    const double width_m = length_m / modules * values(*plan).number("width_modules");
    Edit edit{{"Scale {0}", {plan->tag}},
              {SetField{id, std::string(kRealWidth), parts::Entry{width_m, parts::Basis::Measured}}}};
    if (auto why = refusal(drawing, edit)) {
        return tl::unexpected(std::move(*why));
    }
    return edit;
}

std::vector<TracedLength> tracedLengths(const Drawing& drawing, const std::vector<PartId>& ids)
{
    struct Ground {
        PlanArea area;
        double scale;
    };
    std::vector<Ground> grounds;
    for (const Part& part : drawing.parts) {
        const auto scale = metresPerModule(part);
        const auto area = scale ? planArea(part) : std::nullopt;
        if (area) {
            grounds.push_back({*area, *scale});
        }
    }
    std::vector<TracedLength> traced;
    for (const Part& pipe : drawing.parts) {
        if (grounds.empty() || !kindOf(pipe).isPipe
            || (!ids.empty() && std::find(ids.begin(), ids.end(), pipe.id) == ids.end())) {
            continue;
        }
        const std::vector<Point> corners = route(drawing, pipe);
        const auto ground = std::find_if(grounds.begin(), grounds.end(), [&corners](const Ground& one) {
            return std::all_of(corners.begin(), corners.end(),
                               [&one](const Point& corner) { return one.area.holds(corner); });
        });
        if (ground == grounds.end()) {
            continue;
        }
        double modules = 0;
        for (std::size_t i = 1; i < corners.size(); ++i) {
            modules += std::hypot(corners[i].x - corners[i - 1].x, corners[i].y - corners[i - 1].y);
        }
        const bool bothJoined = pipe.ends[0].part != kNoPart && pipe.ends[1].part != kNoPart;
        const double rise =
            bothJoined ? std::abs(height_m(drawing, pipe.ends[1]) - height_m(drawing, pipe.ends[0])) : 0;
        const auto held = values(pipe);
        TracedLength one{pipe.id, modules * ground->scale + rise, held.number("length_m"),
                         held.isSet("length_m") && held.basis("length_m") != parts::Basis::Estimated};
        constexpr double kSame = 1e-9;
        if (std::abs(one.traced_m - one.now_m) > kSame || !held.isSet("length_m")) {
            traced.push_back(one);
        }
    }
    return traced;
}

Result<Edit> takeTraced(const Drawing& drawing, const std::vector<TracedLength>& lengths)
{
    Edit edit{{"Take {0} traced lengths", {static_cast<std::int64_t>(lengths.size())}}, {}};
    for (const TracedLength& one : lengths) {
        edit.steps.emplace_back(SetField{one.pipe, "length_m", parts::Entry{one.traced_m, parts::Basis::Estimated}});
    }
    if (auto why = refusal(drawing, edit)) {
        return tl::unexpected(std::move(*why));
    }
    return edit;
}

}  // namespace tapward::document
