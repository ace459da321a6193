// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QString>
#include <vector>

namespace tapward::app {

/// A language the window can speak.
struct Language {
    QString id;    ///< in the settings and in file names: "en", "es"; empty = the desktop's
    QString name;  ///< in that language itself, so that its readers find it
};

/// The desktop's first, then those shipped.
std::vector<Language> languages();

/// What the person chose: an id of languages(), empty when nothing was chosen.
QString chosenLanguage();
void chooseLanguage(const QString& id);

/// The shipped language that serves a choice: for the desktop's, the first of its languages that is
/// shipped, else English.
QString languageFor(const QString& choice);

/// Texts made from now on are in this language, Qt's own where Qt's translations are installed. Windows that
/// already stand keep theirs: make them anew. Numbers and files are the same in every language.
/// @param id  "en", "es", or "pseudo": every text half as long again, with accents, for tests
void speak(const QString& id);

}  // namespace tapward::app
