// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QString>

namespace tapward::app {

/// Where files are looked for and put when nothing says where: the folder a drawing was last opened from or saved to; at
/// first, or when that one is gone, the person's documents, or their home.
QString workFolder();
/// A drawing was opened from here, or saved here.
void keepWorkFolder(const QString& file);

}  // namespace tapward::app
