// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <cstdint>
#include <memory>
#include <optional>
#include <QObject>
#include <QString>
#include <QUndoStack>
#include <vector>

#include "document/edit.h"
#include "review/finding.h"
#include "study/assessment.h"
#include "study/prediction.h"

namespace tapward::app {

/// What the studies of presses and of the stop found out of a drawing, or why they have no answer.
struct Studied {
    std::shared_ptr<const document::Drawing> drawing;
    std::shared_ptr<const study::PressesStudy> presses;
    Message noPresses;
    std::shared_ptr<const study::StopStudy> stop;
    Message noStop;
};

/// Whether what studies found of one drawing holds for another. Places, labels and the title block do not matter, nor
/// do cases added behind those there were.
bool sameForStudies(const document::Drawing& studied, const document::Drawing& now);

/// The open drawing: the one door through which it changes, and what is predicted for it.
/// Items redraw from changed() only; panels read prediction() and are told by predictionChanged().
class Session final : public QObject {
    Q_OBJECT
public:
    explicit Session(QObject* parent = nullptr);
    ~Session() override;

    const document::Drawing& drawing() const { return m_drawing; }
    QUndoStack& undoStack() { return m_undo; }

    /// The one door: refuses with the Problem, or makes the edit as one undo step.
    /// Edits performed with the same nonzero `burst` (from newBurst()) become one undo step, as long as
    /// nothing else came between: a slider drag, a run of arrow keys.
    std::optional<Problem> perform(document::Edit edit, int burst = 0);
    /// As perform, for the result of a gesture; forwards its Problem.
    std::optional<Problem> perform(Result<document::Edit> edit, int burst = 0);
    int newBurst() { return ++m_lastBurst; }
    /// Parts that came into the drawing with the last perform(), in id order.
    const std::vector<document::PartId>& lastAdded() const { return m_lastAdded; }
    document::Edit flip(document::Edit edit);  ///< for EditCommand only

    // files
    std::optional<Problem> open(const QString& path);   ///< on a Problem nothing changes
    std::optional<Problem> save(const QString& path);   ///< atomic, full disk noticed
    void startNew(document::Drawing drawing);           ///< untitled; its undo stack starts empty
    QString path() const { return m_path; }
    bool isModified() const { return !m_undo.isClean(); }

    // view state shared by panes
    UnitSystem units() const { return m_units; }
    void setUnits(UnitSystem units);
    document::View view() const { return m_view; }
    void setView(document::View view);
    document::Stage newStage() const { return m_newStage; }  ///< stage given to parts placed now
    void setNewStage(document::Stage stage);
    std::vector<document::PartId> selection() const { return m_selection; }
    void select(std::vector<document::PartId> ids);
    QString caseName() const { return m_case; }
    void setCaseName(const QString& name);
    /// Shows a script that is no case of the drawing, as caseName(), until another case is chosen; it enters no file. A
    /// script that the drawing has already is chosen there; one whose name is taken gets another.
    void play(document::Case script);
    const document::Case* played() const { return m_played ? &*m_played : nullptr; }
    /// What is played becomes a case of the drawing, as one undo step.
    std::optional<Problem> keepPlayed();
    double time() const { return m_time; }  ///< slider second
    void setTime(double seconds);  ///< within the case; beyond 0 s it turns showsMoment() on
    /// Whether the drawing shows the water at time(): colours, numbers, flow arrows.
    bool showsMoment() const { return m_showsMoment; }
    void setShowsMoment(bool on);  ///< told by viewChanged()

    // predictions: computed off the UI thread after each change; the newest edit cancels the one in flight
    /// The last answer, which may be stale; null before the first one and when the drawing as it stands
    /// cannot be predicted (then predictionProblem() says why).
    const study::Prediction* prediction() const { return m_prediction.get(); }
    std::shared_ptr<const study::Prediction> sharedPrediction() const { return m_prediction; }
    bool isStale() const { return m_stale; }  ///< drawing has changed since prediction()
    std::optional<Problem> predictionProblem() const { return m_problem; }
    /// What is known of the last predicted drawing; null without a prediction. At full depth once the studies of this
    /// drawing have been taken in, see learn().
    const study::Assessment* assessment() const { return m_assessment.get(); }
    /// Takes in what studies have found, as long as it holds for the drawing: findings, cautions and answers follow.
    void learn(Studied studied);
    /// What is being found out, for whoever shows figures that may still rise; empty when nothing is.
    QString studying() const { return m_studying; }
    void setStudying(const QString& doing);
    const std::vector<review::Finding>& findings() const { return m_findings; }
    /// Standing cautions for prediction(), not said by a finding; none without a prediction.
    const std::vector<Message>& cautions() const { return m_cautions; }
    const study::CaseResult* currentCase() const;  ///< drawn or played; null when there is no answer for caseName()
    bool isWorking() const { return m_working; }  ///< a prediction or its snapshot is on its way

    /// Says everything anew: for a window that came when the drawing was open already, and in the language of now.
    void announce();

Q_SIGNALS:
    void changed();  ///< the drawing
    void selectionChanged();
    void viewChanged();  ///< view, units, new stage
    void predictionChanged();  ///< new result, or became stale
    void studyingChanged();
    void timeChanged();
    void caseChanged();
    void fileChanged();  ///< path or modified mark
    void jumpTo(document::PartId part);  ///< centre and show this part

public:
    void requestJump(document::PartId part) { Q_EMIT jumpTo(part); }

private:
    struct Job;
    struct Answer;
    struct Worker;
    void take(document::Drawing drawing, const QString& path);
    enum class Ask { Everything, Snapshot, Judgement };
    void schedule(Ask what);
    void receive(Answer answer);
    void settleCaseName();

    document::Drawing m_drawing;
    QUndoStack m_undo;
    QString m_path, m_case;
    UnitSystem m_units = UnitSystem::Us;
    document::View m_view = document::View::Both;
    document::Stage m_newStage = document::Stage::Existing;
    std::vector<document::PartId> m_selection;
    std::optional<document::Case> m_played;
    std::shared_ptr<const study::CaseResult> m_playedResult;
    double m_time = 0;
    std::shared_ptr<const study::Prediction> m_prediction;
    std::shared_ptr<const study::Assessment> m_assessment;
    std::shared_ptr<const Studied> m_studied;
    QString m_studying;
    std::vector<review::Finding> m_findings;
    std::vector<Message> m_cautions;
    std::optional<Problem> m_problem;
    bool m_stale = false, m_working = false, m_showsMoment = false;
    int m_lastBurst = 0;
    std::vector<document::PartId> m_lastAdded;
    std::uint64_t m_generation = 0;  // of the newest job; older answers are dropped
    std::unique_ptr<Worker> m_worker;
};

}  // namespace tapward::app
