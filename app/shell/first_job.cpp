// SPDX-License-Identifier: GPL-3.0-or-later
#include "shell/first_job.h"

#include <algorithm>
#include <functional>
#include <QAccessible>
#include <QEvent>
#include <QHBoxLayout>
#include <QLabel>
#include <QPushButton>
#include <QVBoxLayout>

#include "canvas/pipe_use.h"
#include "look/kind_text.h"
#include "look/spacing.h"
#include "parts/part_kind.h"
#include "session/session.h"

namespace tapward::app {

namespace {

using document::Drawing;
using document::Part;

bool hasKind(const Drawing& drawing, std::initializer_list<const char*> kinds)
{
    return std::ranges::any_of(drawing.parts,
                               [&](const Part& part) { return std::ranges::find(kinds, part.kind) != kinds.end(); });
}

/// Water reaches the heater, and hot water from it a tap that has cold water too.
bool isPlumbed(const Drawing& drawing)
{
    bool heated = false, tap = false;
    const auto traces = tracePipes(drawing);
    for (const Part& part : drawing.parts) {
        const auto carries = [&](const char* port, PipeUse use) {
            const Part* pipe = drawing.pipeAt(part.id, port);
            return pipe != nullptr && traces.at(pipe->id).use == use;
        };
        heated = heated || (carries("cold", PipeUse::Cold) && carries("hot", PipeUse::Hot));
        tap = tap
              || (carries("hot", PipeUse::Hot) && carries("cold", PipeUse::Cold) && part.kind != "tankless_heater"
                  && part.kind != "storage_heater");
    }
    return heated && tap;
}

/// The length of a hot pipe was measured.
bool isMeasured(const Drawing& drawing)
{
    return std::ranges::any_of(tracePipes(drawing), [&](const auto& trace) {
        const Part& pipe = *drawing.find(trace.first);
        const auto length = pipe.entries.find("length_m");
        return trace.second.use == PipeUse::Hot && length != pipe.entries.end()
               && length->second.basis == parts::Basis::Measured;
    });
}

/// What ends a run, as the controls are set.
parts::Entries stopsOf(const Drawing& drawing)
{
    parts::Entries stops;
    for (const Part& part : drawing.parts)
        for (const auto& [key, entry] : part.entries)
            if (part.kind == "controller" && key.starts_with("stop_"))
                stops[part.tag + key] = entry;
    return stops;
}

QString named(const char* kind) { return kindTitle(*parts::find(kind)); }

}  // namespace

struct FirstJob::Step {
    const char* id;
    const char* title;
    std::function<QString()> how;
    const char* pane;
    bool (*done)(const Session&);  ///< null: by what was looked at
};

const std::vector<FirstJob::Step>& FirstJob::steps()
{
    static const std::vector<Step> all{
        {"heater", QT_TR_NOOP("Heater"),
         [] {
             return tr("Click %1 in the parts list, then click in the middle of the drawing.")
                 .arg(named("tankless_heater"));
         },
         "tray",
         [](const Session& session) { return hasKind(session.drawing(), {"tankless_heater", "storage_heater"}); }},
        {"supply", QT_TR_NOOP("Water supply"),
         [] {
             return tr("Click %1 in the parts list, then click to the left of the heater. A coach that draws from its "
                       "tank "
                       "has %2 and %3 instead, or besides.")
                 .arg(named("city_inlet"), named("fresh_tank"), named("demand_pump"));
         },
         "tray", [](const Session& session) { return hasKind(session.drawing(), {"city_inlet", "demand_pump"}); }},
        {"tap", QT_TR_NOOP("Far tap"),
         [] {
             return tr("Click %1 in the parts list, then click far to the right: the tap that waits longest for warm "
                       "water.")
                 .arg(named("faucet"));
         },
         "tray", [](const Session& session) { return hasKind(session.drawing(), {"faucet", "shower"}); }},
        {"pipes", QT_TR_NOOP("Pipes"),
         [] {
             return tr(
                 "Drag from port to port: from the supply to the cold port of the heater, from its hot port to the "
                 "hot port of the tap. Then drag from the cold port of the tap onto the cold pipe: where a pipe "
                 "ends on another one, a tee comes by itself.");
         },
         "tray", [](const Session& session) { return isPlumbed(session.drawing()); }},
        {"lengths", QT_TR_NOOP("Lengths"),
         [] {
             return tr(
                 "Click the hot pipe and type its real length in Details, then say beside it that it was measured. "
                 "The drawing is not to scale; these lengths decide the answers.");
         },
         "details", [](const Session& session) { return isMeasured(session.drawing()); }},
        {"loop", QT_TR_NOOP("Loop"),
         [] {
             return tr(
                 "Click a preheat loop in the parts list, then drag from the hot pipe near the tap to the cold pipe "
                 "beside it. Pumps, valves and control come with it.");
         },
         "tray",
         [](const Session& session) {
             return std::ranges::any_of(session.drawing().parts, [](const Part& part) {
                 return part.kind == "circulator" && part.stage == document::Stage::Added;
             });
         }},
        {"answers", QT_TR_NOOP("Answers"),
         [] {
             return tr("Go to Loop (Alt+3) and read the predictions: does the heater light, when is the tap warm? "
                       "Drawing > Swap Variant tries another loop in the same place.");
         },
         "predictions", nullptr},
        {"stop", QT_TR_NOOP("Stop"),
         [] {
             return tr(
                 "Go to Safety (Alt+4): how hot does it get, and where should a run stop? Click the controller, press "
                 "Alt+Return and set its stop.");
         },
         "safety", nullptr},
        {"page", QT_TR_NOOP("Customer's page"),
         [] {
             return tr("File > Print Preview shows the page for the customer: diagram, answers, cautions and parts.");
         },
         "", nullptr},
    };
    return all;
}

FirstJob::FirstJob(Session& session, QWidget* parent)
    : QFrame(parent), m_session(session), m_ticks(new QLabel), m_title(new QLabel), m_how(new QLabel),
      m_there(new QPushButton(tr("Take Me There"))), m_skip(new QPushButton(tr("Skip This Step")))
{
    setAccessibleName(tr("First job, step by step"));
    setFrameShape(QFrame::StyledPanel);
    for (QLabel* label : {m_ticks, m_title, m_how}) {
        label->setTextFormat(Qt::PlainText);
        label->setWordWrap(true);
    }
    auto* close = new QPushButton(tr("Close Guide"));
    auto* top = new QHBoxLayout;
    top->addWidget(m_title, 1);
    for (QPushButton* button : {m_there, m_skip, close}) {
        button->setAutoDefault(false);
        top->addWidget(button);
    }
    auto* all = new QVBoxLayout(this);
    all->setContentsMargins(look::kNext, look::kNext, look::kNext, look::kNext);
    all->setSpacing(look::kNear);
    all->addLayout(top);
    all->addWidget(m_how);
    all->addWidget(m_ticks);
    connect(close, &QPushButton::clicked, this, &QWidget::hide);
    connect(m_there, &QPushButton::clicked, this,
            [this] { Q_EMIT paneWanted(QString::fromLatin1(steps()[static_cast<std::size_t>(m_at)].pane)); });
    connect(m_skip, &QPushButton::clicked, this, [this] {
        m_seen.past.insert(steps()[static_cast<std::size_t>(m_at)].id);
        follow();
    });
    connect(&session, &Session::changed, this, &FirstJob::follow);
    connect(&session, &Session::predictionChanged, this, &FirstJob::follow);
    hide();
}

void FirstJob::begin()
{
    m_seen.past.clear();
    m_seen.stopBefore.reset();
    m_at = 0;
    show();
    follow();
    refresh();
}

void FirstJob::carryOn(const FirstJob& before)
{
    m_seen = before.m_seen;
    setVisible(!before.isHidden());
    follow();
}

void FirstJob::sawArea(const QString& id)
{
    m_area = id;
    follow();
}

void FirstJob::sawPage()
{
    if (isHidden())
        return;
    m_seen.past.insert("page");
    follow();
}

bool FirstJob::isDone(const Step& step) const
{
    if (m_seen.past.contains(step.id))
        return true;
    if (step.id == std::string_view("stop"))
        return m_seen.stopBefore && stopsOf(m_session.drawing()) != *m_seen.stopBefore;
    return step.done != nullptr && step.done(m_session);
}

int FirstJob::stepCount() const { return static_cast<int>(steps().size()); }

int FirstJob::doneCount() const
{
    return static_cast<int>(std::ranges::count_if(steps(), [this](const Step& step) { return isDone(step); }));
}

QString FirstJob::stepTitle() const
{
    return m_at < stepCount() ? tr(steps()[static_cast<std::size_t>(m_at)].title) : QString();
}

void FirstJob::follow()
{
    if (isHidden())
        return;
    // What was looked at counts when there was an answer.
    const auto* known = m_session.prediction();
    if (m_area == QLatin1String("loop") && known != nullptr && known->loop.exists && !m_session.isStale())
        m_seen.past.insert("answers");
    const int before = m_at;
    const auto open = std::ranges::find_if_not(steps(), [this](const Step& step) { return isDone(step); });
    m_at = static_cast<int>(open - steps().begin());
    if (open != steps().end() && open->id == std::string_view("stop") && !m_seen.stopBefore)
        m_seen.stopBefore = stopsOf(m_session.drawing());
    refresh();
    if (m_at == before)
        return;
    QAccessibleEvent told(m_title, QAccessible::Alert);
    QAccessible::updateAccessibility(&told);
}

void FirstJob::refresh()
{
    QStringList ticks;
    for (const Step& step : steps())
        ticks << QStringLiteral("%1 %2").arg(isDone(step) ? QChar(0x2713) : QChar(0x25CB), tr(step.title));
    // A step stays on its line with its mark.
    for (QString& tick : ticks)
        tick.replace(QLatin1Char(' '), QChar(0x00A0));
    m_ticks->setText(ticks.join(QStringLiteral("   ")));
    const bool over = m_at >= stepCount();
    m_title->setText(over ? tr("First job: all %1 steps are done.").arg(stepCount())
                          : tr("First job, step %1 of %2: %3").arg(m_at + 1).arg(stepCount()).arg(stepTitle()));
    m_how->setText(over ? tr("The rest is measuring: fill in what the survey leaves open, and read the findings.")
                        : steps()[static_cast<std::size_t>(m_at)].how());
    m_skip->setVisible(!over);
    m_there->setVisible(!over && *steps()[static_cast<std::size_t>(m_at)].pane != '\0');
    m_title->setFont(look::strongFont(font()));
}

void FirstJob::changeEvent(QEvent* event)
{
    QFrame::changeEvent(event);
    if (event->type() == QEvent::FontChange)
        refresh();
}

}  // namespace tapward::app
