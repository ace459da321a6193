// SPDX-License-Identifier: GPL-3.0-or-later
#include "panels/winter_page.h"

#include <QLabel>
#include <QScrollArea>
#include <QSplitter>
#include <QVBoxLayout>

#include "look/spacing.h"
#include "panels/icons.h"
#include "panels/safety_table.h"
#include "panels/say.h"

namespace tapward::app {

WinterPage::WinterPage(Session& session, const StudyWorker& worker)
    : SafetyPage(session, worker), m_problem(new QLabel), m_cautions(new QLabel),
      m_steps(new SafetyTable(tr("Winterizing, step by step"))),
      m_places(new SafetyTable(tr("What empties and what stays full")))
{
    m_problem->setWordWrap(true);
    m_problem->setContentsMargins(look::kNext, look::kNear, look::kNext, 0);
    m_cautions->setWordWrap(true);
    m_cautions->setTextInteractionFlags(Qt::TextSelectableByMouse);
    m_cautions->setContentsMargins(look::kNext, look::kNear, look::kNext, look::kNear);
    m_cautions->setAlignment(Qt::AlignTop | Qt::AlignLeft);
    auto* words = new QScrollArea;
    words->setWidgetResizable(true);
    words->setFrameShape(QFrame::NoFrame);
    words->setWidget(m_cautions);
    words->setAccessibleName(tr("Standing cautions"));
    auto* right = new QSplitter(Qt::Vertical);
    right->setChildrenCollapsible(false);
    right->addWidget(m_places);
    right->addWidget(words);
    right->setSizes({1000, 1000});  // shares
    auto* split = new QSplitter(Qt::Horizontal);
    split->setChildrenCollapsible(false);
    split->addWidget(m_steps);
    split->addWidget(right);
    split->setSizes({1000, 1000});
    auto* all = new QVBoxLayout(this);
    all->setContentsMargins(0, 0, 0, 0);
    all->setSpacing(look::kNear);
    all->addWidget(m_problem);
    all->addWidget(split, 1);
    const auto opens = [this](const std::vector<std::vector<document::PartId>>& parts) {
        return [this, &parts](int row) {
            if (row >= 0 && row < static_cast<int>(parts.size()))
                showParts(parts[static_cast<std::size_t>(row)]);
        };
    };
    connect(m_steps, &SafetyTable::rowOpened, this, opens(m_stepParts));
    connect(m_places, &SafetyTable::rowOpened, this, opens(m_placeParts));
    connect(&session, &Session::predictionChanged, m_catchUp, &CatchUp::later);
}

QString WinterPage::cautions()
{
    m_catchUp->now();
    return m_cautions->text();
}

void WinterPage::showParts(const std::vector<document::PartId>& parts)
{
    m_session.select(parts);  // those that are gone are left out
    if (const auto chosen = m_session.selection(); !chosen.empty())
        m_session.requestJump(chosen.front());
}

void WinterPage::refresh()
{
    const auto& slot = m_worker.answers().winter;
    if (!slot)
        return;
    const UnitSystem units = m_session.units();
    QStringList lines;
    for (const auto& message : m_session.cautions())
        lines << tr("%1: %2").arg(look::severityWord(review::Severity::Caution), sayMessage(message, units));
    m_cautions->setText(lines.join(QLatin1Char('\n')));
    m_stepParts.clear();
    m_placeParts.clear();
    const bool answered = slot->answer.has_value();
    m_problem->setVisible(!answered);
    m_steps->setVisible(answered);
    m_places->setVisible(answered);
    if (!answered) {
        m_problem->setText(sayProblem(slot->answer.error(), units));
        return;
    }
    const review::WinterPlan& plan = *slot->answer;
    std::vector<std::vector<SafetyCell>> rows;
    for (const auto& step : plan.steps) {
        SafetyCell number(QString::number(rows.size() + 1));
        number.order = static_cast<int>(rows.size());
        number.number = true;
        rows.push_back({number, sayMessage(step.text, units)});
        m_stepParts.push_back(step.parts);
    }
    m_steps->fill({tr("No."), tr("Step")}, rows);

    rows.clear();
    const auto tags = [&](const std::vector<document::PartId>& ids) {
        return plain(review::tagsInRuns(*slot->drawing, ids));
    };
    // Segments first: they are what can burst.
    for (const auto& segment : plan.full) {
        SafetyCell state(tr("Stays full"));
        state.weight = review::Severity::Caution;
        const QString how = segment.loopClearsIt ? tr("Only running the loop clears it: air and open taps do not.")
                            : segment.valvesClearIt
                                ? tr("Drains or blows out only with %1 open.").arg(tags(segment.valves))
                                : tr("Neither drains nor blows out: open a joint or fit a drain at %1.")
                                      .arg(sayTag(*slot->drawing, segment.lowest));
        rows.push_back(
            {state, tags(segment.parts), SafetyCell::measure(segment.volume_m3, Quantity::Volume, units), how});
        m_placeParts.push_back(segment.parts);
    }
    const auto group = [&](const std::vector<document::PartId>& parts, const QString& state, const QString& how) {
        if (parts.empty())
            return;
        rows.push_back({state, tags(parts), SafetyCell(), how});
        m_placeParts.push_back(parts);
    };
    group(plan.drained, tr("Empties"), tr("By its height, with taps and drains open."));
    group(plan.cleared, tr("Cleared"), tr("By air or antifreeze, one tap at a time."));
    group(plan.drains, tr("Low-point drain"), tr("Open it first."));
    m_places->fill({tr("State"), tr("Parts"), tr("Water"), tr("How")}, rows);
}

}  // namespace tapward::app
