// SPDX-License-Identifier: GPL-3.0-or-later
#include "shell/places.h"
#include "session/whole_file.h"

#include <QCoreApplication>
#include <QCryptographicHash>
#include <QDir>
#include <QFileInfo>
#include <QSettings>
#include <QStandardPaths>

namespace tapward::app {

QString stateFolder()
{
    QString base;
    if (QStandardPaths::isTestModeEnabled()) {
        base = QStandardPaths::writableLocation(QStandardPaths::GenericDataLocation) + QStringLiteral("/state");
    } else {
        base = qEnvironmentVariable("XDG_STATE_HOME");
        if (base.isEmpty() || QDir::isRelativePath(base))  // the specification says to ignore relative ones
            base = QDir::homePath() + QStringLiteral("/.local/state");
    }
    const QString folder = base + QStringLiteral("/tapward");
    QDir().mkpath(folder);
    return folder;
}

std::optional<Problem> writeWholeFile(const QString& path, const QByteArray& bytes)
{
    const QString reason = replaceFile(path, bytes);
    if (reason.isEmpty())
        return std::nullopt;
    return Problem{
        Message("{0} could not be written: {1}.", {QFileInfo(path).fileName().toStdString(), reason.toStdString()}),
        Message("Free some room or choose another folder, then try again."),
        {}};
}

QStringList RecentFiles::list() const { return QSettings().value(QStringLiteral("recent")).toStringList(); }

void RecentFiles::add(const QString& path)
{
    const QString whole = QFileInfo(path).absoluteFilePath();
    QStringList files = list();
    files.removeAll(whole);
    files.prepend(whole);
    while (files.size() > kMost)
        files.removeLast();
    QSettings().setValue(QStringLiteral("recent"), files);
}

void RecentFiles::remove(const QString& path)
{
    QStringList files = list();
    files.removeAll(path);
    QSettings().setValue(QStringLiteral("recent"), files);
}

void RecentFiles::clear() { QSettings().remove(QStringLiteral("recent")); }

bool FileGuard::take(const QString& path, QString* holder)
{
    m_lock.reset();
    if (path.isEmpty())
        return true;
    const QFileInfo info(path);
    const QString real = info.exists() ? info.canonicalFilePath() : info.absoluteFilePath();
    const QString folder = stateFolder() + QStringLiteral("/open");
    QDir().mkpath(folder);
    const QByteArray name = QCryptographicHash::hash(real.toUtf8(), QCryptographicHash::Sha1).toHex();
    auto lock =
        std::make_unique<QLockFile>(folder + QLatin1Char('/') + QString::fromLatin1(name) + QStringLiteral(".lock"));
    lock->setStaleLockTime(0);
    if (lock->tryLock(0)) {
        m_lock = std::move(lock);
        return true;
    }
    if (lock->error() != QLockFile::LockFailedError)
        return true;  // the state folder cannot be written: no guard, but no reason to stop either
    qint64 process = 0;
    QString host, program;
    if (holder && lock->getLockInfo(&process, &host, &program))
        *holder = QCoreApplication::translate("FileGuard", "process %1 on %2").arg(process).arg(host);
    return false;
}

void FileStamp::note(const QString& path)
{
    const QFileInfo info(path);
    m_path = path;
    m_size = info.exists() ? info.size() : -1;
    m_written = info.lastModified();
}

bool FileStamp::changed(const QString& path) const
{
    const QFileInfo info(path);
    return !m_path.isEmpty() && path == m_path && info.exists()
           && (info.size() != m_size || info.lastModified() != m_written);
}

}  // namespace tapward::app
