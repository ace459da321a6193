// SPDX-License-Identifier: GPL-3.0-or-later
#include "document/file.h"

#include <filesystem>
#include <fstream>
#include <limits>

#include <rapidcheck.h>

#include "document/edit.h"
#include "support/catch.h"
#include "support/random_drawing.h"

using namespace tapward;
using namespace tapward::document;

namespace {

/// A drawing as text, with the parts and the rest of the top object given.
std::string file(const std::string& parts, const std::string& rest = "")
{
    return R"({"format": "tapward", "version": 1, "parts": [)" + parts + "]" + rest + "}";
}

const char* const kTee = R"({"id": 1, "kind": "tee", "tag": "T1", "stage": "existing", "at": [0, 0]})";
const char* const kFaucet = R"({"id": 2, "kind": "faucet", "tag": "F1", "stage": "existing", "at": [9, 0]})";

std::string pipe(const std::string& ends, int id = 3)
{
    return R"({"id": )" + std::to_string(id) + R"(, "kind": "pipe_run", "tag": "L)" + std::to_string(id)
           + R"(", "ends": )" + ends + "}";
}

std::string withField(const std::string& field)
{
    return file(R"({"id": 1, "kind": "circulator", "tag": "P1", "at": [0, 0], "fields": {)" + field + "}}");
}

std::string withCase(const std::string& rest)
{
    return file(std::string(kTee) + "," + kFaucet, R"(, "cases": [{"name": "One", )" + rest + "}]");
}

std::string repeated(const std::string& text, int times)
{
    std::string all;
    for (int i = 0; i < times; ++i) {
        all += text;
    }
    return all;
}

}  // namespace

TEST_CASE("a new drawing survives the file", "[document]")
{
    const Drawing empty;
    const auto reread = read(write(empty));
    REQUIRE(reread);
    CHECK(*reread == empty);
}

TEST_CASE("random drawings come back from the file as they were", "[document][property]")
{
    CHECK(rc::check("round trip", [](std::uint64_t seed) {
        test::RandomOptions options;
        options.sense = seed % 2 == 0;
        const Drawing drawing = test::randomDrawing(seed, options);
        const std::string text = write(drawing);
        const auto reread = read(text);
        RC_ASSERT(reread.has_value());
        RC_ASSERT(*reread == drawing);
        RC_ASSERT(write(*reread) == text);
    }));
}

TEST_CASE("numbers come back to the last bit", "[document][property]")
{
    CHECK(rc::check("numbers", [](std::uint64_t bits) {
        test::Random random(bits);
        const double value = std::ldexp(random.unit(), random.below(60) - 50);
        Drawing drawing;
        drawing.job.hours = std::min(value, 9999.0);
        const auto reread = read(write(drawing));
        RC_ASSERT(reread.has_value());
        RC_ASSERT(reread->job.hours == drawing.job.hours);
    }));
}

TEST_CASE("keys from a newer Tapward survive at every level", "[document]")
{
    const std::string text = file(
        std::string(kTee) +
            R"(, {"id": 2, "kind": "faucet", "tag": "F1", "at": [9, 0], "maker": {"b": 1.0, "a": [true, null, -3, 1e300, "\u00e9"]},
                  "fields": {"rated_flow_m3s": {"value": 1e-4, "basis": "measured", "read_by": "K"}, "aerator": {"value": 2}, "odd/key~": 1}},)"
            + R"({"id": 3, "kind": "pipe_run", "tag": "L1", "ends": [{"part": 1, "port": "branch", "clamp": 2}, {"at": [1, 2], "cap": "yes"}], "colour": "red"})",
        R"(, "job": {"title": "t", "depot": 7},
           "cases": [{"name": "One", "weather": "cold", "actions": [{"at_s": 1, "do": "press_button", "by": "left hand"}]}],
           "dismissals": [{"rule": "r", "reason": "x", "until": "2030"}], "next_id": 9, "future": {"deep": {"er": []}})");
    const auto drawing = read(text);
    REQUIRE(drawing);
    const std::string once = write(*drawing);
    for (const char* kept :
         {"\"maker\"", "\"read_by\": \"K\"", "\"aerator\"", "\"odd/key~\": 1", "\"clamp\": 2", "\"cap\": \"yes\"",
          "\"colour\": \"red\"", "\"depot\": 7", "\"weather\": \"cold\"", "\"by\": \"left hand\"",
          "\"until\": \"2030\"", "\"deep\"", "\"b\": 1.0", "1e+300", "\xc3\xa9"}) {
        CAPTURE(kept);
        CHECK(once.find(kept) != std::string::npos);
    }
    CHECK(once.find("\"b\": 1.0, \"a\"") != std::string::npos);  // their order too
    const auto again = read(once);
    REQUIRE(again);
    CHECK(*again == *drawing);
    CHECK(write(*again) == once);
}

TEST_CASE("unknown keys of a value go with the value and come back with it", "[document]")
{
    auto drawing = read(withField(R"("current_A": {"value": 2, "basis": "measured", "meter": "clamp"})"));
    REQUIRE(drawing);
    const std::string before = write(*drawing);
    Edit undo = apply(*drawing, Edit{"Reset", {SetField{1, "current_A", std::nullopt}}});
    CHECK(write(*drawing).find("meter") == std::string::npos);
    CHECK(read(write(*drawing)));
    apply(*drawing, std::move(undo));
    CHECK(write(*drawing) == before);
}

TEST_CASE("the file is plain to read and to compare", "[document]")
{
    const auto drawing = read(file(std::string(kTee) + "," + kFaucet + ","
                                   + pipe(R"([{"part": 1, "port": "run_b"}, {"part": 2, "port": "cold"}])")));
    REQUIRE(drawing);
    const std::string text = write(*drawing);
    CHECK(text.rfind("{\n  \"format\": \"tapward\",\n  \"version\": 1,\n  \"job\": {", 0) == 0);
    CHECK(text.find("\n    {\"id\": 1, \"kind\": \"tee\", \"tag\": \"T1\", \"stage\": \"existing\", \"at\": [0, 0]},\n")
          != std::string::npos);
    CHECK(text.find("\"ends\": [{\"part\": 1, \"port\": \"run_b\"}, {\"part\": 2, \"port\": \"cold\"}]")
          != std::string::npos);
    CHECK(text.back() == '\n');
    CHECK(text.find("\"next_id\": 4\n}\n") != std::string::npos);
    CHECK(text.find('\t') == std::string::npos);
}

TEST_CASE("parts are kept by id whatever their order in the file", "[document]")
{
    const auto drawing = read(file(std::string(kFaucet) + "," + kTee));
    REQUIRE(drawing);
    CHECK(drawing->parts[0].id == 1);
    CHECK(drawing->find(2)->tag == "F1");
    CHECK(drawing->nextId == 3);
}

TEST_CASE("bad input is refused with the place in the file", "[document]")
{
    struct Bad {
        std::string text;
        std::string where;
    };
    const std::string deep = repeated("[", 30) + repeated("]", 30);
    const Bad bad = GENERATE_COPY(
        // not a drawing
        Bad{"", ""}, Bad{"[1, 2", "/2"}, Bad{"[]", "/format"}, Bad{"{}", "/format"},
        Bad{R"({"format": "other"})", "/format"}, Bad{R"({"format": "tapward"})", "/version"},
        Bad{R"({"format": "tapward", "version": 0})", "/version"},
        Bad{R"({"format": "tapward", "version": 1.5})", "/version"},
        Bad{R"({"format": "tapward", "version": "1"})", "/version"}, Bad{R"({"format": "tapward", "version": 1})", ""},
        Bad{R"({"format": "tapward", "version": 1, "parts": {}})", "/parts"},
        // JSON itself
        Bad{file("{\"id\": 1,}"), "/parts/0"}, Bad{file(R"({"id": NaN})"), "/parts/0/id"},
        Bad{file(R"({"id": 1e999})"), "/parts/0/id"}, Bad{file(R"({"id": 1, "id": 2})"), "/parts/0/id"},
        Bad{file("\"\xff\""), ""},
        Bad{file(kTee, ", \"x\": " + deep), "/x/0/0/0/0/0/0/0/0/0/0/0/0/0/0/0/0/0/0/0/0/0/0/0"},
        Bad{file("") + "x", ""}, Bad{file(R"({"tag": ")" + std::string(9000, 'x') + "\"}"), "/parts/0/tag"},
        // parts
        Bad{file("7"), "/parts/0"}, Bad{file(R"({"kind": "tee", "tag": "T1", "at": [0, 0]})"), "/parts/0"},
        Bad{file(R"({"id": 0, "kind": "tee", "tag": "T1", "at": [0, 0]})"), "/parts/0/id"},
        Bad{file(R"({"id": -4, "kind": "tee", "tag": "T1", "at": [0, 0]})"), "/parts/0/id"},
        Bad{file(R"({"id": 1.5, "kind": "tee", "tag": "T1", "at": [0, 0]})"), "/parts/0/id"},
        Bad{file(R"({"id": 99999999999, "kind": "tee", "tag": "T1", "at": [0, 0]})"), "/parts/0/id"},
        Bad{file(R"({"id": 1, "kind": "warp_core", "tag": "W1", "at": [0, 0]})"), "/parts/0/kind"},
        Bad{file(R"({"id": 1, "kind": "tee", "tag": "", "at": [0, 0]})"), "/parts/0/tag"},
        Bad{file(R"({"id": 1, "kind": "tee", "tag": "T\n1", "at": [0, 0]})"), "/parts/0/tag"},
        Bad{file(R"({"id": 1, "kind": "tee", "tag": 5, "at": [0, 0]})"), "/parts/0/tag"},
        Bad{file(R"({"id": 1, "kind": "tee", "tag": "T1"})"), "/parts/0"},
        Bad{file(R"({"id": 1, "kind": "tee", "tag": "T1", "at": [0]})"), "/parts/0/at"},
        Bad{file(R"({"id": 1, "kind": "tee", "tag": "T1", "at": [0, 1e300]})"), "/parts/0/at"},
        Bad{file(R"({"id": 1, "kind": "tee", "tag": "T1", "at": [0, 0], "turn": 4})"), "/parts/0/turn"},
        Bad{file(R"({"id": 1, "kind": "tee", "tag": "T1", "at": [0, 0], "stage": "maybe"})"), "/parts/0/stage"},
        Bad{file(R"({"id": 1, "kind": "tee", "tag": "T1", "at": [0, 0], "flipped": 1})"), "/parts/0/flipped"},
        Bad{file(R"({"id": 1, "kind": "tee", "tag": "T1", "at": [0, 0], "height_m": 5000})"), "/parts/0/height_m"},
        Bad{file(R"({"id": 1, "kind": "tee", "tag": "T1", "at": [0, 0], "label": "up"})"), "/parts/0/label"},
        Bad{file(std::string(kTee) + "," + kTee), "/parts/1/id"},
        Bad{file(std::string(kTee) + R"(, {"id": 2, "kind": "tee", "tag": "T1", "at": [0, 0]})"), "/parts/1/tag"},
        // pipe ends
        Bad{file(pipe("[]")), "/parts/0/ends"}, Bad{file(pipe(R"([{"at": [0, 0]}])")), "/parts/0/ends"},
        Bad{file(pipe(R"([{"at": [0, 0]}, {}])")), "/parts/0/ends/1"},
        Bad{file(pipe(R"([{"at": [0, 0]}, {"part": 8, "port": "hot"}])")), "/parts/0/ends/1/part"},
        Bad{file(std::string(kTee) + "," + pipe(R"([{"at": [0, 0]}, {"part": 1, "port": "chimney"}])")),
            "/parts/1/ends/1/port"},
        Bad{file(std::string(kTee) + "," + pipe(R"([{"part": 1, "port": "run_a"}, {"part": 1, "port": "run_a"}])")),
            "/parts/1/ends/1"},
        Bad{file(pipe(R"([{"at": [0, 0]}, {"part": 3, "port": "inlet"}])")), "/parts/0/ends/1/part"},
        Bad{file(std::string(kTee) + "," + pipe(R"([{"at": [0, 0]}, {"part": 1, "port": "run_a"}])", 3) + ","
                 + pipe(R"([{"part": 1, "port": "run_a"}, {"at": [0, 0]}])", 4)),
            "/parts/2/ends/0"},
        // fields
        Bad{withField(R"("current_A": 5)"), "/parts/0/fields/current_A"},
        Bad{withField(R"("current_A": {"basis": "measured"})"), "/parts/0/fields/current_A"},
        Bad{withField(R"("current_A": {"value": null})"), "/parts/0/fields/current_A/value"},
        Bad{withField(R"("current_A": {"value": "lots"})"), "/parts/0/fields/current_A"},
        Bad{withField(R"("current_A": {"value": -1})"), "/parts/0/fields/current_A"},
        Bad{withField(R"("current_A": {"value": 1, "basis": "guess"})"), "/parts/0/fields/current_A/basis"},
        Bad{withField(R"("wire_gauge": {"value": "13"})"), "/parts/0/fields/wire_gauge"},
        Bad{withField(R"("curve": {"value": [[0, 1]]})"), "/parts/0/fields/curve"},
        Bad{withField(R"("curve": {"value": [[0, 1], [1]]})"), "/parts/0/fields/curve/value"},
        Bad{withField(R"("controller": {"value": "44"})"), "/parts/0/fields/controller"},
        Bad{withField(R"("controller": {"value": "1"})"), "/parts/0/fields/controller"},  // a pump is no controller
        // cases, dismissals, the rest
        Bad{withCase(R"("view": "both")"), "/cases/0/view"}, Bad{withCase(R"("duration_s": 0)"), "/cases/0/duration_s"},
        Bad{withCase(R"("start_C": 200)"), "/cases/0/start_C"},
        Bad{withCase(R"("target_part": 7)"), "/cases/0/target_part"},
        Bad{withCase(R"("actions": [{"do": "press_button"}])"), "/cases/0/actions/0"},
        Bad{withCase(R"("actions": [{"at_s": 1, "do": "dance"}])"), "/cases/0/actions/0/do"},
        Bad{withCase(R"("actions": [{"at_s": -1, "do": "press_button"}])"), "/cases/0/actions/0/at_s"},
        Bad{withCase(R"("actions": [{"at_s": 1, "do": "open_outlet"}])"), "/cases/0/actions/0/part"},
        Bad{withCase(R"("actions": [{"at_s": 1, "do": "open_outlet", "part": 1}])"), "/cases/0/actions/0/part"},
        Bad{withCase(R"("actions": [{"at_s": 1, "do": "open_outlet", "part": 2, "opening": 2}])"),
            "/cases/0/actions/0/opening"},
        Bad{withCase(R"("actions": [{"at_s": 1, "do": "set_valve", "part": 2, "opening": 1}])"),
            "/cases/0/actions/0/part"},
        Bad{withCase(R"("actions": [{"at_s": 1, "do": "start_fault", "part": 2, "fault": "explodes"}])"),
            "/cases/0/actions/0/fault"},
        Bad{withCase(R"("actions": [{"at_s": 1, "do": "set_voltage", "voltage_V": 400}])"),
            "/cases/0/actions/0/voltage_V"},
        Bad{file(kTee, R"(, "cases": [{"name": "A"}, {"name": "A"}])"), "/cases/1/name"},
        Bad{file(kTee, R"(, "cases": [{}])"), "/cases/0"},
        Bad{file(kTee, R"(, "dismissals": [{"rule": "r", "part": 5, "reason": ""}])"), "/dismissals/0/part"},
        Bad{file(kTee, R"(, "job": {"hours": -1})"), "/job/hours"}, Bad{file(kTee, R"(, "job": [])"), "/job"},
        Bad{file(kTee, R"(, "job": {"title": 3})"), "/job/title"}, Bad{file(kTee, R"(, "next_id": 1)"), "/next_id"},
        Bad{file(kTee, R"(, "next_id": "x")"), "/next_id"});
    CAPTURE(bad.text.substr(0, 300));
    const auto drawing = read(bad.text);
    REQUIRE_FALSE(drawing);
    CHECK(drawing.error().where == bad.where);
    CHECK_FALSE(drawing.error().what.empty());
    CHECK_FALSE(drawing.error().remedy.empty());
    const std::string said = render(drawing.error().what, UnitSystem::Us);
    CHECK(said.find('{') == std::string::npos);  // every placeholder had its value
}

TEST_CASE("a value beyond all reason is refused in a sentence", "[document]")
{
    const auto near = read(withCase("\"start_C\": 250"));  // one that may be a slip is told as it is
    REQUIRE_FALSE(near);
    CHECK(render(near.error().what, UnitSystem::Metric).find("250") != std::string::npos);
    const auto refused = read(withCase("\"start_C\": 1e308"));
    REQUIRE_FALSE(refused);
    CHECK(refused.error().where == "/cases/0/start_C");
    for (const UnitSystem units : {UnitSystem::Us, UnitSystem::Metric}) {
        const std::string said = render(refused.error().what, units);
        CAPTURE(said);
        CHECK(said.find("inf") == std::string::npos);
        CHECK(said.find("e+") == std::string::npos);  // nor a number that nobody reads as one
        CHECK(said.find(units == UnitSystem::Us ? "\xC2\xB0"
                                                  "F"
                                                : "\xC2\xB0"
                                                  "C")
              != std::string::npos);
        CHECK(said.size() < 90);
    }
}

TEST_CASE("a newer version is refused by its number", "[document]")
{
    const auto drawing = read(R"({"format": "tapward", "version": 7, "parts": 5})");
    REQUIRE_FALSE(drawing);
    CHECK(drawing.error().where == "/version");
    CHECK(render(drawing.error().what, UnitSystem::Us).find('7') != std::string::npos);
}

TEST_CASE("an unknown kind of part is named", "[document]")
{
    const auto drawing = read(file(R"({"id": 1, "kind": "warp_core", "tag": "W1", "at": [0, 0]})"));
    REQUIRE_FALSE(drawing);
    CHECK(render(drawing.error().what, UnitSystem::Us).find("warp_core") != std::string::npos);
}

TEST_CASE("a syntax error is placed by line and column", "[document]")
{
    const auto drawing = read("{\n  \"format\": \"tapward\",\n  \"version\": 1,\n  oops\n}");
    REQUIRE_FALSE(drawing);
    const std::string said = render(drawing.error().what, UnitSystem::Us);
    CHECK(said.find("line 4") != std::string::npos);
}

TEST_CASE("limits hold for bytes, counts and lengths", "[document]")
{
    Limits small;
    small.bytes = 200;
    CHECK_FALSE(read(file(repeated(" ", 200)), small));
    small = {};
    small.parts = 1;
    CHECK(read(file(kTee), small));
    CHECK(read(file(std::string(kTee) + "," + kFaucet), small).error().where == "/parts");
    small = {};
    small.cases = 1;
    CHECK(read(file("", R"(, "cases": [{"name": "A"}, {"name": "B"}])"), small).error().where == "/cases");
    small = {};
    small.actionsPerCase = 1;
    const std::string press = R"({"at_s": 1, "do": "press_button"})";
    CHECK(read(file("", R"(, "cases": [{"name": "A", "actions": [)" + press + "]}]"), small));
    CHECK(read(file("", R"(, "cases": [{"name": "A", "actions": [)" + press + "," + press + "]}]"), small).error().where
          == "/cases/0/actions");
    small = {};
    small.textBytes = 20;
    CHECK(read(file("", R"(, "job": {"notes": "123456789012345678901"})"), small).error().where == "/job/notes");
    CHECK(read(file("", R"(, "a key that is long indeed": 1)"), small).error().where == "");
    small = {};
    small.bendsPerPipe = 1;
    const std::string bent =
        R"({"id": 3, "kind": "pipe_run", "tag": "L3", "ends": [{"at": [0, 0]}, {"at": [9, 9]}], "bends": [[1, 1], [2, 2]]})";
    CHECK(read(file(bent)));
    CHECK(read(file(bent), small).error().where == "/parts/0/bends");
    small = {};
    small.curvePoints = 2;
    const std::string curve = R"("curve": {"value": [[0, 3], [1e-5, 2], [2e-5, 1]]})";
    CHECK(read(withField(curve)));
    CHECK(read(withField(curve), small).error().where == "/parts/0/fields/curve/value");
    small = {};
    small.depth = 4;
    CHECK(read(file(kTee), small));
    CHECK_FALSE(read(withField(R"("current_A": {"value": 1})"), small));
}

TEST_CASE("an object with very many keys is read in reasonable time", "[document]")
{
    std::string keys;
    for (int i = 0; i < 200'000; ++i) {
        keys += ", \"k" + std::to_string(i) + "\": 0";
    }
    const auto drawing = read(file("", keys));
    REQUIRE(drawing);
    CHECK(drawing->unknown.size() == 200'000);
}

TEST_CASE("save replaces the file whole and load gives it back", "[document]")
{
    namespace fs = std::filesystem;
    const fs::path folder = fs::temp_directory_path() / "tapward_file_test";
    fs::remove_all(folder);
    fs::create_directories(folder);
    const std::string path = (folder / "coach.tapward").string();
    const Drawing drawing = test::randomDrawing(7);
    REQUIRE(save(drawing, path));
    REQUIRE(save(drawing, path));  // over the old one
    const auto loaded = load(path);
    REQUIRE(loaded);
    CHECK(*loaded == drawing);
    CHECK(std::distance(fs::directory_iterator(folder), fs::directory_iterator{}) == 1);  // nothing left behind

    const auto missing = load((folder / "none.tapward").string());
    REQUIRE_FALSE(missing);
    CHECK_FALSE(missing.error().remedy.empty());
    const auto nowhere = save(drawing, (folder / "no folder" / "x.tapward").string());
    REQUIRE_FALSE(nowhere);
    CHECK_FALSE(load(folder.string()));  // a folder is no drawing
    fs::remove_all(folder);
}

TEST_CASE("the samples load and save to the same bytes", "[document]")
{
    namespace fs = std::filesystem;
    int count = 0;
    for (const auto& entry : fs::directory_iterator(fs::path(TAPWARD_SOURCE_DIR) / "samples")) {
        if (entry.path().extension() != ".tapward") {
            continue;
        }
        ++count;
        CAPTURE(entry.path().filename().string());
        std::ifstream in(entry.path(), std::ios::binary);
        const std::string text((std::istreambuf_iterator<char>(in)), std::istreambuf_iterator<char>());
        const auto drawing = read(text);
        if (!drawing) {
            FAIL_CHECK(drawing.error().where << ": " << render(drawing.error().what, UnitSystem::Metric));
            continue;
        }
        CHECK(write(*drawing) == text);
        CHECK(drawing->job.sampleFigures);
    }
    CHECK(count >= 2);
}
