// SPDX-License-Identifier: GPL-3.0-or-later
#include "panels/safety_protections.h"

#include <QHBoxLayout>
#include <QLabel>
#include <QPushButton>
#include <QVBoxLayout>

#include "panels/safety_table.h"
#include "panels/say.h"
#include "study/protection_switch.h"

namespace tapward::app {

SafetyProtectionsPage::SafetyProtectionsPage(Session& session, const StudyWorker& worker)
    : SafetyPage(session, worker), m_why(new QLabel), m_switch(new QPushButton(tr("Switch On"))),
      m_table(new SafetyTable(tr("Protections and what they do")))
{
    m_why->setWordWrap(true);
    m_why->setTextInteractionFlags(Qt::TextSelectableByMouse);
    m_switch->setMinimumHeight(24);
    m_switch->setToolTip(tr("Change the setting in the drawing and ask the studies again; undo takes it back"));
    auto* bar = new QHBoxLayout;
    bar->setContentsMargins(8, 2, 8, 0);
    bar->addWidget(m_why, 1);
    bar->addWidget(m_switch, 0, Qt::AlignTop);
    auto* all = new QVBoxLayout(this);
    all->setContentsMargins(0, 0, 0, 0);
    all->setSpacing(2);
    all->addLayout(bar);
    all->addWidget(m_table, 1);
    connect(m_table, &QTableWidget::itemSelectionChanged, this, &SafetyProtectionsPage::showChosen);
    connect(m_switch, &QPushButton::clicked, this, &SafetyProtectionsPage::switchChosen);
}

bool SafetyProtectionsPage::hasAnswer() const
{
    const auto& slot = m_worker.answers().presses;
    return slot && slot->answer && !slot->answer->protections.empty();
}

const study::ProtectionEffect* SafetyProtectionsPage::chosen() const
{
    const int row = m_table->chosenRow();
    if (!hasAnswer() || row < 0)
        return nullptr;
    const auto& effects = m_worker.answers().presses->answer->protections;
    return row < static_cast<int>(effects.size()) ? &effects[static_cast<std::size_t>(row)] : nullptr;
}

void SafetyProtectionsPage::refresh()
{
    if (!hasAnswer())
        return;
    const auto& study = *m_worker.answers().presses->answer;
    const UnitSystem units = m_session.units();
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
