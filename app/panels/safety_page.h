// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QWidget>

#include "panels/catch_up.h"
#include "session/study_worker.h"

namespace tapward::app {

/// One study's answer in the safety pane. A page without an answer is not shown at all.
class SafetyPage : public QWidget {
    Q_OBJECT
public:
    SafetyPage(Session& session, const StudyWorker& worker)
        : m_session(session), m_worker(worker), m_catchUp(new CatchUp(*this, [this] { refresh(); }))
    {
    }
    CatchUp& catchUp() { return *m_catchUp; }

    virtual bool hasAnswer() const = 0;
    virtual bool isStale() const = 0;
    virtual void refresh() = 0;  ///< answers, units, colours or letters have changed

Q_SIGNALS:
    /// The person wants to see this script run; `at_s` is the moment to look at.
    void scriptWanted(const document::Case& script, double at_s);
    /// ... or run from its beginning.
    void playWanted(const document::Case& script);

protected:
    Session& m_session;
    const StudyWorker& m_worker;
    CatchUp* m_catchUp;
};

}  // namespace tapward::app
