// SPDX-License-Identifier: GPL-3.0-or-later
#include "print/pdf_finish.h"

#include <QRegularExpression>
#include <QString>
#include <QUuid>

namespace tapward::app::print {

void label(QPdfWriter& writer, const QString& title, [[maybe_unused]] const QByteArray& content)
{
    writer.setTitle(title);
    writer.setCreator(QStringLiteral("Tapward " TAPWARD_VERSION));
#if QT_VERSION >= QT_VERSION_CHECK(6, 8, 0)
    // Of our own space of names (RFC 9562, 5.5): any number drawn once.
    static const QUuid space("{8d1f6a0e-53f1-4d0c-9a55-0c3f5a6d7b21}");
    writer.setDocumentId(QUuid::createUuidV5(space, title.toUtf8() + content));
#endif
}

QByteArray withLanguage(const QByteArray& pdf, const QByteArray& language)
{
    const qsizetype startAt = pdf.lastIndexOf("startxref");
    const qsizetype trailerAt = pdf.lastIndexOf("trailer");
    if (startAt < 0 || trailerAt < 0 || trailerAt > startAt)
        return pdf;
    const QString trailer = QString::fromLatin1(pdf.mid(trailerAt, startAt - trailerAt));
    static const QRegularExpression rootPattern(QStringLiteral("/Root (\\d+) 0 R"));
    static const QRegularExpression sizePattern(QStringLiteral("/Size (\\d+)"));
    static const QRegularExpression xrefPattern(QStringLiteral("startxref\\s+(\\d+)"));
    const auto root = rootPattern.match(trailer), size = sizePattern.match(trailer),
               xref = xrefPattern.match(QString::fromLatin1(pdf.mid(startAt)));
    if (!root.hasMatch() || !size.hasMatch() || !xref.hasMatch())
        return pdf;

    const QByteArray id = root.captured(1).toLatin1();
    const QByteArray opening = "\n" + id + " 0 obj\n";
    const qsizetype objectAt = pdf.lastIndexOf(opening);
    const qsizetype endAt = objectAt < 0 ? -1 : pdf.indexOf("endobj", objectAt);
    const qsizetype openAt = objectAt < 0 ? -1 : pdf.indexOf("<<", objectAt);
    if (endAt < 0 || openAt < 0 || openAt > endAt)
        return pdf;
    QByteArray catalogue = pdf.mid(objectAt + 1, endAt - objectAt - 1);
    catalogue.insert(catalogue.indexOf("<<") + 2, "\n/Lang (" + language + ")");

    QByteArray out = pdf;
    if (!out.endsWith('\n'))
        out += '\n';
    const qsizetype offset = out.size();
    out += catalogue + "endobj\n";
    const qsizetype newXref = out.size();
    out += "xref\n" + id + " 1\n" + QByteArray::number(offset).rightJustified(10, '0') + " 00000 n \n";
    QByteArray newTrailer = pdf.mid(trailerAt, startAt - trailerAt);
    newTrailer.insert(newTrailer.lastIndexOf(">>"), "/Prev " + xref.captured(1).toLatin1() + "\n");
    out += newTrailer + "startxref\n" + QByteArray::number(newXref) + "\n%%EOF\n";
    return out;
}

}  // namespace tapward::app::print
