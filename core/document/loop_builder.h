// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <map>
#include <optional>
#include <string>

#include "document/gesture.h"
#include "document/loop_plan.h"

// Draws a planned loop into a drawing, or over the one that is there; private to this room.
namespace tapward::document {

/// Room that a tee takes on a pipe, modules.
inline constexpr double kTee = 2;

/// A fresh tank whose return port is free.
PartId freeTank(const Drawing& drawing);

class LoopBuilder {
public:
    LoopBuilder(const Drawing& drawing, Variant variant) : m_before(drawing), m_gesture(drawing), m_variant(variant) {}

    Result<Edit> draw(const Place& hot, const Place& cold);
    Result<Edit> swap(ReturnWay before);

private:
    const Drawing& now() const { return m_gesture.now(); }
    std::optional<Problem> takeApart(ReturnWay before);
    std::optional<Problem> foreignPipe() const;
    Result<PartId> cutIn(std::string_view role, PartId pipe, std::string_view kind, double share, double width);
    std::optional<Problem> findEnd(const Place& cold);
    void cutInletSensor();
    Result<Edit> build(Message title);
    void survey();
    Point place(const Plan& rightward, Plan& chosen) const;
    void drawItems(const Plan& plan, const Point& origin);
    void drawRuns(const Plan& plan);
    void drawRun(const PlanRun& run);
    void turnBranch(PartId tee, const PipeEnd& other);
    void wire();
    void addCases();
    PartId old(std::string_view role) const;
    PartId id(std::string_view role) const;
    PipeEnd endAt(const std::string& role, const std::string& port, bool begin) const;
    Mark markFor(std::string_view role) const;

    const Drawing& m_before;
    Gesture m_gesture;
    Variant m_variant;
    std::map<std::string, PartId, std::less<>> m_old;   ///< by role, of the variant that is being swapped
    std::map<std::string, PartId, std::less<>> m_ids;   ///< by role, as drawn now
    PipeEnd m_hot, m_back;                              ///< where the loop begins and ends
    std::optional<PartId> m_newHotTee, m_newEndTee;     ///< their branch may still face either way
    PartId m_coldPipe = kNoPart;
    double m_coldShare = 0.5;
    std::optional<Point> m_origin;                      ///< of the block that is being swapped
    bool m_wasMirrored = false;
    Survey m_survey;
};

}  // namespace tapward::document
