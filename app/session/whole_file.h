// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QByteArray>
#include <QString>
#include <string>

#include "base/whole_file.h"

namespace tapward::app {

/// A path as the core takes it.
std::string filePath(const QString& path);

/// writeWholeFile(), which does not keep a window waiting.
/// @return why it could not be written, in the reader's language; empty when it was.
QString replaceFile(const QString& path, const QByteArray& bytes, Waiting waiting = Waiting::Briefly);

}  // namespace tapward::app
