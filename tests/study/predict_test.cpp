// SPDX-License-Identifier: GPL-3.0-or-later
#include <cmath>
#include <filesystem>
#include <thread>

#include "document/edit.h"
#include "document/file.h"
#include "study/plant.h"
#include "study/prediction.h"
#include "study/wiring_net.h"
#include "support/catch.h"
#include "support/stored.h"

using namespace tapward;
using test::stored;

namespace {

study::Prediction predicted(const document::Drawing& drawing, const study::Options& options = {})
{
    auto prediction = study::predict(drawing, options);
    INFO((prediction ? "" : render(prediction.error().what, UnitSystem::Us)));
    REQUIRE(prediction.has_value());
    return *prediction;
}

const char* const kLongHall = "samples/long_hall_coach.tapward";
const char* const kStorage = "samples/storage_coach.tapward";

document::Part& byTag(document::Drawing& drawing, const char* tag) { return *drawing.find(drawing.findTag(tag)->id); }

double worstGap(const study::Series& a, const std::vector<double>& aTime, const study::Series& b,
                const std::vector<double>& bTime)
{
    double worst = 0;
    for (std::size_t i = 0; i < aTime.size(); ++i) {
        const auto at = std::lower_bound(bTime.begin(), bTime.end(), aTime[i] - 1e-6);
        if (at != bTime.end() && std::abs(*at - aTime[i]) < 1e-6) {
            worst = std::max(worst, std::abs(a.values[i] - b.values[static_cast<std::size_t>(at - bTime.begin())]));
        }
    }
    return worst;
}

}  // namespace

TEST_CASE("every case of every sample answers, with mass and heat in balance", "[study][samples]")
{
    for (const auto& entry : std::filesystem::directory_iterator(TAPWARD_SOURCE_DIR "/samples")) {
        if (entry.path().extension() != ".tapward") {
            continue;
        }
        const document::Drawing drawing = stored("samples/" + entry.path().filename().string());
        CHECK(drawing.job.sampleFigures);
        CHECK(drawing.cases.size() >= 4);
        const study::Prediction prediction = predicted(drawing);
        CHECK(prediction.loop.exists);
        for (const study::CaseResult& result : prediction.cases) {
            CAPTURE(entry.path().filename().string(), result.name);
            REQUIRE_FALSE(result.noAnswer.has_value());
            CHECK(*result.scalar("mass_residual")->value < 1e-9);
            CHECK(*result.scalar("heat_residual")->value < 1e-6);
            for (const study::Scalar& scalar : result.scalars) {
                CAPTURE(scalar.id);
                CHECK((scalar.value.has_value() || !scalar.reason.empty()));
            }
            for (const study::Series& series : result.series) {
                CAPTURE(series.id);
                CHECK(series.values.size() == result.time_s.size());
            }
            CHECK(std::is_sorted(result.time_s.begin(), result.time_s.end()));
        }
    }
}

TEST_CASE("the loop shortens the wait at the far tap and stops its waste", "[study][samples]")
{
    const study::Prediction prediction = predicted(stored(kLongHall));
    const auto value = [&](const char* name, const char* id) { return *prediction.find(name)->scalar(id)->value; };
    CHECK(value("Preheat, then the rear lavatory", "wait") < 0.2 * value("Hot draw before the loop", "wait"));
    CHECK(value("Preheat, then the rear lavatory", "wasted_volume")
          < 0.2 * value("Hot draw before the loop", "wasted_volume"));
}

TEST_CASE("each press in a row ends hotter than the one before", "[study][samples]")
{
    const study::Prediction prediction = predicted(stored(kLongHall));
    const study::CaseResult& presses = *prediction.find("Three presses in a row");
    CHECK(*presses.scalar("sensor_at_stop_2")->value > *presses.scalar("sensor_at_stop_1")->value + 3);
    CHECK(*presses.scalar("sensor_at_stop_3")->value > *presses.scalar("sensor_at_stop_2")->value + 3);
}

TEST_CASE("with the loop valve stuck open a large enough cold draw lights the heater", "[study][samples]")
{
    const study::Prediction prediction = predicted(stored(kLongHall));
    const study::CaseResult& stuck = *prediction.find("Cold draw, loop valve stuck open");
    const bool lit = std::any_of(stuck.events.begin(), stuck.events.end(),
                                 [](const study::Event& e) { return e.id == "burner_lit"; });
    CHECK(lit);
    CHECK(*stuck.scalar("hottest_heater_outlet")->value > 30);

    // Its twin: the same draw with a sound valve leaves the heater out.
    document::Drawing sound = stored(kLongHall);
    for (document::Case& script : sound.cases) {
        std::erase_if(script.actions,
                      [](const document::Action& a) { return a.kind == document::ActionKind::StartFault; });
    }
    const study::Prediction soundPrediction = predicted(sound);
    const study::CaseResult& twin = *soundPrediction.find("Cold draw, loop valve stuck open");
    CHECK(std::none_of(twin.events.begin(), twin.events.end(),
                       [](const study::Event& e) { return e.id == "burner_lit"; }));
}

TEST_CASE("at default resolution the sensor is within 0.2 K of the converged answer", "[study][convergence]")
{
    const document::Drawing drawing = stored("tests/study/trade_ranges.tapward");
    study::Options fine;
    fine.cell_m = 0.05;
    fine.wallLayers = 10;
    fine.step_s = 0.1;
    const study::Prediction coarse = predicted(drawing);
    const study::Prediction sharp = predicted(drawing, fine);
    const study::CaseResult& a = coarse.cases.at(0);
    const study::CaseResult& b = sharp.cases.at(0);
    for (const char* stop : {"sensor_at_stop_1", "sensor_at_stop_2", "sensor_at_stop_3"}) {
        CAPTURE(stop);
        CHECK_THAT(*a.scalar(stop)->value, WithinAbs(*b.scalar(stop)->value, 0.2));
    }
    CHECK_THAT(*a.scalar("volume_to_target")->value / *b.scalar("volume_to_target")->value, WithinAbs(1, 0.01));
    // Over the whole history the instants of events may differ by a step; the curves stay together.
    CHECK(worstGap(*a.find("sensor.TE1"), a.time_s, *b.find("sensor.TE1"), b.time_s) < 0.7);
}

TEST_CASE("same drawing, same options, same results", "[study]")
{
    const document::Drawing drawing = stored(kLongHall);
    const study::Prediction one = predicted(drawing), two = predicted(drawing);
    for (std::size_t c = 0; c < one.cases.size(); ++c) {
        for (std::size_t s = 0; s < one.cases[c].series.size(); ++s) {
            const auto& a = one.cases[c].series[s].values;
            const auto& b = two.cases[c].series[s].values;
            REQUIRE(a.size() == b.size());
            CHECK(std::equal(a.begin(), a.end(), b.begin(),
                             [](double x, double y) { return x == y || (std::isnan(x) && std::isnan(y)); }));
        }
    }
}

TEST_CASE("a prediction stops when it is told to", "[study]")
{
    study::Options options;
    std::stop_source source;
    options.stop = source.get_token();
    source.request_stop();
    const auto prediction = study::predict(stored(kLongHall), options);
    REQUIRE_FALSE(prediction.has_value());
    CHECK_FALSE(prediction.error().what.empty());
}

TEST_CASE("before the job means as if the added parts had never been drawn", "[study]")
{
    const document::Drawing proposed = stored(kLongHall);
    document::Drawing plain = proposed;
    std::vector<document::PartId> added;
    for (const document::Part& part : plain.parts) {
        if (part.stage == document::Stage::Added) {
            added.push_back(part.id);
        }
    }
    auto edit = document::removeParts(plain, added, true);
    REQUIRE(edit.has_value());
    document::apply(plain, *edit);
    const study::Prediction a = predicted(proposed), b = predicted(plain);
    const study::CaseResult& bridged = *a.find("Hot draw before the loop");
    const study::CaseResult& removed = *b.find("Hot draw before the loop");
    for (const char* id : {"wait", "wasted_volume", "hottest_tap", "purge_volume"}) {
        CAPTURE(id);
        CHECK_THAT(*bridged.scalar(id)->value / *removed.scalar(id)->value, WithinAbs(1, 2e-3));
    }
}

TEST_CASE("a backward check valve blocks the loop and is named", "[study]")
{
    document::Drawing drawing = stored(kStorage);
    REQUIRE(study::loopAnswer(drawing).flow_m3s.value_or(0) > 0);
    document::Part& check = byTag(drawing, "CV1");
    for (document::Part& pipe : drawing.parts) {
        for (document::PipeEnd& end : pipe.ends) {
            if (end.part == check.id) {
                end.port = end.port == "inlet" ? "outlet" : "inlet";
            }
        }
    }
    const study::LoopAnswer loop = study::loopAnswer(drawing);
    CHECK(loop.flow_m3s.value_or(-1) == 0);
    CHECK(loop.blockedBy == check.id);
    CHECK(render(loop.reason, UnitSystem::Us).find("CV1") != std::string::npos);
}

TEST_CASE("head losses around the loop sum to the pumps' head within one percent", "[study]")
{
    // One pump: its head at the loop's flow against the sum of the budget.
    document::Drawing drawing = stored(kStorage);
    const study::LoopAnswer loop = study::loopAnswer(drawing);
    double sum = 0;
    for (const study::HeadItem& item : loop.headBudget) {
        sum += item.loss_Pa;
    }
    const parts::Values pump = document::values(*drawing.findTag("P1"));
    const auto model = pump.kind().model(pump);
    REQUIRE(model.has_value());
    const auto& law = std::get<network::PumpLaw>(model->paths.at(0).laws.at(0));
    // At the speed the wiring gives it (battery's own resistance, fuse, wire, relay contact).
    const auto plant = study::makePlant(drawing, document::View::After);
    REQUIRE(plant.has_value());
    study::WiringNet wiring(*plant);
    for (std::size_t i = 0; i < wiring.loads().size(); ++i) {
        wiring.draws()[i].on = wiring.loads()[i].kind != study::Load::Kind::Valve;
    }
    wiring.solve(study::batterySupply(*plant));
    const double speed = wiring.speed(wiring.indexOf(drawing.findTag("P1")->id));
    const double head_m = speed * speed * law.curve->headAt(*loop.flow_m3s / speed);
    CHECK_THAT(sum / (999.0 * 9.80665 * head_m), WithinAbs(1, 0.01));
}

TEST_CASE("an open end, a missing heater and a drawing without a pump each say what is missing", "[study]")
{
    document::Drawing empty;
    const study::LoopAnswer nothing = study::loopAnswer(empty);
    CHECK_FALSE(nothing.exists);
    CHECK_FALSE(nothing.reason.empty());

    document::Drawing cut = stored(kStorage);
    const document::PartId check = cut.findTag("CV1")->id;
    for (document::Part& pipe : cut.parts) {
        for (document::PipeEnd& end : pipe.ends) {
            if (end.part == check && end.port == "outlet") {
                end = {document::kNoPart, "", {100, 30}};
            }
        }
    }
    const study::LoopAnswer open = study::loopAnswer(cut);
    CHECK_FALSE(open.flow_m3s.value_or(0) > 0);
    CHECK_FALSE(open.reason.empty());
}

TEST_CASE("a tap without water says which part holds it back", "[study]")
{
    document::Drawing drawing = stored(kStorage);
    document::Case& script = drawing.cases.at(0);
    script.view = document::View::After;
    document::Action shut;
    shut.kind = document::ActionKind::UseNothing;
    script.actions.insert(script.actions.begin(), shut);
    drawing.cases.resize(1);
    const study::Prediction prediction = predicted(drawing);
    const study::Scalar& wait = *prediction.cases.at(0).scalar("wait");
    CHECK_FALSE(wait.value.has_value());
    CHECK(render(wait.reason, UnitSystem::Us).find("No water") != std::string::npos);
}
