// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <vector>

#include "document/file.h"
#include "study/prediction.h"
#include "support/catch.h"

namespace tapward::test {

/// The small trailer with a check valve after its demand pump: a closed tap leaves no water moving anywhere.
inline document::Drawing trailer()
{
    auto loaded = document::load(TAPWARD_SOURCE_DIR "/resources/templates/small_travel_trailer.tapward");
    REQUIRE(loaded.has_value());
    document::Drawing drawing = *loaded;
    const document::PartId pump = drawing.findTag("DP1")->id;
    const auto add = [&](const char* kind, const char* tag) {
        document::Part part;
        part.id = drawing.nextId++;
        part.kind = kind;
        part.tag = tag;
        drawing.parts.push_back(part);
        return part.id;
    };
    const document::PartId check = add("check_valve", "CV9"), stub = add("pipe_run", "L99");
    bool moved = false;
    for (document::Part& part : drawing.parts) {
        for (document::PipeEnd& end : part.ends) {
            if (!moved && part.id != stub && end.part == pump && end.port == "outlet") {
                end = {check, "outlet", {}};
                moved = true;
            }
        }
    }
    REQUIRE(moved);
    document::Part& pipe = *drawing.find(stub);
    pipe.ends[0] = {pump, "outlet", {}};
    pipe.ends[1] = {check, "inlet", {}};
    pipe.entries["length_m"] = {0.3, parts::Basis::Measured};
    return drawing;
}

struct Draw {
    const char* tag;
    double at_s, for_s, opening, hotShare;
};

inline document::Case draws(const document::Drawing& drawing, document::ActionKind supply,
                            const std::vector<Draw>& list)
{
    document::Case script;
    script.name = "Draws";
    script.duration_s = 200;
    script.start_C = script.target_C = 15;
    script.ambient_C = 15;
    const auto act = [&](double at_s, document::ActionKind kind) -> document::Action& {
        document::Action action;
        action.at_s = at_s;
        action.kind = kind;
        script.actions.push_back(action);
        return script.actions.back();
    };
    act(0, supply);
    for (const Draw& draw : list) {
        document::Action& open = act(draw.at_s, document::ActionKind::OpenOutlet);
        open.part = drawing.findTag(draw.tag)->id;
        open.value = draw.opening;
        open.second = draw.hotShare;
        act(draw.at_s + draw.for_s, document::ActionKind::CloseOutlet).part = drawing.findTag(draw.tag)->id;
    }
    return script;
}

inline study::CaseResult runCase(document::Drawing drawing, const document::Case& script,
                                 const study::Options& options = {})
{
    drawing.cases = {script};
    const auto prediction = study::predict(drawing, options);
    REQUIRE(prediction.has_value());
    REQUIRE_FALSE(prediction->cases.at(0).noAnswer.has_value());
    return prediction->cases.at(0);
}

}  // namespace tapward::test
