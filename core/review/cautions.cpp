// SPDX-License-Identifier: GPL-3.0-or-later
#include <algorithm>

#include "review/finding.h"
#include "review/scald.h"
#include "review/seen.h"
#include "study/cold_return.h"

namespace tapward::review {
namespace {

/// A standing caution, and the rule whose findings say the same with this drawing's own parts and figures.
struct Caution {
    Message text;
    const char* rule = "";

    Caution(Message what, const char* sameAs = "")
        : text(std::move(what)), rule(sameAs) {}  // NOLINT(google-explicit-constructor)
};
using Cautions = std::vector<Caution>;

/// @param without  where water of this heat does not burn within any time that is known; {0} is the heat in both
Message burns(const Measure& heat, std::string without, std::string with)
{
    const auto seconds = wholeBurnSeconds(heat.si);
    if (!seconds) {
        return {std::move(without), {heat}};
    }
    return {std::move(with), {heat, Measure{*seconds, Quantity::Time}}};
}

/// The heater's hottest, where more than one run made it.
const study::HotPlace* repeatedHeat(const Seen& seen)
{
    const study::HotPlace* heat = hottest(seen, {study::HeatPlace::HeaterOutlet});
    return heat && heat->presses > 1 ? heat : nullptr;
}

void hotWater(const Seen& seen, Cautions& out)
{
    using enum study::HeatPlace;
    if (const auto* tap = hottest(seen, {OutletHot, OutletCold}); tap && tap->hottest_C > kColdLineLimit_C) {
        out.push_back(
            {burns(seen.heat(tap->hottest_C), "Hot water can burn. The hottest predicted at a tap is {0}.",
                   "Hot water can burn. The hottest predicted at a tap is {0}: adult skin burns in about {1}, "
                   "children, elders and people with reduced feeling sooner."),
             "scald_at_tap"});
    } else {
        out.emplace_back(Message("Hot water can burn. Feel the water before anybody steps under it."));
    }
    if (const auto* repeated = repeatedHeat(seen)) {
        out.push_back(
            {burns(seen.heat(repeated->hottest_C),
                   "Let the line cool before pressing again: over repeated runs the heater reached {0}.",
                   "Let the line cool before pressing again: over repeated runs the heater reached {0}, which burns in "
                   "about {1}. Each repeat starts warmer than the one before."),
             "repeated_presses_unprotected"});
    }
}

void loopItself(const Seen& seen, Cautions& out)
{
    const study::LoopAnswer& loop = seen.prediction.loop;
    if (loop.circulators.empty()) {
        return;
    }
    if (!repeatedHeat(seen)) {
        out.emplace_back(Message("Let the line cool before pressing again: each repeat starts warmer and can end far "
                                 "above the setting."),
                         "repeated_presses_unprotected");
    }
    out.emplace_back(
        Message(
            "Never rely on one stop: a separate high limit must end the run if the stop, a relay or a sensor fails."),
        "single_stop");
    const study::ColdReturn way = coldReturn(seen.after, seen.prediction.loop);
    if (way.byColdLine) {
        std::string tags;
        for (const document::PartId id : way.outlets) {
            tags += (tags.empty() ? "" : ", ") + tagOf(seen, id);
        }
        if (tags.empty()) {
            out.emplace_back(
                Message("After a run the cold line holds warm water. Fill no kettle, filter or ice maker from it "
                        "until it runs cold."));
        } else {
            out.emplace_back(Message("After a run the cold water at {0} may be warm or hot. Fill no kettle, filter or "
                                     "ice maker from it until it runs cold.",
                                     {tags}));
        }
    }
    if (!seen.after.withRole(parts::Role::MotorValve).empty()) {
        out.emplace_back(
            Message("If the loop's valve stays open, an open cold tap can draw hot water through the stopped pumps."),
            "loop_open_at_rest");
    }
    out.emplace_back(Message("Freeze: pipe, pumps and checks of the loop hold water. Open its valve and run its pump "
                             "while winterizing."),
                     "winter_trapped");
    out.emplace_back(Message(
        "12 V: isolate the battery before work; fuse at the source end; wire sized for drop and heat; splices dry."));
    out.emplace_back(
        Message("Pressure: relieve the water and let it cool before opening a joint; leak-test. Heated water "
                "needs room to grow."));
    out.emplace_back(Message(
        "Drinking water: use listed parts, sanitize and flush before drinking, flush standing water after storage."));
}

Cautions all(const document::Drawing& drawing, const study::Prediction& prediction, const study::Assessment& assessment)
{
    Cautions out;
    const Result<study::Plant> plant = study::makePlant(drawing, document::View::After);
    const study::Plant nothing;
    const Pipes pipes = plant ? pipesOf(drawing, *plant) : Pipes{};
    const Seen seen{drawing, prediction, plant ? *plant : nothing, pipes, assessment};
    hotWater(seen, out);
    loopItself(seen, out);
    const bool burner = std::any_of(seen.after.parts.begin(), seen.after.parts.end(), [](const study::PlantPart& part) {
        return part.model.tankless || (part.model.storage && part.model.storage->burnerInput_W > 0);
    });
    if (burner) {
        out.emplace_back(
            Message("Gas: do not alter, bypass or jumper the heater's switches. A loop may affect its warranty: "
                    "read its manual."));
    }
    out.emplace_back(Message("The makers' instructions, local codes and licensed practice come before these figures."));
    return out;
}

}  // namespace

std::vector<Message> cautions(const document::Drawing& drawing, const study::Prediction& prediction,
                              const study::Assessment& assessment)
{
    return cautionsBeside({}, drawing, prediction, assessment);
}

std::vector<Message> cautionsBeside(const std::vector<Finding>& findings, const document::Drawing& drawing,
                                    const study::Prediction& prediction, const study::Assessment& assessment)
{
    std::vector<Message> texts;
    for (Caution& caution : all(drawing, prediction, assessment)) {
        const bool said = std::any_of(findings.begin(), findings.end(), [&](const Finding& finding) {
            return !finding.dismissed && finding.rule == caution.rule;
        });
        if (!said) {
            texts.push_back(std::move(caution.text));
        }
    }
    return texts;
}

}  // namespace tapward::review
