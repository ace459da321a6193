// SPDX-License-Identifier: GPL-3.0-or-later
#include "panels/safety_faults.h"

#include <algorithm>
#include <QHBoxLayout>
#include <QLabel>
#include <QPushButton>
#include <QVBoxLayout>

#include "look/spacing.h"
#include "panels/choice_button.h"
#include "panels/flow_layout.h"
#include "panels/quiet_combo.h"
#include "panels/safety_table.h"
#include "panels/say.h"
#include "review/fault_weight.h"
#include "study/fault_words.h"

namespace tapward::app {

namespace {

QString sayFault(const document::Drawing& drawing, document::PartId id, const std::string& fault)
{
    const auto* part = drawing.find(id);
    const auto* kind = part ? parts::find(part->kind) : nullptr;
    if (kind)
        for (const auto& one : kind->faults)
            if (one.id == fault)
                return say(one.title).section(QLatin1Char(':'), 0, 0);  // the reason stands in its own cell
    return plain(fault);
}

SafetyCell weightOf(const study::FaultRow& row)
{
    if (const auto severity = review::faultSeverity(row))
        return SafetyCell::severity(*severity);
    SafetyCell cell(SafetyFaultsPage::tr("Not run"));
    cell.order = 1.0;  // below the notes
    return cell;
}

}  // namespace

SafetyFaultsPage::SafetyFaultsPage(Session& session, StudyWorker& worker)
    : SafetyPage(session, worker), m_summary(new QLabel), m_filter(new QuietCombo), m_pairs(new ChoiceButton),
      m_show(new QPushButton(tr("Play on Drawing"))), m_table(new SafetyTable(tr("Faults and what they lead to")))
{
    m_summary->setWordWrap(true);
    m_summary->setTextInteractionFlags(Qt::TextSelectableByMouse);
    auto* shown = new QLabel(tr("Sho&w"));
    shown->setBuddy(m_filter);
    m_filter->addItem(tr("All faults"));
    m_filter->addItem(tr("Worse than the sound coach"));
    m_filter->addItem(tr("Not run"));
    m_filter->setToolTip(tr("Which faults the table shows"));
    m_filter->setMinimumContentsLength(18);
    m_pairs->setText(tr("Pairs of Faults Too"));
    m_pairs->setCheckable(true);
    m_pairs->setAccessibleName(m_pairs->text());
    m_pairs->setToolTip(tr("Ask again, also for a failed main stop or high limit together with each other fault"));
    m_show->setToolTip(tr("Open the worst case of this fault and play it on the drawing"));
    for (QWidget* widget : std::initializer_list<QWidget*>{m_filter, m_pairs, m_show})
        widget->setMinimumHeight(24);
    auto* choice = new QWidget;
    auto* words = new QHBoxLayout(choice);
    words->setContentsMargins(0, 0, 0, 0);
    words->addWidget(shown);
    words->addWidget(m_filter);
    auto* bar = new FlowLayout;
    bar->setContentsMargins(look::kNext, look::kNear, look::kNext, 0);
    for (QWidget* widget : std::initializer_list<QWidget*>{choice, m_pairs, m_show})
        bar->addWidget(widget);
    auto* all = new QVBoxLayout(this);
    all->setContentsMargins(0, 0, 0, 0);
    all->setSpacing(look::kNear);
    m_summary->setContentsMargins(look::kNext, look::kNear, look::kNext, 0);
    all->addWidget(m_summary);
    all->addLayout(bar);
    all->addWidget(m_table, 1);
    connect(m_filter, &QComboBox::currentIndexChanged, this, &SafetyFaultsPage::filter);
    connect(m_pairs, &QToolButton::clicked, this, [&worker](bool on) {
        auto questions = worker.questions();
        questions.faults.pairs = on;
        worker.setQuestions(std::move(questions));
        worker.startFaults();
    });
    connect(m_table, &SafetyTable::rowOpened, this, &SafetyFaultsPage::open);
    connect(m_show, &QPushButton::clicked, this, [this] { open(m_table->chosenRow()); });
    connect(m_table, &QTableWidget::itemSelectionChanged, this, &SafetyFaultsPage::refreshShow);
}

QString SafetyFaultsPage::summary() const { return m_summary->text(); }

const study::FaultRow* SafetyFaultsPage::rowAt(int row) const
{
    const auto& slot = m_worker.answers().faults;
    if (!slot || !slot->answer || row < 0 || row >= static_cast<int>(m_order.size()))
        return nullptr;
    return &slot->answer->rows.at(m_order[static_cast<std::size_t>(row)]);
}

void SafetyFaultsPage::open(int index)
{
    const auto* found = rowAt(index);
    // A script of an older drawing may speak of parts that are gone.
    if (!found || isStale())
        return;
    study::FaultRow row = *found;  // the answer may go while the case opens
    row.worst.name = study::caseTitle(m_session.drawing(), row);
    m_session.select(row.withPart == document::kNoPart ? std::vector{row.part} : std::vector{row.part, row.withPart});
    m_session.requestJump(row.part);
    if (row.run)
        Q_EMIT playWanted(row.worst);
}

void SafetyFaultsPage::filter()
{
    std::vector<bool> hidden;
    for (int i = 0; rowAt(i); ++i) {
        const auto& row = *rowAt(i);
        hidden.push_back((m_filter->currentIndex() == Worse && !review::worseThanSound(row))
                         || (m_filter->currentIndex() == NotRun && row.run));
    }
    m_table->hideRows(hidden);
}

void SafetyFaultsPage::refreshShow()
{
    const auto* row = rowAt(m_table->chosenRow());
    m_show->setEnabled(row && row->run && !isStale());
}

void SafetyFaultsPage::refresh()
{
    const auto& slot = m_worker.answers().faults;
    if (!slot)
        return;
    const UnitSystem units = m_session.units();
    const bool answered = slot->answer.has_value();
    for (QWidget* widget : std::initializer_list<QWidget*>{m_table, m_filter->parentWidget(), m_pairs, m_show})
        widget->setVisible(answered);
    m_order.clear();
    if (!answered) {
        m_summary->setText(sayProblem(slot->answer.error(), units));
        return;
    }
    const study::FaultsStudy& study = *slot->answer;
    m_order = review::worstFirst(study);
    std::vector<std::vector<SafetyCell>> rows;
    int worse = 0, notRun = 0;
    bool hasPairs = false;
    const auto named = [&](document::PartId part, const std::string& fault) {
        return tr("%1: %2").arg(sayTag(*slot->drawing, part), sayFault(*slot->drawing, part, fault));
    };
    for (const std::size_t index : m_order) {
        const auto& row = study.rows[index];
        worse += review::worseThanSound(row) ? 1 : 0;
        notRun += row.run ? 0 : 1;
        hasPairs = hasPairs || row.withPart != document::kNoPart;
        QString fault = named(row.part, row.fault);
        if (row.withPart != document::kNoPart)
            fault = tr("%1, and %2").arg(fault, named(row.withPart, row.withFault));
        if (!row.run) {
            rows.push_back({weightOf(row), fault, sayMessage(row.consequence, units)});
            continue;
        }
        QString who = sayMessage(row.who, units);
        if (row.harm != study::Harm::Nobody && row.harmsSoundToo)
            who += QLatin1Char(' ') + tr("Above the limit there in the sound coach too.");
        const auto heat = [units](std::optional<double> celsius) {
            return SafetyCell::measure(celsius, Quantity::Temperature, units);
        };
        rows.push_back({weightOf(row), fault, sayMessage(row.consequence, units), heat(row.hottest.heaterOutlet_C),
                        heat(row.hottest.outlets_C), heat(row.hottest.coldOutlets_C),
                        SafetyCell::measure(row.change_K, Quantity::TemperatureDifference, units), who,
                        sayMessage(row.shows, units), sayMessage(row.stops, units)});
    }
    m_table->fill({tr("Severity"), tr("Fault"), tr("What follows"), tr("Heater outlet"), tr("Hot outlets"),
                   tr("Cold outlets"), tr("Hotter by"), tr("Who could be hurt"), tr("What shows it"),
                   tr("What stops it")},
                  rows);
    filter();
    const auto warm = [units](std::optional<double> celsius) {
        return celsius ? sayMeasure(*celsius, Quantity::Temperature, units) : QStringLiteral("\u2013");
    };
    m_summary->setText(
        tr("%1 faults, each through %2 cases: %3 hurt somebody more than the sound coach does, %4 could not be run and "
           "say why. Without a fault: hot outlets up to %5, cold outlets %6, heater outlet %7.")
            .arg(study.rows.size())
            .arg(study.cases.size())
            .arg(worse)
            .arg(notRun)
            .arg(warm(study.sound.outlets_C), warm(study.sound.coldOutlets_C), warm(study.sound.heaterOutlet_C)));
    if (!m_worker.isRunning())
        m_pairs->setChecked(hasPairs || m_worker.questions().faults.pairs);
    refreshShow();
}

}  // namespace tapward::app
