// SPDX-License-Identifier: GPL-3.0-or-later
// Everything behind the file reader, on drawings with slips in their data (mutant.h):
//
//   tapward_behind_reader [--seed S] [--from N] [--count N] [--seconds N] [--keep FOLDER] [--only N]
//   tapward_behind_reader FILE...      these drawings, everything asked of each
//
// Each mutant that the reader takes is predicted with coarse cells, reviewed, every fix tried, and its page put
// together. What costs more (tables, CSV and JSON among it) is done less often: see `Schedule`. A fault is a crash (a failed assertion, a
// sanitizer's report), a number that is not finite where one is shown, an answer that differs when asked again, a fix
// that cannot be made, twenty seconds of processor time or a gigabyte for one drawing. The work is done in a child, so that nothing stops
// the count; a faulty mutant is kept as FOLDER/<seed>_<index>.tapward and can be had again with --only INDEX.
// Exit: 0 fine, 1 faults, 2 bad usage.
#include <algorithm>
#include <atomic>
#include <cctype>
#include <cmath>
#include <csignal>
#include <cstdio>
#include <cstdlib>
#include <cstring>
#include <ctime>
#include <filesystem>
#include <fstream>
#include <iterator>
#include <new>
#include <nlohmann/json.hpp>
#include <optional>
#include <stdexcept>
#include <string>
#include <sys/mman.h>
#include <sys/resource.h>
#include <sys/wait.h>
#include <unistd.h>

#include "document/file.h"
#include "document/proposal.h"
#include "fuzz/mutant.h"
#include "report/report.h"
#include "report/stop_report.h"
#include "report/study_report.h"
#include "report/survey_sheet.h"
#include "review/finding.h"
#include "study/curves.h"
#include "study/faults.h"
#include "study/fire_map.h"
#include "study/head_budget.h"
#include "study/prediction.h"
#include "study/presses.h"
#include "study/stop.h"
#include "study/trials.h"
#include "study/wiring.h"
#include "support/random_drawing.h"

#ifdef TAPWARD_PRINTS
#include "fuzz/print_mutant.h"
#endif

using namespace tapward;

namespace {

/// Every how many mutants what is done beside predict, review and report.
struct Schedule {
    std::uint64_t texts = 4;  ///< tables, CSV and JSON, and the curves in them
    std::uint64_t again = 16;  ///< predicted twice: the same bytes
    std::uint64_t fine = 256;  ///< at the resolution that people see, with pictures along the pipes
    std::uint64_t wiring = 8;  ///< with curves and head budget
    std::uint64_t propose = 32;  ///< a loop proposed, whatever is there
    std::uint64_t fire = 512;
    std::uint64_t presses = 1024;  ///< two presses, coarse, waits and protections now and then
    std::uint64_t stop = 1024;  ///< 16 samples, coarse
    std::uint64_t faults = 4096;  ///< coarse; half of them with pairs
    std::uint64_t print = 512;  ///< page and survey sheet as PDF
};

constexpr std::uint64_t kMost_ms = 20'000;  // of processor time: a busy machine is no fault
constexpr std::uint64_t kMostByClock_ms = 120'000;  // nothing waits for anything
constexpr long kMost_kB = 1 << 20;
constexpr std::uint64_t kMostFaults = 200;
constexpr int kTooBig = 77;  // exit of a child whose memory grew beyond

/// What parent and child both see.
struct Board {
    std::atomic<std::uint64_t> index{0};  ///< at work on
    std::atomic<std::uint64_t> begun_ms{0};  ///< when it was begun, by the clock ...
    std::atomic<std::uint64_t> begunCpu_ms{0};  ///< ... and by the child's processor time
    std::atomic<std::uint64_t> taken{0}, refused{0}, predicted{0}, cases{0}, answered{0}, texts{0}, again{0}, fine{0},
        wiring{0}, proposed{0}, loops{0}, fire{0}, presses{0}, stop{0}, faults{0}, printed{0}, fixes{0}, failed{0};
    std::atomic<std::uint64_t> slowest_ms{0}, slowest{0};
};

Board* board = nullptr;

std::uint64_t now_ms(clockid_t clock = CLOCK_MONOTONIC)
{
    timespec now{};
    clock_gettime(clock, &now);
    return static_cast<std::uint64_t>(now.tv_sec) * 1000 + static_cast<std::uint64_t>(now.tv_nsec) / 1'000'000;
}

/// What was found wrong with an answer.
struct Fault : std::runtime_error {
    using std::runtime_error::runtime_error;
};

void require(bool holds, const std::string& what)
{
    if (!holds) {
        throw Fault(what);
    }
}

void requireFinite(const std::optional<double>& value, const std::string& what)
{
    require(!value || std::isfinite(*value), what + " is not finite");
}

/// No word "nan" or "inf" where a number should be.
void requireNumbers(const std::string& text, const std::string& what)
{
    const auto letter = [](char c) { return std::isalnum(static_cast<unsigned char>(c)) || c == '_' || (c & 0x80); };
    for (std::size_t i = 0; i + 3 <= text.size(); ++i) {
        if (i > 0 && letter(text[i - 1])) {
            continue;
        }
        const auto is = [&](const char* word) {
            return std::tolower(text[i]) == word[0] && std::tolower(text[i + 1]) == word[1]
                   && std::tolower(text[i + 2]) == word[2];
        };
        if ((is("nan") || is("inf")) && (i + 3 == text.size() || !letter(text[i + 3]))) {
            const std::size_t from = i < 60 ? 0 : i - 60;
            throw Fault(what + " says: " + text.substr(from, 120));
        }
    }
}

void requireMessage(const Message& message, const std::string& what)
{
    for (const UnitSystem units : {UnitSystem::Us, UnitSystem::Metric}) {
        requireNumbers(render(message, units), what);
    }
}

void requireJson(const std::string& text, const std::string& what)
{
    require(nlohmann::json::accept(text), what + " is no JSON");
}

void checkProblem(const Problem& problem, const std::string& what)
{
    require(!problem.what.empty(), what + " is refused without a reason");
    requireMessage(problem.what, what);
    requireMessage(problem.remedy, what);
}

void checkCase(const study::CaseResult& result)
{
    ++board->cases;
    if (result.noAnswer) {
        checkProblem(*result.noAnswer, "a case");
        return;
    }
    ++board->answered;
    for (const study::Scalar& scalar : result.scalars) {
        requireFinite(scalar.value, "scalar " + scalar.id);
        require(scalar.value || !scalar.reason.empty(), "scalar " + scalar.id + " has neither value nor reason");
        requireMessage(scalar.reason, scalar.id);
        requireMessage(scalar.note, scalar.id);
    }
    for (const study::Event& event : result.events) {
        require(event.t_s >= 0 && event.t_s <= result.duration_s + 1e-6, "event " + event.id + " outside the case");
        requireMessage(event.what, "event " + event.id);
    }
    for (const study::Series& series : result.series) {
        require(series.values.size() == result.time_s.size(), "series " + series.id + " has other times");
        for (const double value : series.values) {
            require(!std::isinf(value), "series " + series.id + " is infinite");
        }
    }
    for (const study::PlaceHeat& heat : result.hottest) {
        require(std::isfinite(heat.hottest_C) && std::isfinite(heat.at_s), "the hottest of a place is not finite");
    }
    const study::Snapshot& seen = result.snapshot;
    for (const float celsius : seen.celsius) {
        require(std::isfinite(celsius), "a picture's temperature is not finite");
    }
    for (const float flow : seen.flow_m3s) {
        require(std::isfinite(flow), "a picture's flow is not finite");
    }
}

void checkLoop(const study::LoopAnswer& loop)
{
    for (const auto& value : {loop.flow_m3s, loop.activationFlow_m3s, loop.holdFlow_m3s, loop.flowMargin,
                              loop.flowLowVolts_m3s, loop.flowHighVolts_m3s, loop.purgeVolume_m3}) {
        requireFinite(value, "the loop's answer");
    }
    for (const study::HeadItem& item : loop.headBudget) {
        require(std::isfinite(item.loss_Pa) && std::isfinite(item.share), "the head budget is not finite");
    }
    requireMessage(loop.reason, "the loop's reason");
}

study::Options coarse()
{
    study::Options options;
    options.cell_m = 1;
    options.wallLayers = 2;
    options.step_s = 2;
    options.solveEvery_s = 5;
    return options;
}

void checkPage(const document::Drawing& drawing, const study::Prediction& prediction,
               const std::vector<review::Finding>& findings)
{
    for (const review::Finding& finding : findings) {
        requireMessage(finding.what, finding.rule);
        requireMessage(finding.why, finding.rule);
        requireMessage(finding.remedy, finding.rule);
        if (finding.fix) {
            ++board->fixes;
            require(!document::refusal(drawing, *finding.fix), "the fix of " + finding.rule + " cannot be made");
            document::Drawing fixed = drawing;
            document::Edit back = document::apply(fixed, *finding.fix);
            require(document::read(document::write(fixed)).has_value(),
                    "the fix of " + finding.rule + " cannot be saved");
            document::apply(fixed, std::move(back));
            require(fixed == drawing, "the fix of " + finding.rule + " cannot be undone");
        }
    }
    const report::PageContent page = report::page(drawing, prediction, study::assess(drawing, prediction), findings);
    for (const report::AnswerLine& line : page.answers) {
        require(!line.has || std::isfinite(line.value.si), "answer " + line.id + " is not finite");
        requireMessage(line.reason, line.id);
        requireMessage(line.note, line.id);
    }
    for (const Message& caution : page.cautions) {
        requireMessage(caution, "a caution");
    }
    require(std::isfinite(page.parts.partsTotal) && std::isfinite(page.parts.labour), "the sums are not finite");
    for (const std::string& note : page.footnotes) {
        requireNumbers(note, "a footnote");
    }
}

void checkTexts(const document::Drawing& drawing, const study::Prediction& prediction,
                const std::vector<review::Finding>& findings, bool metric)
{
    const UnitSystem units = metric ? UnitSystem::Metric : UnitSystem::Us;
    requireNumbers(report::table(drawing, prediction, study::assess(drawing, prediction), units), "the table");
    requireNumbers(report::findingsText(drawing, findings, units), "the findings");
    requireNumbers(report::cautionsText(drawing, prediction, study::assess(drawing, prediction), findings, units),
                   "the cautions");
    requireNumbers(report::winterText(drawing, units), "the winter sheet");
    requireNumbers(report::partsText(drawing, units), "the parts list");
    requireNumbers(report::partsCsv(drawing, units), "the parts list");
    if (!prediction.cases.empty() && !prediction.cases[0].noAnswer) {
        requireNumbers(report::seriesCsv(prediction.cases[0], units), "the curves");
    }
    (void)report::blankSurvey(drawing, units);
}

/// A loop from anywhere to anywhere.
void checkProposal(const document::Drawing& drawing, std::uint64_t index)
{
    if (drawing.parts.empty()) {
        return;
    }
    test::Random random(index);
    const auto somewhere = [&]() -> document::Place {
        const document::Part& part = random.pick(drawing.parts);
        const parts::PartKind& kind = document::kindOf(part);
        if (kind.isPipe || kind.ports.empty()) {
            return {part.id, random.unit(), {}};
        }
        return {document::kNoPart, 0, {part.id, std::string(random.pick(kind.ports).id), {}}};
    };
    const document::Variant variant = document::variants()[static_cast<std::size_t>(random.below(9))];
    for (int i = 0; i < 4; ++i) {
        const document::Place hot = somewhere();
        const auto usual = document::usualEnd(drawing, hot, variant.way);
        const auto edit = document::propose(drawing, hot, usual.value_or(somewhere()), variant);
        if (!edit) {
            checkProblem(edit.error(), "a proposal");
            continue;
        }
        ++board->loops;
        require(!document::refusal(drawing, *edit), "a proposal cannot be made");
        document::Drawing looped = drawing;
        document::apply(looped, *edit);
        require(document::read(document::write(looped)).has_value(), "a proposal cannot be saved");
        checkLoop(study::loopAnswer(looped));
    }
}

void checkStudies(const document::Drawing& drawing, std::uint64_t index, const Schedule& schedule)
{
    const auto due = [&](std::uint64_t every) { return every > 0 && index % every == every / 2; };
    const UnitSystem units = index % 2 ? UnitSystem::Metric : UnitSystem::Us;
    if (due(schedule.wiring)) {
        ++board->wiring;
        const auto curves = study::loopCurves(drawing);
        const auto budget = study::headBudget(drawing);
        if (const auto wiring = study::wiringStudy(drawing)) {
            const study::LoopCurves* c = curves ? &*curves : nullptr;
            const study::HeadBudget* b = budget ? &*budget : nullptr;
            requireNumbers(report::wiringText(drawing, *wiring, c, b, units), "the wiring");
            requireJson(report::wiringJson(drawing, *wiring, c, b, "x"), "the wiring");
        } else {
            checkProblem(wiring.error(), "the wiring study");
        }
    }
    if (due(schedule.fire)) {
        ++board->fire;
        study::FireMapOptions options;
        options.flows = options.inlets = 6;
        options.presses = 1;
        if (const auto map = study::fireMap(drawing, options)) {
            for (const double celsius : map->outlet_C) {
                require(std::isfinite(celsius), "the fire map is not finite");
            }
        } else {
            checkProblem(map.error(), "the fire map");
        }
    }
    study::Options resolution = coarse();
    resolution.curves = false;
    if (due(schedule.presses)) {
        ++board->presses;
        study::PressesOptions options;
        options.mostPresses = 2;
        options.gaps_s = {0};
        options.safeWait = index % 4096 < 1024;
        options.protections = index % 4096 >= 3072;
        options.longestWait_s = 120;
        options.resolution = resolution;
        options.hands = 1;
        if (const auto found = study::studyPresses(drawing, options)) {
            requireNumbers(report::pressesText(drawing, *found, units), "the presses");
            requireJson(report::pressesJson(drawing, *found, "x"), "the presses");
            for (const study::WorstHeat& heat : found->worst) {
                require(std::isfinite(heat.hottest_C), "the worst heat is not finite");
                document::Drawing with = drawing;
                with.cases.push_back(heat.script);
                with.cases.back().name = "worst, as found here";
                require(document::read(document::write(with)).has_value(), "a worst case cannot be saved");
            }
        } else {
            checkProblem(found.error(), "the presses study");
        }
    }
    if (due(schedule.stop)) {
        ++board->stop;
        study::StopOptions options;
        options.samples = 16;
        options.confirmations = 2;
        options.cell_m = 1;
        options.step_s = 2;
        options.threads = 1;
        if (const auto found = study::suggestStop(drawing, options)) {
            requireNumbers(report::stopText(drawing, *found, units), "the stop");
            requireJson(report::stopJson(drawing, *found, "x"), "the stop");
        } else {
            checkProblem(found.error(), "the stop study");
        }
    }
    if (due(schedule.faults)) {
        ++board->faults;
        study::FaultsOptions options;
        options.pairs = index / schedule.faults % 2 == 0;
        options.resolution = resolution;
        options.hands = 1;
        if (const auto found = study::studyFaults(drawing, options)) {
            requireNumbers(report::faultsText(drawing, *found, units), "the faults");
            requireJson(report::faultsJson(drawing, *found, "x"), "the faults");
        } else {
            checkProblem(found.error(), "the fault study");
        }
    }
    if (due(schedule.propose)) {
        ++board->proposed;
        checkProposal(drawing, index);
    }
}

/// All that is asked of one mutant. Throws a Fault.
void work(const std::string& text, std::uint64_t index, const Schedule& schedule)
{
    const auto read = document::read(text);
    if (!read) {
        ++board->refused;
        checkProblem(read.error(), "the file");
        return;
    }
    ++board->taken;
    const document::Drawing& drawing = *read;
    const auto due = [&](std::uint64_t every) { return every > 0 && index % every == every / 2; };
    study::Options options = coarse();
    options.curves = due(schedule.texts);
    if (due(schedule.fine)) {
        ++board->fine;
        options = {};
        options.snapshots = true;
        options.snapshotEvery_s = 5;
        options.loopJoin = true;
    }
    checkLoop(study::loopAnswer(drawing));
    auto prediction = study::predict(drawing, options);
    if (!prediction) {
        checkProblem(prediction.error(), "the prediction");
        prediction = study::Prediction{};
    } else {
        ++board->predicted;
        checkLoop(prediction->loop);
        for (const study::CaseResult& result : prediction->cases) {
            checkCase(result);
        }
        if (options.curves) {
            requireJson(report::predictionJson(drawing, *prediction, "x"), "the prediction");
        }
        if (due(schedule.again)) {
            ++board->again;
            const auto again = study::predict(drawing, options);
            require(again.has_value()
                        && report::predictionJson(drawing, *again, "x")
                               == report::predictionJson(drawing, *prediction, "x"),
                    "the same question has two answers");
        }
    }
    const auto findings = review::review(drawing, *prediction, study::assess(drawing, *prediction));
    checkPage(drawing, *prediction, findings);
    if (options.curves) {
        ++board->texts;
        checkTexts(drawing, *prediction, findings, index / schedule.texts % 2 == 0);
    }
    checkStudies(drawing, index, schedule);
#ifdef TAPWARD_PRINTS
    if (due(schedule.print)) {
        ++board->printed;
        const std::string why = test::printed(drawing, *prediction, findings, index % 2 == 0);
        require(why.empty(), why);
    }
#endif
}

void keep(const std::string& folder, std::uint64_t seed, std::uint64_t index, const std::string& text)
{
    if (!folder.empty()) {
        std::filesystem::create_directories(folder);
        std::ofstream(folder + "/" + std::to_string(seed) + "_" + std::to_string(index) + ".tapward") << text;
    }
}

struct Asked {
    std::uint64_t seed = 1, from = 0, count = 1000, seconds = 0;
    std::string keepIn;
    Schedule schedule;
};

/// The child: from the board's index to the end. Returns when all is done.
void child(const Asked& asked, std::uint64_t first_ms, const std::vector<document::Drawing>& seeds)
{
    const std::uint64_t end_ms = asked.seconds > 0 ? first_ms + 1000 * asked.seconds : 0;
#ifdef TAPWARD_PRINTS
    test::beginPrinting();  // here, not before the fork: Qt's threads do not live on in a child
#endif
    for (std::uint64_t i = board->index; i < asked.from + asked.count; ++i) {
        const std::uint64_t begun = now_ms();
        if (end_ms > 0 && begun >= end_ms) {
            std::fflush(nullptr);
            return;
        }
        const std::uint64_t begunCpu = now_ms(CLOCK_PROCESS_CPUTIME_ID);
        board->begun_ms = begun;
        board->begunCpu_ms = begunCpu;
        board->index = i;
        std::string text;
        try {
            text = test::mutant(seeds, asked.seed, i);
            work(text, i, asked.schedule);
        } catch (const std::exception& fault) {
            ++board->failed;
            std::fprintf(stderr, "FAULT seed %llu index %llu: %s\n", static_cast<unsigned long long>(asked.seed),
                         static_cast<unsigned long long>(i), fault.what());
            keep(asked.keepIn, asked.seed, i, text);
        }
        const std::uint64_t took = now_ms(CLOCK_PROCESS_CPUTIME_ID) - begunCpu;
        if (took > board->slowest_ms) {
            board->slowest_ms = took;
            board->slowest = i;
        }
        rusage used{};
        getrusage(RUSAGE_SELF, &used);
        if (used.ru_maxrss > kMost_kB) {
            std::_Exit(kTooBig);
        }
    }
    board->index = asked.from + asked.count;
    std::fflush(nullptr);
}

/// Whole files, in this process.
int files(const std::vector<std::string>& paths)
{
#ifdef TAPWARD_PRINTS
    test::beginPrinting();
#endif
    int faults = 0;
    for (const std::string& path : paths) {
        std::ifstream file(path, std::ios::binary);
        const std::string text{std::istreambuf_iterator<char>(file), std::istreambuf_iterator<char>()};
        for (const bool fine : {false, true}) {
            try {
                work(text, 0, {1, 1, fine, 1, 1, 1, 1, 1, 1, 1});
            } catch (const std::exception& fault) {
                ++faults;
                std::fprintf(stderr, "FAULT %s: %s\n", path.c_str(), fault.what());
            }
        }
    }
    std::printf("%zu files, %llu times taken, %d faults\n", paths.size(), static_cast<unsigned long long>(board->taken),
                faults);
    return faults == 0 && board->refused == 0 ? 0 : 1;
}

}  // namespace

int main(int argc, char** argv)
{
    board = new (mmap(nullptr, sizeof(Board), PROT_READ | PROT_WRITE, MAP_SHARED | MAP_ANONYMOUS, -1, 0)) Board;
    Asked asked;
    if (argc > 1 && argv[1][0] != '-') {
        return files({argv + 1, argv + argc});
    }
    for (int i = 1; i < argc; ++i) {
        const std::string word = argv[i];
        if (i + 1 == argc) {
            std::fprintf(stderr, "%s wants a value.\n", argv[i]);
            return 2;
        }
        const char* value = argv[++i];
        const std::uint64_t number = std::strtoull(value, nullptr, 10);
        if (word == "--seed") {
            asked.seed = number;
        } else if (word == "--from") {
            asked.from = number;
        } else if (word == "--count") {
            asked.count = number;
        } else if (word == "--seconds") {
            asked.seconds = number;
        } else if (word == "--keep") {
            asked.keepIn = value;
        } else if (word == "--only") {
            asked.from = number;
            asked.count = 1;
        } else {
            std::fprintf(stderr, "There is no option %s.\n", word.c_str());
            return 2;
        }
    }
    const auto seeds = test::seedDrawings(TAPWARD_SOURCE_DIR);
    const std::uint64_t begun = now_ms();
    const std::uint64_t end = asked.from + asked.count;
    board->index = asked.from;
    std::uint64_t told = begun;
    const auto tell = [&](const char* head) {
        const double seconds = static_cast<double>(now_ms() - begun) / 1000;
        std::printf(
            "%s%llu mutants, %llu taken, %llu refused; %llu predicted, %llu of %llu cases answered; texts %llu, again "
            "%llu, "
            "fine %llu, fixes %llu, wiring %llu, proposals %llu (%llu loops), fire maps %llu, presses %llu, stops "
            "%llu, fault "
            "tables %llu, printed %llu; slowest %.1f s (index %llu); faults %llu; %.0f s\n",
            head, static_cast<unsigned long long>(board->taken + board->refused),
            static_cast<unsigned long long>(board->taken), static_cast<unsigned long long>(board->refused),
            static_cast<unsigned long long>(board->predicted), static_cast<unsigned long long>(board->answered),
            static_cast<unsigned long long>(board->cases), static_cast<unsigned long long>(board->texts),
            static_cast<unsigned long long>(board->again), static_cast<unsigned long long>(board->fine),
            static_cast<unsigned long long>(board->fixes), static_cast<unsigned long long>(board->wiring),
            static_cast<unsigned long long>(board->proposed), static_cast<unsigned long long>(board->loops),
            static_cast<unsigned long long>(board->fire), static_cast<unsigned long long>(board->presses),
            static_cast<unsigned long long>(board->stop), static_cast<unsigned long long>(board->faults),
            static_cast<unsigned long long>(board->printed), static_cast<double>(board->slowest_ms) / 1000,
            static_cast<unsigned long long>(board->slowest), static_cast<unsigned long long>(board->failed), seconds);
        std::fflush(stdout);
    };
    while (board->index < end && (asked.seconds == 0 || now_ms() < begun + 1000 * asked.seconds)) {
        board->begun_ms = now_ms();
        board->begunCpu_ms = 0;
        const pid_t pid = fork();
        if (pid < 0) {
            std::perror("fork");
            return 2;
        }
        if (pid == 0) {
            child(asked, begun, seeds);
            std::_Exit(0);
        }
        int status = 0;
        bool slow = false;
        while (waitpid(pid, &status, WNOHANG) == 0) {
            usleep(20'000);
            if (now_ms() - told > 60'000) {
                told = now_ms();
                tell("... ");
            }
            clockid_t used{};
            const bool known = clock_getcpuclockid(pid, &used) == 0;
            if (now_ms() - board->begun_ms > kMostByClock_ms
                || (known && now_ms(used) > board->begunCpu_ms + kMost_ms)) {
                slow = true;
                kill(pid, SIGKILL);
                waitpid(pid, &status, 0);
                break;
            }
        }
        if (!slow && WIFEXITED(status) && WEXITSTATUS(status) == 0) {
            continue;
        }
        const std::uint64_t index = board->index;
        ++board->failed;
        std::fprintf(stderr, "FAULT seed %llu index %llu: %s\n", static_cast<unsigned long long>(asked.seed),
                     static_cast<unsigned long long>(index),
                     slow                                                  ? "took longer than it may"
                     : WIFEXITED(status) && WEXITSTATUS(status) == kTooBig ? "took more memory than it may"
                     : WIFSIGNALED(status)                                 ? strsignal(WTERMSIG(status))
                                                                           : "ended early");
        keep(asked.keepIn, asked.seed, index, test::mutant(seeds, asked.seed, index));
        board->index = index + 1;
        if (board->failed > kMostFaults) {
            std::fprintf(stderr, "Too many faults: given up.\n");
            break;
        }
    }
    tell("behind the reader: ");
    return board->failed == 0 ? 0 : 1;
}
