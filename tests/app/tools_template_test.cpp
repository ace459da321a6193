// SPDX-License-Identifier: GPL-3.0-or-later
// The smallest template drawn from nothing by keyboard alone, and the same by mouse: one document.
#include <map>

#include "coach_plan.h"
#include "tools_bench.h"

using namespace tapward;
using namespace tapward::app;
using namespace tapward::app::test;

namespace {

/// What was drawn, in order, so that the mouse can do as the keyboard did.
struct Step {
    enum class What { Part, Tee, Pipe } what;
    std::string kind;          // Part
    document::Point at;        // Part, Tee
    std::array<Joint, 2> ends; // Pipe, by this drawing's ids
};

void middleFirst(const std::vector<PartId>& tees, int turn, std::map<PartId, int>& turns)
{
    if (tees.empty())
        return;
    const auto middle = tees.begin() + static_cast<std::ptrdiff_t>(tees.size() / 2);
    turns[*middle] = turn;
    middleFirst({tees.begin(), middle}, turn + 1, turns);
    middleFirst({middle + 1, tees.end()}, turn + 1, turns);
}

struct Sheet : Bench {
    Sheet()
    {
        canvas.resize(1360, 800);
        session.setNewStage(document::Stage::Existing);
        canvas.setZoom(1.0);
        canvas.centerOn(54 * kModule, 26 * kModule);
        QCoreApplication::processEvents();
    }

    QString portName(const Joint& joint) const
    {
        const auto* part = drawing().find(joint.first);
        return QStringLiteral("%1, %2").arg(
            QString::fromStdString(part->tag),
            QString::fromStdString(std::string(document::kindOf(*part).port(joint.second)->title)));
    }

    // By keyboard
    PartId insertedAt(const document::Part& wanted)
    {
        key(Qt::Key_Escape);
        REQUIRE(session.selection().empty());
        key(Qt::Key_Insert);
        chooseKind(std::string(document::kindOf(wanted).title).c_str());
        const auto chosen = session.selection();
        REQUIRE(chosen.size() == 1);
        REQUIRE(drawing().find(chosen.front())->kind == wanted.kind);
        const document::Point at = drawing().find(chosen.front())->at;
        const int right = static_cast<int>(std::lround(wanted.at.x - at.x));
        const int down = static_cast<int>(std::lround(wanted.at.y - at.y));
        key(right < 0 ? Qt::Key_Left : Qt::Key_Right, Qt::ShiftModifier, std::abs(right));
        key(down < 0 ? Qt::Key_Up : Qt::Key_Down, Qt::ShiftModifier, std::abs(down));
        return chosen.front();
    }
    PartId teeIn(PartId pipe)
    {
        for (int i = 0; i < 60 && session.selection() != std::vector{pipe}; ++i)
            key(Qt::Key_Tab);
        REQUIRE(session.selection() == std::vector{pipe});
        key(Qt::Key_Insert);
        chooseKind("tee");
        const auto chosen = session.selection();
        REQUIRE(chosen.size() == 1);
        REQUIRE(drawing().find(chosen.front())->kind == "tee");
        return chosen.front();
    }
    void choose(const QString& question)
    {
        for (int i = 0; i < 60 && !said.startsWith(question); ++i)
            key(Qt::Key_Tab);
        CAPTURE(question.toStdString(), said.toStdString());
        REQUIRE(said.startsWith(question));
        key(Qt::Key_Return);
    }
    void connected(const Joint& from, const Joint& to)
    {
        key(Qt::Key_C);
        choose(QStringLiteral("From %1?").arg(portName(from)));
        choose(QStringLiteral("To %1?").arg(portName(to)));
        REQUIRE(drawing().pipeAt(from.first, from.second) != nullptr);
        REQUIRE(drawing().pipeAt(from.first, from.second) == drawing().pipeAt(to.first, to.second));
    }

    // By mouse
    void repeat(const Step& step)
    {
        if (step.what == Step::What::Pipe)
            drag(portPixel(step.ends[0].first, step.ends[0].second.c_str()),
                 portPixel(step.ends[1].first, step.ends[1].second.c_str()));
        else
            REQUIRE(dropKind(step.what == Step::What::Tee ? "tee" : step.kind.c_str(), pixel(step.at.x, step.at.y)));
    }
};

}  // namespace

TEST_CASE("the smallest template drawn by keyboard only is the same document as the one drawn by mouse", "[canvas]")
{
    const auto coach = smallTrailer();
    Sheet keys;
    std::vector<Step> steps;
    std::map<PartId, PartId> mine;  // of the template -> of this drawing
    for (const auto& part : coach.parts)
        if (!document::kindOf(part).isPipe && part.kind != "tee") {
            CAPTURE(part.tag);
            mine[part.id] = keys.insertedAt(part);
            const auto& made = *keys.drawing().find(mine[part.id]);
            CHECK(made.at == part.at);
            steps.push_back({Step::What::Part, part.kind, made.at, {}});
        }
    auto lines = linesOf(coach);
    std::map<PartId, int> turn;   // of the template's tees: those in the middle of a line come first, or the last
    for (const auto& line : lines)  // ones would find no room
        middleFirst({line.tees.begin(), line.tees.end()}, 1, turn);
    const auto turnOf = [&](const Line& line) {
        return std::max(turn.contains(line.ends[0].first) ? turn[line.ends[0].first] : 0,
                        turn.contains(line.ends[1].first) ? turn[line.ends[1].first] : 0);
    };
    std::ranges::stable_sort(lines, {}, turnOf);
    std::map<PartId, std::size_t> lineOfTee;
    std::vector<Joint> begins;                    // of each line drawn
    std::vector<std::map<PartId, PartId>> tees;   // in each line, the template's in the water's order -> mine
    for (const auto& line : lines) {
        std::array<Joint, 2> ends;
        for (std::size_t i = 0; i < 2; ++i) {
            const auto& [part, port] = line.ends[i];
            if (!isTee(coach, part)) {
                ends[i] = {mine.at(part), port};
                continue;
            }
            auto& there = tees[lineOfTee.at(part)];
            const auto next = there.lower_bound(part);
            const Joint before =
                next == there.begin() ? begins[lineOfTee.at(part)] : Joint{std::prev(next)->second, "run_b"};
            const PartId tee = keys.teeIn(keys.drawing().pipeAt(before.first, before.second)->id);
            there[part] = tee;
            steps.push_back({Step::What::Tee, {}, keys.drawing().find(tee)->at, {}});
            ends[i] = {tee, "branch"};
        }
        keys.connected(ends[0], ends[1]);
        steps.push_back({Step::What::Pipe, {}, {}, ends});
        for (const auto tee : line.tees)
            lineOfTee[tee] = begins.size();
        begins.push_back(ends[0]);
        tees.emplace_back();
    }
    // It is that coach: as many of every kind, every end of a pipe on a port.
    for (const auto* kind : parts::catalogue()) {
        CAPTURE(kind->id);
        CHECK(keys.count(kind->id) == std::ranges::count(coach.parts, kind->id, &document::Part::kind));
    }
    for (const auto& part : keys.drawing().parts)
        if (document::kindOf(part).isPipe)
            CHECK((part.ends[0].part != document::kNoPart && part.ends[1].part != document::kNoPart));
    // And joined as it is.
    for (const auto& there : tees)
        mine.insert(there.begin(), there.end());
    for (const auto& part : coach.parts)
        if (document::kindOf(part).isPipe) {
            CAPTURE(part.tag);
            const std::set<PartId> wanted{mine.at(part.ends[0].part), mine.at(part.ends[1].part)};
            CHECK(std::ranges::count_if(keys.drawing().parts,
                                        [&](const document::Part& other) {
                                            return document::kindOf(other).isPipe
                                                   && std::set<PartId>{other.ends[0].part, other.ends[1].part}
                                                          == wanted;
                                        })
                  == 1);
        }

    Sheet mouse;
    for (const auto& step : steps) {
        CAPTURE(step.kind, step.at.x, step.at.y);
        mouse.repeat(step);
    }
    CHECK(document::write(mouse.drawing()) == document::write(keys.drawing()));
}
