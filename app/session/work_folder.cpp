// SPDX-License-Identifier: GPL-3.0-or-later
#include "session/work_folder.h"

#include <QDir>
#include <QFileInfo>
#include <QSettings>
#include <QStandardPaths>

namespace tapward::app {

namespace {

const QString kKey = QStringLiteral("folder");

}  // namespace

QString workFolder()
{
    for (const QString& folder :
         {QSettings().value(kKey).toString(), QStandardPaths::writableLocation(QStandardPaths::DocumentsLocation)})
        if (!folder.isEmpty() && QDir(folder).exists())
            return folder;
    return QDir::homePath();
}

void keepWorkFolder(const QString& file) { QSettings().setValue(kKey, QFileInfo(file).absolutePath()); }

}  // namespace tapward::app
