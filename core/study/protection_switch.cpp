// SPDX-License-Identifier: GPL-3.0-or-later
#include "study/protection_switch.h"

#include <algorithm>

namespace tapward::study {
namespace {

/// The setting behind a protection and the sensor without which it is on paper only.
struct Setting {
    const char* key;
    const char* sensor;  ///< nullptr: none needed
    bool isFlag;         ///< else seconds, 0 = off
};

Setting settingOf(Protection protection)
{
    using enum Protection;
    switch (protection) {
    case TemperatureStop:
        return {"stop_by_temperature", "stop_sensor", true};
    case HighLimit:
        return {"high_limit", "limit_sensor", true};
    case InletLockout:
        return {"inlet_lockout", "inlet_sensor", true};
    case RefuseWhenWarm:
        return {"refuse_when_warm", "stop_sensor", true};
    case WaitTimer:
        return {"cool_down_wait_s", nullptr, false};
    case LongestRun:
        return {"longest_run_s", nullptr, false};
    case MixingValve:
        break;
    }
    return {nullptr, nullptr, false};
}

}  // namespace

Result<document::Edit> switchProtection(const document::Drawing& drawing, const ProtectionEffect& effect)
{
    const Setting setting = settingOf(effect.protection);
    if (setting.key == nullptr) {
        return problem("A mixing valve is a part, not a setting.",
                       effect.counted ? "Take it out of the drawing to do without it."
                                      : "Put one into the drawing, in the hot line before the outlets.");
    }
    const auto box = std::ranges::find_if(drawing.parts, [](const document::Part& part) {
        return part.kind == "controller" && document::isPresent(part.stage, document::View::After);
    });
    if (box == drawing.parts.end()) {
        return problem("No controller is drawn.", "Draw the loop's controller and its push button.");
    }
    const bool on = !effect.counted;
    if (on && setting.sensor != nullptr && document::values(*box).text(setting.sensor).empty()) {
        return problem("The controller has no sensor for it.",
                       "Draw a temperature sensor and choose it in the controller's details; then switch it on.");
    }
    const double seconds = on ? effect.tried_s : 0;
    if (on && !setting.isFlag && seconds <= 0) {
        return problem("No time is known for it.", "Set it in the controller's details.");
    }
    const auto known = box->entries.find(setting.key);
    parts::Entry entry;
    entry.basis = known != box->entries.end() ? known->second.basis : parts::Basis::Estimated;
    if (setting.isFlag) {
        entry.value = on;
    } else {
        entry.value = seconds;
    }
    return document::Edit{on ? Message("Switch on \"{0}\"", {title(effect.protection)})
                             : Message("Switch off \"{0}\"", {title(effect.protection)}),
                          {document::SetField{box->id, setting.key, entry}}};
}

}  // namespace tapward::study
