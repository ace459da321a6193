// SPDX-License-Identifier: GPL-3.0-or-later
#include "panels/safety_protections.h"

#include <QHBoxLayout>
#include <QLabel>
#include <QPushButton>
#include <QVBoxLayout>

#include "look/spacing.h"
#include "panels/safety_table.h"
#include "panels/say.h"
#include "study/protection_switch.h"

namespace tapward::app {

SafetyProtectionsPage::SafetyProtectionsPage(Session& session, const StudyWorker& worker)
    : SafetyPage(session, worker), m_why(new QLabel), m_switch(new QPushButton(tr("Switch On"))),
      m_apply(new QPushButton(tr("Set All of These"))), m_needed(new QLabel),
      m_table(new SafetyTable(tr("Protections and what they do")))
{
    m_why->setWordWrap(true);
    m_why->setTextInteractionFlags(Qt::TextSelectableByMouse);
    m_switch->setMinimumHeight(24);
    m_switch->setToolTip(tr("Change the setting in the drawing and ask the studies again; undo takes it back"));
    auto* bar = new QHBoxLayout;
    bar->setContentsMargins(look::kNext, look::kNear, look::kNext, 0);
    bar->addWidget(m_why, 1);
    bar->addWidget(m_switch, 0, Qt::AlignTop);
    m_needed->setWordWrap(true);
    m_needed->setTextInteractionFlags(Qt::TextSelectableByMouse);
    m_apply->setMinimumHeight(24);
    m_apply->setToolTip(tr("Make these settings in the drawing, in one step that undo takes back"));
    auto* top = new QHBoxLayout;
    top->setContentsMargins(look::kNext, look::kNear, look::kNext, 0);
    top->addWidget(m_needed, 1);
    top->addWidget(m_apply, 0, Qt::AlignTop);
    auto* all = new QVBoxLayout(this);
    all->setContentsMargins(0, 0, 0, 0);
    all->setSpacing(look::kNear);
    all->addLayout(top);
    all->addLayout(bar);
    all->addWidget(m_table, 1);
    connect(m_table, &QTableWidget::itemSelectionChanged, this, &SafetyProtectionsPage::showChosen);
    connect(m_apply, &QPushButton::clicked, this, &SafetyProtectionsPage::applyNeeded);
    connect(m_switch, &QPushButton::clicked, this, &SafetyProtectionsPage::switchChosen);
}

bool SafetyProtectionsPage::hasAnswer() const
{
    const auto& safe = m_worker.answers().safe;
    return hasEffects() || (safe && safe->answer);
}

bool SafetyProtectionsPage::isStale() const
{
    const auto& answers = m_worker.answers();
    return m_worker.isStale(answers.presses) || m_worker.isStale(answers.safe);
}

bool SafetyProtectionsPage::hasEffects() const
{
    const auto& slot = m_worker.answers().presses;
    return slot && slot->answer && !slot->answer->protections.empty();
}

QString SafetyProtectionsPage::neededText() const
{
    const auto& slot = m_worker.answers().safe;
    const UnitSystem units = m_session.units();
    if (!slot)
        return tr("The fewest protections that keep the limits are still being looked for.");
    if (!slot->answer)
        return sayProblem(slot->answer.error(), units);
    const study::SafeSet& set = *slot->answer;
    if (set.keepsAsDrawn)
        return tr("As drawn, repeated presses keep every limit: nothing needs to be changed.");
    if (!set.isFound())
        return tr("No set of protections keeps every limit. %1").arg(sayMessage(set.reason, units));
    QStringList words;
    for (const auto& change : set.changes)
        if (!change.words.empty())
            words << sayMessage(change.words, units);
    return tr("These keep every limit, whoever presses how often: %1").arg(words.join(QLatin1Char(' ')));
}

void SafetyProtectionsPage::applyNeeded()
{
    const auto& slot = m_worker.answers().safe;
    if (!slot || !slot->answer || slot->answer->changes.empty() || m_worker.isStale(slot))
        return;
    if (const auto refused = m_session.perform(slot->answer->edit()))
        m_needed->setText(sayProblem(*refused, m_session.units()));
    else
        Q_EMIT studiesWanted();
}

const study::ProtectionEffect* SafetyProtectionsPage::chosen() const
{
    const int row = m_table->chosenRow();
    if (!hasEffects() || row < 0)
        return nullptr;
    const auto& effects = m_worker.answers().presses->answer->protections;
    return row < static_cast<int>(effects.size()) ? &effects[static_cast<std::size_t>(row)] : nullptr;
}

void SafetyProtectionsPage::refresh()
{
    if (!hasAnswer())
        return;
    const UnitSystem units = m_session.units();
    const auto& safe = m_worker.answers().safe;
    const bool applies = safe && safe->answer && !safe->answer->changes.empty();
    m_needed->setText(neededText());
    m_apply->setVisible(applies);
    m_apply->setEnabled(applies && !m_worker.isStale(safe));
    m_table->setVisible(hasEffects());
    m_why->setVisible(hasEffects());
    m_switch->setVisible(hasEffects());
    if (!hasEffects())
        return;
    const auto& study = *m_worker.answers().presses->answer;
    std::vector<std::vector<SafetyCell>> rows;
    for (const auto& effect : study.protections) {
        const auto both = [&](std::optional<double> drawn, std::optional<double> other) {
            SafetyCell cell;
            if (!drawn)
                return SafetyCell(QStringLiteral("\u2013"));
            const QString now = sayMeasure(*drawn, Quantity::Temperature, units);
            cell.text = effect.tried && other
                            ? tr("%1 \u2192 %2").arg(now, sayMeasure(*other, Quantity::Temperature, units))
                            : now;
            cell.order = effect.tried && other ? *other - *drawn : 0.0;
            cell.number = true;
            return cell;
        };
        SafetyCell state(effect.counted ? tr("On") : tr("Off"));
        if (!effect.counted)
            state.weight = review::Severity::Note;
        rows.push_back({say(study::title(effect.protection)), state, sayMessage(effect.note, units),
                        both(study.asDrawn.outlets_C, effect.other.outlets_C),
                        both(study.asDrawn.coldOutlets_C, effect.other.coldOutlets_C),
                        both(study.asDrawn.heaterOutlet_C, effect.other.heaterOutlet_C),
                        both(study.asDrawn.heaterInlet_C, effect.other.heaterInlet_C)});
    }
    m_table->fill({tr("Protection"), tr("In the drawing"), tr("Tried"), tr("Hot outlets"), tr("Cold outlets"),
                   tr("Heater outlet"), tr("Heater inlet")},
                  rows);
    showChosen();
}

void SafetyProtectionsPage::showChosen()
{
    const auto* effect = chosen();
    QString why = tr("The hottest water as drawn, and with the protection switched the other way.");
    bool can = false;
    if (effect) {
        const auto edit = study::switchProtection(m_session.drawing(), *effect);
        can = edit.has_value() && !isStale();
        if (!edit)
            why = sayProblem(edit.error(), m_session.units());
    }
    m_why->setText(why);
    m_switch->setText(effect && effect->counted ? tr("Switch Off") : tr("Switch On"));
    m_switch->setAccessibleName(effect ? tr("%1: %2").arg(m_switch->text(), say(study::title(effect->protection)))
                                       : m_switch->text());
    m_switch->setEnabled(can);
}

void SafetyProtectionsPage::switchChosen()
{
    const auto* effect = chosen();
    if (!effect || isStale())
        return;
    const auto refused = m_session.perform(study::switchProtection(m_session.drawing(), *effect));
    if (refused)
        m_why->setText(sayProblem(*refused, m_session.units()));
    else
        Q_EMIT studiesWanted();
}

}  // namespace tapward::app
