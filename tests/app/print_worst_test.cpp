// SPDX-License-Identifier: GPL-3.0-or-later
// The worst file the reader takes, one of each kind: opened, predicted, reviewed, studied, printed and saved, each in a
// process of its own, within a gigabyte and a minute. Those that take long are run by hand: [worst].
#include <chrono>
#include <QBuffer>
#include <QByteArray>
#include <QImage>
#include <stop_token>
#include <string>
#include <thread>

#include "document/file.h"
#include "document/floor_plan.h"
#include "print/page.h"
#include "report/report.h"
#include "report/study_report.h"
#include "review/winter.h"
#include "study/faults.h"
#include "study/presses.h"
#include "study/stop.h"
#include "study/wiring.h"
#include "support/catch.h"
#include "support/cost.h"
#include "support/large_drawing.h"

using namespace tapward;
using document::Drawing;

namespace {

constexpr long kMost_MB = 1024;
constexpr double kMost_s = 60;

Drawing sample() { return document::load(TAPWARD_SOURCE_DIR "/samples/long_hall_coach.tapward").value(); }

/// What a person may do with a file, one after the other. @return whether it was read at all
bool useAll(const std::string& text)
{
    const auto drawing = document::read(text);
    if (!drawing)
        return false;
    const auto prediction = study::predict(*drawing);
    if (prediction) {
        const auto findings = review::review(*drawing, *prediction, study::assess(*drawing, *prediction));
        QByteArray pdf;
        if (app::print::printPagePdf(
                *drawing, report::page(*drawing, *prediction, study::assess(*drawing, *prediction), findings), findings,
                UnitSystem::Us, app::print::PaperSize::Letter, pdf))
            return false;
        if (report::predictionJson(*drawing, *prediction, "worst").empty()
            || report::table(*drawing, *prediction, study::assess(*drawing, *prediction), UnitSystem::Us).empty())
            return false;
    }
    (void)study::wiringStudy(*drawing);
    (void)report::partsCsv(*drawing, UnitSystem::Us);
    return document::write(*drawing) == document::write(*document::read(document::write(*drawing)));
}

/// The long studies are begun and called off, as a person would: each must let go soon, whatever the coach.
bool beginStudies(const std::string& text)
{
    const auto drawing = document::read(text);
    if (!drawing)
        return false;
    const auto begin = [](auto options, auto&& study) {
        std::stop_source stop;
        options.stop = stop.get_token();
        const std::jthread later([&] {
            std::this_thread::sleep_for(std::chrono::seconds(3));
            stop.request_stop();
        });
        study(options);
    };
    begin(study::FaultsOptions{}, [&](const auto& options) { (void)study::studyFaults(*drawing, options); });
    begin(study::PressesOptions{}, [&](const auto& options) { (void)study::studyPresses(*drawing, options); });
    begin(study::StopOptions{}, [&](const auto& options) { (void)study::suggestStop(*drawing, options); });
    return true;
}

struct Hold {
    bool tell = false;  ///< what it took, for the one who runs it by hand
    bool studies = false;  ///< also begins the long studies and calls them off

    void operator()(const char* what, const Drawing& drawing) const
    {
        const std::string text = document::write(drawing);
        CAPTURE(what, text.size());
        REQUIRE(text.size() <= document::Limits{}.bytes);
        check(what, spent::costOf([&] { return useAll(text); }));
        if (studies)
            check(what, spent::costOf([&] { return beginStudies(text); }));
    }

private:
    void check(const char* what, const spent::Cost& cost) const
    {
        CAPTURE(cost.seconds, cost.processor_s, cost.peak_MB);
        CHECK(cost.done);
        if (spent::sanitized())
            return;
        CHECK(cost.peak_MB < kMost_MB);
        CHECK(cost.processor_s < kMost_s);  // of all cores: stricter than a clock, and no busy machine fails it
        if (tell)
            WARN(what << ": " << cost.seconds << " s, " << cost.processor_s << " s of processor, " << cost.peak_MB
                      << " MB");
    }
};

/// Two hundred cases on the sample.
Drawing mostCases(double duration_s)
{
    Drawing drawing = sample();
    document::Case one = drawing.cases.front();
    one.duration_s = duration_s;
    drawing.cases.clear();
    for (int i = 0; i < 200; ++i) {
        one.name = "Case " + std::to_string(i);
        drawing.cases.push_back(one);
    }
    return drawing;
}

/// Two thousand actions in each case, over its whole length.
Drawing mostActions(int cases, double duration_s)
{
    Drawing drawing = sample();
    document::Case one = drawing.cases.front();
    one.duration_s = duration_s;
    one.actions.clear();
    const auto tap = drawing.findTag("F1")->id;
    for (int i = 0; i < 2000; ++i) {
        auto action = test::LargeCoach::open(tap, duration_s / 2000 * i);
        if (i % 2)
            action.kind = document::ActionKind::CloseOutlet;
        one.actions.push_back(action);
    }
    drawing.cases.clear();
    for (int i = 0; i < cases; ++i) {
        one.name = "Case " + std::to_string(i);
        drawing.cases.push_back(one);
    }
    return drawing;
}

/// Every tap of the largest coach open for two hours.
Drawing mostParts(double pipe_m)
{
    Drawing drawing = test::LargeCoach(568, pipe_m).drawing;
    document::Case& one = drawing.cases.front();
    one.duration_s = 7200;
    one.actions.clear();
    for (const auto& part : drawing.parts)
        if (part.kind == "faucet")
            one.actions.push_back(test::LargeCoach::open(part.id, 1));
    return drawing;
}

Drawing longestTexts(int notes)
{
    Drawing drawing = sample();
    const std::string words = [] {
        std::string all;
        while (all.size() + 8 < 8192)
            all += "Wording ";
        return all;
    }();
    for (auto* text : {&drawing.job.title, &drawing.job.customer, &drawing.job.coach, &drawing.job.technician,
                       &drawing.job.date, &drawing.job.revision, &drawing.job.notes})
        *text = words;
    for (int i = 0; i < notes; ++i) {
        document::Part note;
        note.id = drawing.nextId++;
        note.kind = "note";
        note.tag = "N" + std::to_string(i + 500);
        note.at = {4.0 * (i % 40), 100 + 4.0 * (i / 40)};
        note.entries["text"] = {words, parts::Basis::Estimated};
        drawing.parts.push_back(note);
    }
    return drawing;
}

Drawing mostUnknown(int keys)
{
    Drawing drawing = sample();
    for (int i = 0; i < keys; ++i)
        drawing.unknown.emplace("/later" + std::to_string(i), "1");
    return drawing;
}

Drawing deepestUnknown()
{
    Drawing drawing = sample();
    std::string deep = "1";
    for (int i = 0; i < 20; ++i)
        deep = '[' + deep + ']';
    std::string wide = "[" + deep;
    while (wide.size() < 2'500'000)
        wide += ", " + deep;
    drawing.unknown.emplace("/later", wide + ']');
    return drawing;
}

std::string png(const QImage& image)
{
    QByteArray bytes;
    QBuffer buffer(&bytes);
    buffer.open(QIODevice::WriteOnly);
    image.save(&buffer, "PNG");
    return bytes.toStdString();
}

/// Floor plans until the reader takes no more: of many pixels and few bytes, then of many bytes and few pixels.
Drawing mostPictures()
{
    QImage plain(4000, 4000, QImage::Format_Grayscale8);
    plain.fill(200);
    QImage noise(700, 700, QImage::Format_RGB32);  // does not compress
    std::uint32_t seed = 1;
    for (int y = 0; y < noise.height(); ++y)
        for (int x = 0; x < noise.width(); ++x)
            noise.setPixel(x, y, seed = seed * 1664525u + 1013904223u);
    Drawing drawing = sample();
    for (const std::string& bytes : {png(plain), png(noise)}) {
        for (int i = 0; i < 20; ++i) {
            document::Part plan;
            plan.id = drawing.nextId++;
            plan.kind = "floor_plan";
            plan.tag = "FP" + std::to_string(plan.id);
            drawing.parts.push_back(plan);
            const auto edit = document::setPlanPicture(drawing, plan.id, bytes, "Picture");
            if (!edit || document::refusal(drawing, *edit)) {
                drawing.parts.pop_back();
                break;
            }
            document::apply(drawing, *edit);
        }
    }
    return drawing;
}

}  // namespace

TEST_CASE("files that are worst in what they hold take less than a gigabyte and a minute", "[print]")
{
    const Hold hold;
    hold("most cases", mostCases(30));
    hold("most actions", mostActions(1, 600));
    hold("long texts", longestTexts(20));
    hold("many unknown keys", mostUnknown(20'000));
    hold("deepest nesting", deepestUnknown());
    hold("most pictures", mostPictures());
}

TEST_CASE("the long studies of a large coach can be called off, or are refused in words", "[print]")
{
    const std::string text = document::write(test::LargeCoach(142).drawing);
    const spent::Cost cost = spent::costOf([&] { return beginStudies(text); });
    CHECK(cost.done);
    if (!spent::sanitized())
        CHECK(cost.peak_MB < kMost_MB);
    const auto refused = study::studyFaults(test::LargeCoach(568).drawing);
    REQUIRE_FALSE(refused);
    CHECK_FALSE(refused.error().remedy.empty());
}

TEST_CASE("the worst of all files take less than a gigabyte and a minute", "[.][worst]")
{
    const Hold hold{true, true};
    hold("most cases", mostCases(7200));
    hold("most actions", mostActions(20, 7200));
    hold("most parts", mostParts(0.5));
    hold("most tube", mostParts(200));
    hold("most unknown keys", mostUnknown(250'000));
    hold("longest texts", longestTexts(800));
}

TEST_CASE("a coach of a thousand parts is printed within five seconds", "[print]")
{
    const Drawing drawing = test::LargeCoach(142).drawing;
    REQUIRE(drawing.parts.size() > 990);
    const auto prediction = study::predict(drawing);
    REQUIRE(prediction);
    const auto findings = review::review(drawing, *prediction, study::assess(drawing, *prediction));
    const auto cost = spent::costOf([&] {
        QByteArray pdf;
        return !app::print::printPagePdf(
                   drawing, report::page(drawing, *prediction, study::assess(drawing, *prediction), findings), findings,
                   UnitSystem::Us, app::print::PaperSize::Letter, pdf)
               && pdf.size() > 50'000;
    });
    CAPTURE(cost.processor_s);
    CHECK(cost.done);
    if (!spent::sanitized())
        CHECK(cost.processor_s < 5);
}
