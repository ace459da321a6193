// SPDX-License-Identifier: GPL-3.0-or-later
// Proposed loops on whole coaches: drawn, solved, reviewed, swapped, saved.
#include <filesystem>
#include <rapidcheck.h>

#include "document/file.h"
#include "document/proposal.h"
#include "study/prediction.h"
#include "support/catch.h"
#include "support/random_drawing.h"

using namespace tapward;
using namespace tapward::document;

namespace {

/// A drawing with existing plumbing only: what the job adds is taken out and the lines healed.
Drawing asItIs(const std::string& path)
{
    auto drawing = load(std::string(TAPWARD_SOURCE_DIR) + path);
    REQUIRE(drawing);
    for (;;) {
        const auto added = std::find_if(drawing->parts.begin(), drawing->parts.end(), [](const Part& part) {
            return part.stage == Stage::Added && !kindOf(part).isPipe;
        });
        if (added == drawing->parts.end()) {
            break;
        }
        // The pipes of the loop go first, so that a tee is left with the two pipes it was cut into.
        std::vector<PartId> pipes;
        for (const Part& part : drawing->parts) {
            if (part.stage == Stage::Added && kindOf(part).isPipe
                && (part.ends[0].part == added->id || part.ends[1].part == added->id)) {
                pipes.push_back(part.id);
            }
        }
        pipes.push_back(added->id);
        auto edit = removeParts(*drawing, pipes, true);
        REQUIRE(edit);
        apply(*drawing, std::move(*edit));
    }
    return *drawing;
}

std::vector<std::string> coaches()
{
    std::vector<std::string> files{"/samples/long_hall_coach.tapward", "/samples/storage_coach.tapward"};
    const std::filesystem::path templates = std::string(TAPWARD_SOURCE_DIR) + "/resources/templates";
    if (std::filesystem::exists(templates)) {
        for (const auto& entry : std::filesystem::directory_iterator(templates)) {
            files.push_back("/resources/templates/" + entry.path().filename().string());
        }
    }
    std::sort(files.begin() + 2, files.end());
    return files;
}

/// The hot pipe that leads to the tap farthest from the heater, or the nearest to it with room.
Place farHot(const Drawing& drawing)
{
    std::optional<Place> best;
    double farthest = -1;
    for (const Part& part : drawing.parts) {
        const Place place{part.id, 0.5, {}};
        if (kindOf(part).isPipe && !beginRefusal(drawing, place)) {
            const auto corners = route(drawing, part);
            if (corners.back().x > farthest) {
                farthest = corners.back().x;
                best = place;
            }
        }
    }
    REQUIRE(best);
    return *best;
}

bool anyOverlap(const Drawing& drawing)
{
    const auto half = [](const Part& part, bool across) {
        const auto& kind = kindOf(part);
        return ((part.turn % 2 != 0) == across ? kind.width : kind.height) / 2;
    };
    for (const Part& a : drawing.parts) {
        for (const Part& b : drawing.parts) {
            if (a.id < b.id && (a.mark || b.mark) && !kindOf(a).isPipe && !kindOf(b).isPipe
                && std::abs(a.at.x - b.at.x) < half(a, false) + half(b, false)
                && std::abs(a.at.y - b.at.y) < half(a, true) + half(b, true)) {
                UNSCOPED_INFO(a.tag << " on " << b.tag);
                return true;
            }
        }
    }
    return false;
}

/// Whether two pipes of the proposal cross.
bool crossesItself(const Drawing& drawing)
{
    struct Piece {
        std::string tag;
        Point a, b;
    };
    std::vector<Piece> level, upright;
    for (const Part& part : drawing.parts) {
        if (!part.mark || !kindOf(part).isPipe) {
            continue;
        }
        const auto corners = route(drawing, part);
        for (std::size_t i = 0; i + 1 < corners.size(); ++i) {
            auto& pieces = corners[i].y == corners[i + 1].y ? level : upright;
            pieces.push_back({part.tag, corners[i], corners[i + 1]});
        }
    }
    const auto between = [](double value, double a, double b) { return (value - a) * (value - b) < 0; };
    for (const Piece& one : level) {
        for (const Piece& other : upright) {
            if (between(other.a.x, one.a.x, one.b.x) && between(one.a.y, other.a.y, other.b.y)) {
                UNSCOPED_INFO(one.tag << " crosses " << other.tag);
                return true;
            }
        }
    }
    return false;
}

const Part* withRole(const Drawing& drawing, const std::string& role)
{
    for (const Part& part : drawing.parts) {
        if (part.mark && part.mark->role == role) {
            return &part;
        }
    }
    return nullptr;
}

double tubeInAll(const Drawing& drawing, bool marked)
{
    double sum = 0;
    for (const Part& part : drawing.parts) {
        sum += kindOf(part).isPipe && part.mark.has_value() == marked ? values(part).number("length_m") : 0;
    }
    return sum;
}

}  // namespace

TEST_CASE("each variant of a proposal draws a loop that runs, on every coach, and undo leaves not a byte", "[proposal]")
{
    for (const std::string& file : coaches()) {
        const Drawing before = asItIs(file);
        const Place hot = farHot(before);
        for (const Variant& variant : variants()) {
            CAPTURE(file, std::string(idOf(variant)));
            const auto cold = usualEnd(before, hot, variant.way);
            if (variant.way == ReturnWay::Tank && !cold) {
                CHECK_FALSE(propose(before, hot, {}, variant));
                continue;
            }
            REQUIRE(cold);
            auto edit = propose(before, hot, *cold, variant);
            if (!edit) {
                FAIL(edit.error().what.text << " " << edit.error().where);
            }
            Drawing drawing = before;
            REQUIRE_FALSE(refusal(drawing, *edit));
            Edit back = apply(drawing, *edit);
            const auto loop = study::loopAnswer(drawing);
            INFO(loop.reason.text);
            REQUIRE(loop.flow_m3s);
            CHECK(*loop.flow_m3s > 1e-6);
            CHECK(loop.circulators.size() == (variant.pumps == PumpSet::One ? 1u : 2u));
            CHECK_FALSE(anyOverlap(drawing));
            CHECK_FALSE(crossesItself(drawing));
            CHECK(proposed(drawing) == variant);
            // The coach's own tube is cut, not made longer or shorter.
            CHECK(tubeInAll(drawing, false) == Approx(tubeInAll(before, false)).epsilon(1e-12));
            // The file keeps what the proposal is.
            const std::string text = write(drawing);
            const auto again = read(text);
            REQUIRE(again);
            CHECK(write(*again) == text);
            CHECK(*again == drawing);
            // Every part of it is joined: nothing of a loop ends in the air.
            for (const PartId id : proposalParts(drawing)) {
                const Part& part = *drawing.find(id);
                CAPTURE(part.tag);
                CHECK(part.stage == Stage::Added);
                for (const auto& port : kindOf(part).ports) {
                    CHECK(drawing.pipeAt(id, port.id) != nullptr);
                }
                CHECK((!kindOf(part).isPipe || (part.ends[0].part != kNoPart && part.ends[1].part != kNoPart)));
            }
            apply(drawing, std::move(back));
            CHECK(write(drawing) == write(before));
        }
    }
}

TEST_CASE("swapping the variant keeps tags, typed lengths, cases and the coach's own tube, and undoes in one step",
          "[proposal]")
{
    for (const std::string& file : coaches()) {
        const Drawing before = asItIs(file);
        const Place hot = farHot(before);
        const auto cold = usualEnd(before, hot, ReturnWay::ColdLine);
        REQUIRE(cold);
        Drawing drawing = before;
        auto first = propose(drawing, hot, *cold, {ReturnWay::ColdLine, PumpSet::One});
        REQUIRE(first);
        apply(drawing, std::move(*first));
        const PartId stub = withRole(drawing, "to_stop_sensor")->id;
        apply(drawing, Edit{"Length", {SetField{stub, "length_m", parts::Entry{0.83, parts::Basis::Measured}}}});
        const auto settled = withRole(drawing, "controller")->id;
        apply(drawing,
              Edit{"Stop", {SetField{settled, "stop_volume_m3", parts::Entry{0.004, parts::Basis::Measured}}}});
        const std::string start = write(drawing);

        for (const Variant& variant : variants()) {
            if (variant == Variant{ReturnWay::ColdLine, PumpSet::One}
                || (variant.way == ReturnWay::Tank && !usualEnd(before, hot, variant.way))) {
                continue;
            }
            CAPTURE(file, std::string(idOf(variant)));
            Drawing swapped = drawing;
            auto edit = swapVariant(swapped, variant);
            if (!edit) {
                FAIL(edit.error().what.text << " " << edit.error().where);
            }
            REQUIRE_FALSE(refusal(swapped, *edit));
            Edit back = apply(swapped, std::move(*edit));
            CHECK(proposed(swapped) == variant);
            REQUIRE(swapped.find(stub));
            CHECK(values(*swapped.find(stub)).number("length_m") == 0.83);
            CHECK(swapped.find(stub)->tag == drawing.find(stub)->tag);
            CHECK(values(*swapped.find(settled)).number("stop_volume_m3") == 0.004);
            CHECK(withRole(swapped, "hot_tee")->at == withRole(drawing, "hot_tee")->at);
            CHECK(swapped.cases == drawing.cases);
            CHECK_FALSE(anyOverlap(swapped));
            CHECK(tubeInAll(swapped, false) == Approx(tubeInAll(drawing, false)).epsilon(1e-12));
            const auto loop = study::loopAnswer(swapped);
            INFO(loop.reason.text);
            REQUIRE(loop.flow_m3s);
            CHECK(*loop.flow_m3s > 1e-6);

            // There and back: the cold place asked for is remembered, and the loop is the one it was.
            Drawing returned = swapped;
            auto again = swapVariant(returned, {ReturnWay::ColdLine, PumpSet::One});
            REQUIRE(again);
            apply(returned, std::move(*again));
            CHECK(withRole(returned, "cold_tee")->at == withRole(drawing, "cold_tee")->at);
            CHECK(*study::loopAnswer(returned).flow_m3s == Approx(*study::loopAnswer(drawing).flow_m3s).epsilon(1e-9));

            apply(swapped, std::move(back));
            CHECK(write(swapped) == start);
        }
    }
}

TEST_CASE("a proposal says why it cannot be", "[proposal]")
{
    const Drawing drawing = asItIs("/samples/long_hall_coach.tapward");
    const Place hot = farHot(drawing);
    const auto cold = usualEnd(drawing, hot, ReturnWay::ColdLine);
    REQUIRE(cold);
    CHECK(propose(drawing, *cold, hot, {}).error().what.text == "{0} carries cold water.");
    CHECK(propose(drawing, hot, hot, {}).error().what.text == "{0} carries hot water.");
    CHECK(propose(drawing, {}, *cold, {}).error().what.text == "There is no pipe and no free port there.");
    CHECK(propose({}, hot, *cold, {}).error().what.text == "There is no pipe and no free port there.");
    Drawing looped = drawing;
    auto edit = propose(looped, hot, *cold, {});
    REQUIRE(edit);
    apply(looped, std::move(*edit));
    CHECK(propose(looped, hot, *cold, {}).error().what.text == "There already is a loop, with {0}.");
    CHECK(swapVariant(looped, {}).error().what.text == "The loop already is that variant: {0}, {1}.");
    CHECK_FALSE(swapVariant(drawing, {}));
}

TEST_CASE("from what is no pipe and no port a proposal has no usual end", "[proposal]")
{
    Drawing drawing = asItIs("/samples/long_hall_coach.tapward");
    auto edit = placePart(drawing, "note", {-60, -60}, Stage::Existing);
    REQUIRE(edit);
    const PartId note = drawing.nextId;
    apply(drawing, std::move(*edit));
    for (const ReturnWay way : {ReturnWay::ColdLine, ReturnWay::OwnLine, ReturnWay::Tank}) {
        CHECK_FALSE(usualEnd(drawing, {note, 0.5, {}}, way));
        CHECK_FALSE(usualEnd(drawing, {kNoPart, 0.5, {note, "inlet", {}}}, way));
        CHECK_FALSE(usualEnd(drawing, {drawing.nextId, 0.5, {}}, way));
        CHECK_FALSE(usualEnd(drawing, {}, way));
    }
}

TEST_CASE("on any drawing a proposal is refused with a reason or gives a drawing that can be saved", "[proposal]")
{
    int made = 0;
    CHECK(rc::check("propose anywhere", [&made](std::uint64_t seed) {
        test::RandomOptions options;
        options.loop = seed % 4 == 0;
        options.sense = seed % 3 != 0;
        const Drawing before = test::randomDrawing(seed, options);
        test::Random random(seed + 1);
        const auto somewhere = [&]() -> Place {
            const Part& part = random.pick(before.parts);
            if (kindOf(part).isPipe || kindOf(part).ports.empty()) {
                return {part.id, random.unit(), {}};
            }
            return {kNoPart, 0, {part.id, std::string(random.pick(kindOf(part).ports).id), {}}};
        };
        std::vector<Place> canBegin;
        for (const Part& part : before.parts) {
            if (kindOf(part).isPipe && !beginRefusal(before, {part.id, 0.5, {}})) {
                canBegin.push_back({part.id, 0.5, {}});
            }
        }
        for (int i = 0; i < 12; ++i) {
            const Variant variant = variants()[static_cast<std::size_t>(random.below(9))];
            const Place hot = !canBegin.empty() && random.chance(0.5) ? random.pick(canBegin) : somewhere();
            const auto usual = random.chance(0.7) ? usualEnd(before, hot, variant.way) : std::nullopt;
            auto edit = propose(before, hot, usual.value_or(somewhere()), variant);
            if (!edit) {
                RC_ASSERT(!edit.error().what.text.empty() && !edit.error().remedy.text.empty());
                continue;
            }
            ++made;
            Drawing drawing = before;
            RC_ASSERT(!refusal(drawing, *edit));
            Edit back = apply(drawing, std::move(*edit));
            const auto again = read(write(drawing));
            RC_ASSERT(again && *again == drawing);
            if (auto swap = swapVariant(drawing, variants()[static_cast<std::size_t>(random.below(9))])) {
                Drawing swapped = drawing;
                RC_ASSERT(!refusal(swapped, *swap));
                Edit undo = apply(swapped, std::move(*swap));
                RC_ASSERT(read(write(swapped)).has_value());
                apply(swapped, std::move(undo));
                RC_ASSERT(swapped == drawing);
            }
            apply(drawing, std::move(back));
            RC_ASSERT(drawing == before);
        }
    }));
    CHECK(made > 0);  // of 12 places a try; not all are refused
}

TEST_CASE("a loop drawn part by part is not swapped: the refusal names it and says what to do", "[proposal]")
{
    auto drawing = load(std::string(TAPWARD_SOURCE_DIR) + "/samples/long_hall_coach.tapward");
    REQUIRE(drawing);
    CHECK(hasLoop(*drawing));
    CHECK_FALSE(proposed(*drawing));
    const auto swapped = swapVariant(*drawing, {ReturnWay::OwnLine, PumpSet::One});
    REQUIRE_FALSE(swapped);
    CHECK(swapped.error().what.text.find("drawn part by part") != std::string::npos);
    CHECK_FALSE(swapped.error().remedy.text.empty());
}
