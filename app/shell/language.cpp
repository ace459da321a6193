// SPDX-License-Identifier: GPL-3.0-or-later
#include "shell/language.h"

#include <QCoreApplication>
#include <QLibraryInfo>
#include <QLocale>
#include <QPointer>
#include <QSettings>
#include <QTranslator>

#include "shell/pseudo_translator.h"

namespace tapward::app {

namespace {

const QString kKey = QStringLiteral("language");

/// The translators in use; the application owns them.
QList<QPointer<QTranslator>>& inUse()
{
    static QList<QPointer<QTranslator>> list;
    return list;
}

void use(QTranslator* translator, bool good)
{
    if (good && QCoreApplication::installTranslator(translator))
        inUse() << translator;
    else
        delete translator;
}

}  // namespace

std::vector<Language> languages()
{
    return {{QString(), QCoreApplication::translate("tapward::app", "The Desktop's")},
            {QStringLiteral("en"), QStringLiteral("English")},
            {QStringLiteral("es"), QStringLiteral("Español")}};
}

QString chosenLanguage()
{
    const QString id = QSettings().value(kKey).toString();
    for (const auto& language : languages())
        if (language.id == id)
            return id;
    return {};
}

void chooseLanguage(const QString& id) { QSettings().setValue(kKey, id); }

QString languageFor(const QString& choice)
{
    if (!choice.isEmpty())
        return choice;
    for (const QString& tag : QLocale::system().uiLanguages())
        for (const auto& language : languages())
            if (!language.id.isEmpty() && tag.section(QLatin1Char('-'), 0, 0) == language.id)
                return language.id;
    return QStringLiteral("en");
}

void speak(const QString& id)
{
    for (const auto& translator : std::as_const(inUse())) {
        QCoreApplication::removeTranslator(translator);
        delete translator;
    }
    inUse().clear();
    auto* const app = QCoreApplication::instance();
    if (id == QLatin1String("pseudo"))
        return use(new PseudoTranslator(app), true);
    auto* qt = new QTranslator(app);
    use(qt, qt->load(QStringLiteral("qtbase_") + id, QLibraryInfo::path(QLibraryInfo::TranslationsPath)));
    if (id == QLatin1String("en"))
        return;  // the texts in the program are English
    auto* own = new QTranslator(app);
    use(own, own->load(QStringLiteral(":/translations/tapward_%1.qm").arg(id)));
}

}  // namespace tapward::app
