// SPDX-License-Identifier: GPL-3.0-or-later
#include "shell/autosave.h"

#include <algorithm>
#include <QDir>
#include <QFile>
#include <QFileInfo>
#include <QJsonDocument>
#include <QJsonObject>
#include <QUuid>
#include <utility>

#include "document/file.h"
#include "session/whole_file.h"

namespace tapward::app {

namespace {

QString noteOf(const QString& drawing) { return drawing.chopped(8) + QStringLiteral(".json"); }
QString lockOf(const QString& drawing) { return drawing.chopped(8) + QStringLiteral(".lock"); }

}  // namespace

Autosave::Autosave(Session& session, QString folder, QObject* parent)
    : QObject(parent), m_session(session), m_folder(std::move(folder)),
      m_id(QUuid::createUuid().toString(QUuid::WithoutBraces))
{
    m_alive = std::make_unique<QLockFile>(lockOf(file()));
    m_alive->setStaleLockTime(0);
    beginLife();
    m_timer.setSingleShot(true);
    m_writer.setMaxThreadCount(1);
    connect(&m_timer, &QTimer::timeout, this, &Autosave::saveBeside);
    connect(&session, &Session::changed, this, &Autosave::changed);
    connect(&session, &Session::fileChanged, this, &Autosave::changed);
}

Autosave::~Autosave() { m_writer.waitForDone(); }

void Autosave::beginLife()
{
    QDir().mkpath(m_folder);
    if (!m_alive->isLocked())
        m_alive->tryLock(0);
}

void Autosave::changed()
{
    if (!m_session.isModified())
        forget();
    else if (!m_timer.isActive())  // not restarted: steady work is saved too
        m_timer.start(m_delay_ms);
}

void Autosave::saveNow()
{
    m_timer.stop();
    m_writer.waitForDone();
    ++m_turn;
    if (m_session.isModified())
        written(write(copy()));
}

void Autosave::saveBeside()
{
    m_again = m_writing;  // what is being written is older
    if (m_writing || !m_session.isModified())
        return;
    m_writing = true;
    m_writer.start([this, copy = copy(), turn = ++m_turn] {
        const QString reason = write(copy);
        QMetaObject::invokeMethod(
            this,
            [this, reason, turn] {
                m_writing = false;
                if (turn == m_turn && m_session.isModified())
                    written(reason);
                if (m_again && !m_timer.isActive())
                    m_timer.start(m_delay_ms);
            },
            Qt::QueuedConnection);
    });
}

void Autosave::written(const QString& reason)
{
    if (!reason.isEmpty())
        m_timer.start(10 * m_delay_ms);  // a full disk may have room again later; the drawing itself is still open
    if (std::exchange(m_failing, !reason.isEmpty()) != m_failing) {
        if (m_failing)
            Q_EMIT failed(reason);
        else
            Q_EMIT resumed();
    }
}

Autosave::Copy Autosave::copy()
{
    beginLife();  // a home folder may come late, or come back
    return {m_session.path(), m_session.drawing()};
}

QString Autosave::write(const Copy& copy) const
{
    const QJsonObject note{{QStringLiteral("file"), copy.original},
                           {QStringLiteral("changed"), QDateTime::currentDateTimeUtc().toString(Qt::ISODateWithMs)}};
    // The note first: a copy is never without the name of the file it belongs to, whenever the end comes.
    if (const QString reason = replaceFile(noteOf(file()), QJsonDocument(note).toJson()); !reason.isEmpty())
        return reason;
    return replaceFile(file(), QByteArray::fromStdString(document::write(copy.drawing)));
}

void Autosave::forget()
{
    m_timer.stop();
    m_again = false;
    ++m_turn;
    m_writer.waitForDone();  // else it would come back
    QFile::remove(file());
    QFile::remove(noteOf(file()));
}

std::vector<Leftover> Autosave::leftovers(const QString& folder)
{
    std::vector<Leftover> found;
    for (const auto& info : QDir(folder).entryInfoList({QStringLiteral("*.tapward")}, QDir::Files)) {
        const QString path = info.absoluteFilePath();
        QLockFile lock(lockOf(path));
        lock.setStaleLockTime(0);
        if (!lock.tryLock(0))
            continue;  // its window lives
        lock.unlock();
        Leftover leftover;
        leftover.file = path;
        // A copy is written as the drawing stands, which may have come from a file at the very limit.
        document::Limits limits;
        limits.bytes *= 4;
        const auto text = readWholeFile(filePath(path), limits.bytes);
        auto drawing = text ? document::read(*text, limits) : tl::unexpected(text.error());
        if (drawing)
            leftover.drawing = std::move(*drawing);
        else
            leftover.unreadable = drawing.error();
        leftover.changed = info.lastModified();
        QFile note(noteOf(path));
        if (note.open(QIODevice::ReadOnly)) {
            const auto json = QJsonDocument::fromJson(note.readAll()).object();
            leftover.original = json.value(QStringLiteral("file")).toString();
            const auto at = QDateTime::fromString(json.value(QStringLiteral("changed")).toString(), Qt::ISODateWithMs);
            if (at.isValid())
                leftover.changed = at.toLocalTime();
        }
        if (!leftover.original.isEmpty() && QFileInfo::exists(leftover.original))
            leftover.saved = QFileInfo(leftover.original).lastModified();
        found.push_back(std::move(leftover));
    }
    std::ranges::sort(found, std::greater{}, &Leftover::changed);
    return found;
}

void Autosave::remove(const Leftover& leftover)
{
    QFile::remove(leftover.file);
    QFile::remove(noteOf(leftover.file));
    QFile::remove(lockOf(leftover.file));
}

document::Edit replaceDrawing(const document::Drawing& from, const document::Drawing& to, const Message& title)
{
    using namespace document;
    Edit edit{title, {}};
    const auto isPipe = [](const Part& part) { return kindOf(part).isPipe; };
    const auto references = [](const Part& part) {
        std::vector<std::string> keys;
        for (const auto& field : kindOf(part).fields)
            if (field.type == parts::FieldType::PartRef && part.entries.contains(field.key))
                keys.emplace_back(field.key);
        return keys;
    };
    // What refers to parts goes first and comes back last.
    edit.steps.push_back(SetCases{});
    edit.steps.push_back(SetDismissals{});
    for (const auto& part : from.parts)
        for (auto& key : references(part))
            edit.steps.push_back(SetField{part.id, key, std::nullopt});
    for (const bool pipes : {true, false})
        for (const auto& part : from.parts)
            if (isPipe(part) == pipes)
                edit.steps.push_back(RemovePart{part.id});
    std::vector<SetField> named;
    AddPart* last = nullptr;
    edit.steps.reserve(edit.steps.size() + 2 * to.parts.size() + 3);
    for (const bool pipes : {false, true})
        for (Part part : to.parts) {
            if (isPipe(part) != pipes)
                continue;
            for (auto& key : references(part)) {
                named.push_back({part.id, key, part.entries.at(key)});
                part.entries.erase(key);
            }
            edit.steps.push_back(AddPart{std::move(part)});
            last = &std::get<AddPart>(edit.steps.back());
        }
    if (last)
        last->nextId = to.nextId;
    for (auto& field : named)
        edit.steps.push_back(std::move(field));
    edit.steps.push_back(SetJob{to.job});
    edit.steps.push_back(SetCases{to.cases});
    edit.steps.push_back(SetDismissals{to.dismissals});
    return edit;
}

}  // namespace tapward::app
