// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <memory>
#include <optional>
#include <QDateTime>
#include <QLockFile>
#include <QObject>
#include <QThreadPool>
#include <QTimer>
#include <vector>

#include "session/session.h"

namespace tapward::app {

/// What a window that ended badly left behind.
struct Leftover {
    std::optional<Problem> unreadable;  ///< why it cannot be read; then `drawing` is empty and the file all there is
    QString file;        ///< the autosaved drawing
    QString original;    ///< the person's file; empty = never saved
    QDateTime changed;   ///< of the autosave
    QDateTime saved;     ///< last save of the original, if it exists
    document::Drawing drawing;
};

/// Keeps a copy of unsaved work in the state folder, also of drawings that never had a file.
/// The person's own file is touched by Save only.
class Autosave final : public QObject {
    Q_OBJECT
public:
    static constexpr int kDelay_ms = 250;  ///< after a change; with the writing, less than a second

    /// @param folder  where the copies go; made if missing
    Autosave(Session& session, QString folder, QObject* parent = nullptr);
    ~Autosave() override;

    /// Writes if there is unsaved work, and comes back when it is done (before long work). By itself, a moment after each
    /// change, it writes beside the window, which goes on meanwhile.
    void saveNow();
    /// The work is saved or given up: the copy goes.
    void forget();
    void setDelay(int milliseconds) { m_delay_ms = milliseconds; }
    QString file() const { return m_folder + QLatin1Char('/') + m_id + QStringLiteral(".tapward"); }

    /// Copies whose window no longer lives, newest first; those that cannot be read are among them.
    static std::vector<Leftover> leftovers(const QString& folder);
    static void remove(const Leftover& leftover);

Q_SIGNALS:
    /// No copy could be written; said once, and tried again until it can be, which resumed() tells.
    void failed(const QString& reason);
    void resumed();

private:
    /// What is written, taken while nobody changes it.
    struct Copy {
        QString original;
        document::Drawing drawing;
    };
    void changed();
    void saveBeside();
    void written(const QString& reason);
    Copy copy();
    void beginLife();  ///< folder and lock, as far as they can be had now
    QString write(const Copy& copy) const;  ///< the reason, or empty; by any thread

    Session& m_session;
    QString m_folder, m_id;
    std::unique_ptr<QLockFile> m_alive;
    int m_delay_ms = kDelay_ms;
    bool m_failing = false, m_writing = false, m_again = false;
    int m_turn = 0;  ///< what is told of an earlier one comes too late
    QTimer m_timer;
    QThreadPool m_writer;  ///< of one
};

/// The edit that turns one drawing into another, as one undo step: how a restored copy comes back over
/// the file it belongs to.
document::Edit replaceDrawing(const document::Drawing& from, const document::Drawing& to, const Message& title);

}  // namespace tapward::app
