// SPDX-License-Identifier: GPL-3.0-or-later
#include "session/whole_file.h"

#include <QFile>

#include "session/message_text.h"

namespace tapward::app {

std::string filePath(const QString& path) { return QFile::encodeName(path).toStdString(); }

QString replaceFile(const QString& path, const QByteArray& bytes, Waiting waiting)
{
    const auto why =
        writeWholeFile(filePath(path), {bytes.constData(), static_cast<std::size_t>(bytes.size())}, waiting);
    return why ? coreText(*why) : QString();
}

}  // namespace tapward::app
