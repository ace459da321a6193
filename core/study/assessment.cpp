// SPDX-License-Identifier: GPL-3.0-or-later
#include "study/assessment.h"

#include <algorithm>
#include <utility>

#include "study/ranges.h"

namespace tapward::study {
namespace {

void keep(std::vector<HotPlace>& list, HotPlace heat)
{
    const auto known = std::find_if(list.begin(), list.end(), [&](const HotPlace& one) {
        return one.place == heat.place && one.part == heat.part;
    });
    if (known == list.end()) {
        list.push_back(std::move(heat));
    } else if (heat.hottest_C > known->hottest_C) {
        *known = std::move(heat);
    }
}

void hottestFirst(std::vector<HotPlace>& list)
{
    std::stable_sort(list.begin(), list.end(),
                     [](const HotPlace& a, const HotPlace& b) { return a.hottest_C > b.hottest_C; });
}

bool beginsFault(const document::Case& script)
{
    return std::any_of(script.actions.begin(), script.actions.end(),
                       [](const document::Action& action) { return action.kind == document::ActionKind::StartFault; });
}

}  // namespace

const HotPlace* Assessment::hottest(std::initializer_list<HeatPlace> places, bool withFaults,
                                    document::PartId part) const
{
    const HotPlace* found = nullptr;
    for (const std::vector<HotPlace>* list : {&sound, &broken}) {
        if (list == &broken && !withFaults) {
            continue;
        }
        for (const HotPlace& heat : *list) {
            if (std::find(places.begin(), places.end(), heat.place) != places.end()
                && (part == document::kNoPart || heat.part == part) && (!found || heat.hottest_C > found->hottest_C)) {
                found = &heat;
            }
        }
    }
    return found;
}

Assessment assess(const document::Drawing& drawing, const Prediction& prediction)
{
    Assessment made;
    made.searchable = prediction.loop.exists && loopParts(drawing).controller != document::kNoPart;
    for (const CaseResult& result : prediction.cases) {
        const document::Case* script = drawing.findCase(result.name);
        if (!script || result.view != document::View::After || result.noAnswer) {
            continue;
        }
        const bool faulty = beginsFault(*script);
        for (const PlaceHeat& heat : result.hottest) {
            keep(faulty ? made.broken : made.sound, {heat.place, heat.part, heat.hottest_C, heat.at_s,
                                                     runsStarted(result, heat.at_s), false, faulty, *script});
        }
    }
    hottestFirst(made.sound);
    hottestFirst(made.broken);
    return made;
}

Assessment assess(const document::Drawing& drawing, const Prediction& prediction,
                  std::shared_ptr<const PressesStudy> presses, Message noPresses, std::shared_ptr<const StopStudy> stop,
                  Message noStop)
{
    Assessment made = assess(drawing, prediction);
    made.depth = Assessment::Depth::Full;
    if (presses) {
        for (const WorstHeat& heat : presses->worst) {
            keep(made.sound,
                 {heat.place, heat.part, heat.hottest_C, heat.at_s, heat.presses, true, false, heat.script});
        }
        hottestFirst(made.sound);
    }
    made.presses = std::move(presses);
    made.noPresses = std::move(noPresses);
    made.stop = std::move(stop);
    made.noStop = std::move(noStop);
    return made;
}

Result<Assessment> assessFully(const document::Drawing& drawing, const Prediction& prediction,
                               const AssessOptions& options)
{
    constexpr double kOfPresses = 0.85;  // of the time both take
    PressesOptions presses;
    presses.stop = options.stop;
    StopOptions stop;
    stop.stop = options.stop;
    if (options.progress) {
        presses.progress = [&options](double share) { options.progress(kOfPresses * share); };
        stop.progress = [&options](int done, int all) {
            options.progress(kOfPresses + (1 - kOfPresses) * (all > 0 ? 1.0 * done / all : 0));
        };
    }
    const auto heats = studyPresses(drawing, presses);
    const auto stops = suggestStop(drawing, stop);
    if (options.stop.stop_requested()) {
        return problem("The study was stopped.", "Start it again.");
    }
    return assess(drawing, prediction, heats ? std::make_shared<const PressesStudy>(*heats) : nullptr,
                  heats ? Message() : heats.error().what, stops ? std::make_shared<const StopStudy>(*stops) : nullptr,
                  stops ? Message() : stops.error().what);
}

}  // namespace tapward::study
