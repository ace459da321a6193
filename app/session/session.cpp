// SPDX-License-Identifier: GPL-3.0-or-later
#include "session/session.h"

#include <algorithm>
#include <utility>

#include "document/file.h"
#include "session/edit_command.h"
#include "session/prediction_worker.h"
#include "session/whole_file.h"

namespace tapward::app {

namespace {

/// Only what water and electricity know of: no places on the canvas.
document::Part bare(document::Part part)
{
    part.at = {};
    part.turn = 0;
    part.flipped = false;
    part.label.reset();
    part.bends.clear();
    for (auto& end : part.ends)
        end.loose = {};
    return part;
}

}  // namespace

bool sameForStudies(const document::Drawing& studied, const document::Drawing& now)
{
    const auto samePart = [](const document::Part& a, const document::Part& b) {
        return a == b || (a.kind == b.kind && bare(a) == bare(b));
    };
    return studied.job.altitude_m == now.job.altitude_m && studied.cases.size() <= now.cases.size()
           && std::equal(studied.cases.begin(), studied.cases.end(), now.cases.begin())
           && std::equal(studied.parts.begin(), studied.parts.end(), now.parts.begin(), now.parts.end(), samePart);
}

Session::Session(QObject* parent) : QObject(parent), m_worker(std::make_unique<Worker>(*this))
{
    m_undo.setUndoLimit(0);
    connect(&m_undo, &QUndoStack::cleanChanged, this, &Session::fileChanged);
}

Session::~Session() { m_undo.disconnect(this); }

std::optional<Problem> Session::perform(document::Edit edit, int burst)
{
    if (auto problem = document::refusal(m_drawing, edit))
        return problem;
    const document::PartId firstNew = m_drawing.nextId;
    m_undo.push(new EditCommand(*this, std::move(edit), burst));
    m_lastAdded.clear();
    for (const auto& part : m_drawing.parts)
        if (part.id >= firstNew)
            m_lastAdded.push_back(part.id);
    return std::nullopt;
}

std::optional<Problem> Session::perform(Result<document::Edit> edit, int burst)
{
    if (!edit)
        return edit.error();
    return perform(std::move(*edit), burst);
}

document::Edit Session::flip(document::Edit edit)
{
    auto inverse = document::apply(m_drawing, std::move(edit));
    settleCaseName();
    const bool wasStale = m_stale;
    schedule(Ask::Everything);
    Q_EMIT changed();
    if (!wasStale)
        Q_EMIT predictionChanged();  // after what is drawn anew: it need not be drawn twice
    select(m_selection);             // parts that are gone leave the selection
    return inverse;
}

std::optional<Problem> Session::open(const QString& path)
{
    auto drawing = document::load(filePath(path));
    if (!drawing)
        return drawing.error();
    take(std::move(*drawing), path);
    return std::nullopt;
}

std::optional<Problem> Session::save(const QString& path)
{
    if (const auto saved = document::save(m_drawing, filePath(path), Waiting::Briefly); !saved)
        return saved.error();
    m_path = path;
    m_undo.setClean();
    Q_EMIT fileChanged();
    return std::nullopt;
}

void Session::startNew(document::Drawing drawing) { take(std::move(drawing), {}); }

void Session::take(document::Drawing drawing, const QString& path)
{
    m_undo.clear();
    m_drawing = std::move(drawing);
    m_path = path;
    m_selection.clear();
    m_lastAdded.clear();
    m_prediction.reset();
    m_assessment.reset();
    m_findings.clear();
    m_cautions.clear();
    m_problem.reset();
    m_time = 0;
    m_case.clear();
    m_played.reset();
    m_playedResult.reset();
    settleCaseName();
    const bool wasStale = m_stale;
    schedule(Ask::Everything);
    Q_EMIT changed();
    if (!wasStale)
        Q_EMIT predictionChanged();
    Q_EMIT selectionChanged();
    Q_EMIT caseChanged();
    Q_EMIT timeChanged();
    Q_EMIT fileChanged();
}

void Session::announce()
{
    for (int i = 0; i < m_undo.count(); ++i)  // the stack lets nobody change what its commands do; their words are ours
        if (const auto* command = dynamic_cast<const EditCommand*>(m_undo.command(i)))
            const_cast<EditCommand*>(command)->sayAgain();
    Q_EMIT changed();
    Q_EMIT predictionChanged();
    Q_EMIT selectionChanged();
    Q_EMIT viewChanged();
    Q_EMIT caseChanged();
    Q_EMIT timeChanged();
    Q_EMIT studyingChanged();
    Q_EMIT fileChanged();
}

void Session::setUnits(UnitSystem units)
{
    if (std::exchange(m_units, units) != units)
        Q_EMIT viewChanged();
}

void Session::setView(document::View view)
{
    if (std::exchange(m_view, view) != view)
        Q_EMIT viewChanged();
}

void Session::setNewStage(document::Stage stage)
{
    if (std::exchange(m_newStage, stage) != stage)
        Q_EMIT viewChanged();
}

void Session::select(std::vector<document::PartId> ids)
{
    std::erase_if(ids, [this](document::PartId id) { return std::as_const(m_drawing).find(id) == nullptr; });
    if (ids == m_selection)
        return;
    m_selection = std::move(ids);
    Q_EMIT selectionChanged();
}

void Session::setCaseName(const QString& name)
{
    if (std::exchange(m_case, name) == name)
        return;
    m_played.reset();
    m_playedResult.reset();
    m_time = 0;
    // While the drawing's own prediction is under way, its answer will bring the new case's snapshot.
    schedule(m_stale ? Ask::Everything : Ask::Snapshot);
    Q_EMIT caseChanged();
    Q_EMIT timeChanged();
}

void Session::play(document::Case script)
{
    const auto known = std::ranges::find_if(m_drawing.cases, [&](document::Case one) {
        one.name = script.name;
        return one == script;
    });
    if (known != m_drawing.cases.end()) {
        setCaseName(QString::fromStdString(known->name));
        return;
    }
    const std::string name = script.name;
    for (int n = 2; m_drawing.findCase(script.name) != nullptr; ++n)
        script.name = name + " (" + std::to_string(n) + ")";
    if (m_played == script && m_case.toStdString() == script.name)
        return;
    m_case = QString::fromStdString(script.name);
    m_played = std::move(script);
    m_playedResult.reset();
    m_time = 0;
    schedule(m_stale ? Ask::Everything : Ask::Snapshot);
    Q_EMIT caseChanged();
    Q_EMIT timeChanged();
}

std::optional<Problem> Session::keepPlayed()
{
    if (!m_played)
        return std::nullopt;
    auto cases = m_drawing.cases;
    cases.push_back(*m_played);
    const Message title("Keep \"{0}\" as a case", {m_played->name});
    auto problem = perform(document::Edit{title, {document::SetCases{std::move(cases)}}});
    if (!problem) {
        m_played.reset();
        m_playedResult.reset();
        Q_EMIT caseChanged();
    }
    return problem;
}

void Session::settleCaseName()
{
    if (m_played && m_drawing.findCase(m_played->name) == nullptr)
        return;
    m_played.reset();
    m_playedResult.reset();
    if (m_drawing.findCase(m_case.toStdString()) != nullptr)
        return;
    // The run is what a drawing with a loop is about; else its first case.
    const auto isRun = [](const document::Case& one) {
        const auto has = [&](document::ActionKind kind) {
            return std::ranges::find(one.actions, kind, &document::Action::kind) != one.actions.end();
        };
        return one.view == document::View::After && has(document::ActionKind::PressButton)
               && !has(document::ActionKind::StartFault);
    };
    const auto run = std::ranges::find_if(m_drawing.cases, isRun);
    const auto chosen = run != m_drawing.cases.end() ? run : m_drawing.cases.begin();
    const QString name = chosen == m_drawing.cases.end() ? QString() : QString::fromStdString(chosen->name);
    if (std::exchange(m_case, name) != name) {
        m_time = 0;
        Q_EMIT caseChanged();
        Q_EMIT timeChanged();
    }
}

void Session::setTime(double seconds)
{
    const auto* running = currentCase();
    const double last = running != nullptr ? running->duration_s : 0;
    const double time = std::clamp(seconds, 0.0, std::max(last, 0.0));
    if (time > 0)
        setShowsMoment(true);
    if (std::exchange(m_time, time) != time)
        Q_EMIT timeChanged();
}

void Session::setShowsMoment(bool on)
{
    if (std::exchange(m_showsMoment, on) != on)
        Q_EMIT viewChanged();
}

const study::CaseResult* Session::currentCase() const
{
    if (m_played)
        return m_playedResult.get();
    return m_prediction ? m_prediction->find(m_case.toStdString()) : nullptr;
}

void Session::schedule(Ask what)
{
    const bool everything = what == Ask::Everything;
    if (everything && m_studied && !sameForStudies(*m_studied->drawing, m_drawing))
        m_studied.reset();
    m_working = true;
    m_worker->start(Job{++m_generation, m_drawing, m_case.toStdString(), everything ? nullptr : m_prediction, m_studied,
                        what != Ask::Snapshot, m_played});
    m_stale = m_stale || everything;  // the caller tells
}

void Session::setStudying(const QString& doing)
{
    if (std::exchange(m_studying, doing) != doing)
        Q_EMIT studyingChanged();
}

void Session::learn(Studied studied)
{
    if (!sameForStudies(*studied.drawing, m_drawing))
        return;
    m_studied = std::make_shared<const Studied>(std::move(studied));
    // A job under way does not know it yet.
    schedule(m_stale || m_working || !m_prediction ? Ask::Everything : Ask::Judgement);
}

void Session::receive(Answer answer)
{
    if (answer.generation != m_generation)
        return;
    m_working = false;
    m_stale = false;
    m_prediction = std::move(answer.prediction);
    m_problem = std::move(answer.problem);
    m_playedResult = std::move(answer.played);
    if (answer.findings) {
        m_assessment = std::move(answer.assessment);
        m_findings = std::move(*answer.findings);
        m_cautions = std::move(answer.cautions);
    }
    Q_EMIT predictionChanged();
}

}  // namespace tapward::app
