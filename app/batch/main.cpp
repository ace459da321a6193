// SPDX-License-Identifier: GPL-3.0-or-later
#include <algorithm>
#include <CLI/CLI.hpp>
#include <cstdio>
#include <filesystem>
#include <optional>
#include <QByteArray>
#include <QGuiApplication>
#include <string>

#include "base/whole_file.h"
#include "batch/pace.h"
#include "batch/study.h"
#include "document/file.h"
#include "print/page.h"
#include "report/assess_report.h"
#include "report/report.h"
#include "review/finding.h"
#include "study/assessment.h"
#include "study/prediction.h"

// tapward-batch: the same core as the window, without a window. Results go to stdout, messages to stderr.

namespace {

using namespace tapward;

enum Exit { Fine = 0, CautionApplies = 1, NoAnswer = 2 };

/// What was asked for on the command line.
struct Asked {
    std::string file, caseName, output;
    bool json = false, csv = false, quick = false;
    app::batch::StudyAsked study;
    UnitSystem units = UnitSystem::Us;
    app::print::PaperSize paper = app::print::PaperSize::Letter;
};

int refuse(const std::string& where, const Problem& problem, UnitSystem units)
{
    std::string text = "tapward-batch: ";
    if (!where.empty()) {
        text += where + ": ";
    }
    if (!problem.where.empty()) {
        text += problem.where + ": ";
    }
    text += render(problem.what, units);
    if (!problem.remedy.empty()) {
        text += ' ' + render(problem.remedy, units);
    }
    text += '\n';
    std::fwrite(text.data(), 1, text.size(), stderr);
    return NoAnswer;
}

/// Writes to stdout and notices a full disk or a closed pipe.
int print(const std::string& text, int exitCode)
{
    const bool written = std::fwrite(text.data(), 1, text.size(), stdout) == text.size() && std::fflush(stdout) == 0;
    return written
               ? exitCode
               : refuse("", {"The answer could not be written.", "Check the disk or the program it is piped into.", {}},
                        UnitSystem::Us);
}

Result<study::Prediction> predict(const document::Drawing& drawing, const std::string& onlyCase = {})
{
    study::Options options;
    options.onlyCase = onlyCase;
    return study::predict(drawing, options);
}

/// What is known of the drawing: all there is, but for those who said --quick.
Result<study::Assessment> assess(const Asked& asked, const document::Drawing& drawing,
                                 const study::Prediction& prediction)
{
    if (asked.quick) {
        return study::assess(drawing, prediction);
    }
    app::batch::Pace pace;
    study::AssessOptions options;
    options.progress = [&pace](double share) { pace.tell(share); };
    return study::assessFully(drawing, prediction, options);
}

int check(const Asked& asked, const document::Drawing& drawing)
{
    const auto prediction = predict(drawing);
    if (!prediction) {
        return refuse(asked.file, prediction.error(), asked.units);
    }
    const auto assessment = assess(asked, drawing, *prediction);
    if (!assessment) {
        return refuse(asked.file, assessment.error(), asked.units);
    }
    const auto findings = review::review(drawing, *prediction, *assessment);
    const bool cautioned = std::any_of(findings.begin(), findings.end(), [](const review::Finding& finding) {
        return !finding.dismissed && finding.severity != review::Severity::Note;
    });
    return print(report::findingsText(drawing, findings, asked.units)
                     + report::cautionsText(drawing, *prediction, *assessment, findings, asked.units)
                     + report::winterText(drawing, asked.units),
                 cautioned ? CautionApplies : Fine);
}

int showPrediction(const Asked& asked, const document::Drawing& drawing)
{
    std::string onlyCase = asked.caseName;
    if (!onlyCase.empty() && !drawing.findCase(onlyCase)) {
        std::string names;
        for (const document::Case& one : drawing.cases) {
            names += (names.empty() ? "'" : ", '") + one.name + "'";
        }
        return refuse(asked.file,
                      {{"There is no case '{0}'.", {onlyCase}},
                       names.empty() ? Message("The drawing has no cases.") : Message("Its cases are: {0}.", {names}),
                       {}},
                      asked.units);
    }
    if (asked.csv && onlyCase.empty() && drawing.cases.size() != 1) {
        return refuse(asked.file, {"CSV holds the curves of one case.", "Name it with --case.", {}}, asked.units);
    }
    const auto prediction = predict(drawing, onlyCase);
    if (!prediction) {
        return refuse(asked.file, prediction.error(), asked.units);
    }
    int exitCode = Fine;
    for (const study::CaseResult& result : prediction->cases) {
        if (result.noAnswer) {
            exitCode = refuse(asked.file + ": case '" + result.name + "'", *result.noAnswer, asked.units);
        }
    }
    if (asked.json) {
        const std::string name = std::filesystem::path(asked.file).filename().string();
        return print(report::predictionJson(drawing, *prediction, name), exitCode);
    }
    if (asked.csv) {
        return print(prediction->cases.empty() ? std::string()
                                               : report::seriesCsv(prediction->cases.front(), asked.units),
                     exitCode);
    }
    const auto assessment = assess(asked, drawing, *prediction);
    if (!assessment) {
        return refuse(asked.file, assessment.error(), asked.units);
    }
    return print(report::table(drawing, *prediction, *assessment, asked.units), exitCode);
}

int sheet(const Asked& asked, const document::Drawing& drawing, int argc, char** argv)
{
    const auto prediction = predict(drawing);
    if (!prediction) {
        return refuse(asked.file, prediction.error(), asked.units);
    }
    const auto assessment = assess(asked, drawing, *prediction);
    if (!assessment) {
        return refuse(asked.file, assessment.error(), asked.units);
    }
    // A page needs fonts, not a screen.
    if (qEnvironmentVariableIsEmpty("QT_QPA_PLATFORM")) {
        qputenv("QT_QPA_PLATFORM", "offscreen");
    }
    const QGuiApplication application(argc, argv);
    QByteArray pdf;
    const auto findings = review::review(drawing, *prediction, *assessment);
    if (const auto problem =
            app::print::printPagePdf(drawing, report::page(drawing, *prediction, *assessment, findings), findings,
                                     asked.units, asked.paper, pdf)) {
        return refuse(asked.file, *problem, asked.units);
    }
    if (const auto why = writeWholeFile(asked.output, {pdf.constData(), static_cast<std::size_t>(pdf.size())})) {
        return refuse(asked.output,
                      {{"The page could not be written: {0}.", {*why}},
                       "A file that was there is unchanged. Choose another place or free some room.",
                       {}},
                      asked.units);
    }
    return Fine;
}

int showAssessment(const Asked& asked, const document::Drawing& drawing)
{
    const auto prediction = predict(drawing);
    if (!prediction) {
        return refuse(asked.file, prediction.error(), asked.units);
    }
    app::batch::Pace pace;
    constexpr double kHalf = 0.5;  // each takes about as long as the other
    study::AssessOptions options;
    options.progress = [&pace](double share) { pace.tell(kHalf * share); };
    const auto assessment = study::assessFully(drawing, *prediction, options);
    if (!assessment) {
        return refuse(asked.file, assessment.error(), asked.units);
    }
    study::PressesOptions presses;
    presses.progress = [&pace](double share) { pace.tell(kHalf + kHalf * share); };
    const auto needed = study::findSafeSet(drawing, presses);
    const std::string name = std::filesystem::path(asked.file).filename().string();
    return print(asked.json ? report::assessJson(drawing, *prediction, *assessment, needed, name)
                            : report::assessText(drawing, *prediction, *assessment, needed, asked.units),
                 Fine);
}

int showStudy(Asked& asked, const document::Drawing& drawing)
{
    asked.study.json = asked.json;
    const std::string name = std::filesystem::path(asked.file).filename().string();
    const auto text = app::batch::study(drawing, asked.study, name, asked.units);
    return text ? print(*text, Fine) : refuse(asked.file, text.error(), asked.units);
}

int listParts(const Asked& asked, const document::Drawing& drawing)
{
    return print(asked.csv ? report::partsCsv(drawing, asked.units) : report::partsText(drawing, asked.units), Fine);
}

}  // namespace

int main(int argc, char** argv)
{
    Asked asked;
    CLI::App program{"Predicts and prints hot-water preheat loops in recreational coaches."};
    program.set_version_flag("--version", "tapward-batch " TAPWARD_VERSION);
    program.require_subcommand(1);
    program.footer("Exit status: 0 fine, 1 a caution applies (check), 2 bad input or no answer.");

    const auto command = [&](const char* name, const char* what) {
        CLI::App* made = program.add_subcommand(name, what);
        made->add_option("FILE", asked.file, "The drawing (.tapward); - reads standard input")->required();
        made->add_option("--units", asked.units, "us or metric")
            ->transform(CLI::CheckedTransformer(
                std::map<std::string, UnitSystem>{{"us", UnitSystem::Us}, {"metric", UnitSystem::Metric}}));
        return made;
    };
    const CLI::App* checkCommand = command("check", "List what a careful technician would want to know");
    CLI::App* assessCommand =
        command("assess", "All that is known: answers, how hot it gets where, protections needed");
    assessCommand->add_flag("--json", asked.json, "One JSON document, SI units and °C");
    CLI::App* predictCommand = command("predict", "Predict the cases: a table, JSON, or the curves as CSV");
    predictCommand->add_option("--case", asked.caseName, "Only this case");
    CLI::Option* json = predictCommand->add_flag("--json", asked.json, "One JSON document, SI units and °C");
    predictCommand->add_flag("--csv", asked.csv, "The curves of one case")->excludes(json);
    predictCommand->add_flag("--quick", asked.quick, "The drawn cases alone; how hot it gets is told as 'at least'");
    CLI::App* sheetCommand = command("sheet", "Write the customer's page as PDF");
    sheetCommand->add_option("-o,--output", asked.output, "The PDF to write; - writes to standard output")->required();
    sheetCommand->add_option("--paper", asked.paper, "letter or a4")
        ->transform(CLI::CheckedTransformer(std::map<std::string, app::print::PaperSize>{
            {"letter", app::print::PaperSize::Letter}, {"a4", app::print::PaperSize::A4}}));
    CLI::App* partsCommand = command("parts", "List the parts to buy");
    partsCommand->add_flag("--csv", asked.csv, "As CSV");

    CLI::App* studyCommand = command("study", "Study what can go wrong: a table or JSON");
    CLI::Option_group* which = studyCommand->add_option_group("Study");
    which->require_option(1);
    which->add_flag("--presses", asked.study.presses, "Hottest water over repeated presses, the wait, protections");
    which->add_flag("--protections", asked.study.protections,
                    "The fewest protections and settings that keep the limits");
    CLI::Option* faults = which->add_flag("--faults", asked.study.faults, "Every fault of every part in turn");
    which->add_flag("--stop", asked.study.stop, "Where to set the stop, with what is not known as ranges");
    which->add_flag("--wiring", asked.study.wiring, "12 V: volts at each load, wire, fuse, energy");
    studyCommand->add_flag("--pairs", asked.study.pairs, "Also a failed stop or limit with each other fault")
        ->needs(faults);
    studyCommand->add_flag("--json", asked.json, "One JSON document, SI units and °C");

    try {
        program.parse(argc, argv);
    } catch (const CLI::ParseError& error) {
        return program.exit(error) == 0 ? Fine : NoAnswer;
    }

    const auto drawing = document::load(asked.file, ReadFrom::PipesToo);
    if (!drawing) {
        return refuse(asked.file, drawing.error(), asked.units);
    }
    if (checkCommand->parsed()) {
        return check(asked, *drawing);
    }
    if (assessCommand->parsed()) {
        return showAssessment(asked, *drawing);
    }
    if (predictCommand->parsed()) {
        return showPrediction(asked, *drawing);
    }
    if (sheetCommand->parsed()) {
        return sheet(asked, *drawing, argc, argv);
    }
    if (studyCommand->parsed()) {
        return showStudy(asked, *drawing);
    }
    return listParts(asked, *drawing);
}
