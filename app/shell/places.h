// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <memory>
#include <optional>
#include <QByteArray>
#include <QDateTime>
#include <QLockFile>
#include <QString>
#include <QStringList>

#include "base/result.h"

namespace tapward::app {

/// $XDG_STATE_HOME/tapward, made if missing: work in progress lives here, never beside the person's file.
QString stateFolder();

/// The whole of `bytes` as a file, or a Problem and the old file untouched (a full disk included).
std::optional<Problem> writeWholeFile(const QString& path, const QByteArray& bytes);

/// The ten files opened last, newest first, in the settings.
class RecentFiles {
public:
    static constexpr int kMost = 10;
    QStringList list() const;
    void add(const QString& path);
    void remove(const QString& path);
    void clear();
};

/// Notices that one file is open in two windows of this person.
class FileGuard {
public:
    /// True when this window has the file now. False: another living window has it; `holder` says which.
    bool take(const QString& path, QString* holder = nullptr);
    void release() { m_lock.reset(); }

private:
    std::unique_ptr<QLockFile> m_lock;
};

/// How a file looked when it was read or written here: tells when somebody else wrote it since.
class FileStamp {
public:
    void note(const QString& path);
    /// False for a path that was never noted.
    bool changed(const QString& path) const;

private:
    QString m_path;
    qint64 m_size = -1;
    QDateTime m_written;
};

}  // namespace tapward::app
