// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <memory>
#include <optional>
#include <QByteArray>
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

}  // namespace tapward::app
