// SPDX-License-Identifier: GPL-3.0-or-later
#include "panels/stop_page.h"

#include <QHBoxLayout>
#include <QLabel>
#include <QPushButton>
#include <QVBoxLayout>

#include "look/spacing.h"
#include "panels/safety_table.h"
#include "panels/say.h"

namespace tapward::app {

namespace {

QString sayKind(study::StopKind kind)
{
    switch (kind) {
    case study::StopKind::Volume:
        return StopPage::tr("By volume");
    case study::StopKind::Time:
        return StopPage::tr("By time");
    case study::StopKind::Temperature:
        return StopPage::tr("By temperature");
    case study::StopKind::VolumeOrTemperature:
        return StopPage::tr("By volume or temperature");
    }
    return {};
}

/// What sets the stop in the drawing; no steps when the drawing has it already.
document::Edit setStop(const document::Drawing& drawing, const study::StopChoice& choice)
{
    document::Edit edit{Message("Set the suggested stop"), {}};
    for (const auto& part : study::withStop(drawing, choice).parts)
        if (const auto* now = drawing.find(part.id); now && *now != part)
            edit.steps.emplace_back(document::ChangePart{part});
    return edit;
}

}  // namespace

QString sayStop(const study::StopChoice& choice, UnitSystem units)
{
    if (!choice.notPossible.empty())
        return sayMessage(choice.notPossible, units);
    QStringList stops;
    if (choice.volume_m3)
        stops << sayMeasure(*choice.volume_m3, Quantity::Volume, units);
    if (choice.time_s)
        stops << sayMeasure(*choice.time_s, Quantity::Time, units);
    if (choice.temperature_C)
        stops << sayMeasure(*choice.temperature_C, Quantity::Temperature, units);
    return stops.size() == 2 ? StopPage::tr("%1 or %2, whichever comes first").arg(stops[0], stops[1])
                             : stops.join(QLatin1Char(' '));
}

StopPage::StopPage(Session& session, const StudyWorker& worker)
    : SafetyPage(session, worker), m_summary(new QLabel), m_use(new QPushButton(tr("Use This Stop"))),
      m_table(new SafetyTable(tr("Stops that were weighed")))
{
    m_summary->setWordWrap(true);
    m_summary->setTextInteractionFlags(Qt::TextSelectableByMouse);
    m_use->setMinimumHeight(24);
    m_use->setToolTip(tr("Set the controller in the drawing to the stop chosen in the table; undo takes it back"));
    auto* bar = new QHBoxLayout;
    bar->setContentsMargins(look::kNext, look::kNear, look::kNext, 0);
    bar->addWidget(m_summary, 1);
    bar->addWidget(m_use, 0, Qt::AlignTop);
    auto* all = new QVBoxLayout(this);
    all->setContentsMargins(0, 0, 0, 0);
    all->setSpacing(look::kNear);
    all->addLayout(bar);
    all->addWidget(m_table, 1);
    connect(m_use, &QPushButton::clicked, this, &StopPage::use);
    connect(m_table, &QTableWidget::itemSelectionChanged, this,
            [this] { m_use->setEnabled(chosen() != nullptr && !isStale()); });
}

const study::StopChoice* StopPage::chosen() const
{
    const auto& slot = m_worker.answers().stop;
    const int row = m_table->chosenRow();
    if (!slot || !slot->answer || row < 0 || row >= static_cast<int>(slot->answer->choices.size()))
        return nullptr;
    const auto& choice = slot->answer->choices[static_cast<std::size_t>(row)];
    return choice.notPossible.empty() ? &choice : nullptr;
}

void StopPage::use()
{
    const auto* choice = chosen();
    if (!choice || isStale())
        return;
    auto edit = setStop(m_session.drawing(), *choice);
    if (edit.steps.empty()) {
        m_summary->setText(tr("The drawing has this stop already."));
        return;
    }
    if (const auto refused = m_session.perform(std::move(edit)))
        m_summary->setText(sayProblem(*refused, m_session.units()));
}

void StopPage::refresh()
{
    const auto& slot = m_worker.answers().stop;
    if (!slot)
        return;
    const UnitSystem units = m_session.units();
    m_table->setVisible(slot->answer.has_value());
    m_use->setVisible(slot->answer.has_value());
    if (!slot->answer) {
        m_summary->setText(sayProblem(slot->answer.error(), units));
        return;
    }
    const study::StopStudy& study = *slot->answer;
    const auto share = [units](double value) { return sayMeasure(value, Quantity::Percent, units); };
    QStringList lines;
    if (const auto* best = study.best())
        lines << tr("Suggested: %1. It brings %2 to the tap and keeps every limit in %3 of %4 samples of what is not "
                    "known (give or take %5).")
                     .arg(sayStop(*best, units), sayMeasure(study.target_C, Quantity::Temperature, units),
                          share(best->both))
                     .arg(study.samples)
                     .arg(share(best->bothError));
    if (!study.reason.empty())
        lines << sayMessage(study.reason, units);
    if (study.possibleTarget_C)
        lines << tr("With %1 asked for at the tap there would be one, or with a return line of its own.")
                     .arg(sayMeasure(*study.possibleTarget_C, Quantity::Temperature, units));
    lines << tr("The heater lights in %1 of the samples. Asked of the case \"%2\".")
                 .arg(share(study.lights), plain(study.caseName));
    if (study.confirmed > 0)
        lines << tr("Tried again on %1 fresh samples: target and limits kept in %2, hottest at the tap %3.")
                     .arg(study.confirmed)
                     .arg(share(study.confirmedBoth),
                          sayMeasure(study.confirmedWorstTap_C, Quantity::Temperature, units));
    m_summary->setText(lines.join(QLatin1Char('\n')));
    std::vector<std::vector<SafetyCell>> rows;
    for (std::size_t i = 0; i < study.choices.size(); ++i) {
        const auto& choice = study.choices[i];
        SafetyCell kind(sayKind(choice.kind));
        if (static_cast<int>(i) == study.suggested)
            kind.text = tr("%1 (suggested)").arg(kind.text);
        if (!choice.notPossible.empty()) {
            rows.push_back({kind, sayStop(choice, units)});
            continue;
        }
        rows.push_back({kind, sayStop(choice, units), SafetyCell::measure(choice.both, Quantity::Percent, units),
                        SafetyCell::measure(choice.reaches, Quantity::Percent, units),
                        SafetyCell::measure(choice.keeps, Quantity::Percent, units),
                        SafetyCell::measure(choice.tapMiddle_C, Quantity::Temperature, units),
                        SafetyCell::measure(choice.worstTap_C, Quantity::Temperature, units),
                        SafetyCell::measure(choice.worstOvershoot_K, Quantity::TemperatureDifference, units),
                        SafetyCell::measure(choice.longestRun_s, Quantity::Time, units)});
    }
    m_table->fill({tr("Stop"), tr("Set at"), tr("Reaches and keeps"), tr("Reaches"), tr("Keeps limits"),
                   tr("At the tap, middle"), tr("At the tap, hottest"), tr("Worst over target"), tr("Longest run")},
                  rows);
    if (m_table->chosenRow() < 0 && study.suggested >= 0)
        m_table->chooseRow(study.suggested);
    m_use->setEnabled(chosen() != nullptr && !isStale());
}

}  // namespace tapward::app
