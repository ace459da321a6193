// SPDX-License-Identifier: GPL-3.0-or-later
// Unsaved work survives, files are never written by half, two windows notice each other.
#include <csignal>
#include <QApplication>
#include <QDir>
#include <QFile>
#include <QFileDialog>
#include <QLabel>
#include <QLineEdit>
#include <QMessageBox>
#include <QPushButton>
#include <QSignalSpy>
#include <QStatusBar>
#include <QTemporaryDir>
#include <QTimer>
#include <sys/resource.h>

#include "panels_support.h"
#include "shell/autosave.h"
#include "shell/main_window.h"
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

TEST_CASE("a change is copied within a second even while work goes on", "[shell]")
{
    CHECK(Autosave::kDelay_ms <= 500);
    QTemporaryDir folder;
    Session session;
    Autosave autosave(session, folder.path());
    session.startNew({});
    QElapsedTimer clock;
    clock.start();
    while (clock.elapsed() < 1000 && !QFile::exists(autosave.file())) {
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

TEST_CASE("an autosave that cannot write says so once, tries again, and says when it works", "[shell]")
{
    QTemporaryDir folder;
    const QString state = folder.filePath(QStringLiteral("home"));
    const bool isMissing = GENERATE(true, false);  // no folder can be made, or the disk is full
    CAPTURE(isMissing);
    QFile inTheWay(state);
    if (isMissing)
        REQUIRE(inTheWay.open(QIODevice::WriteOnly));
    rlimit old{};
    REQUIRE(getrlimit(RLIMIT_FSIZE, &old) == 0);
    const auto ignored = std::signal(SIGXFSZ, SIG_IGN);
    {
        Session session;
        Autosave autosave(session, state);
        autosave.setDelay(20);
        QSignalSpy failed(&autosave, &Autosave::failed), resumed(&autosave, &Autosave::resumed);
        REQUIRE_FALSE(session.open(samplePath()));
        const rlimit small{isMissing ? old.rlim_cur : 1024, old.rlim_max};
        setrlimit(RLIMIT_FSIZE, &small);
        CHECK_FALSE(session.perform(smallEdit(session)));
        CHECK(QTest::qWaitFor([&] { return failed.count() > 0; }, 5000));
        QTest::qWait(300);  // many more tries
        CHECK(failed.count() == 1);
        CHECK_FALSE(failed.value(0).value(0).toString().isEmpty());
        CHECK(resumed.isEmpty());
        setrlimit(RLIMIT_FSIZE, &old);
        if (isMissing)
            CHECK(inTheWay.remove());
        CHECK(QTest::qWaitFor([&] { return resumed.count() > 0; }, 5000));
        CHECK(resumed.count() == 1);
        CHECK(QFile::exists(autosave.file()));
        CHECK(Autosave::leftovers(state).empty());  // its lock came with the folder
        CHECK_FALSE(session.perform(smallEdit(session)));
        autosave.saveNow();
        CHECK((failed.count() == 1 && resumed.count() == 1));
    }
    std::signal(SIGXFSZ, ignored);
    CHECK(Autosave::leftovers(state).size() == 1);
}

TEST_CASE("the status bar says while no copy of unsaved work can be kept", "[shell]")
{
    const QString state = stateFolder() + QStringLiteral("/autosave");
    REQUIRE(state.contains(QStringLiteral("qttest")));  // a test's own home
    QDir(state).removeRecursively();
    QFile inTheWay(state);
    REQUIRE(inTheWay.open(QIODevice::WriteOnly));
    MainWindow window;
    window.show();
    window.newDrawing();
    REQUIRE(QTest::qWaitFor([&] { return window.statusBar()->isVisible(); }, 10000));  // shown a turn later
    auto* const unkept = window.findChild<QLabel*>(QStringLiteral("unkept"));
    REQUIRE(unkept);
    CHECK_FALSE(unkept->isVisible());
    REQUIRE_FALSE(window.session().perform(smallEdit(window.session())));
    window.autosave().saveNow();
    CHECK(unkept->isVisible());
    CHECK_FALSE(unkept->text().isEmpty());
    CHECK(unkept->toolTip().contains(stateFolder()));
    CHECK(inTheWay.remove());
    window.autosave().saveNow();
    CHECK_FALSE(unkept->isVisible());
    CHECK_FALSE(window.statusBar()->currentMessage().isEmpty());
    window.autosave().forget();
}

namespace {

/// Answers the next question with a button, once it is there; `said` becomes what it asked.
void answerNext(QObject& holder, const QString& button, QString& said)
{
    auto* const timer = new QTimer(&holder);
    QObject::connect(timer, &QTimer::timeout, &holder, [timer, button, &said] {
        auto* const box = qobject_cast<QMessageBox*>(QApplication::activeModalWidget());
        if (!box)
            return;
        timer->deleteLater();
        timer->stop();
        said = box->text() + QLatin1Char('\n') + box->informativeText();
        for (auto* one : box->buttons())
            if (one->text().remove(QLatin1Char('&')) == button)
                return one->click();
        FAIL_CHECK("no such button");
        box->reject();
    });
    timer->start(10);
}

void put(const QString& path, const QByteArray& bytes)
{
    QFile file(path);
    REQUIRE(file.open(QIODevice::WriteOnly));
    REQUIRE(file.write(bytes) == bytes.size());
}

}  // namespace

TEST_CASE("a copy that cannot be read is offered as such and goes by a person's word only", "[shell]")
{
    const QString state = stateFolder() + QStringLiteral("/autosave");
    REQUIRE(state.contains(QStringLiteral("qttest")));
    QDir(state).removeRecursively();
    REQUIRE(QDir().mkpath(state));
    const QString copy = state + QStringLiteral("/lost.tapward");
    const QByteArray half = R"({"format": "tapward", "version": 1, "parts": [)";
    put(copy, half);
    put(state + QStringLiteral("/lost.json"), R"({"file": "/somewhere/coach.tapward"})");
    const auto found = Autosave::leftovers(state);
    REQUIRE(found.size() == 1);
    REQUIRE(found[0].unreadable);
    CHECK(found[0].file == copy);
    CHECK(found[0].original == QStringLiteral("/somewhere/coach.tapward"));

    MainWindow window;
    window.show();
    QString said;
    answerNext(window, QStringLiteral("Decide Later"), said);
    window.offerRecovery();
    CHECK(said.contains(copy));
    CHECK(said.contains(QStringLiteral("coach.tapward")));
    CHECK(QFile::exists(copy));

    const QTemporaryDir folder;
    const QString kept = folder.filePath(QStringLiteral("kept.tapward"));
    answerNext(window, QStringLiteral("Save Copy As…"), said);
    QTimer choose;
    QObject::connect(&choose, &QTimer::timeout, &window, [&] {
        if (auto* dialog = qobject_cast<QFileDialog*>(QApplication::activeModalWidget())) {
            choose.stop();
            // (selectFile() leaves alone a line that has the keyboard.)
            dialog->findChild<QLineEdit*>(QStringLiteral("fileNameEdit"))->setText(kept);
            static_cast<QDialog*>(dialog)->accept();
        }
    });
    choose.start(50);
    window.offerRecovery();
    choose.stop();
    CHECK_FALSE(QFile::exists(copy));
    QFile file(kept);
    REQUIRE(file.open(QIODevice::ReadOnly));
    CHECK(file.readAll() == half);

    put(copy, half);
    answerNext(window, QStringLiteral("Discard"), said);
    window.offerRecovery();
    CHECK_FALSE(QFile::exists(copy));
    CHECK_FALSE(window.hasDrawing());
}

TEST_CASE("keys of the whole file come back with a restored copy too", "[shell]")
{
    const QString state = stateFolder() + QStringLiteral("/autosave");
    REQUIRE(state.contains(QStringLiteral("qttest")));
    QDir(state).removeRecursively();
    REQUIRE(QDir().mkpath(state));
    document::Drawing lost;
    lost.job.notes = "lost";
    lost.unknown.emplace("/future", "7");
    put(state + QStringLiteral("/lost.tapward"), QByteArray::fromStdString(document::write(lost)));
    MainWindow window;
    window.show();
    QString said;
    answerNext(window, QStringLiteral("Restore"), said);
    window.offerRecovery();
    CHECK(bytes(window.session()) == document::write(lost));
    CHECK(window.session().isModified());
    CHECK_FALSE(QFile::exists(state + QStringLiteral("/lost.tapward")));
    window.autosave().forget();
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
