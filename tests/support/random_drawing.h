// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <algorithm>
#include <array>
#include <cmath>
#include <cstdint>
#include <random>
#include <string>
#include <string_view>
#include <vector>

#include "document/edit.h"

// Random coaches for property tests: a supply, a heater, taps on teed-off lines, loops with pumps in any
// state, and on request drawings that make no sense at all. The same seed gives the same drawing everywhere.
namespace tapward::test {

/// Random numbers that do not depend on the standard library's distributions.
class Random {
public:
    explicit Random(std::uint64_t seed) : m_engine(seed) {}
    int below(int n) { return n <= 1 ? 0 : static_cast<int>(m_engine() % static_cast<std::uint64_t>(n)); }
    double unit() { return static_cast<double>(m_engine() >> 11) * 0x1.0p-53; }
    double between(double least, double most) { return least + unit() * (most - least); }
    bool chance(double share) { return unit() < share; }
    template <class T>
    const T& pick(const std::vector<T>& from)
    {
        return from[static_cast<std::size_t>(below(static_cast<int>(from.size())))];
    }

private:
    std::mt19937_64 m_engine;
};

struct RandomOptions {
    int taps = 4;          ///< about
    int extras = 6;        ///< valves, sensors, filters put somewhere into lines
    bool loop = true;      ///< a preheat loop, usually with pumps, valve and check
    bool sense = true;     ///< false: also loose pipes, parts back to front, shut valves, values anywhere in range
    bool cases = true;
};

/// A value this field accepts: near its default, or anywhere in its range.
inline parts::Value randomValue(Random& random, const parts::Field& field, bool anywhere)
{
    switch (field.type) {
    case parts::FieldType::Flag:
        return random.chance(0.5);
    case parts::FieldType::Choice:
        return std::string(random.pick(field.choices).id);
    case parts::FieldType::Text:
        if (field.key == "picture") {  // one transparent pixel, PNG
            return std::string(random.chance(0.5)
                                   ? "iVBORw0KGgoAAAANSUhEUgAAAAEAAAABCAYAAAAfFcSJAAAADUlEQVR42mNk+M9QDwADhgGA"
                                     "WjR9awAAAABJRU5ErkJggg=="
                                   : "");
        }
        return "text " + std::to_string(random.below(100)) + (random.chance(0.2) ? " \"ä\"\n/~" : "");
    case parts::FieldType::PartRef:
        return std::string{};
    case parts::FieldType::Curve: {
        parts::Curve curve;
        double x = 0, y = random.between(1, 6);
        for (int i = 2 + random.below(6); i > 0; --i) {
            curve.push_back({x, y});
            x += random.between(1e-5, 1e-4);
            y = std::max(0.0, y - random.between(0, 2));
        }
        return curve;
    }
    case parts::FieldType::Count:
        return std::floor(random.between(field.least, anywhere ? field.most : std::min(field.most, field.least + 6)));
    case parts::FieldType::Number:
        break;
    }
    const double initial = std::get<double>(field.initial);
    const double value = anywhere       ? random.between(field.least, std::min(field.most, 1e6))
                         : initial == 0 ? 0.0
                                        : initial * random.between(0.7, 1.4);
    return std::clamp(value, field.least, field.most);
}

/// Draws with the same gestures as a person does, so that whatever comes out could have been drawn.
class Draughtsman {
public:
    explicit Draughtsman(std::uint64_t seed, const RandomOptions& options) : m_random(seed), m_options(options) {}

    document::Drawing draw()
    {
        m_drawing.job.title = "Random coach";
        m_drawing.job.sampleFigures = true;
        const auto heater = place(m_random.chance(0.8) ? "tankless_heater" : "storage_heater");
        const auto city = place("city_inlet");
        m_cold.push_back(pipe(city, "outlet", heater, "cold"));
        const auto first = place("faucet");
        m_hot.push_back(pipe(heater, "hot", first, "hot"));
        branch(m_cold, first, "cold");
        if (m_random.chance(0.6)) {
            drawTankSide();
        }
        for (int i = m_random.below(2 * m_options.taps); i > 0; --i) {
            drawTap();
        }
        if (m_options.loop) {
            drawLoop();
        }
        for (int i = m_random.below(2 * m_options.extras); i > 0; --i) {
            insert(m_random.pick(m_random.chance(0.5) ? m_hot : m_cold),
                   m_random.pick(std::vector<std::string_view>{"hand_valve", "flow_sensor", "temperature_sensor",
                                                               "filter", "check_valve", "regulator"}));
        }
        drawControl();
        if (!m_options.sense) {
            makeNonsense();
        }
        for (const document::Part& part : std::vector<document::Part>(m_drawing.parts)) {
            setSomeFields(part);
        }
        if (m_options.cases) {
            makeCases();
        }
        return std::move(m_drawing);
    }

private:
    using Id = document::PartId;

    bool perform(Result<document::Edit> edit)
    {
        if (!edit || document::refusal(m_drawing, *edit)) {
            return false;
        }
        document::apply(m_drawing, std::move(*edit));
        return true;
    }

    document::Stage stage()
    {
        return m_random.chance(0.7)   ? document::Stage::Existing
               : m_random.chance(0.8) ? document::Stage::Added
                                      : document::Stage::Removed;
    }

    Id place(std::string_view kind)
    {
        const Id id = m_drawing.nextId;
        m_column = (m_column + 8) % 96;
        m_row += m_column == 0 ? 8 : 0;
        const document::Point at{static_cast<double>(m_column), static_cast<double>(m_row)};
        perform(document::placePart(m_drawing, kind, at, stage(), m_options.sense ? 0 : m_random.below(4)));
        return id;
    }

    Id pipe(Id from, std::string_view fromPort, Id to, std::string_view toPort)
    {
        const Id id = m_drawing.nextId;
        perform(
            document::connect(m_drawing, {from, std::string(fromPort), {}}, {to, std::string(toPort), {}}, stage()));
        setLength(id);
        return id;
    }

    void setLength(Id id)
    {
        const double length_m = m_options.sense        ? m_random.between(0.2, 8)
                                : m_random.chance(0.2) ? 0
                                                       : m_random.between(0, 60);
        perform(document::Edit{"Length",
                               {document::SetField{id, "length_m", parts::Entry{length_m, parts::Basis::Measured}}}});
    }

    /// Cuts a part into a pipe of one of the lines; the new pipe joins the line's list. 0 when it cannot be.
    Id insert(Id line, std::string_view kind)
    {
        const Id id = m_drawing.nextId;
        const document::Part* pipe = m_drawing.find(line);
        if (!pipe) {
            return document::kNoPart;
        }
        const auto corners = document::route(m_drawing, *pipe);
        const document::Point at = corners[corners.size() / 2];
        if (!perform(document::splitPipe(m_drawing, line, kind, at, m_random.unit(), stage()))) {
            return document::kNoPart;
        }
        for (std::vector<Id>* list : {&m_hot, &m_cold, &m_return}) {
            if (std::find(list->begin(), list->end(), line) != list->end()) {
                list->push_back(id + 1);
            }
        }
        if (!m_options.sense && m_random.chance(0.3)) {
            perform(document::flipParts(m_drawing, {id}));
        }
        return id;
    }

    /// A tee in one of these pipes with a new pipe from its branch to a port.
    void branch(std::vector<Id>& line, Id part, std::string_view port)
    {
        const Id tee = insert(m_random.pick(line), "tee");
        if (tee != document::kNoPart) {
            line.push_back(pipe(tee, "branch", part, port));
        }
    }

    void drawTankSide()
    {
        const auto tank = place("fresh_tank");
        const auto pump = place("demand_pump");
        pipe(tank, "outlet", pump, "inlet");
        branch(m_cold, pump, "outlet");
        if (m_random.chance(0.5)) {
            branch(m_cold, place("accumulator"), "port");
        }
    }

    void drawTap()
    {
        const auto kind = m_random.pick(std::vector<std::string_view>{
            "faucet", "faucet", "shower", "toilet", "appliance", "outside_outlet", "drain_valve", "mixing_valve"});
        const auto tap = place(kind);
        if (kind == "drain_valve") {
            branch(m_random.chance(0.5) ? m_hot : m_cold, tap, "port");
            return;
        }
        branch(m_cold, tap, "cold");
        if (kind != "toilet") {
            branch(m_hot, tap, "hot");
        }
        if (kind == "mixing_valve") {
            const auto behind = place("shower");
            pipe(tap, "mixed", behind, "hot");
        }
    }

    void drawLoop()
    {
        const auto from = insert(m_random.pick(m_hot), "tee");
        const auto to = insert(m_random.pick(m_cold), "tee");
        if (from == document::kNoPart || to == document::kNoPart) {
            return;
        }
        m_return.push_back(pipe(from, "branch", to, "branch"));
        insert(m_return.back(), "circulator");
        if (m_random.chance(0.6)) {
            insert(m_return.front(), "motor_valve");
        }
        if (m_random.chance(0.7)) {
            insert(m_return.back(), "check_valve");
        }
        if (m_random.chance(0.5)) {
            // A second pump beside or behind the first.
            if (m_random.chance(0.5)) {
                insert(m_return.back(), "circulator");
            } else {
                const auto a = insert(m_return.front(), "tee");
                const auto b = insert(m_return.back(), "tee");
                if (a != document::kNoPart && b != document::kNoPart) {
                    const auto second = pipe(a, "branch", b, "branch");
                    m_return.push_back(second);
                    insert(second, "circulator");
                }
            }
        }
    }

    std::string reference(std::string_view kinds)
    {
        for (const document::Part& part : m_drawing.parts) {
            if (kinds.find(part.kind) != std::string_view::npos && m_random.chance(0.7)) {
                return std::to_string(part.id);
            }
        }
        return {};
    }

    void drawControl()
    {
        for (const auto kind : {"controller", "push_button", "battery", "fuse", "note"}) {
            if (m_random.chance(0.85)) {
                place(kind);
            }
        }
    }

    void makeNonsense()
    {
        for (int i = m_random.below(8); i > 0; --i) {
            std::vector<document::PipeEnd> ends;
            for (int k = 0; k < 2; ++k) {
                const document::Part& part = m_random.pick(m_drawing.parts);
                const parts::PartKind& kind = document::kindOf(part);
                if (kind.ports.empty() || m_random.chance(0.3)) {
                    ends.push_back({document::kNoPart, {}, {m_random.between(-50, 50), m_random.between(-50, 50)}});
                } else {
                    ends.push_back({part.id, std::string(m_random.pick(kind.ports).id), {}});
                }
            }
            perform(document::connect(m_drawing, ends[0], ends[1], stage()));
            place(m_random.pick(parts::catalogue())->id);
        }
        for (int i = m_random.below(4); i > 0; --i) {
            perform(document::removeParts(m_drawing, {m_random.pick(m_drawing.parts).id}, m_random.chance(0.5)));
        }
    }

    void setSomeFields(const document::Part& part)
    {
        const parts::PartKind& kind = document::kindOf(part);
        for (const parts::Field& field : kind.fields) {
            if (!m_random.chance(0.15)) {
                continue;
            }
            parts::Entry entry{randomValue(m_random, field, !m_options.sense),
                               static_cast<parts::Basis>(m_random.below(3))};
            if (field.type == parts::FieldType::PartRef) {
                entry.value = reference(field.refKinds);
            }
            perform(document::Edit{"Set", {document::SetField{part.id, std::string(field.key), std::move(entry)}}});
            if (kind.model && !kind.model(document::values(*m_drawing.find(part.id)))) {
                // Each value is in range but they do not go together: back to the default.
                perform(document::Edit{"Set", {document::SetField{part.id, std::string(field.key), std::nullopt}}});
            }
        }
        if (m_random.chance(0.5)) {
            document::Part changed = *m_drawing.find(part.id);
            if (!kind.isPipe) {
                changed.height_m = m_random.between(0, 2);
            } else if (m_random.chance(0.2)) {
                changed.bends = {{std::round(m_random.between(-40, 40)), std::round(m_random.between(-40, 40))}};
            }
            perform(document::Edit{"Change", {document::ChangePart{std::move(changed)}}});
        }
    }

    void makeCases()
    {
        std::vector<document::Case> cases;
        for (int i = 1 + m_random.below(3); i > 0; --i) {
            document::Case one;
            one.name = "Case " + std::to_string(i);
            one.view = m_random.chance(0.5) ? document::View::After : document::View::Before;
            one.duration_s = std::round(m_random.between(10, 240));
            if (m_random.chance(0.3)) {
                one.ambient_C = m_random.between(-10, 40);
            }
            for (int k = m_random.below(8); k > 0; --k) {
                one.actions.push_back(action(one.duration_s));
            }
            cases.push_back(std::move(one));
        }
        perform(document::Edit{"Cases", {document::SetCases{std::move(cases)}}});
    }

    document::Action action(double duration_s)
    {
        document::Action action;
        action.at_s = std::round(m_random.between(0, duration_s));
        const document::Part& part = m_random.pick(m_drawing.parts);
        const parts::PartKind& kind = document::kindOf(part);
        if (kind.group == parts::TrayGroup::Outlets) {
            action.kind = m_random.chance(0.7) ? document::ActionKind::OpenOutlet : document::ActionKind::CloseOutlet;
            action.part = part.id;
            if (action.kind == document::ActionKind::OpenOutlet) {
                action.value = m_random.unit();
                action.second = m_random.chance(0.5) ? m_random.unit() : -1;
            }
        } else if (!kind.faults.empty() && m_random.chance(0.6)) {
            action.kind = m_random.chance(0.8) ? document::ActionKind::StartFault : document::ActionKind::EndFault;
            action.part = part.id;
            action.fault = m_random.pick(kind.faults).id;
        } else if (m_random.chance(0.6)) {
            action.kind = document::ActionKind::PressButton;
        } else if (m_random.chance(0.5)) {
            action.kind = document::ActionKind::SetVoltage;
            action.value = m_random.between(8, 15);
        } else {
            action.kind = m_random.pick(std::vector<document::ActionKind>{
                document::ActionKind::UseCity, document::ActionKind::UsePump, document::ActionKind::UseNothing});
        }
        return action;
    }

    Random m_random;
    RandomOptions m_options;
    document::Drawing m_drawing;
    std::vector<Id> m_hot, m_cold, m_return;
    int m_column = 0, m_row = 0;
};

inline document::Drawing randomDrawing(std::uint64_t seed, const RandomOptions& options = {})
{
    return Draughtsman(seed, options).draw();
}

/// One thing a person might do next. May be refused.
inline Result<document::Edit> randomEdit(Random& random, const document::Drawing& drawing)
{
    using namespace document;
    const auto somePart = [&]() -> PartId { return drawing.parts.empty() ? kNoPart : random.pick(drawing.parts).id; };
    const auto someIds = [&] {
        std::vector<PartId> ids;
        for (int i = 1 + random.below(5); i > 0; --i) {
            ids.push_back(somePart());
        }
        return ids;
    };
    const auto someEnd = [&]() -> PipeEnd {
        const Part* part = drawing.find(somePart());
        if (part && !kindOf(*part).ports.empty() && random.chance(0.8)) {
            return {part->id, std::string(random.pick(kindOf(*part).ports).id), {}};
        }
        return {kNoPart, {}, {std::round(random.between(-50, 50)), std::round(random.between(-50, 50))}};
    };
    const Point place{std::round(random.between(-50, 50)), std::round(random.between(-50, 50))};
    const auto stage = static_cast<Stage>(random.below(3));
    switch (random.below(14)) {
    case 0:
        return placePart(drawing, random.pick(parts::catalogue())->id, place, stage, random.below(4));
    case 1:
        return connect(drawing, someEnd(), someEnd(), stage);
    case 2:
        return splitPipe(drawing, somePart(), random.pick(parts::catalogue())->id, place, random.unit(), stage);
    case 3:
        return teeOff(drawing, somePart(), place, random.unit(), stage);
    case 4:
        return removeParts(drawing, someIds(), random.chance(0.7));
    case 5:
        return moveParts(drawing, someIds(), std::round(random.between(-5, 5)), std::round(random.between(-5, 5)));
    case 6:
        return turnParts(drawing, someIds(), random.below(4));
    case 7:
        return flipParts(drawing, someIds());
    case 8:
        return setStage(drawing, someIds(), stage);
    case 9: {
        std::vector<Part> copied;
        for (const PartId id : someIds()) {
            const Part* part = drawing.find(id);
            if (part && std::none_of(copied.begin(), copied.end(), [id](const Part& one) { return one.id == id; })) {
                copied.push_back(*part);
            }
        }
        return pasteParts(drawing, copied, 4, 4);
    }
    case 10: {
        Job job = drawing.job;
        job.notes = "note " + std::to_string(random.below(1000));
        job.hours = random.between(0, 20);
        return Edit{"Job", {SetJob{job}}};
    }
    case 11: {
        std::vector<Dismissal> dismissals = drawing.dismissals;
        dismissals.push_back({"rule " + std::to_string(random.below(9)), somePart(), "looked at it", {}});
        return Edit{"Dismiss", {SetDismissals{dismissals}}};
    }
    default: {
        const Part* part = drawing.find(somePart());
        if (!part || kindOf(*part).fields.empty()) {
            return problem("No field.", "None.");
        }
        const parts::Field& field = random.pick(kindOf(*part).fields);
        std::optional<parts::Entry> entry;
        if (random.chance(0.8)) {
            entry = parts::Entry{randomValue(random, field, true), static_cast<parts::Basis>(random.below(3))};
            if (field.type == parts::FieldType::PartRef && random.chance(0.7)) {
                entry->value = std::to_string(somePart());
            }
        }
        return Edit{"Set", {SetField{part->id, std::string(field.key), std::move(entry)}}};
    }
    }
}

}  // namespace tapward::test
