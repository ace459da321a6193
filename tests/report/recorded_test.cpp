// SPDX-License-Identifier: GPL-3.0-or-later
// Answers to the questions people ask, as this program gave them when they were written down: not facts to be held
// against the world, which is what the other tests do, but a change nobody meant is seen here, with its place.
// TAPWARD_RECORD=1 writes the answers down anew and prints what changed (DEVELOPERS.md, "Recorded answers").

#include <cstdlib>
#include <fstream>
#include <iostream>
#include <nlohmann/json.hpp>
#include <sstream>

#include <fmt/format.h>

#include "document/file.h"
#include "report/report.h"
#include "report/stop_report.h"
#include "report/study_report.h"
#include "review/winter.h"
#include "support/catch.h"
#include "support/recorded.h"

using namespace tapward;
using test::Lines;
using Json = nlohmann::ordered_json;

namespace {

const std::string kFolder = TAPWARD_SOURCE_DIR "/tests/report/recorded/";

struct Subject {
    std::string name, file;
};
/// Both samples, and an invented coach at 2,500 m with a heater set to 60 °C, warm supply and a bay at 40 °C.
const std::vector<Subject> kSubjects{
    {"long_hall_coach", TAPWARD_SOURCE_DIR "/samples/long_hall_coach.tapward"},
    {"storage_coach", TAPWARD_SOURCE_DIR "/samples/storage_coach.tapward"},
    {"hot_high_coach", kFolder + "hot_high_coach.tapward"},
};

document::Drawing load(const Subject& subject)
{
    auto drawing = document::load(subject.file);
    if (!drawing) {
        FAIL(subject.file << ": " << render(drawing.error().what, UnitSystem::Metric));
    }
    return *drawing;
}

bool asked(const char* variable)
{
    const char* value = std::getenv(variable);
    return value && *value != '\0' && std::string(value) != "0";
}

/// Holds the answer against the recorded one, or records it.
void compare(const Subject& subject, const std::string& question, const Lines& now)
{
    const std::string path = kFolder + subject.name + '.' + question + ".txt";
    Lines before;
    std::ifstream file(path);
    for (std::string line; std::getline(file, line);) {
        before.push_back(line);
    }
    const Lines changed = test::differences(before, now);
    std::ostringstream told;
    constexpr std::size_t kMost = 25;
    for (std::size_t i = 0; i < changed.size() && (i < kMost || asked("TAPWARD_RECORD")); ++i) {
        told << subject.name << ", " << question << ": " << changed[i] << '\n';
    }
    if (asked("TAPWARD_RECORD")) {
        std::cout << told.str() << subject.name << ", " << question << ": " << changed.size() << " lines changed\n";
        if (!changed.empty()) {
            std::ofstream out(path, std::ios::trunc);
            for (const std::string& line : now) {
                out << line << '\n';
            }
            REQUIRE(out.flush());
        }
        return;
    }
    if (!changed.empty()) {
        FAIL_CHECK(told.str() << changed.size() << " of " << now.size() << " lines of " << path
                              << " have changed. If that is meant: TAPWARD_RECORD=1 writes them anew; say why in the "
                                 "commit.");
    }
}

std::string tagOf(const document::Drawing& drawing, document::PartId id)
{
    const document::Part* part = drawing.find(id);
    return part ? part->tag : std::string("nothing");
}

std::string metric(const Message& message) { return message.empty() ? "-" : render(message, UnitSystem::Metric); }

std::string celsius(const std::optional<double>& value) { return value ? test::written(*value, "°C") : "none"; }

std::string heats(const study::Hottest& hottest)
{
    return fmt::format("outlets {}, cold outlets {}, heater outlet {}, heater inlet {}", celsius(hottest.outlets_C),
                       celsius(hottest.coldOutlets_C), celsius(hottest.heaterOutlet_C), celsius(hottest.heaterInlet_C));
}

Lines predicted(const document::Drawing& drawing, const study::Prediction& prediction)
{
    Lines lines = test::flattened(Json::parse(report::predictionJson(drawing, prediction, "")), {"series", "file"});
    for (const study::CaseResult& result : prediction.cases) {
        for (const study::Series& series : result.series) {
            const std::string symbol(siSymbol(series.quantity));
            const std::string unit = symbol == "degC" ? "°C" : symbol;
            std::string text;
            const std::size_t last = result.time_s.size() - 1;
            for (std::size_t k = 0; k <= 12; ++k) {  // a dozen moments tell a curve from any other
                const std::size_t at = last * k / 12;
                text += fmt::format("{}{} at {}", k == 0 ? "" : " | ", test::written(series.values.at(at), unit),
                                    test::written(result.time_s[at], "s"));
            }
            lines.push_back(fmt::format("cases/{}/series/{}: {}", result.name, series.id, text));
        }
        for (const study::PlaceHeat& heat : result.hottest) {
            lines.push_back(fmt::format("cases/{}/hottest/{}: {}", result.name,
                                        report::placeName(drawing, heat.place, heat.part), celsius(heat.hottest_C)));
        }
    }
    return lines;
}

Lines checked(const document::Drawing& drawing, const study::Prediction& prediction,
              const study::Assessment& assessment, const std::vector<review::Finding>& findings)
{
    Lines lines;
    for (const review::Finding& finding : findings) {
        const std::string key = fmt::format("finding {} {}", finding.rule, tagOf(drawing, finding.part));
        lines.push_back(key + "/severity: " + std::to_string(static_cast<int>(finding.severity)));
        lines.push_back(key + "/what: " + metric(finding.what));
        lines.push_back(key + "/why: " + metric(finding.why));
        lines.push_back(key + "/remedy: " + metric(finding.remedy));
        lines.push_back(key + "/source: " + finding.source);
        lines.push_back(key + "/case: " + finding.caseName);
        lines.push_back(key + "/fix: " + (finding.fix ? metric(finding.fix->title) : "-"));
    }
    int place = 0;
    for (const Message& caution : review::cautionsBeside(findings, drawing, prediction, assessment)) {
        lines.push_back(fmt::format("caution {}: {}", ++place, metric(caution)));
    }
    place = 0;
    for (const auto& step : review::winterPlan(drawing).steps) {
        lines.push_back(fmt::format("winterizing {}: {}", ++place, metric(step.text)));
    }
    return lines;
}

Lines printed(const document::Drawing& drawing, const study::Prediction& prediction,
              const study::Assessment& assessment, const std::vector<review::Finding>& findings)
{
    const report::PageContent page = report::page(drawing, prediction, assessment, findings);
    Lines lines{"title: " + inEnglish(page.title), "subtitle: " + page.subtitle};
    for (const auto& [label, text] : page.titleBlock) {
        lines.push_back("title block/" + label + ": " + text);
    }
    int place = 0;
    for (const report::AnswerLine& answer : page.answers) {
        const auto us = [](const Message& message) { return message.empty() ? "-" : render(message, UnitSystem::Us); };
        lines.push_back(fmt::format("answer {} {}: {}, {} ({})", ++place, answer.id, answer.label,
                                    answer.has ? show(answer.value, UnitSystem::Us) : "none",
                                    us(answer.has ? answer.note : answer.reason)));
    }
    place = 0;
    for (const Message& caution : page.cautions) {
        lines.push_back(fmt::format("caution {}: {}", ++place, render(caution, UnitSystem::Us)));
    }
    for (const report::PartLine& part : page.parts.lines) {
        std::string tags;
        for (const std::string& tag : part.tags) {
            tags += ' ' + tag;
        }
        lines.push_back(fmt::format("part {} at {}: {} for{}", inEnglish(part.item), test::written(part.unitPrice, ""),
                                    test::written(part.quantity, part.metres ? "m" : ""), tags));
    }
    lines.push_back(fmt::format("sums: parts {}, all priced {}, labour {}", test::written(page.parts.partsTotal, ""),
                                page.parts.allPriced, test::written(page.parts.labour, "")));
    place = 0;
    for (const std::string& note : page.footnotes) {
        lines.push_back(fmt::format("footnote {}: {}", ++place, note));
    }
    return lines;
}

Lines faulted(const document::Drawing& drawing, const study::FaultsStudy& study)
{
    Lines lines{"sound: " + heats(study.sound)};
    for (const std::string& name : study.cases) {
        lines.push_back("case: " + name);
        lines.back().insert(4, fmt::format(" {}", lines.size() - 1));
    }
    for (const study::FaultRow& row : study.rows) {
        std::string key = tagOf(drawing, row.part) + ' ' + row.fault;
        if (row.withPart != document::kNoPart) {
            key += " with " + tagOf(drawing, row.withPart) + ' ' + row.withFault;
        }
        if (!row.run) {
            lines.push_back(key + ": not run | " + metric(row.consequence));
            continue;
        }
        const char* harm = row.harm == study::Harm::Nobody ? "nobody"
                           : row.harm == study::Harm::User ? "user"
                                                           : "drinking";
        lines.push_back(fmt::format("{}: {}, change {}, harms {} at {}{}", key, heats(row.hottest),
                                    row.change_K ? test::written(*row.change_K, "K") : "none", harm,
                                    tagOf(drawing, row.harmedAt), row.harmsSoundToo ? ", sound too" : ""));
        std::string outlets;
        for (const study::PlaceHeat& heat : row.outlets) {
            outlets += fmt::format("{}{} {}", outlets.empty() ? "" : " | ",
                                   report::placeName(drawing, heat.place, heat.part), celsius(heat.hottest_C));
        }
        lines.push_back(key + "/outlets: " + outlets);
        lines.push_back(fmt::format("{}/words: {} | {} | {} | {}", key, metric(row.consequence), metric(row.who),
                                    metric(row.shows), metric(row.stops)));
    }
    return lines;
}

}  // namespace

TEST_CASE("a recorded line may differ by the tolerance of its units and no more", "[report][recorded]")
{
    // 0.05 K; 0.2 % of 0.0026 m³ is 5.2e-6 m³; words and whole numbers are exact.
    CHECK(test::sameWithin("WH1 off: outlets 52.340 °C, cold 20.000 °C", "WH1 off: outlets 52.389 °C, cold 19.960 °C"));
    CHECK_FALSE(test::sameWithin("WH1 off: outlets 52.340 °C", "WH1 off: outlets 52.395 °C"));
    CHECK_FALSE(test::sameWithin("WH1 off: outlets 52.340 °C", "WH2 off: outlets 52.340 °C"));
    CHECK_FALSE(test::sameWithin("outlets 52.340 °C, cold 20.000 °C", "outlets 20.000 °C, cold 52.340 °C"));
    CHECK_FALSE(test::sameWithin("outlets 52.340 °C", "outlets none"));
    CHECK_FALSE(test::sameWithin("outlets 52.340 °C", "outlets -52.340 °C"));
    CHECK(test::sameWithin("0.002600 m3", "0.002605 m3"));
    CHECK_FALSE(test::sameWithin("0.002600 m3", "0.002606 m3"));
    CHECK_FALSE(test::sameWithin("Over 3 presses", "Over 4 presses"));
    CHECK(test::sameWithin("0.69 gal", "0.70 gal"));  // rounded for reading: one in the last place
    CHECK_FALSE(test::sameWithin("0.69 gal", "0.71 gal"));
    CHECK(test::sameWithin("3.2e-12", "8.9e-13"));
    CHECK_FALSE(test::sameWithin("a line", "a line and more"));
    const Lines changed = test::differences({"a: 1", "b: 2", "c: 3"}, {"a: 1", "b: 5", "d: 4"});
    REQUIRE(changed.size() == 3);
    CHECK(changed[0] == "b\n    was  2\n    now  5");
    CHECK(changed[1] == "d\n    was  (not there)\n    now  4");
    CHECK(changed[2] == "c\n    was  3\n    now  (gone)");
    const Json json =
        Json::parse(R"({"taps": [{"part": "F1", "hot_C": 40.5}], "flow": {"value": 2.5e-5, "unit": "m3/s"},
        "reason": null, "file": "x", "heats": [1.5, 2.5]})");
    CHECK(test::flattened(json, {"file"})
          == Lines{"taps/F1/part: F1", "taps/F1/hot_C: 40.500 °C", "flow/value: 2.5e-05 m3/s", "flow/unit: m3/s",
                   "reason: null", "heats: 1.5 | 2.5"});
}

TEST_CASE("predictions are as recorded", "[report][recorded][regression]")
{
    for (const Subject& subject : kSubjects) {
        const document::Drawing drawing = load(subject);
        const auto prediction = study::predict(drawing);
        REQUIRE(prediction);
        compare(subject, "predict", predicted(drawing, *prediction));
    }
}

TEST_CASE("presses, stop, findings and page of the full assessment are as recorded", "[report][recorded][regression]")
{
    for (const Subject& subject : kSubjects) {
        const document::Drawing drawing = load(subject);
        const auto prediction = study::predict(drawing);
        REQUIRE(prediction);
        const auto assessment = study::assessFully(drawing, *prediction);
        REQUIRE(assessment);
        REQUIRE(assessment->presses);
        REQUIRE(assessment->stop);
        // Which of two scripts equally hot to a hundredth wins may hang on the compiler; how hot it gets does not.
        compare(subject, "presses",
                test::flattened(Json::parse(report::pressesJson(drawing, *assessment->presses, "")),
                                {"script", "at_s", "burn", "cases_simulated", "file"}));
        compare(subject, "stop",
                test::flattened(Json::parse(report::stopJson(drawing, *assessment->stop, "")), {"file"}));
        const auto findings = review::review(drawing, *prediction, *assessment);
        compare(subject, "check", checked(drawing, *prediction, *assessment, findings));
        compare(subject, "page", printed(drawing, *prediction, *assessment, findings));
    }
}

TEST_CASE("faults are as recorded", "[report][recorded][regression]")
{
    for (const Subject& subject : kSubjects) {
        // Pairs take most of the time: the small coach has them always, the samples when asked (tests/long).
        const bool small = subject.name == "hot_high_coach";
        study::FaultsOptions options;
        options.pairs = small || asked("TAPWARD_ALL_PAIRS") || asked("TAPWARD_RECORD");
        const document::Drawing drawing = load(subject);
        auto study = study::studyFaults(drawing, options);
        REQUIRE(study);
        study::FaultsStudy pairs = *study;
        const auto isPair = [](const study::FaultRow& row) { return row.withPart != document::kNoPart; };
        std::erase_if(study->rows, isPair);
        compare(subject, "faults", faulted(drawing, *study));
        if (options.pairs) {
            std::erase_if(pairs.rows, [&](const study::FaultRow& row) { return !isPair(row); });
            compare(subject, "pairs", faulted(drawing, pairs));
        }
    }
}

TEST_CASE("the wiring is as recorded", "[report][recorded][regression]")
{
    for (const Subject& subject : kSubjects) {
        const document::Drawing drawing = load(subject);
        const auto study = study::wiringStudy(drawing);
        const auto curves = study::loopCurves(drawing);
        const auto budget = study::headBudget(drawing);
        REQUIRE(study);
        REQUIRE(curves);
        REQUIRE(budget);
        compare(subject, "wiring",
                test::flattened(Json::parse(report::wiringJson(drawing, *study, &*curves, &*budget, "")), {"file"}));
    }
}
