// SPDX-License-Identifier: GPL-3.0-or-later
#include "session/own_assemblies.h"

#include <algorithm>
#include <QDir>
#include <QFile>
#include <QFileInfo>
#include <QRegularExpression>
#include <QStandardPaths>

#include "document/edit.h"
#include "document/file.h"
#include "session/whole_file.h"

namespace tapward::app {

namespace {

const QString kEnding = QStringLiteral(".tapward");

/// Letters, digits and underscores of the title, at most 60; never empty.
QString cleaned(const QString& title)
{
    QString name = title.normalized(QString::NormalizationForm_KD).toLower();
    name.replace(QRegularExpression(QStringLiteral("[^a-z0-9]+")), QStringLiteral("_"));
    name = name.left(60);
    while (name.startsWith(QLatin1Char('_')))
        name.remove(0, 1);
    while (name.endsWith(QLatin1Char('_')))
        name.chop(1);
    return name.isEmpty() ? QStringLiteral("assembly") : name;
}

}  // namespace

OwnAssemblies::OwnAssemblies()
    : m_folder(QStandardPaths::writableLocation(QStandardPaths::GenericDataLocation)
               + QStringLiteral("/tapward/assemblies"))
{
}

std::optional<QString> OwnAssemblies::pathOf(const QString& file) const
{
    static const QRegularExpression plain(QStringLiteral("^[a-z0-9_]{1,80}\\.tapward$"));
    if (!plain.match(file).hasMatch())
        return std::nullopt;
    const QFileInfo info(QDir(m_folder), file);
    // A link could lead out of the folder.
    if (info.isSymLink() || (info.exists() && !info.isFile()))
        return std::nullopt;
    return info.absoluteFilePath();
}

Result<document::Drawing> OwnAssemblies::read(const QString& file) const
{
    const auto path = pathOf(file);
    const auto text = readWholeFile(filePath(path.value_or(QString())), kMostBytes);
    if (!path || !text)
        return problem({"The assembly {0} cannot be read.", {file.toStdString()}}, "Choose another one.");
    if (text->size() > kMostBytes)
        return problem({"The assembly {0} is too large.", {file.toStdString()}}, "Keep a smaller selection.");
    document::Limits limits;
    limits.bytes = kMostBytes;
    limits.parts = kMostParts;
    return document::read(*text, limits);
}

std::vector<OwnAssembly> OwnAssemblies::list() const
{
    std::vector<OwnAssembly> all;
    const auto files = QDir(m_folder).entryInfoList({QLatin1Char('*') + kEnding}, QDir::Files, QDir::Name);
    for (const QFileInfo& info : files) {
        if (static_cast<int>(all.size()) >= kMostFiles)
            break;
        if (const auto drawing = read(info.fileName()))
            all.push_back({info.fileName(), QString::fromStdString(drawing->job.title)});
    }
    std::ranges::stable_sort(all, [](const auto& a, const auto& b) { return a.title.localeAwareCompare(b.title) < 0; });
    return all;
}

Result<QString> OwnAssemblies::keep(const QString& title, const document::Drawing& drawing,
                                    const std::vector<document::PartId>& ids) const
{
    const QString named = title.simplified().left(120);
    if (named.isEmpty())
        return problem("The assembly has no name.", "Give it one.");
    auto copied = document::readParts(document::writeParts(drawing, ids));
    if (!copied)
        return tl::unexpected(copied.error());
    if (copied->empty())
        return problem("Nothing is selected.", "Select the parts to keep first.");
    document::Drawing kept;
    auto edit = document::pasteParts(kept, *copied, 0, 0);
    if (!edit)
        return tl::unexpected(edit.error());
    if (auto why = document::refusal(kept, *edit))
        return tl::unexpected(*why);
    document::apply(kept, std::move(*edit));
    kept.job.title = named.toStdString();
    const std::string text = document::write(kept);
    if (kept.parts.size() > kMostParts || text.size() > kMostBytes)
        return problem({"An assembly may have {0} parts.", {static_cast<std::int64_t>(kMostParts)}},
                       "Select fewer parts.");
    if (!QDir().mkpath(m_folder))
        return problem({"The folder {0} cannot be made.", {m_folder.toStdString()}},
                       "Look at its permissions and at the room on the disk.");
    QString name = cleaned(named);
    for (int number = 2; QFileInfo::exists(m_folder + QLatin1Char('/') + name + kEnding); ++number) {
        if (number > kMostFiles)
            return problem("There are too many assemblies of this name.", "Choose another name.");
        name = cleaned(named) + QLatin1Char('_') + QString::number(number);
    }
    const auto path = pathOf(name + kEnding);
    if (const QString reason = replaceFile(path.value_or(QString()), QByteArray::fromStdString(text));
        !reason.isEmpty())
        return problem({"The assembly could not be written: {0}.", {reason.toStdString()}},
                       "Look at the folder's permissions and at the room on the disk.");
    return name + kEnding;
}

Result<std::vector<document::Part>> OwnAssemblies::parts(const QString& file) const
{
    auto drawing = read(file);
    if (!drawing)
        return tl::unexpected(drawing.error());
    return std::move(drawing->parts);
}

std::optional<Problem> OwnAssemblies::remove(const QString& file) const
{
    const auto path = pathOf(file);
    // Where the folder the trash belongs in is missing, Qt 6.4 takes the folder one happens to work in for it.
    QDir().mkpath(QStandardPaths::writableLocation(QStandardPaths::GenericDataLocation));
    if (!path || (!QFile::moveToTrash(*path) && !QFile::remove(*path)))
        return Problem{
            {"The assembly {0} could not be deleted.", {file.toStdString()}}, "Look at the folder's permissions.", {}};
    return std::nullopt;
}

}  // namespace tapward::app
