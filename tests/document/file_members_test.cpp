// SPDX-License-Identifier: GPL-3.0-or-later
// One file with every member the format has, each with a value of its own: what is read is held against the file,
// what is written against the words of the format. A round trip alone would not see a key read and written wrong.
#include "document/file.h"

#include <nlohmann/json.hpp>

#include "document/json_text.h"
#include "support/catch.h"

using namespace tapward;
using namespace tapward::document;

namespace {

const char* const kEverything = R"({
  "format": "tapward", "version": 1,
  "job": {"title": "a", "customer": "b", "coach": "c", "technician": "d", "date": "e", "revision": "f", "notes": "g",
          "currency": "EUR", "hours": 2, "hourly_rate": 3, "altitude_m": 4, "sample_figures": true},
  "parts": [
    {"id": 1, "kind": "faucet", "tag": "F1", "stage": "removed", "at": [10, 11.5], "turn": 3, "flipped": true,
     "label": [1, 2], "height_m": 0.75,
     "assembly": {"variant": "cold_line.one", "role": "hot_tee", "cold_pipe": 3, "cold_share": 0.25},
     "fields": {"name": {"value": "Galley", "basis": "measured"}}},
    {"id": 2, "kind": "circulator", "tag": "P1", "stage": "added", "at": [20, 21],
     "fields": {"curve": {"value": [[0, 3], [0.0001, 1]], "basis": "data_sheet"},
                "current_A": {"value": 1.5, "basis": "estimated"}}},
    {"id": 3, "kind": "pipe_run", "tag": "L1", "ends": [{"part": 2, "port": "outlet"}, {"at": [7, 8]}],
     "bends": [[5, 6], [7, 6]]},
    {"id": 4, "kind": "hand_valve", "tag": "V1", "at": [30, 31]}],
  "cases": [
    {"name": "One", "view": "before", "duration_s": 100, "start_C": 11, "ambient_C": 12, "supply_C": 13,
     "stored_heater_C": 14, "target_C": 15, "target_part": 1, "actions": [
       {"at_s": 1, "do": "open_outlet", "part": 1, "opening": 0.5, "hot_share": 0.25},
       {"at_s": 2, "do": "open_outlet", "part": 1},
       {"at_s": 3, "do": "close_outlet", "part": 1},
       {"at_s": 4, "do": "press_button"},
       {"at_s": 5, "do": "set_valve", "part": 4, "opening": 0.75},
       {"at_s": 6, "do": "use_city"}, {"at_s": 7, "do": "use_pump"}, {"at_s": 8, "do": "use_nothing"},
       {"at_s": 9, "do": "set_voltage", "voltage_V": 11.5},
       {"at_s": 10, "do": "start_fault", "part": 2, "fault": "$FAULT"},
       {"at_s": 11, "do": "end_fault", "part": 2, "fault": "$FAULT"}]},
    {"name": "Two"}],
  "dismissals": [{"rule": "r", "part": 2, "reason": "seen"}, {"rule": "s", "reason": ""}],
  "next_id": 12})";

std::string everything()
{
    std::string text = kEverything;
    const std::string fault(parts::find("circulator")->faults.at(0).id);
    for (std::size_t at = text.find("$FAULT"); at != std::string::npos; at = text.find("$FAULT")) {
        text.replace(at, 6, fault);
    }
    return text;
}

}  // namespace

TEST_CASE("every member of the format is read into its own place", "[document][file]")
{
    const auto drawing = read(everything());
    if (!drawing) {
        FAIL(drawing.error().where << ' ' << render(drawing.error().what, UnitSystem::Metric));
    }
    const Job& job = drawing->job;
    CHECK(job.title == "a");
    CHECK(job.customer == "b");
    CHECK(job.coach == "c");
    CHECK(job.technician == "d");
    CHECK(job.date == "e");
    CHECK(job.revision == "f");
    CHECK(job.notes == "g");
    CHECK(job.currency == "EUR");
    CHECK(job.hours == 2);
    CHECK(job.hourlyRate == 3);
    CHECK(job.altitude_m == 4);
    CHECK(job.sampleFigures);

    REQUIRE(drawing->parts.size() == 4);
    const Part& faucet = drawing->parts[0];
    CHECK(faucet.id == 1);
    CHECK(faucet.kind == "faucet");
    CHECK(faucet.tag == "F1");
    CHECK(faucet.stage == Stage::Removed);
    CHECK(faucet.at == Point{10, 11.5});
    CHECK(faucet.turn == 3);
    CHECK(faucet.flipped);
    REQUIRE(faucet.label);
    CHECK(*faucet.label == Point{1, 2});
    CHECK(faucet.height_m == 0.75);
    REQUIRE(faucet.mark);
    CHECK(faucet.mark->variant == "cold_line.one");
    CHECK(faucet.mark->role == "hot_tee");
    CHECK(faucet.mark->coldPipe == 3);
    CHECK(faucet.mark->coldShare == 0.25);
    CHECK(faucet.entries.at("name") == parts::Entry{std::string("Galley"), parts::Basis::Measured});
    const Part& pump = drawing->parts[1];
    CHECK(pump.stage == Stage::Added);
    CHECK(pump.turn == 0);
    CHECK_FALSE(pump.flipped);
    CHECK_FALSE(pump.label);
    CHECK(pump.height_m == 0);
    CHECK_FALSE(pump.mark);
    CHECK(pump.entries.at("curve").basis == parts::Basis::DataSheet);
    CHECK(pump.entries.at("current_A") == parts::Entry{1.5, parts::Basis::Estimated});
    const Part& pipe = drawing->parts[2];
    CHECK(pipe.stage == Stage::Existing);
    CHECK(pipe.ends[0] == PipeEnd{2, "outlet", {}});
    CHECK(pipe.ends[1] == PipeEnd{kNoPart, "", {7, 8}});
    CHECK(pipe.bends == std::vector<Point>{{5, 6}, {7, 6}});

    REQUIRE(drawing->cases.size() == 2);
    const Case& one = drawing->cases[0];
    CHECK(one.name == "One");
    CHECK(one.view == View::Before);
    CHECK(one.duration_s == 100);
    CHECK(one.start_C == 11);
    CHECK(one.ambient_C == 12);
    CHECK(one.supply_C == 13);
    CHECK(one.storedHeater_C == 14);
    CHECK(one.target_C == 15);
    CHECK(one.targetPart == 1);
    using enum ActionKind;
    const std::string fault(parts::find("circulator")->faults.at(0).id);
    CHECK(one.actions
          == std::vector<Action>{{1, OpenOutlet, 1, 0.5, 0.25, "", {}},
                                 {2, OpenOutlet, 1, 1, -1, "", {}},
                                 {3, CloseOutlet, 1, 1, -1, "", {}},
                                 {4, PressButton, kNoPart, 1, -1, "", {}},
                                 {5, SetValve, 4, 0.75, -1, "", {}},
                                 {6, UseCity, kNoPart, 1, -1, "", {}},
                                 {7, UsePump, kNoPart, 1, -1, "", {}},
                                 {8, UseNothing, kNoPart, 1, -1, "", {}},
                                 {9, SetVoltage, kNoPart, 11.5, -1, "", {}},
                                 {10, StartFault, 2, 1, -1, fault, {}},
                                 {11, EndFault, 2, 1, -1, fault, {}}});
    // What a case has when the file says nothing (drawing.h): after, 180 s, 70 °F, 105 °F wanted.
    CHECK(drawing->cases[1].view == View::After);
    CHECK(drawing->cases[1].duration_s == 180);
    CHECK(drawing->cases[1].start_C == (70 - 32) / 1.8);
    CHECK(drawing->cases[1].target_C == (105 - 32) / 1.8);
    CHECK_FALSE(drawing->cases[1].ambient_C);
    CHECK(drawing->dismissals == std::vector<Dismissal>{{"r", 2, "seen", {}}, {"s", kNoPart, "", {}}});
    CHECK(drawing->nextId == 12);
    CHECK(drawing->unknown.empty());
    for (const Part& part : drawing->parts) {
        CHECK(part.unknown.empty());
    }
}

TEST_CASE("what is written has every member under its own name, and nothing that says nothing", "[document][file]")
{
    const auto drawing = read(everything());
    REQUIRE(drawing);
    nlohmann::json wanted = nlohmann::json::parse(everything());
    // What the writer always says, and what it leaves out.
    wanted["parts"][2]["stage"] = "existing";
    wanted["parts"][3]["stage"] = "existing";
    wanted["cases"][0]["actions"][1]["opening"] = 1;
    wanted["cases"][1] = nlohmann::json::parse(R"({"name": "Two", "view": "after", "duration_s": 180, "actions": []})");
    wanted["cases"][1]["start_C"] = (70 - 32) / 1.8;
    wanted["cases"][1]["target_C"] = (105 - 32) / 1.8;
    CHECK(nlohmann::json::parse(write(*drawing)) == wanted);
}

TEST_CASE("an unknown key whose place is gone is not written anywhere else", "[document][file]")
{
    Drawing drawing;
    Part pipe;
    pipe.id = 1;
    pipe.kind = "pipe_run";
    pipe.tag = "L1";
    pipe.bends = {{1, 1}};
    drawing.parts = {pipe};
    const std::string plain = write(drawing);
    for (const char* gone : {"/ends/2/clamp", "/ends/x/clamp", "/bends/1/by", "/bends/0/by", "/fields/length_m/by",
                             "clamp", "", "/tag/x", "/tag"}) {
        CAPTURE(gone);
        drawing.parts[0].unknown = {{gone, "1"}};
        CHECK(write(drawing) == plain);
    }
    drawing.parts[0].unknown = {{"/ends/1/clamp", "1"}};
    CHECK(write(drawing).find("{\"at\": [0, 0], \"clamp\": 1}") != std::string::npos);
}

TEST_CASE("a file that says nothing gets the defaults of the format", "[document][file]")
{
    const auto drawing = read(R"({"format": "tapward", "version": 1, "job": {}, "parts": []})");
    REQUIRE(drawing);
    CHECK(drawing->job == Job{});
    CHECK(drawing->job.currency == "USD");
    CHECK_FALSE(drawing->job.sampleFigures);
    CHECK(drawing->nextId == 1);
    const auto marked = read(R"({"format": "tapward", "version": 1, "parts": [
        {"id": 7, "kind": "tee", "tag": "T1", "at": [0, 0], "assembly": {"variant": "v", "role": "r"},
         "fields": {"name": {"value": "x"}}}]})");
    REQUIRE(marked);
    CHECK(marked->parts[0].mark->coldPipe == kNoPart);
    CHECK(marked->parts[0].mark->coldShare == 0.5);  // in the middle of its pipe
    CHECK(marked->nextId == 8);
    // The next number may be the first that is free, not one that is taken.
    const std::string head = R"({"format": "tapward", "version": 1, "parts": [
        {"id": 7, "kind": "tee", "tag": "T1", "at": [0, 0]}], "next_id": )";
    CHECK(read(head + "8}"));
    CHECK(read(head + "7}").error().where == "/next_id");
}

TEST_CASE("copied parts keep references among themselves and lose those to parts left behind", "[document][file]")
{
    auto drawing = read(everything());
    REQUIRE(drawing);
    Part controller;
    controller.id = 12;
    controller.kind = "controller";
    controller.tag = "C1";
    drawing->parts.push_back(controller);
    drawing->find(2)->entries["controller"] = {std::string("12"), parts::Basis::Measured};
    const auto both = readParts(writeParts(*drawing, {2, 12}));
    REQUIRE(both);
    REQUIRE(both->size() == 2);
    CHECK(values(both->at(0)).text("controller") == "12");
    const auto alone = readParts(writeParts(*drawing, {2}));
    REQUIRE(alone);
    REQUIRE(alone->size() == 1);  // the pipe has one end elsewhere and stays
    CHECK(alone->at(0).entries.count("controller") == 0);
    CHECK(alone->at(0).entries.count("current_A") == 1);
    // A pipe whose part stays behind ends loose where that part's port is: outlet of a part at (20, 21) is at (22, 21).
    const auto pipe = readParts(writeParts(*drawing, {3}));
    REQUIRE(pipe);
    CHECK(pipe->at(0).ends[0] == PipeEnd{kNoPart, "", {22, 21}});
    CHECK(pipe->at(0).ends[1] == PipeEnd{kNoPart, "", {7, 8}});
    const auto joined = readParts(writeParts(*drawing, {2, 3}));
    REQUIRE(joined);
    CHECK(joined->at(1).ends[0] == PipeEnd{2, "outlet", {}});
    CHECK_FALSE(readParts(everything()));  // a drawing is no clipboard
    CHECK_FALSE(read(writeParts(*drawing, {2})));
}

TEST_CASE("whole numbers are written without a point up to 2^53, others with all their digits", "[document][file]")
{
    CHECK(number(3.0).is_number_integer());
    CHECK(number(-3.0).is_number_integer());
    CHECK(number(3.5).is_number_float());
    CHECK(number(9007199254740991.0).is_number_integer());
    CHECK(number(9007199254740992.0).is_number_float());
    CHECK(compactJson(number(0.1)) == "0.1");
    CHECK(compactJson(Json(2.0)) == "2.0");  // a float of an unknown key stays one
    CHECK(compactJson(Json(1e300)) == "1e+300");
}

TEST_CASE("steps of a pointer are escaped as RFC 6901 says, and back", "[document][file]")
{
    // RFC 6901, section 3: ~ is ~0, / is ~1; read back with ~1 first, so that ~01 is ~1.
    CHECK(pointerStep("a/b~c") == "a~1b~0c");
    CHECK(unescapedStep("a~1b~0c") == "a/b~c");
    CHECK(unescapedStep("~01") == "~1");
    CHECK(unescapedStep("~0~0") == "~~");
}

TEST_CASE("text is broken into lines where it is longer than a hundred letters or nests deeper", "[document][file]")
{
    const auto lines = [](const Json& json) { return prettyJson(Json{{"x", json}}); };
    // {"a": "..."} takes 8 letters around the text.
    CHECK(lines(Json{{"a", std::string(91, 'y')}}) == "{\n  \"x\": {\"a\": \"" + std::string(91, 'y') + "\"}\n}\n");
    CHECK(lines(Json{{"a", std::string(92, 'y')}})
          == "{\n  \"x\": {\n    \"a\": \"" + std::string(92, 'y') + "\"\n  }\n}\n");
    CHECK(lines(Json::array({Json::array({1, 2}), 3})) == "{\n  \"x\": [[1, 2], 3]\n}\n");
    CHECK(lines(Json::array({Json::array({Json::array({1})})})) == "{\n  \"x\": [\n    [[1]]\n  ]\n}\n");
    CHECK(lines(Json::array()) == "{\n  \"x\": []\n}\n");
    CHECK(prettyJson(Json{{"x", 1}, {"y", 2}}) == "{\n  \"x\": 1,\n  \"y\": 2\n}\n");
}

TEST_CASE("a syntax error is placed by its line and column", "[document][file]")
{
    const auto said = [](const char* text) {
        const auto drawing = read(text);
        REQUIRE_FALSE(drawing);
        return render(drawing.error().what, UnitSystem::Us);
    };
    // The letter that cannot be there is the third of the second line.
    CHECK(said("{\n  x}") == "The text is not proper JSON at line 2, column 3.");
    CHECK(said("x") == "The text is not proper JSON at line 1, column 1.");
}

TEST_CASE("limits hold at their last good value", "[document][file]")
{
    const std::string empty = R"({"format": "tapward", "version": 1, "parts": []})";
    Limits small;
    small.bytes = empty.size();
    CHECK(read(empty, small));
    small.bytes = empty.size() - 1;
    CHECK_FALSE(read(empty, small));
    small = {};
    small.depth = 2;  // the drawing and its list of parts
    CHECK(read(empty, small));
    small.depth = 1;
    CHECK_FALSE(read(empty, small));
    const auto notes = [&](std::size_t length) {
        return read(R"({"format": "tapward", "version": 1, "parts": [], "job": {"notes": ")" + std::string(length, 'n')
                    + "\"}}");
    };
    CHECK(notes(8192));
    CHECK(notes(8193).error().where == "/job/notes");
    const auto key = [](std::size_t length) {
        return read(R"({"format": "tapward", "version": 1, "parts": [], ")" + std::string(length, 'k') + "\": 1}");
    };
    CHECK(key(8192));
    CHECK_FALSE(key(8193));
    const auto curve = [](int readings) {
        std::string list;
        for (int i = 0; i < readings; ++i) {
            list += (i == 0 ? "[" : ", [") + std::to_string(i) + "e-6, " + std::to_string(100 - i) + "e-2]";
        }
        return read(R"({"format": "tapward", "version": 1, "parts": [{"id": 1, "kind": "circulator", "tag": "P1",
            "at": [0, 0], "fields": {"curve": {"value": [)"
                    + list + "]}}}]}");
    };
    CHECK(curve(2));
    CHECK(curve(64));
    CHECK(curve(65).error().where == "/parts/0/fields/curve/value");
}
