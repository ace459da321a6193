// SPDX-License-Identifier: GPL-3.0-or-later
#include "fuzz/mutant.h"

#include <algorithm>
#include <cctype>
#include <cmath>
#include <cstdio>
#include <cstdlib>
#include <iterator>
#include <utility>

#include "document/check.h"
#include "document/file.h"
#include "support/random_drawing.h"

namespace tapward::test {
namespace {

using namespace document;

/// Numbers that find the ends of ranges.
double edgeNumber(Random& random)
{
    static const std::vector<double> edges{0,    -0.0, 1,    -1,    0.5,    2,     10,    100,     1e3,    1e6, 1e9,
                                           1e-3, 1e-6, 1e-9, 1e-12, 1e-300, 1e300, -1e-9, -273.15, 101325, 0.1, 7200};
    return random.pick(edges);
}

parts::Value someValue(Random& random, const Drawing& drawing, const parts::Field& field)
{
    if (field.type == parts::FieldType::PartRef) {
        // Mostly a part that may be meant, now and then any at all.
        std::vector<PartId> fit{kNoPart};
        for (const Part& part : drawing.parts) {
            if (random.chance(0.05)
                || (" " + std::string(field.refKinds) + " ").find(" " + part.kind + " ") != std::string::npos) {
                fit.push_back(part.id);
            }
        }
        const PartId id = random.pick(fit);
        return id == kNoPart ? std::string{} : std::to_string(id);
    }
    if (field.type != parts::FieldType::Number && field.type != parts::FieldType::Count) {
        return randomValue(random, field, true);
    }
    double value = 0;
    switch (random.below(8)) {
    case 0:
        value = field.least;
        break;
    case 1:
        value = field.most;
        break;
    case 2:
        value = std::nextafter(field.least, field.most);
        break;
    case 3:
        value = std::nextafter(field.most, field.least);
        break;
    case 4:
        value = edgeNumber(random);
        break;
    case 5:  // log-wise between the bounds: small values as likely as large ones
        value = field.least + (field.most - field.least) * std::pow(10.0, -random.between(0, 9));
        break;
    default:
        return randomValue(random, field, random.chance(0.6));
    }
    return field.type == parts::FieldType::Count ? std::floor(value) : value;
}

std::string someText(Random& random)
{
    static const std::vector<std::string> texts{"",
                                                "a",
                                                "@SUM(1)",
                                                "=1+1",
                                                "-1",
                                                "<b>x</b>",
                                                "a\nb",
                                                "\"quoted\", and; more",
                                                "\xC3\xA4\xE2\x82\xAC\xF0\x9F\x9A\xB0",
                                                "{0} {1}",
                                                "%1 %2 %n",
                                                "/etc/hostname",
                                                std::string(300, 'w'),
                                                " blank ",
                                                "&amp;",
                                                "\xE2\x80\xAEright to left"};
    return random.pick(texts);
}

void setSomeField(Random& random, Drawing& drawing)
{
    Part& part = drawing.parts[static_cast<std::size_t>(random.below(static_cast<int>(drawing.parts.size())))];
    const parts::PartKind& kind = kindOf(part);
    if (kind.fields.empty()) {
        return;
    }
    const parts::Field& field = random.pick(kind.fields);
    if (random.chance(0.1)) {
        part.entries.erase(std::string(field.key));
        return;
    }
    part.entries[std::string(field.key)] = {someValue(random, drawing, field),
                                            static_cast<parts::Basis>(random.below(3))};
}

PipeEnd someEnd(Random& random, const Drawing& drawing)
{
    const Part& part = random.pick(drawing.parts);
    const parts::PartKind& kind = kindOf(part);
    if (kind.isPipe || kind.ports.empty() || random.chance(0.05)) {
        return {kNoPart, {}, {std::round(random.between(-40, 40)), std::round(random.between(-40, 40))}};
    }
    return {part.id, std::string(random.pick(kind.ports).id), {}};
}

/// An end that no pipe has yet, if a few tries find one.
PipeEnd freeEnd(Random& random, const Drawing& drawing)
{
    PipeEnd end;
    for (int i = 0; i < 8; ++i) {
        end = someEnd(random, drawing);
        if (end.part == kNoPart || !drawing.pipeAt(end.part, end.port)) {
            break;
        }
    }
    return end;
}

void reconnect(Random& random, Drawing& drawing)
{
    std::vector<PartId> pipes;
    for (const Part& part : drawing.parts) {
        if (kindOf(part).isPipe) {
            pipes.push_back(part.id);
        }
    }
    if (pipes.empty()) {
        return;
    }
    Part& pipe = *drawing.find(random.pick(pipes));
    const auto end = static_cast<std::size_t>(random.below(2));
    switch (random.below(4)) {
    case 0:
        std::swap(pipe.ends[0], pipe.ends[1]);
        break;
    case 1: {  // two pipes change places
        Part& other = *drawing.find(random.pick(pipes));
        std::swap(pipe.ends[end], other.ends[static_cast<std::size_t>(random.below(2))]);
        break;
    }
    default:
        pipe.ends[end] = freeEnd(random, drawing);
        break;
    }
}

void changePart(Random& random, Drawing& drawing)
{
    Part& part = drawing.parts[static_cast<std::size_t>(random.below(static_cast<int>(drawing.parts.size())))];
    switch (random.below(6)) {
    case 0:
        part.stage = static_cast<Stage>(random.below(3));
        break;
    case 1:
        part.height_m = random.chance(0.5) ? random.between(-2, 4) : edgeNumber(random);
        break;
    case 2:
        part.turn = random.below(4);
        part.flipped = random.chance(0.5);
        break;
    case 3:
        part.at = {std::round(random.between(-40, 40)), std::round(random.between(-40, 40))};
        break;
    case 4:
        part.tag = random.chance(0.5) ? someText(random) : random.pick(drawing.parts).tag;
        break;
    default:
        // Another kind in its place; what it can keep it keeps.
        if (!kindOf(part).isPipe) {
            const parts::PartKind& kind = *random.pick(parts::catalogue());
            if (!kind.isPipe) {
                part.kind = kind.id;
                std::erase_if(part.entries, [&](const auto& entry) { return !kind.field(entry.first); });
                std::vector<std::string> free;
                for (const parts::Port& port : kind.ports) {
                    free.emplace_back(port.id);
                }
                for (Part& pipe : drawing.parts) {
                    for (PipeEnd& end : pipe.ends) {
                        if (end.part == part.id) {
                            if (free.empty()) {
                                end = {kNoPart, {}, part.at};
                            } else {
                                end.port = free.back();
                                free.pop_back();
                            }
                        }
                    }
                }
            }
        }
        break;
    }
}

Action someAction(Random& random, const Drawing& drawing, const Case& script)
{
    Action action;
    action.at_s = random.chance(0.1) ? edgeNumber(random) : random.between(0, script.duration_s);
    action.at_s = random.chance(0.5) ? std::round(action.at_s) : action.at_s;
    const Part& part = random.pick(drawing.parts);
    const parts::PartKind& kind = kindOf(part);
    if (kind.group == parts::TrayGroup::Outlets) {
        action.kind = random.chance(0.7) ? ActionKind::OpenOutlet : ActionKind::CloseOutlet;
        action.part = part.id;
        if (action.kind == ActionKind::OpenOutlet) {
            action.value = random.chance(0.3) ? 1 : random.unit();
            action.second = random.chance(0.5) ? random.unit() : -1;
        }
    } else if (!kind.faults.empty() && random.chance(0.6)) {
        action.kind = random.chance(0.8) ? ActionKind::StartFault : ActionKind::EndFault;
        action.part = part.id;
        action.fault = random.pick(kind.faults).id;
    } else if (part.kind == "hand_valve") {
        action.kind = ActionKind::SetValve;
        action.part = part.id;
        action.value = random.chance(0.4) ? 0 : random.unit();
    } else if (random.chance(0.6)) {
        action.kind = ActionKind::PressButton;
    } else if (random.chance(0.5)) {
        action.kind = ActionKind::SetVoltage;
        action.value = random.chance(0.3) ? edgeNumber(random) : random.between(0, 16);
    } else {
        action.kind =
            random.pick(std::vector<ActionKind>{ActionKind::UseCity, ActionKind::UsePump, ActionKind::UseNothing});
    }
    return action;
}

void changeCase(Random& random, Drawing& drawing)
{
    if (drawing.cases.empty() || random.chance(0.1)) {
        Case one;
        one.name = "Case " + std::to_string(random.below(1000));
        one.duration_s = std::round(random.between(1, 120));
        drawing.cases.push_back(one);
    }
    Case& script = drawing.cases[static_cast<std::size_t>(random.below(static_cast<int>(drawing.cases.size())))];
    const auto temperature = [&]() -> std::optional<double> {
        return random.chance(0.2)   ? std::nullopt
               : random.chance(0.2) ? std::optional(edgeNumber(random))
                                    : std::optional(random.between(-40, 95));
    };
    switch (random.below(9)) {
    case 0:
        script.view = random.chance(0.7) ? View::After : View::Before;
        break;
    case 1:
        script.duration_s = random.chance(0.2) ? edgeNumber(random) : random.between(1, 180);
        break;
    case 2:
        script.start_C = temperature().value_or(21.7);
        break;
    case 3:
        script.ambient_C = temperature();
        break;
    case 4:
        script.supply_C = temperature();
        break;
    case 5:
        script.storedHeater_C = temperature();
        break;
    case 6:
        script.target_C = temperature().value_or(40.6);
        script.targetPart = random.chance(0.5) ? kNoPart : random.pick(drawing.parts).id;
        break;
    case 7:
        if (!script.actions.empty() && random.chance(0.5)) {
            const auto which = static_cast<std::size_t>(random.below(static_cast<int>(script.actions.size())));
            switch (random.below(3)) {
            case 0:
                script.actions.erase(script.actions.begin() + static_cast<std::ptrdiff_t>(which));
                break;
            case 1:
                script.actions[which].at_s = random.pick(script.actions).at_s;
                break;
            default:
                script.actions[which].value = random.chance(0.5) ? random.unit() : edgeNumber(random);
                break;
            }
            break;
        }
        [[fallthrough]];
    default:
        for (int i = 1 + random.below(3); i > 0; --i) {
            script.actions.push_back(someAction(random, drawing, script));
        }
        break;
    }
}

void changeJob(Random& random, Drawing& drawing)
{
    Job& job = drawing.job;
    switch (random.below(5)) {
    case 0:
        job.altitude_m = random.chance(0.5) ? random.between(-100, 5000) : edgeNumber(random);
        break;
    case 1:
        job.hours = edgeNumber(random);
        job.hourlyRate = edgeNumber(random);
        break;
    case 2:
        job.currency = someText(random);
        break;
    case 3:
        job.title = someText(random);
        job.notes = someText(random);
        break;
    default:
        job.customer = someText(random);
        job.sampleFigures = random.chance(0.5);
        break;
    }
}

void slip(Random& random, Drawing& drawing)
{
    if (drawing.parts.empty()) {
        changeJob(random, drawing);
        return;
    }
    const int what = random.below(16);
    if (what < 7) {
        setSomeField(random, drawing);
    } else if (what < 9) {
        reconnect(random, drawing);
    } else if (what < 11) {
        changePart(random, drawing);
    } else if (what < 15) {
        changeCase(random, drawing);
    } else {
        changeJob(random, drawing);
    }
}

/// One number or one flag in the text itself.
void slipInText(Random& random, std::string& text)
{
    const std::size_t from = static_cast<std::size_t>(random.below(static_cast<int>(text.size())));
    const std::size_t begin = text.find_first_of("0123456789", from);
    if (begin == std::string::npos || begin == 0 || text[begin - 1] == '"'
        || std::isalpha(static_cast<unsigned char>(text[begin - 1]))) {
        return;
    }
    const std::size_t end = text.find_first_not_of("0123456789.eE+-", begin);
    char number[40];
    std::snprintf(number, sizeof number, "%.17g", edgeNumber(random));
    text.replace(begin, end - begin, number);
}

/// Cases short enough for a million of them.
void shorten(Random& random, Drawing& drawing, const MutantLimits& limits)
{
    if (drawing.cases.size() > limits.mostCases) {
        drawing.cases.resize(limits.mostCases);
    }
    const double most_s = limits.mostCase_s * (random.below(16) == 0 ? 3 : 1);
    for (Case& script : drawing.cases) {
        if (script.duration_s > most_s) {
            // What happens later is brought forward, so that it is met at all.
            for (Action& action : script.actions) {
                action.at_s *= most_s / script.duration_s;
            }
            script.duration_s = most_s;
        }
    }
}

}  // namespace

std::vector<Drawing> seedDrawings(const std::string& source)
{
    std::vector<Drawing> seeds;
    for (const char* file :
         {"tests/fuzz/seeds/small.tapward", "samples/storage_coach.tapward", "samples/long_hall_coach.tapward",
          "resources/templates/small_travel_trailer.tapward", "resources/templates/storage_heater_coach.tapward",
          "resources/templates/motorhome_rear_bath.tapward",
          "resources/templates/long_trailer_island_galley.tapward"}) {
        auto drawing = load(source + "/" + file);
        if (!drawing) {
            std::fprintf(stderr, "%s: %s\n", file, render(drawing.error().what, UnitSystem::Us).c_str());
            std::exit(2);
        }
        seeds.push_back(std::move(*drawing));
    }
    for (std::uint64_t i = 0; i < 57; ++i) {
        RandomOptions options;
        options.taps = 1;
        options.extras = 2;
        options.loop = i % 4 != 3;
        options.sense = i % 3 != 2;
        seeds.push_back(randomDrawing(1000 + i, options));
    }
    return seeds;
}

std::string mutant(const std::vector<Drawing>& seeds, std::uint64_t seed, std::uint64_t index,
                   const MutantLimits& limits)
{
    Random random(seed * 0x9E3779B97F4A7C15u + index);
    Drawing drawing = seeds[static_cast<std::size_t>(random.below(static_cast<int>(seeds.size())))];
    const Drawing before = drawing;
    for (int i = random.below(4); i > 0; --i) {  // gestures ask for a whole drawing, so they come first
        if (auto edit = randomEdit(random, drawing); edit && !refusal(drawing, *edit)) {
            apply(drawing, std::move(*edit));
        }
    }
    for (int i = 1 + random.below(7); i > 0; --i) {
        slip(random, drawing);
    }
    if (drawing.parts.size() > limits.mostParts) {
        drawing = before;
    }
    shorten(random, drawing, limits);
    std::string text = write(drawing);
    if (random.chance(0.1)) {
        slipInText(random, text);
    }
    return text;
}

}  // namespace tapward::test
