// SPDX-License-Identifier: GPL-3.0-or-later
#include "panels/wiring_page.h"

#include <limits>
#include <QLabel>
#include <QScrollArea>
#include <QSplitter>
#include <QVBoxLayout>

#include "look/spacing.h"
#include "panels/icons.h"
#include "panels/safety_table.h"
#include "panels/say.h"

namespace tapward::app {

WiringPage::WiringPage(Session& session, const StudyWorker& worker)
    : SafetyPage(session, worker), m_summary(new QLabel), m_loads(new SafetyTable(tr("Volts at every load"))),
      m_branches(new SafetyTable(tr("Fuses and what hangs on them")))
{
    m_summary->setWordWrap(true);
    m_summary->setTextInteractionFlags(Qt::TextSelectableByMouse);
    m_summary->setContentsMargins(look::kNext, look::kNear, look::kNext, 0);
    m_summary->setAlignment(Qt::AlignTop | Qt::AlignLeft);
    auto* words = new QScrollArea;
    words->setWidgetResizable(true);
    words->setFrameShape(QFrame::NoFrame);
    words->setWidget(m_summary);
    words->setAccessibleName(tr("Wiring in words"));
    auto* tables = new QSplitter(Qt::Vertical);
    tables->setChildrenCollapsible(false);
    tables->addWidget(m_loads);
    tables->addWidget(m_branches);
    auto* split = new QSplitter(Qt::Horizontal);
    split->setChildrenCollapsible(false);
    split->addWidget(tables);
    split->addWidget(words);
    split->setStretchFactor(0, 3);
    split->setStretchFactor(1, 1);
    split->setSizes({2400, 1000});  // shares: without them the words keep a sliver
    words->setMinimumWidth(fontMetrics().averageCharWidth() * 24);
    auto* all = new QVBoxLayout(this);
    all->setContentsMargins(0, 0, 0, 0);
    all->addWidget(split, 1);
    const auto jump = [this](document::PartId part) {
        if (!m_session.drawing().find(part))
            return;
        m_session.select({part});
        m_session.requestJump(part);
    };
    connect(m_loads, &SafetyTable::rowOpened, this, [this, jump](int row) {
        const auto& slot = m_worker.answers().wiring;
        if (slot && slot->answer && row >= 0)
            jump(slot->answer->loads.at(static_cast<std::size_t>(row)).part);
    });
    connect(m_branches, &SafetyTable::rowOpened, this, [this, jump](int row) {
        const auto& slot = m_worker.answers().wiring;
        if (slot && slot->answer && row >= 0)
            jump(slot->answer->branches.at(static_cast<std::size_t>(row)).fuse);
    });
}

void WiringPage::refresh()
{
    const auto& slot = m_worker.answers().wiring;
    if (!slot)
        return;
    const UnitSystem units = m_session.units();
    m_loads->setVisible(slot->answer.has_value());
    m_branches->setVisible(slot->answer.has_value());
    if (!slot->answer) {
        m_summary->setText(sayProblem(slot->answer.error(), units));
        return;
    }
    const study::WiringStudy& study = *slot->answer;
    const auto volts = [units](double v) { return SafetyCell::measure(v, Quantity::Voltage, units); };
    const auto amps = [units](double a) { return SafetyCell::measure(a, Quantity::Current, units); };
    const auto gauge = [](std::optional<int> awg, bool known, const QString& none) {
        SafetyCell cell(!known ? tr("length not known") : awg ? tr("AWG %1").arg(*awg) : none);
        if (known && awg)
            cell.order = *awg;
        return cell;
    };
    const auto part = [&](document::PartId id) {
        const auto* one = slot->drawing->find(id);
        return one ? sayPart(*one) : tr("No fuse drawn");
    };
    std::vector<std::vector<SafetyCell>> rows;
    for (const auto& load : study.loads) {
        SafetyCell works(!load.works      ? tr("Too few volts")
                         : !load.starts   ? tr("Does not start with the pumps")
                         : !load.worksLow ? tr("Fails at 10.5 V")
                                          : tr("Works"));
        if (!load.works || !load.starts)
            works.weight = review::Severity::Danger;
        else if (!load.worksLow)
            works.weight = review::Severity::Caution;
        rows.push_back({part(load.part), works, volts(load.volts), volts(load.startVolts), volts(load.lowVolts),
                        amps(load.current_A), tr("AWG %1").arg(load.gauge),
                        SafetyCell::measure(load.length_m > 0 ? std::optional(load.warmDropShare) : std::nullopt,
                                            Quantity::Percent, units),
                        gauge(load.gaugeFor3Percent, load.length_m > 0, tr("thicker than AWG 2")),
                        gauge(load.gaugeFor10Percent, load.length_m > 0, tr("thicker than AWG 2")),
                        gauge(load.gaugeForHeat, true, tr("thicker than AWG 10"))});
    }
    m_loads->fill({tr("Load"), tr("State"), tr("Running"), tr("Starting"), tr("Battery at 10.5 V"), tr("Current"),
                   tr("Wire"), tr("Drop, warm"), tr("For 3 %"), tr("For 10 %"), tr("For its heat")},
                  rows);
    rows.clear();
    for (const auto& branch : study.branches) {
        QStringList loads;
        for (const auto id : branch.loads)
            loads << sayTag(*slot->drawing, id);
        SafetyCell state(branch.fuseAboveWire    ? tr("Fuse above its wire")
                         : branch.socketExceeded ? tr("Socket exceeded")
                         : branch.fuseBelowLoad  ? tr("Fuse too small for its load")
                         : branch.spare_A < 0    ? tr("Over its capacity")
                         : branch.rating_A <= 0  ? tr("No fuse")
                                                 : tr("In order"));
        if (branch.fuseAboveWire)
            state.weight = review::Severity::Danger;
        else if (branch.socketExceeded || branch.fuseBelowLoad || branch.spare_A < 0 || branch.rating_A <= 0)
            state.weight = review::Severity::Caution;
        rows.push_back({part(branch.fuse), state, loads.join(QStringLiteral(", ")),
                        amps(branch.rating_A > 0 ? branch.rating_A : std::numeric_limits<double>::quiet_NaN()),
                        SafetyCell::measure(branch.wireLimit_A, Quantity::Current, units), amps(branch.steady_A),
                        amps(branch.other_A), amps(branch.inrush_A),
                        amps(branch.rating_A > 0 ? branch.spare_A : std::numeric_limits<double>::quiet_NaN())});
    }
    m_branches->fill({tr("Fuse"), tr("State"), tr("Loads"), tr("Rating"), tr("Most for its wire"), tr("Steady"),
                      tr("Others"), tr("Inrush"), tr("Spare")},
                     rows);
    QStringList lines;
    for (const auto& message : study.cautions)
        lines << tr("%1: %2").arg(look::severityWord(review::Severity::Caution), sayMessage(message, units));
    lines << tr("Battery posts %1 at %2 in a run.")
                 .arg(sayMeasure(study.posts_V, Quantity::Voltage, units),
                      sayMeasure(study.total_A, Quantity::Current, units));
    for (const auto& one : study.voltages) {
        const QString flow = one.flow_m3s ? sayMeasure(*one.flow_m3s, Quantity::Flow, units) : tr("no flow");
        lines << (one.margin ? tr("At %1: loop %2, %3 of the flow the heater needs.")
                                   .arg(sayMeasure(one.battery_V, Quantity::Voltage, units), flow,
                                        sayMeasure(*one.margin, Quantity::Percent, units))
                             : tr("At %1: loop %2.").arg(sayMeasure(one.battery_V, Quantity::Voltage, units), flow));
        if (!one.heaterWorks)
            lines << tr("At %1 the heater's board has too few volts.")
                         .arg(sayMeasure(one.battery_V, Quantity::Voltage, units));
    }
    lines << tr("A press takes %1 (%2), a day with %3 presses %4.")
                 .arg(sayMeasure(study.perPress_C, Quantity::Charge, units),
                      sayMeasure(study.perPress_J, Quantity::ElectricEnergy, units))
                 .arg(study.pressesPerDay)
                 .arg(sayMeasure(study.perDay_C, Quantity::Charge, units));
    if (!study.pressNote.empty())
        lines << sayMessage(study.pressNote, units);
    if (study.capacityShare)
        lines << tr("That is %1 of the battery a day.").arg(sayMeasure(*study.capacityShare, Quantity::Percent, units));
    lines << tr("Yardsticks only: the code in force and the makers' instructions govern. Isolate the battery before "
                "work; fuse at the source end.");
    m_summary->setText(lines.join(QLatin1Char('\n')));
}

}  // namespace tapward::app
