// SPDX-License-Identifier: GPL-3.0-or-later
#include "panels/stock_store.h"

#include <QDir>
#include <QFileInfo>
#include <QSettings>
#include <QStandardPaths>

#include "session/whole_file.h"

namespace tapward::app {

QString StockStore::usualPath()
{
    return QStandardPaths::writableLocation(QStandardPaths::AppDataLocation) + QStringLiteral("/stock.tapstock");
}

QString StockStore::path() const
{
    const QString chosen = QSettings().value(QStringLiteral("stockFile")).toString();
    return chosen.isEmpty() ? usualPath() : chosen;
}

void StockStore::setPath(const QString& path) { QSettings().setValue(QStringLiteral("stockFile"), path); }

Result<document::StockList> StockStore::read(const QString& path)
{
    if (!QFileInfo::exists(path))
        return document::StockList{};
    const document::StockLimits limits;
    const auto text = readWholeFile(filePath(path), limits.bytes);
    if (!text)
        return tl::unexpected(text.error());
    return document::readStock(*text, limits);
}

std::optional<Problem> StockStore::write(const QString& path, const document::StockList& list)
{
    const auto cannot = [&path](const QString& reason) {
        return Problem{{"The stock list could not be saved as {0}: {1}.",
                        {QFileInfo(path).fileName().toStdString(), reason.toStdString()}},
                       "The file that was there is unchanged. Free some room or choose another folder.",
                       {}};
    };
    QDir().mkpath(QFileInfo(path).absolutePath());
    const auto text = document::writeReadableStock(list);
    if (!text)
        return text.error();
    const QString reason = replaceFile(path, QByteArray::fromStdString(*text));
    return reason.isEmpty() ? std::nullopt : std::optional(cannot(reason));
}

std::optional<Problem> StockStore::change(const std::function<std::optional<Problem>(document::StockList&)>& change)
{
    auto list = load();
    if (!list)
        return list.error();
    if (auto why = change(*list))
        return why;
    return write(path(), *list);
}

}  // namespace tapward::app
