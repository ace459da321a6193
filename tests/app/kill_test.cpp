// SPDX-License-Identifier: GPL-3.0-or-later
// The program is killed at random moments during edits and saves: the file on disk is always whole, what was
// saved is there, and what was not saved is lost for at most the time of one autosave.
#include <QFile>
#include <QProcess>
#include <QTemporaryDir>
#include <random>

#include "panels_support.h"
#include "shell/autosave.h"
#include "support/cost.h"

using namespace tapward;
using namespace tapward::app;
using namespace tapward::app::test;

namespace {

constexpr int kKills = 60;             // TAPWARD_KILLS: another number
constexpr int kDelay_ms = Autosave::kDelay_ms;
const unsigned kLongest_ms = spent::sanitized() ? 5000 : 900;  // a victim under sanitizers takes long to its saves
constexpr qint64 kMostLost_ms = 1000;   // of the victim's own clock

struct Told {
    std::vector<qint64> edited_ms;  ///< [n - 1] = when edit n was made
    int saved = 0;
};

Told readTold(const QByteArray& output)
{
    Told told;
    for (const QByteArray& line : output.split('\n')) {
        const auto words = line.split(' ');
        if (words.size() != 3 || !output.contains(line + '\n'))
            continue;  // cut off by the kill
        if (words[0] == "e")
            told.edited_ms.push_back(words[2].toLongLong());
        else
            told.saved = words[1].toInt();
    }
    return told;
}

int numberIn(const document::Drawing& drawing)
{
    return QByteArray::fromStdString(drawing.job.notes).toInt();  // 0 for the sample's own notes
}

}  // namespace

TEST_CASE("killed at any moment, the program loses no saved work and little of the rest", "[shell][kill]")
{
    std::mt19937 random(20261125);
    const int kills =
        qEnvironmentVariableIsSet("TAPWARD_KILLS") ? qEnvironmentVariableIntValue("TAPWARD_KILLS") : kKills;
    int afterSave = 0, withCopy = 0;
    for (int kill = 0; kill < kills; ++kill) {
        QTemporaryDir folder;
        const QString path = folder.filePath(QStringLiteral("coach.tapward"));
        REQUIRE(QFile::copy(samplePath("storage_coach"), path));
        QFile::setPermissions(path, QFile::ReadOwner | QFile::WriteOwner);
        const QString state = folder.filePath(QStringLiteral("state"));
        QProcess victim;
        victim.start(QCoreApplication::applicationDirPath() + QStringLiteral("/tapward_kill_victim"),
                     {path, state, QString::number(kDelay_ms)});
        REQUIRE(victim.waitForReadyRead(30'000));
        QThread::msleep(std::uniform_int_distribution<unsigned>(0, kLongest_ms)(random));
        REQUIRE(victim.state() == QProcess::Running);
        victim.kill();
        REQUIRE(victim.waitForFinished(10'000));
        const Told told = readTold(victim.readAllStandardOutput());
        REQUIRE_FALSE(told.edited_ms.empty());

        const auto onDisk = document::load(path.toStdString());
        REQUIRE(onDisk);  // whole
        CHECK(numberIn(*onDisk) >= told.saved);
        int kept = numberIn(*onDisk);
        const auto copies = Autosave::leftovers(state);
        CHECK(copies.size() <= 1);
        if (!copies.empty()) {
            ++withCopy;
            CHECK(copies[0].original == path);
            kept = std::max(kept, numberIn(copies[0].drawing));
        }
        afterSave += told.saved > 0;
        // An edit whose line was not written yet may be kept too.
        const auto edits = static_cast<int>(told.edited_ms.size());
        CHECK(kept <= edits + 1);
        if (kept < edits)
            CHECK(told.edited_ms.back() - told.edited_ms[static_cast<std::size_t>(kept)] <= kMostLost_ms);
    }
    CHECK(afterSave > kills / 20);  // the moments were spread over saves ...
    CHECK(withCopy > kills / 20);   // ... and autosaves
}
