// SPDX-License-Identifier: GPL-3.0-or-later
#include <atomic>
#include <chrono>
#include <fcntl.h>
#include <QDir>
#include <QElapsedTimer>
#include <QFile>
#include <QSignalSpy>
#include <QStandardPaths>
#include <QTemporaryDir>
#include <QTest>
#include <sys/stat.h>
#include <thread>
#include <unistd.h>

#include "document/file.h"
#include "session/own_assemblies.h"
#include "session/session.h"
#include "support/catch.h"

using namespace tapward;
using namespace tapward::app;

namespace {

document::Drawing onePump()
{
    document::Drawing drawing;
    document::apply(drawing, *document::placePart(drawing, "circulator", {0, 0}, document::Stage::Added));
    return drawing;
}

document::Edit setSpinUp(document::PartId id, double seconds)
{
    return {"Set spin-up", {document::SetField{id, "spin_up_s", parts::Entry{seconds, parts::Basis::Measured}}}};
}

}  // namespace

TEST_CASE("a refused edit changes nothing and leaves no undo step", "[session]")
{
    Session session;
    session.startNew(onePump());
    const auto before = session.drawing();
    CHECK(session.perform(document::Edit{"Wrong", {document::RemovePart{77}}}).has_value());
    CHECK(session.drawing() == before);
    CHECK(session.undoStack().count() == 0);
    CHECK_FALSE(session.isModified());
}

TEST_CASE("edits of one burst are one undo step, separate edits are separate steps", "[session]")
{
    Session session;
    session.startNew(onePump());
    const auto start = session.drawing();
    const int burst = session.newBurst();
    for (const double seconds : {0.6, 0.7, 0.8})
        REQUIRE_FALSE(session.perform(setSpinUp(1, seconds), burst));
    CHECK(session.undoStack().count() == 1);
    REQUIRE_FALSE(session.perform(setSpinUp(1, 0.9)));
    REQUIRE_FALSE(session.perform(setSpinUp(1, 1.0)));
    CHECK(session.undoStack().count() == 3);
    session.undoStack().undo();
    session.undoStack().undo();
    CHECK(document::values(*session.drawing().find(1)).number("spin_up_s") == 0.8);
    session.undoStack().undo();
    CHECK(session.drawing() == start);
    session.undoStack().redo();
    CHECK(document::values(*session.drawing().find(1)).number("spin_up_s") == 0.8);
}

TEST_CASE("a saved drawing opens again the same, and saving marks it unmodified", "[session]")
{
    QTemporaryDir folder;
    const QString path = folder.filePath("coach.tapward");
    Session session;
    session.startNew(onePump());
    REQUIRE_FALSE(session.perform(setSpinUp(1, 0.75)));
    CHECK(session.isModified());
    REQUIRE_FALSE(session.save(path).has_value());
    CHECK_FALSE(session.isModified());
    Session other;
    REQUIRE_FALSE(other.open(path).has_value());
    CHECK(other.drawing() == session.drawing());
    CHECK(other.path() == path);
    REQUIRE_FALSE(session.perform(setSpinUp(1, 0.5)));
    session.undoStack().undo();
    CHECK_FALSE(session.isModified());  // undone back to what is on disk
}

TEST_CASE("a file that is missing or broken leaves the open drawing alone and says where", "[session]")
{
    QTemporaryDir folder;
    Session session;
    session.startNew(onePump());
    const auto before = session.drawing();
    CHECK(session.open(folder.filePath("nothing.tapward")).has_value());
    QFile broken(folder.filePath("broken.tapward"));
    REQUIRE(broken.open(QIODevice::WriteOnly));
    broken.write("{\"format\": \"tapward\", ");
    broken.close();
    const auto problem = session.open(broken.fileName());
    REQUIRE(problem.has_value());
    CHECK_FALSE(problem->what.empty());
    CHECK_FALSE(problem->remedy.empty());
    CHECK(session.drawing() == before);
}

TEST_CASE("saving into a folder that is not there keeps the modified mark", "[session]")
{
    QTemporaryDir folder;
    Session session;
    session.startNew(onePump());
    REQUIRE_FALSE(session.perform(setSpinUp(1, 0.75)));
    CHECK(session.save(folder.filePath("no/such/place.tapward")).has_value());
    CHECK(session.isModified());
}

TEST_CASE("a drawing that could not be opened again is not saved over one that can", "[session]")
{
    QTemporaryDir folder;
    const QString path = folder.filePath("coach.tapward");
    Session session;
    session.startNew(onePump());
    REQUIRE_FALSE(session.save(path));
    auto large = onePump();
    large.unknown.emplace("/more", '"' + std::string(document::Limits{}.bytes, 'x') + '"');
    Session other;
    other.startNew(large);
    const auto problem = other.save(path);
    REQUIRE(problem);
    CHECK_FALSE(problem->remedy.empty());
    CHECK(other.path().isEmpty());
    Session again;
    REQUIRE_FALSE(again.open(path));
    CHECK(again.drawing() == session.drawing());
}

TEST_CASE("a pipe instead of a file: saving writes to it, opening refuses at once", "[session]")
{
    QTemporaryDir folder;
    const QByteArray pipe = QFile::encodeName(folder.filePath("pipe"));
    REQUIRE(::mkfifo(pipe.constData(), 0600) == 0);
    Session session;
    session.startNew(onePump());
    REQUIRE(session.save(QString::fromUtf8(pipe)));  // nobody reads: no wait, but words
    std::string got;
    std::thread reader([&] {
        const int file = ::open(pipe.constData(), O_RDONLY);
        char block[4096];
        for (ssize_t n = 0; (n = ::read(file, block, sizeof block)) > 0;)
            got.append(block, static_cast<std::size_t>(n));
        ::close(file);
    });
    // The reader may take a moment to be there.
    CHECK(QTest::qWaitFor([&] { return !session.save(QString::fromUtf8(pipe)); }, 5000));
    reader.join();
    CHECK(got == document::write(session.drawing()));
    struct stat what{};
    CHECK((::lstat(pipe.constData(), &what) == 0 && S_ISFIFO(what.st_mode)));

    std::atomic<bool> answered = false;
    std::thread rescue([&] {  // should it wait after all, this ends the wait
        for (int i = 0; i < 50 && !answered; ++i)
            std::this_thread::sleep_for(std::chrono::milliseconds(100));
        if (!answered)
            ::close(::open(pipe.constData(), O_WRONLY | O_NONBLOCK));
    });
    QElapsedTimer clock;
    clock.start();
    Session other;
    const auto problem = other.open(QString::fromUtf8(pipe));
    answered = true;
    rescue.join();
    REQUIRE(problem);
    CHECK(clock.elapsed() < 3000);
    CHECK(render(problem->what, UnitSystem::Us).find("not a file") != std::string::npos);
}

TEST_CASE("undo brings the selection back; parts that are gone leave it", "[session]")
{
    Session session;
    session.startNew(onePump());
    session.select({1});
    REQUIRE_FALSE(session.perform(document::removeParts(session.drawing(), {1}, false)));
    CHECK(session.selection().empty());
    session.undoStack().undo();
    CHECK(session.selection() == std::vector<document::PartId>{1});
}

TEST_CASE("every change ends in an answer that is not stale, and the newest change wins", "[session]")
{
    Session session;
    session.startNew(onePump());
    for (int i = 0; i < 20; ++i)
        REQUIRE_FALSE(session.perform(setSpinUp(1, 0.5 + 0.01 * i)));
    CHECK(session.isStale());
    REQUIRE(QTest::qWaitFor([&] { return !session.isStale() && !session.isWorking(); }, 20000));
    CHECK((session.prediction() != nullptr || session.predictionProblem().has_value()));
}

TEST_CASE("a session that goes while its prediction is under way stops it at once", "[session]")
{
    QElapsedTimer clock;
    clock.start();
    for (int i = 0; i < 20; ++i) {
        Session session;
        session.startNew(onePump());
        if (i % 2 == 0)
            QTest::qWait(i / 4);
    }
    CHECK(clock.elapsed() < 4000);  // 0.2 s each at most: what a cancelled study may take
}

TEST_CASE("the next edit stops the prediction in flight: only its own answer comes", "[session]")
{
    const auto coach = document::load(TAPWARD_SOURCE_DIR "/samples/long_hall_coach.tapward");
    REQUIRE(coach);
    // So many hours of cases that nobody would wait for them.
    document::Drawing endless = *coach;
    const document::Case pattern = endless.cases.front();
    for (int i = 0; i < 60; ++i) {
        endless.cases.push_back(pattern);
        endless.cases.back().name = "endless " + std::to_string(i);
        endless.cases.back().duration_s = 3600;
    }
    Session session;
    session.startNew(endless);
    QSignalSpy answers(&session, &Session::predictionChanged);
    QTest::qWait(1500);  // it is under way, and not near its end
    REQUIRE(session.isWorking());
    REQUIRE(session.prediction() == nullptr);
    QElapsedTimer clock;
    clock.start();
    REQUIRE_FALSE(session.perform(document::Edit{"Only one case", {document::SetCases{{pattern}}}}));
    REQUIRE(QTest::qWaitFor([&] { return !session.isStale() && !session.isWorking(); }, 60000));
    const qint64 waited = clock.elapsed();
    REQUIRE(session.prediction() != nullptr);
    CHECK(session.prediction()->cases.size() == 1);
    // The same one case from a standing start: stopping the other adds at most the 0.2 s a cancel may take, and as
    // much again for the machine.
    Session rested;
    document::Drawing one = *coach;
    one.cases = {pattern};
    clock.restart();
    rested.startNew(one);
    REQUIRE(QTest::qWaitFor([&] { return !rested.isStale() && !rested.isWorking(); }, 60000));
    CAPTURE(waited, clock.elapsed());
    CHECK(waited <= 3 * clock.elapsed() + 400);
}

TEST_CASE("an assembly deleted by somebody who has no trash yet leaves nothing in the working folder", "[session]")
{
    const QString data = QStandardPaths::writableLocation(QStandardPaths::GenericDataLocation);
    REQUIRE(data.contains(QStringLiteral("qttest")));  // a test's own home
    QDir(data).removeRecursively();
    const QTemporaryDir kept, working;
    const QString before = QDir::currentPath();
    REQUIRE(QDir::setCurrent(working.path()));
    const OwnAssemblies own(kept.filePath(QStringLiteral("assemblies")));
    const auto drawing = onePump();
    const auto file = own.keep(QStringLiteral("Pump"), drawing, {drawing.parts.front().id});
    CHECK(file.has_value());
    if (file)
        CHECK_FALSE(own.remove(*file));
    CHECK(own.list().empty());
    CHECK(QDir(working.path()).isEmpty());
    QDir::setCurrent(before);
}
