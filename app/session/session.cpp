// SPDX-License-Identifier: GPL-3.0-or-later
#include "session/session.h"

#include <algorithm>
#include <utility>

#include "document/file.h"
#include "session/edit_command.h"
#include "session/prediction_worker.h"
#include "session/whole_file.h"

namespace tapward::app {

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
    schedulePrediction(true);
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
    m_findings.clear();
    m_cautions.clear();
    m_problem.reset();
    m_time = 0;
    m_case.clear();
    settleCaseName();
    const bool wasStale = m_stale;
    schedulePrediction(true);
    Q_EMIT changed();
    if (!wasStale)
        Q_EMIT predictionChanged();
    Q_EMIT selectionChanged();
    Q_EMIT caseChanged();
    Q_EMIT timeChanged();
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
    m_time = 0;
    // While the drawing's own prediction is under way, its answer will bring the new case's snapshot.
    schedulePrediction(m_stale);
    Q_EMIT caseChanged();
    Q_EMIT timeChanged();
}

void Session::settleCaseName()
{
    if (m_drawing.findCase(m_case.toStdString()) != nullptr)
        return;
    const QString name = m_drawing.cases.empty() ? QString() : QString::fromStdString(m_drawing.cases.front().name);
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
    return m_prediction ? m_prediction->find(m_case.toStdString()) : nullptr;
}

void Session::schedulePrediction(bool everything)
{
    m_working = true;
    m_worker->start(Job{++m_generation, m_drawing, m_case.toStdString(), everything ? nullptr : m_prediction});
    m_stale = m_stale || everything;  // the caller tells
}

void Session::receive(Answer answer)
{
    if (answer.generation != m_generation)
        return;
    m_working = false;
    m_stale = false;
    m_prediction = std::move(answer.prediction);
    m_problem = std::move(answer.problem);
    if (answer.findings) {
        m_findings = std::move(*answer.findings);
        m_cautions = std::move(answer.cautions);
    }
    Q_EMIT predictionChanged();
}

}  // namespace tapward::app
