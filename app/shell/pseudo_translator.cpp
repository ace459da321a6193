// SPDX-License-Identifier: GPL-3.0-or-later
#include "shell/pseudo_translator.h"

#include <QRegularExpression>

namespace tapward::app {

QString PseudoTranslator::stretched(const QString& source)
{
    // {0}, %1, %n, <b>, &nbsp;, *.svg: what a translator must keep too.
    static const QRegularExpression kept(
        QStringLiteral("\\{\\d+\\}|%L?\\d+|%n|<[^>]*>|&\\w+;|\\*\\.[\\w%]+|\\[\\*\\]"));
    static const QString plain = QStringLiteral("AEIOUaeiouncsyNCSY"), accented = QStringLiteral("ÅÉÎÕÜåéîõüñçšýÑÇŠÝ");
    QString out;
    qsizetype letters = 0, from = 0;
    const auto dress = [&](QStringView text) {
        for (const QChar c : text) {
            const qsizetype at = plain.indexOf(c);
            out += at < 0 ? c : accented[at];
            ++letters;
        }
    };
    for (auto found = kept.globalMatch(source); found.hasNext();) {
        const auto match = found.next();
        dress(QStringView(source).mid(from, match.capturedStart() - from));
        out += match.captured();
        from = match.capturedEnd();
    }
    dress(QStringView(source).mid(from));
    // In words of six letters, so that a long text may still break between lines.
    const qsizetype more = (letters + 1) / 2;
    QString padding;
    while (padding.size() < more)
        padding += padding.size() % 7 == 0 ? QLatin1Char(' ') : QLatin1Char('~');
    return out + padding;
}

QString PseudoTranslator::translate(const char* context, const char* source, const char*, int n) const
{
    const QLatin1String room(context);
    if (room.startsWith(QLatin1Char('Q')) || *source == '\0')
        return {};
    if (qstrcmp(source, "en") == 0)
        return QStringLiteral("en");  // the name of the language on the page
    QString text = stretched(QString::fromUtf8(source));
    if (n >= 0)
        text.replace(QLatin1String("%n"), QString::number(n));
    return text;
}

}  // namespace tapward::app
