// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QByteArray>

namespace tapward::app::print {

/// The PDF with its language set (screen readers choose their voice by it), which Qt's writer leaves out.
/// Done as an incremental update (ISO 32000-1:2008, 7.5.6): the catalogue is written again at the end.
/// A file not laid out as Qt writes it comes back unchanged.
/// @param language  "en", "de-AT"
QByteArray withLanguage(const QByteArray& pdf, const QByteArray& language);

}  // namespace tapward::app::print
