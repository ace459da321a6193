// SPDX-License-Identifier: GPL-3.0-or-later
// A whole coach drawn by hand from nothing, a loop proposed on it, and how many gestures that takes.
#include <map>
#include <QLineF>

#include "coach_plan.h"
#include "document/proposal.h"
#include "tools/assembly_hand.h"
#include "tools_bench.h"

using namespace tapward;
using namespace tapward::app;
using namespace tapward::app::test;
using document::kNoPart;

namespace {

struct Draftsman {
    Bench b;
    AssemblyHand hand{b.canvas, [this] { b.canvas.cancelTool(); }};
    int gestures = 0;

    Draftsman()
    {
        b.canvas.resize(1360, 800);
        b.session.setNewStage(document::Stage::Existing);
    }
    QPoint onScreen(const document::Place& place)
    {
        return b.canvas.mapFromScene(b.canvas.layoutOfDrawing().pipe(place.pipe)->path.pointAtPercent(place.share));
    }
    /// One pick in the tray, one drag: the loop.
    void propose(const char* variant)
    {
        document::Place hot;
        for (const auto& part : b.drawing().parts)
            if (document::kindOf(part).isPipe && !document::beginRefusal(b.drawing(), {part.id, 0.5, {}}))
                hot = {part.id, 0.5, {}};
        REQUIRE(hot.pipe != kNoPart);
        const auto cold = document::usualEnd(b.drawing(), hot, document::ReturnWay::ColdLine);
        REQUIRE(cold);
        hand.startVariant(QString::fromLatin1(variant));
        b.drag(onScreen(hot), onScreen(*cold));
        gestures += 2;
        CAPTURE(b.said.toStdString());
        REQUIRE(document::proposed(b.drawing()) == document::variantNamed(variant));
    }
};

}  // namespace

TEST_CASE("the smallest template drawn from nothing, with a loop, takes 26 gestures, half of one for each part",
          "[canvas][propose]")
{
    const auto coach = smallTrailer();
    Draftsman d;
    Bench& b = d.b;
    b.canvas.setZoom(1.0);
    b.canvas.centerOn(54 * kModule, 26 * kModule);
    std::map<PartId, PartId> mine;  // of the template -> of this drawing
    for (const auto& part : coach.parts) {
        if (document::kindOf(part).isPipe || part.kind == "tee")
            continue;
        CAPTURE(part.tag);
        REQUIRE(b.dropKind(part.kind.c_str(), b.pixel(part.at.x, part.at.y)));
        ++d.gestures;
        REQUIRE(b.session.lastAdded().size() == 1);
        mine[part.id] = b.session.lastAdded().front();
        REQUIRE(b.drawing().find(mine[part.id])->turn == part.turn);
    }

    auto todo = linesOf(coach);
    std::map<PartId, std::size_t> lineOfTee;  // of the template -> index into drawn
    std::vector<std::set<PartId>> drawn;      // pipes of each line that is there
    while (!todo.empty()) {
        const auto ready = std::ranges::find_if(todo, [&](const Line& line) {
            return std::ranges::all_of(
                line.ends, [&](const Joint& end) { return !isTee(coach, end.first) || lineOfTee.contains(end.first); });
        });
        REQUIRE(ready != todo.end());
        const Line line = *ready;
        todo.erase(ready);
        const bool fromTee = isTee(coach, line.ends[0].first);
        const Joint from = line.ends[fromTee ? 1 : 0], to = line.ends[fromTee ? 0 : 1];
        REQUIRE_FALSE(isTee(coach, from.first));
        QPoint end;
        if (isTee(coach, to.first)) {
            // Onto the pipe, where the template has its tee.
            const QPointF wanted = toCanvas(coach.find(to.first)->at);
            double least = 1e9;
            for (const auto pipe : drawn[lineOfTee.at(to.first)])
                for (int i = 1; i < 400; ++i) {
                    const QPointF at = b.canvas.layoutOfDrawing().pipe(pipe)->path.pointAtPercent(i / 400.0);
                    if (const double far = QLineF(at, wanted).length(); far < least) {
                        least = far;
                        end = b.canvas.mapFromScene(at);
                    }
                }
        } else {
            end = b.portPixel(mine.at(to.first), to.second.c_str());
        }
        CAPTURE(coach.find(from.first)->tag, from.second, coach.find(to.first)->tag, to.second, b.said.toStdString());
        b.drag(b.portPixel(mine.at(from.first), from.second.c_str()), end);
        ++d.gestures;
        const auto* fresh = b.drawing().pipeAt(mine.at(from.first), from.second);
        REQUIRE(fresh != nullptr);
        if (isTee(coach, to.first)) {
            for (const auto id : b.session.lastAdded())
                if (id != fresh->id && document::kindOf(*b.drawing().find(id)).isPipe)
                    drawn[lineOfTee.at(to.first)].insert(id);
            CHECK(isTee(b.drawing(), fresh->ends[fresh->ends[0].part == mine.at(from.first) ? 1 : 0].part));
        }
        for (const auto tee : line.tees)
            lineOfTee[tee] = drawn.size();
        drawn.push_back({fresh->id});
    }
    // It is that coach: as many of every kind, every end of a pipe on a port.
    for (const auto* kind : parts::catalogue()) {
        CAPTURE(kind->id);
        CHECK(b.count(kind->id) == std::ranges::count(coach.parts, kind->id, &document::Part::kind));
    }
    for (const auto& part : b.drawing().parts)
        if (document::kindOf(part).isPipe)
            CHECK((part.ends[0].part != kNoPart && part.ends[1].part != kNoPart));

    d.propose("cold_line.one");
    CHECK(d.gestures == 26);
    // Putting every part and drawing every pipe by itself would be a gesture each.
    CAPTURE(b.drawing().parts.size());
    CHECK(2 * d.gestures <= static_cast<int>(b.drawing().parts.size()));
}

TEST_CASE("from the template itself a loop takes three gestures", "[canvas][propose]")
{
    Draftsman d;
    d.b.session.startNew(smallTrailer());
    ++d.gestures;  // the click on the start page
    d.b.canvas.fitDrawing();
    d.propose("own_line.two_series");
    CHECK(d.gestures == 3);
}
