// SPDX-License-Identifier: GPL-3.0-or-later
#include "session/whole_file.h"

#include <QSaveFile>

namespace tapward::app {

QString replaceFile(const QString& path, const QByteArray& bytes)
{
    QSaveFile file(path);
    if (!file.open(QIODevice::WriteOnly))
        return file.errorString();
    // A full disk shows only here: commit() would put the cut-off file in place and report success.
    if (file.write(bytes) != bytes.size() || !file.flush()) {
        const QString reason = file.errorString();
        file.cancelWriting();
        file.commit();
        return reason;
    }
    return file.commit() ? QString() : file.errorString();
}

}  // namespace tapward::app
