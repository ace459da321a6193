// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <functional>
#include <map>
#include <memory>
#include <optional>
#include <QElapsedTimer>
#include <QObject>
#include <QString>
#include <QTimer>
#include <stop_token>
#include <thread>
#include <vector>

#include "base/result.h"
#include "document/drawing.h"
#include "review/winter.h"
#include "session/session.h"
#include "study/curves.h"
#include "study/faults.h"
#include "study/fire_map.h"
#include "study/presses.h"
#include "study/safe_set.h"
#include "study/stop.h"
#include "study/wiring.h"

namespace tapward::app {

/// A study's answer, or why there is none, with the drawing it was asked about.
template <class T>
struct StudyAnswer {
    std::shared_ptr<const document::Drawing> drawing;
    Result<T> answer;
};
template <class T>
using StudySlot = std::shared_ptr<const StudyAnswer<T>>;  ///< null: never finished

/// The last finished answer of each study. They may be of different drawings when a run was cancelled.
struct StudyAnswers {
    StudySlot<study::LoopCurves> loop;
    StudySlot<study::WiringStudy> wiring;
    StudySlot<study::FireMap> fire;
    StudySlot<review::WinterPlan> winter;
    StudySlot<study::PressesStudy> presses;
    StudySlot<study::FaultsStudy> faults;
    StudySlot<study::StopStudy> stop;
    StudySlot<study::SafeSet> safe;
};

/// What the studies are asked with; their stop and progress are the worker's own.
struct StudyQuestions {
    study::PressesOptions presses;
    study::FaultsOptions faults;
    study::StopOptions stop;
};

/// Runs the long studies of the drawing as it stands, one after the other, off the UI thread.
class StudyWorker final : public QObject {
    Q_OBJECT
public:
    explicit StudyWorker(Session& session, QObject* parent = nullptr);
    ~StudyWorker() override;

    /// Starts all studies anew; a run in hand is dropped. Answers come one by one; those of presses and stop are told
    /// to the session.
    void start() { begin({}); }
    /// Whether it starts without being asked, a moment after each change that matters.
    void setByItself(bool on);
    /// Asks for the faults alone, when nothing else is under way; else starts all anew.
    void startFaults();
    /// Drops the run in hand at once: what is finished stays, the rest keeps its older answer.
    void cancel();
    /// As cancel(), and does not start by itself again before the drawing changes.
    void callOff();
    bool isRunning() const { return m_running; }
    double share() const { return m_share; }  ///< done of the study in hand, 0..1
    QString doing() const;  ///< "2 of 3: Repeated presses, about 2 min left"
    const StudyAnswers& answers() const { return m_answers; }
    /// For the next start.
    const StudyQuestions& questions() const { return m_questions; }
    void setQuestions(StudyQuestions questions) { m_questions = std::move(questions); }
    /// Whether the drawing has changed in something the studies look at.
    template <class T>
    bool isStale(const StudySlot<T>& slot) const
    {
        return slot && !isCurrent(slot->drawing);
    }

Q_SIGNALS:
    void progressed();
    void answersChanged();  ///< one more is there, or those of another drawing are gone
    void agesChanged();  ///< what is there may have become stale, or current again

private:
    using Keep = std::function<void(StudyAnswers&)>;  ///< puts an answer in its place
    using Progress = std::function<void(double)>;
    struct Asked {
        std::shared_ptr<const document::Drawing> drawing;
        StudyQuestions questions;
    };
    struct Study {
        const char* title;
        Keep (*work)(const Asked&, const std::stop_token&, const Progress&);
    };
    static const std::vector<Study>& studies();
    void begin(std::optional<std::size_t> only);
    void run(const std::stop_token& stop, int generation, const Asked& asked, std::optional<std::size_t> only);
    void forgetOther();
    void keepUp();
    void teach();
    bool isCurrent(const std::shared_ptr<const document::Drawing>& studied) const;
    void tell(int generation, std::function<void()> news);

    Session& m_session;
    StudyAnswers m_answers;
    StudyQuestions m_questions;
    std::shared_ptr<const document::Drawing> m_drawing;  ///< of the newest run
    /// Found out once per change: many answers are of the same drawing.
    mutable std::map<std::shared_ptr<const document::Drawing>, bool> m_current;
    bool m_running = false;
    std::size_t m_at = 0;
    std::optional<std::size_t> m_only;  ///< the one study of the newest run; none = all
    double m_share = 0;
    QElapsedTimer m_since;  ///< the study in hand was begun
    QTimer m_soon;  ///< until it starts by itself
    bool m_byItself = false, m_calledOff = false;
    int m_generation = 0;  ///< of the newest run; news of older ones is dropped
    std::jthread m_thread;
};

}  // namespace tapward::app
