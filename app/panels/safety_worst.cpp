// SPDX-License-Identifier: GPL-3.0-or-later
#include "panels/safety_worst.h"

#include <QHBoxLayout>
#include <QLabel>
#include <QPushButton>
#include <QVBoxLayout>

#include "look/spacing.h"
#include "panels/safety_table.h"
#include "panels/safety_words.h"
#include "panels/say.h"
#include "review/heat_weight.h"

namespace tapward::app {

SafetyWorstPage::SafetyWorstPage(Session& session, const StudyWorker& worker)
    : SafetyPage(session, worker), m_wait(new QLabel), m_show(new QPushButton(tr("Show on Drawing"))),
      m_table(new SafetyTable(tr("Hottest water at every place")))
{
    m_wait->setWordWrap(true);
    m_wait->setTextInteractionFlags(Qt::TextSelectableByMouse);
    m_show->setToolTip(tr("Show this script on the drawing, at its hottest moment"));
    m_show->setMinimumHeight(24);
    auto* bar = new QHBoxLayout;
    bar->setContentsMargins(look::kNext, look::kNear, look::kNext, 0);
    bar->addWidget(m_wait, 1);
    bar->addWidget(m_show, 0, Qt::AlignTop);
    auto* all = new QVBoxLayout(this);
    all->setContentsMargins(0, 0, 0, 0);
    all->setSpacing(look::kNear);
    all->addLayout(bar);
    all->addWidget(m_table, 1);
    connect(m_table, &SafetyTable::rowOpened, this, &SafetyWorstPage::open);
    connect(m_show, &QPushButton::clicked, this, [this] { open(m_table->chosenRow()); });
    connect(m_table, &QTableWidget::itemSelectionChanged, this,
            [this] { m_show->setEnabled(m_table->chosenRow() >= 0 && !isStale()); });
}

void SafetyWorstPage::open(int row)
{
    const auto& slot = m_worker.answers().presses;
    // A script of an older drawing may speak of parts that are gone.
    if (!slot || !slot->answer || isStale() || row < 0 || row >= static_cast<int>(slot->answer->worst.size()))
        return;
    const auto worst = slot->answer->worst[static_cast<std::size_t>(row)];
    m_session.select({worst.part});
    Q_EMIT scriptWanted(worst.script, worst.at_s);
}

QString SafetyWorstPage::waitText() const
{
    const auto& slot = m_worker.answers().presses;
    if (!slot || !slot->answer)
        return slot ? sayProblem(slot->answer.error(), m_session.units()) : QString();
    const UnitSystem units = m_session.units();
    QStringList lines;
    const auto say = [&](const QString& day, const std::optional<study::SafeWait>& wait) {
        if (!wait)
            return;
        const auto limit = [&](const QString& ask, std::optional<double> seconds, const Message& reason) {
            if (!seconds)
                return sayMessage(reason, units);
            return reason.empty() ? tr("%1: wait %2 between runs.").arg(ask, sayWait(*seconds))
                                  : sayMessage(reason, units);
        };
        lines << tr("%1: %2 %3")
                     .arg(day,
                          limit(tr("Outlets at most %1")
                                    .arg(sayMeasure(study::kOutletLimit_C, Quantity::Temperature, units)),
                                wait->outlets_s, wait->outletsReason),
                          limit(tr("Cold line at most %1")
                                    .arg(sayMeasure(study::kColdEntryLimit_C, Quantity::Temperature, units)),
                                wait->coldEntry_s, wait->coldEntryReason));
    };
    say(tr("On the worst days"), slot->answer->wait);
    say(tr("On the day of the first case"), slot->answer->waitAsDrawn);
    return lines.join(QLatin1Char('\n'));
}

void SafetyWorstPage::refresh()
{
    const auto& slot = m_worker.answers().presses;
    if (!slot)
        return;
    m_wait->setText(waitText());
    m_table->setVisible(slot->answer.has_value());
    m_show->setVisible(slot->answer.has_value());
    if (!slot->answer)
        return;
    const UnitSystem units = m_session.units();
    std::vector<std::vector<SafetyCell>> rows;
    for (const auto& heat : slot->answer->worst) {
        const double yardstick_C = review::yardstick_C(heat.place);
        const QString limit = sayMeasure(yardstick_C, Quantity::Temperature, units);
        SafetyCell presses(QString::number(heat.presses));
        presses.order = heat.presses;
        presses.number = true;
        SafetyCell moment(sayClock(heat.at_s));
        moment.order = heat.at_s;
        moment.number = true;
        rows.push_back({SafetyCell::severity(review::heatSeverity(heat.place, heat.hottest_C)),
                        sayPlace(*slot->drawing, heat.place, heat.part),
                        SafetyCell::measure(heat.hottest_C, Quantity::Temperature, units), sayBurnAdult(heat.hottest_C),
                        sayBurnChild(heat.hottest_C),
                        heat.hottest_C > yardstick_C ? tr("over %1").arg(limit) : tr("within %1").arg(limit), presses,
                        moment});
    }
    m_table->fill({tr("Severity"), tr("Place"), tr("Hottest"), tr("Burns an adult in"), tr("Burns a child in"),
                   tr("Yardstick"), tr("Presses"), tr("At")},
                  rows);
    m_table->setProperty("stale", isStale());
    m_show->setEnabled(m_table->chosenRow() >= 0 && !isStale());
}

}  // namespace tapward::app
