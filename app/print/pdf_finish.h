// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QByteArray>
#include <QPdfWriter>

namespace tapward::app::print {

/// Title, creator, and from Qt 6.8 on, which else invents one each time, an identity made from `content`: the same
/// drawing gives the same bytes but for the date.
void label(QPdfWriter& writer, const QString& title, const QByteArray& content);

/// The PDF with its language set (screen readers choose their voice by it), which Qt's writer leaves out.
/// Done as an incremental update (ISO 32000-1:2008, 7.5.6): the catalogue is written again at the end.
/// A file not laid out as Qt writes it comes back unchanged.
/// @param language  "en", "de-AT"
QByteArray withLanguage(const QByteArray& pdf, const QByteArray& language);

}  // namespace tapward::app::print
