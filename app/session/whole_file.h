// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QByteArray>
#include <QString>

namespace tapward::app {

/// The whole of `bytes` as a file, or the old file untouched (a full disk included).
/// @return why it could not be written, in the system's words; empty when it was.
QString replaceFile(const QString& path, const QByteArray& bytes);

}  // namespace tapward::app
