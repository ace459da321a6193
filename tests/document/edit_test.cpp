// SPDX-License-Identifier: GPL-3.0-or-later
#include "document/edit.h"

#include <limits>
#include <set>

#include <rapidcheck.h>

#include "document/file.h"
#include "support/catch.h"
#include "support/edits.h"
#include "support/random_drawing.h"

using namespace tapward;
using namespace tapward::document;
using test::number;

namespace {

Edit make(Drawing& drawing, Result<Edit> edit)
{
    if (!edit) {
        FAIL(render(edit.error().what, UnitSystem::Metric));
    }
    if (const auto why = refusal(drawing, *edit)) {
        FAIL(render(why->what, UnitSystem::Metric));
    }
    return apply(drawing, std::move(*edit));
}

void set(Drawing& drawing, PartId id, const char* key, parts::Value value, parts::Basis basis = parts::Basis::Measured)
{
    make(drawing, Edit{"Set", {SetField{id, key, parts::Entry{std::move(value), basis}}}});
}

/// City inlet (1), faucet (2) and the pipe from one to the other (3), going right.
Drawing line(double length_m = 10)
{
    Drawing drawing;
    make(drawing, placePart(drawing, "city_inlet", {0, 0}, Stage::Existing));
    make(drawing, placePart(drawing, "faucet", {40, 0}, Stage::Existing, 1));  // lower edge to the left
    make(drawing, connect(drawing, {1, "outlet", {}}, {2, "cold", {}}, Stage::Existing));
    set(drawing, 3, "length_m", length_m);
    return drawing;
}

std::string why(const Result<Edit>& edit)
{
    return edit ? std::string{} : render(edit.error().what, UnitSystem::Metric);
}

}  // namespace

TEST_CASE("a part dropped on a pipe turns to its direction and divides it", "[document]")
{
    Drawing drawing = line();
    set(drawing, 3, "elbows", 5.0);
    set(drawing, 3, "tube", std::string("pex_3_4"));
    make(drawing, splitPipe(drawing, 3, "circulator", {20.2, 0.4}, 0.3, Stage::Added));
    const Part& pump = *drawing.find(4);
    CHECK(pump.tag == "P1");
    CHECK(pump.stage == Stage::Added);
    CHECK(pump.turn == 0);
    CHECK(pump.at.x == 20);
    REQUIRE(drawing.find(5));
    CHECK(drawing.find(3)->ends[1] == PipeEnd{4, "inlet", {}});
    CHECK(drawing.find(5)->ends[0] == PipeEnd{4, "outlet", {}});
    CHECK(drawing.find(5)->ends[1] == PipeEnd{2, "cold", {}});
    CHECK(drawing.find(5)->stage == Stage::Existing);
    CHECK_THAT(number(drawing, 3, "length_m"), WithinAbs(3.0, 1e-12));
    CHECK(number(drawing, 3, "length_m") + number(drawing, 5, "length_m") == 10.0);
    CHECK(number(drawing, 3, "elbows") + number(drawing, 5, "elbows") == 5.0);
    CHECK(values(*drawing.find(5)).text("tube") == "pex_3_4");
    CHECK(drawing.find(5)->entries.at("length_m").basis == parts::Basis::Measured);
}

TEST_CASE("a part dropped on a pipe that runs the other way is turned round", "[document]")
{
    Drawing drawing = line();
    Part pipe = *drawing.find(3);
    std::swap(pipe.ends[0], pipe.ends[1]);
    make(drawing, Edit{"Turn", {ChangePart{pipe}}});
    make(drawing, splitPipe(drawing, 3, "check_valve", {20, 0}, 0.5, Stage::Existing));
    CHECK(drawing.find(4)->turn == 2);
    CHECK(drawing.find(3)->ends[1].port == "inlet");
}

TEST_CASE("a tee takes the tube and fittings of the pipe it is put into", "[document]")
{
    Drawing drawing = line();
    set(drawing, 3, "tube", std::string("copper_l_1_2"));
    set(drawing, 3, "fittings", std::string("soldered"));
    make(drawing, teeOff(drawing, 3, {20, 0}, 0.5, Stage::Added));
    CHECK(values(*drawing.find(4)).text("tube") == "copper_l_1_2");
    CHECK(values(*drawing.find(4)).text("fittings") == "soldered");
    make(drawing, connect(drawing, {4, "branch", {}}, {kNoPart, {}, {20, 10}}, Stage::Added));
    CHECK(drawing.pipeAt(4, "branch")->id == 6);
}

TEST_CASE("dividing a pipe and healing it gives back its length to the last bit", "[document][property]")
{
    CHECK(rc::check("split and heal", [](std::uint64_t seed) {
        test::Random random(seed);
        const double length_m = random.chance(0.5) ? random.between(0, 200) : random.between(0, 1e-3);
        const double extra_k = random.between(0, 30);
        const double elbows = random.below(200);
        Drawing drawing = line(length_m);
        set(drawing, 3, "extra_k", extra_k);
        set(drawing, 3, "elbows", elbows);
        make(drawing, splitPipe(drawing, 3, "hand_valve", {random.between(2, 38), 0}, random.unit(), Stage::Existing));
        for (const char* key : {"length_m", "extra_k", "elbows"}) {
            RC_ASSERT(number(drawing, 3, key) >= 0);
            RC_ASSERT(number(drawing, 5, key) >= 0);
        }
        make(drawing, removeParts(drawing, {4}, true));
        RC_ASSERT(drawing.find(4) == nullptr);
        RC_ASSERT(drawing.find(5) == nullptr);
        RC_ASSERT(number(drawing, 3, "length_m") == length_m);
        RC_ASSERT(number(drawing, 3, "extra_k") == extra_k);
        RC_ASSERT(number(drawing, 3, "elbows") == elbows);
        RC_ASSERT(drawing.find(3)->ends[1] == (PipeEnd{2, "cold", {}}));
    }));
}

TEST_CASE("healing works whichever way the two pipes were drawn", "[document]")
{
    for (const bool turnFirst : {false, true}) {
        for (const bool turnSecond : {false, true}) {
            Drawing drawing = line();
            make(drawing, splitPipe(drawing, 3, "filter", {20, 0}, 0.25, Stage::Existing));
            for (const auto& [id, turn] : {std::pair{PartId{3}, turnFirst}, {PartId{5}, turnSecond}}) {
                if (turn) {
                    Part pipe = *drawing.find(id);
                    std::swap(pipe.ends[0], pipe.ends[1]);
                    make(drawing, Edit{"Turn", {ChangePart{pipe}}});
                }
            }
            make(drawing, removeParts(drawing, {4}, true));
            std::set<std::pair<PartId, std::string>> joined;
            int pipes = 0;
            for (const Part& part : drawing.parts) {
                if (kindOf(part).isPipe) {
                    ++pipes;
                    joined.insert({part.ends[0].part, part.ends[0].port});
                    joined.insert({part.ends[1].part, part.ends[1].port});
                }
            }
            CHECK(pipes == 1);
            CHECK(joined == std::set<std::pair<PartId, std::string>>{{1, "outlet"}, {2, "cold"}});
        }
    }
}

TEST_CASE("hand-made bends stay on their side of a part put between them", "[document]")
{
    Drawing drawing = line();
    Part pipe = *drawing.find(3);
    pipe.bends = {{6, 0}, {6, 10}, {30, 10}, {30, 1}};
    make(drawing, Edit{"Bend", {ChangePart{pipe}}});
    make(drawing, splitPipe(drawing, 3, "hand_valve", {18, 10}, 0.5, Stage::Existing));
    CHECK(drawing.find(4)->at == Point{18, 10});
    CHECK(drawing.find(3)->bends == std::vector<Point>{{6, 0}, {6, 10}});
    CHECK(drawing.find(5)->bends == std::vector<Point>{{30, 10}, {30, 1}});
    make(drawing, removeParts(drawing, {4}, true));
    CHECK(drawing.find(3)->bends == pipe.bends);
}

TEST_CASE("without healing the pipes of a removed part go with it", "[document]")
{
    Drawing drawing = line();
    make(drawing, splitPipe(drawing, 3, "filter", {20, 0}, 0.25, Stage::Existing));
    make(drawing, removeParts(drawing, {4}, false));
    CHECK(drawing.parts.size() == 2);
}

TEST_CASE("removing a tee and its branch heals the run", "[document]")
{
    Drawing drawing = line();
    make(drawing, teeOff(drawing, 3, {20, 0}, 0.5, Stage::Added));
    make(drawing, connect(drawing, {4, "branch", {}}, {kNoPart, {}, {20, 10}}, Stage::Added));
    make(drawing, removeParts(drawing, {4, 6}, true));
    CHECK(drawing.parts.size() == 3);
    CHECK(number(drawing, 3, "length_m") == 10.0);
}

TEST_CASE("removing a part lets go of everything that names it", "[document]")
{
    Drawing drawing = line();
    make(drawing, placePart(drawing, "controller", {0, 20}, Stage::Added));                                 // 4
    make(drawing, splitPipe(drawing, 3, "temperature_sensor", {20, 0}, 0.5, Stage::Added));                  // 5, 6
    set(drawing, 4, "stop_sensor", std::string("5"));
    Case one;
    one.name = "Fault";
    one.targetPart = 5;
    one.actions = {{1, ActionKind::StartFault, 5, 1, -1, "broken", {}},
                   {2, ActionKind::PressButton, kNoPart, 1, -1, {}, {}}};
    make(drawing, Edit{"Cases", {SetCases{{one}}}});
    make(drawing,
         Edit{"Dismiss", {SetDismissals{{{"some_rule", 5, "seen", {}}, {"other_rule", kNoPart, "seen", {}}}}}});

    // The bare step is refused while something refers to the part.
    CHECK(refusal(drawing, Edit{"Remove", {RemovePart{5}}}));
    const std::string before = write(drawing);
    Edit undo = make(drawing, removeParts(drawing, {5}, true));
    CHECK(values(*drawing.find(4)).text("stop_sensor").empty());
    CHECK(drawing.cases[0].targetPart == kNoPart);
    CHECK(drawing.cases[0].actions.size() == 1);
    CHECK(drawing.dismissals.size() == 1);
    REQUIRE(read(write(drawing)));
    apply(drawing, std::move(undo));
    CHECK(write(drawing) == before);
}

TEST_CASE("moved parts take their pipes along, and bends when both ends move", "[document]")
{
    Drawing drawing = line();
    Part pipe = *drawing.find(3);
    pipe.bends = {{10, 5}, {20, 5}};
    make(drawing, Edit{"Bend", {ChangePart{pipe}}});
    make(drawing, moveParts(drawing, {1}, 0, 4));
    CHECK(drawing.find(1)->at == Point{0, 4});
    CHECK(drawing.find(3)->bends == pipe.bends);
    CHECK(drawing.find(3)->ends == pipe.ends);
    make(drawing, moveParts(drawing, {1, 2}, 3, -4));
    CHECK(drawing.find(2)->at == Point{43, -4});
    CHECK(drawing.find(3)->bends == std::vector<Point>{{13, 1}, {23, 1}});
}

TEST_CASE("turning a group four times leaves it where it was", "[document]")
{
    Drawing drawing = line();
    const std::string before = write(drawing);
    for (int i = 0; i < 4; ++i) {
        make(drawing, turnParts(drawing, {1, 2}, 1));
    }
    CHECK(write(drawing) == before);
    make(drawing, flipParts(drawing, {1, 2}));
    CHECK(write(drawing) != before);
    make(drawing, flipParts(drawing, {1, 2}));
    CHECK(write(drawing) == before);
}

TEST_CASE("flipping one part turns its flow round", "[document]")
{
    Drawing drawing = line();
    make(drawing, placePart(drawing, "check_valve", {0, 20}, Stage::Existing, 1));
    make(drawing, flipParts(drawing, {4}));
    const Part& check = *drawing.find(4);
    CHECK(portPlace(check, *kindOf(check).port("outlet")) == Point{0, 18});
}

TEST_CASE("pasted parts get ids and tags of their own, joined among themselves", "[document]")
{
    Drawing drawing = line();
    make(drawing, splitPipe(drawing, 3, "circulator", {20, 0}, 0.5, Stage::Added));  // 4, 5
    make(drawing, placePart(drawing, "controller", {0, 20}, Stage::Added));           // 6
    set(drawing, 4, "controller", std::string("6"));
    auto copied = readParts(writeParts(drawing, {1, 4, 6}));
    REQUIRE(copied);
    CHECK(copied->size() == 4);  // the pipe between 1 and 4 comes along

    Drawing other = line();
    make(other, pasteParts(other, *copied, 5, 7));
    make(other, pasteParts(other, *copied, 9, 9));
    std::set<std::string> tags;
    std::set<PartId> ids;
    for (const Part& part : other.parts) {
        CHECK(tags.insert(part.tag).second);
        CHECK(ids.insert(part.id).second);
    }
    CHECK(other.parts.size() == 3 + 4 + 4);
    const Part* pump = other.findTag("P1");
    const Part* box = other.findTag("C1");
    REQUIRE(pump);
    REQUIRE(box);
    CHECK(pump->at == Point{25, 7});
    CHECK(values(*pump).text("controller") == std::to_string(box->id));
    const Part* pipe = other.pipeAt(pump->id, "inlet");
    REQUIRE(pipe);
    CHECK(pipe->ends[0].part == other.findTag("CW2")->id);
    CHECK(read(write(other)));
}

TEST_CASE("a pipe copied without its parts hangs loose where it was", "[document]")
{
    Drawing drawing = line();
    const auto copied = readParts(writeParts(drawing, {3}));
    REQUIRE(copied);
    REQUIRE(copied->size() == 1);
    CHECK(copied->front().ends[0] == PipeEnd{kNoPart, {}, {2, 0}});
}

TEST_CASE("what cannot be drawn is refused with a reason and a remedy", "[document]")
{
    Drawing drawing = line();
    CHECK(why(placePart(drawing, "no_such_kind", {}, Stage::Existing)).find("no_such_kind") != std::string::npos);
    CHECK_FALSE(placePart(drawing, "pipe_run", {}, Stage::Existing));
    CHECK_FALSE(placePart(drawing, "tee", {std::numeric_limits<double>::quiet_NaN(), 0}, Stage::Existing));
    CHECK(why(connect(drawing, {1, "outlet", {}}, {2, "hot", {}}, Stage::Existing)).find("L1")
          != std::string::npos);  // taken
    CHECK_FALSE(connect(drawing, {2, "hot", {}}, {2, "hot", {}}, Stage::Existing));
    CHECK_FALSE(connect(drawing, {2, "hot", {}}, {3, "inlet", {}}, Stage::Existing));  // a pipe on a pipe
    CHECK_FALSE(connect(drawing, {2, "drain", {}}, {kNoPart, {}, {}}, Stage::Existing));
    CHECK_FALSE(connect(drawing, {99, "hot", {}}, {kNoPart, {}, {}}, Stage::Existing));
    CHECK_FALSE(splitPipe(drawing, 3, "faucet", {20, 0}, 0.5, Stage::Existing));
    CHECK_FALSE(splitPipe(drawing, 1, "tee", {20, 0}, 0.5, Stage::Existing));
    CHECK_FALSE(removeParts(drawing, {}, true));
    CHECK_FALSE(removeParts(drawing, {99}, true));
    CHECK_FALSE(moveParts(drawing, {99}, 1, 1));
    CHECK_FALSE(moveParts(drawing, {1}, 1e9, 0));
    CHECK_FALSE(moveParts(drawing, {1}, 0, 0));
    CHECK_FALSE(setStage(drawing, {1}, Stage::Existing));
    CHECK_FALSE(pasteParts(drawing, {}, 0, 0));

    const auto refused = [&drawing](Step step) { return refusal(drawing, Edit{"Try", {std::move(step)}}).has_value(); };
    Part twin = *drawing.find(1);
    twin.id = 0;
    CHECK(refused(AddPart{twin}));  // its tag is taken
    CHECK(refused(RemovePart{1}));  // a pipe hangs on it
    CHECK(refused(RemovePart{77}));
    Part other = *drawing.find(1);
    other.kind = "tee";
    CHECK(refused(ChangePart{other}));
    CHECK(refused(SetField{1, "no_such_key", parts::Entry{1.0}}));
    CHECK(refused(SetField{1, "no_such_key", std::nullopt}));
    CHECK(refused(SetField{1, "pressure_Pa", parts::Entry{-1.0}}));
    CHECK(refused(SetField{1, "name", parts::Entry{std::string(9000, 'x')}}));
    CHECK(refused(SetField{1, "name", parts::Entry{std::string("\xff\xfe")}}));
    CHECK(refused(SetCases{{Case{}}}));  // no name
    Job job;
    job.hours = -1;
    CHECK(refused(SetJob{job}));
    CHECK(refused(SetDismissals{{{"rule", 77, "x", {}}}}));
    CHECK(refusal(drawing, Edit{}));
    CHECK_FALSE(refused(SetField{1, "pressure_Pa", parts::Entry{300e3}}));
}

TEST_CASE("a refused edit leaves nothing half done", "[document]")
{
    Drawing drawing = line();
    const std::string before = write(drawing);
    const Edit edit{"Both",
                    {SetField{1, "pressure_Pa", parts::Entry{300e3}}, SetField{1, "pressure_Pa", parts::Entry{-1.0}}}};
    CHECK(refusal(drawing, edit));
    CHECK(write(drawing) == before);
}

TEST_CASE("a step may build on the ones before it", "[document]")
{
    Drawing drawing = line();
    Part valve;
    valve.kind = "check_valve";
    valve.tag = "CV1";
    valve.id = 4;
    Part pipe;
    pipe.kind = "pipe_run";
    pipe.tag = "L9";
    pipe.ends = {PipeEnd{2, "hot", {}}, PipeEnd{4, "inlet", {}}};
    CHECK_FALSE(refusal(drawing, Edit{"Two", {AddPart{valve}, AddPart{pipe}}}));
    CHECK(refusal(drawing, Edit{"Two", {AddPart{pipe}, AddPart{valve}}}));
}

TEST_CASE("an id is not given twice while its part can come back", "[document]")
{
    Drawing drawing = line();
    make(drawing, placePart(drawing, "note", {}, Stage::Existing));  // 4
    make(drawing, removeParts(drawing, {4}, false));
    CHECK(drawing.nextId == 5);
    make(drawing, placePart(drawing, "note", {}, Stage::Existing));
    CHECK(drawing.find(4) == nullptr);
    CHECK(drawing.find(5));
}

TEST_CASE("a part's number and the next one are taken as they are given, never one that is taken", "[document]")
{
    Drawing drawing = line();  // 1 to 3, the next is 4
    const auto add = [](PartId id, PartId next) {
        Part note;
        note.id = id;
        note.kind = "note";
        note.tag = "N" + std::to_string(id);
        return Edit{"Add", {AddPart{note, next}}};
    };
    CHECK_FALSE(refusal(drawing, add(kNoPart, kNoPart)));
    CHECK_FALSE(refusal(drawing, add(10, 11)));
    CHECK(refusal(drawing, add(10, 10)));
    CHECK(refusal(drawing, add(2, 9)));   // there is a part 2
    CHECK(refusal(drawing, add(kNoPart, 4)));
    Drawing far = drawing;
    apply(far, add(10, kNoPart));
    CHECK(far.nextId == 11);
    CHECK(refusal(far, add(5, 10)));      // 10 is there
    CHECK_FALSE(refusal(far, add(5, 11)));
    apply(far, add(5, kNoPart));
    CHECK(far.nextId == 11);
    CHECK(far.parts[3].id == 5);          // sorted
    // Taking a part away may set the number back as far as the others allow.
    Drawing notes = drawing;
    apply(notes, add(10, kNoPart));
    CHECK(refusal(notes, Edit{"Remove", {RemovePart{10, 3}}}));
    CHECK_FALSE(refusal(notes, Edit{"Remove", {RemovePart{10, 4}}}));
    apply(notes, Edit{"Remove", {RemovePart{10, 4}}});
    CHECK(notes.nextId == 4);
    Drawing kept = drawing;
    apply(kept, add(10, kNoPart));
    apply(kept, Edit{"Remove", {RemovePart{10}}});
    CHECK(kept.nextId == 11);
}

TEST_CASE("a drawing takes four thousand parts and not one more", "[document]")
{
    Drawing drawing;
    for (PartId id = 1; id < 4000; ++id) {
        Part note;
        note.id = id;
        note.kind = "note";
        note.tag = "N" + std::to_string(id);
        drawing.parts.push_back(note);
    }
    drawing.nextId = 4000;
    make(drawing, placePart(drawing, "note", {0, 0}, Stage::Existing));
    CHECK(drawing.parts.size() == 4000);
    CHECK_FALSE(placePart(drawing, "note", {0, 0}, Stage::Existing));
}

TEST_CASE("a refusal names the part it is about by its tag", "[document]")
{
    Drawing drawing = line();
    const auto where = [&drawing](Step step) {
        const auto why = refusal(drawing, Edit{"Try", {std::move(step)}});
        return why ? why->where : "taken";
    };
    CHECK(where(SetField{1, "pressure_Pa", parts::Entry{-1.0}}) == "CW1");
    CHECK(where(SetField{1, "no_such_key", std::nullopt}) == "CW1");
    CHECK(where(SetField{1, "pressure_Pa", std::nullopt}) == "taken");
    CHECK(where(RemovePart{2}) == "F1");
    Part high = *drawing.find(2);
    high.height_m = 1e4;
    CHECK(where(ChangePart{high}) == "F1");
    high = *drawing.find(2);
    high.tag = "CW1";
    CHECK(where(ChangePart{high}) == "CW1");
    Part second = *drawing.find(3);
    second.id = 0;
    second.tag = "L2";
    second.ends[1] = {};
    CHECK(where(AddPart{second}) == "CW1");  // its port holds a pipe already
    second.ends[0].port = "inlet";
    CHECK(where(AddPart{second}) == "L2");
    second.ends[0] = {2, "hot", {}};
    CHECK(where(AddPart{second}) == "taken");
}

TEST_CASE("undo all gives the first bytes back, redo all the last", "[document][property]")
{
    CHECK(rc::check("undo and redo", [](std::uint64_t seed) {
        test::RandomOptions options;
        options.sense = seed % 3 != 0;
        Drawing drawing = test::randomDrawing(seed, options);
        const std::string first = write(drawing);
        const Drawing start = drawing;
        test::Random random(seed ^ 0x5bd1e995u);
        std::vector<Edit> undo;
        for (int i = 0; i < 40; ++i) {
            auto edit = test::randomEdit(random, drawing);
            if (!edit || refusal(drawing, *edit)) {
                continue;
            }
            undo.push_back(apply(drawing, std::move(*edit)));
        }
        const std::string last = write(drawing);
        const auto reread = read(last);  // whatever can be drawn can be opened again
        RC_ASSERT(reread.has_value());
        RC_ASSERT(write(*reread) == last);

        std::vector<Edit> redo;
        while (!undo.empty()) {
            RC_ASSERT(!refusal(drawing, undo.back()));
            redo.push_back(apply(drawing, std::move(undo.back())));
            undo.pop_back();
        }
        RC_ASSERT(write(drawing) == first);
        RC_ASSERT(drawing == start);
        while (!redo.empty()) {
            RC_ASSERT(!refusal(drawing, redo.back()));
            apply(drawing, std::move(redo.back()));
            redo.pop_back();
        }
        RC_ASSERT(write(drawing) == last);
    }));
}
