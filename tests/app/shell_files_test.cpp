// SPDX-License-Identifier: GPL-3.0-or-later
// Unsaved work survives, files are never written by half, two windows notice each other.
#include <csignal>
#include <QDir>
#include <QFile>
#include <QTemporaryDir>
#include <sys/resource.h>

#include "panels_support.h"
#include "shell/autosave.h"
#include "shell/places.h"

using namespace tapward;
using namespace tapward::app;
using namespace tapward::app::test;

namespace {

document::Edit smallEdit(const Session& session)
{
    document::Job job = session.drawing().job;
    job.notes += "x";
    return {Message("test"), {document::SetJob{job}}};
}

}  // namespace

TEST_CASE("work that was never saved is found again after its window ended badly", "[shell]")
{
    QTemporaryDir folder;
    std::string lost;
    {
        Session session;
        Autosave autosave(session, folder.path());
        autosave.setDelay(20);
        session.startNew({});
        REQUIRE_FALSE(
            session.perform(document::placePart(session.drawing(), "circulator", {0, 0}, document::Stage::Added)));
        CHECK(QTest::qWaitFor([&] { return QFile::exists(autosave.file()); }, 5000));
        CHECK(Autosave::leftovers(folder.path()).empty());  // its window still lives
        lost = bytes(session);
    }
    const auto found = Autosave::leftovers(folder.path());
    REQUIRE(found.size() == 1);
    CHECK(document::write(found[0].drawing) == lost);
    CHECK(found[0].original.isEmpty());
    CHECK(found[0].changed.secsTo(QDateTime::currentDateTime()) < 60);
    Autosave::remove(found[0]);
    CHECK(Autosave::leftovers(folder.path()).empty());
}

TEST_CASE("a change is copied within ten seconds even while work goes on", "[shell]")
{
    CHECK(Autosave::kDelay_ms <= 10000);
    QTemporaryDir folder;
    Session session;
    Autosave autosave(session, folder.path());
    autosave.setDelay(300);
    session.startNew({});
    QElapsedTimer clock;
    clock.start();
    while (clock.elapsed() < 1500 && !QFile::exists(autosave.file())) {
        session.perform(smallEdit(session));
        QTest::qWait(50);
    }
    CHECK(QFile::exists(autosave.file()));
}

TEST_CASE("the copy goes when the work is saved, and the person's file changes by saving only", "[shell]")
{
    QTemporaryDir folder;
    const QString path = folder.filePath(QStringLiteral("coach.tapward"));
    REQUIRE(QFile::copy(samplePath(), path));
    Session session;
    Autosave autosave(session, folder.filePath(QStringLiteral("state")));
    REQUIRE_FALSE(session.open(path));
    const auto stored = [&] {
        QFile file(path);
        return file.open(QIODevice::ReadOnly) ? file.readAll() : QByteArray();
    };
    const QByteArray before = stored();
    session.perform(smallEdit(session));
    autosave.saveNow();
    CHECK(QFile::exists(autosave.file()));
    CHECK(stored() == before);
    REQUIRE_FALSE(session.save(path));
    CHECK_FALSE(QFile::exists(autosave.file()));
    CHECK(stored() != before);
    session.undoStack().undo();
    autosave.saveNow();
    CHECK(QFile::exists(autosave.file()));
    session.undoStack().redo();  // back at what was saved: nothing to keep
    CHECK_FALSE(QFile::exists(autosave.file()));
}

TEST_CASE("a restored copy comes back as one edit, and undo leads to what was saved", "[shell]")
{
    for (const char* other : {"storage_coach", "long_hall_coach"}) {
        Session session;
        REQUIRE_FALSE(session.open(samplePath()));
        const auto saved = bytes(session);
        auto copy = document::load(samplePath(other).toStdString());
        REQUIRE(copy);
        copy->job.notes = "changed and lost";
        REQUIRE_FALSE(session.perform(replaceDrawing(session.drawing(), *copy, Message("Restore"))));
        CHECK(session.isModified());
        CHECK(session.undoStack().count() == 1);
        CHECK(bytes(session) == document::write(*copy));
        session.undoStack().undo();
        CHECK(bytes(session) == saved);
        CHECK_FALSE(session.isModified());
    }
}

TEST_CASE("a second window on the same file is noticed, by whatever path it came", "[shell]")
{
    QTemporaryDir folder;
    const QString path = folder.filePath(QStringLiteral("coach.tapward"));
    REQUIRE(QFile::copy(samplePath(), path));
    const QString link = folder.filePath(QStringLiteral("link.tapward"));
    REQUIRE(QFile::link(path, link));
    FileGuard first, second;
    REQUIRE(first.take(path));
    QString holder;
    CHECK_FALSE(second.take(link, &holder));
    CHECK(holder.contains(QString::number(QCoreApplication::applicationPid())));
    first.release();
    CHECK(second.take(link));
}

TEST_CASE("a file that cannot be written whole leaves the old one and says what to do", "[shell]")
{
    QTemporaryDir folder;
    const auto problem = writeWholeFile(folder.filePath(QStringLiteral("missing/deep/x.csv")), "abc");
    REQUIRE(problem);
    CHECK_FALSE(problem->what.empty());
    CHECK_FALSE(problem->remedy.empty());
    const QString fine = folder.filePath(QStringLiteral("x.csv"));
    REQUIRE_FALSE(writeWholeFile(fine, "abc"));
    QFile file(fine);
    REQUIRE(file.open(QIODevice::ReadOnly));
    CHECK(file.readAll() == "abc");
}

TEST_CASE("a disk that is full at the worst moment leaves the old file whole, and the work unsaved", "[shell]")
{
    QTemporaryDir folder;
    const QString path = folder.filePath(QStringLiteral("coach.tapward"));
    REQUIRE(QFile::copy(samplePath(), path));
    Session session;
    REQUIRE_FALSE(session.open(path));
    const auto before = bytes(session);
    REQUIRE_FALSE(session.perform(smallEdit(session)));

    // No file may grow past 4 KiB for a while: writing ends as on a full disk, in the middle.
    rlimit old{};
    REQUIRE(getrlimit(RLIMIT_FSIZE, &old) == 0);
    const auto ignored = std::signal(SIGXFSZ, SIG_IGN);
    const rlimit small{4096, old.rlim_max};
    REQUIRE(setrlimit(RLIMIT_FSIZE, &small) == 0);
    const auto problem = session.save(path);
    setrlimit(RLIMIT_FSIZE, &old);
    std::signal(SIGXFSZ, ignored);

    REQUIRE(problem);
    CHECK_FALSE(problem->remedy.empty());
    CHECK(session.isModified());
    const auto still = document::load(path.toStdString());
    REQUIRE(still);
    CHECK(document::write(*still) == before);
    CHECK(QDir(folder.path()).entryList(QDir::Files).size() == 1);  // no litter
    REQUIRE_FALSE(session.save(path));  // room again
    CHECK_FALSE(session.isModified());
}

TEST_CASE("a folder that takes no files refuses the save and keeps the work", "[shell]")
{
    Session session;
    session.startNew({});
    REQUIRE_FALSE(session.perform(smallEdit(session)));
    // Nothing can be made there, not even by root.
    const auto problem = session.save(QStringLiteral("/proc/coach.tapward"));
    REQUIRE(problem);
    CHECK_FALSE(problem->what.empty());
    CHECK(session.isModified());
    CHECK(session.path().isEmpty());
}

TEST_CASE("a file written by somebody else since is noticed before it is saved over", "[shell]")
{
    QTemporaryDir folder;
    const QString path = folder.filePath(QStringLiteral("coach.tapward"));
    REQUIRE(QFile::copy(samplePath(), path));
    FileStamp stamp;
    CHECK_FALSE(stamp.changed(path));
    stamp.note(path);
    CHECK_FALSE(stamp.changed(path));
    QFile other(path);
    REQUIRE(other.open(QIODevice::Append));
    other.write("\n");
    other.close();
    CHECK(stamp.changed(path));
    stamp.note(path);
    CHECK_FALSE(stamp.changed(path));
    QFile::remove(path);
    CHECK_FALSE(stamp.changed(path));  // gone: saving loses nothing
}

TEST_CASE("ten recent files are kept, newest first, without doubles", "[shell]")
{
    RecentFiles recent;
    recent.clear();
    for (int i = 0; i < 14; ++i)
        recent.add(QStringLiteral("/somewhere/%1.tapward").arg(i));
    recent.add(QStringLiteral("/somewhere/9.tapward"));
    CHECK(recent.list().size() == 10);
    CHECK(recent.list().front() == QStringLiteral("/somewhere/9.tapward"));
    CHECK(recent.list().count(QStringLiteral("/somewhere/9.tapward")) == 1);
    recent.clear();
}
