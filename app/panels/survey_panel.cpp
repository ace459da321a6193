// SPDX-License-Identifier: GPL-3.0-or-later
#include "panels/survey_panel.h"

#include <QHBoxLayout>
#include <QLabel>
#include <QLineEdit>
#include <QPushButton>
#include <QStackedWidget>
#include <QTabBar>
#include <QVBoxLayout>

#include "look/spacing.h"
#include "panels/flow_layout.h"
#include "panels/quiet_combo.h"
#include "panels/say.h"
#include "panels/survey_table.h"

namespace tapward::app {

using document::SurveySheet;

SurveyPanel::SurveyPanel(Session& session, QWidget* parent)
    : QWidget(parent), m_tabs(new QTabBar), m_stack(new QStackedWidget),
      m_runs(new SurveyTable(session, SurveySheet::Runs)), m_heights(new SurveyTable(session, SurveySheet::Heights)),
      m_filter(new QLineEdit), m_basis(new QuietCombo), m_complaint(new QLabel),
      m_show(new QPushButton(tr("Put It Right"))), m_discard(new QPushButton(tr("Discard")))
{
    setAccessibleName(tr("Survey"));
    m_tabs->addTab(tr("Runs"));
    m_tabs->addTab(tr("Heights and Flows"));
    m_tabs->setAccessibleName(tr("Survey sheet"));
    m_tabs->setDrawBase(false);
    m_tabs->setExpanding(false);
    m_stack->addWidget(m_runs);
    m_stack->addWidget(m_heights);
    m_filter->setPlaceholderText(tr("Show only rows with \u2026"));
    m_filter->setAccessibleName(tr("Filter the survey"));
    m_filter->setClearButtonEnabled(true);
    auto* basisLabel = new QLabel(tr("Typed values are"));
    basisLabel->setBuddy(m_basis);
    m_basis->setAccessibleName(basisLabel->text());
    m_basis->addItem(tr("As before"), -1);
    for (const auto basis : {parts::Basis::Measured, parts::Basis::DataSheet, parts::Basis::Estimated})
        m_basis->addItem(sayBasis(basis), static_cast<int>(basis));
    m_basis->setToolTip(tr("Where the values come from that are typed or pasted now"));
    m_complaint->setWordWrap(true);
    m_complaint->setObjectName(QStringLiteral("complaint"));
    m_complaint->setTextInteractionFlags(Qt::TextSelectableByMouse);
    m_show->setToolTip(tr("Go to the first text that was not taken"));
    m_discard->setAccessibleName(tr("Discard texts that were not taken"));
    m_discard->setToolTip(m_discard->accessibleName());

    m_filter->setToolTip(m_filter->placeholderText());
    auto* top = new FlowLayout;
    top->addWidget(m_tabs);
    top->addWidget(m_filter);
    top->addWidget(basisLabel);
    top->addWidget(m_basis);
    auto* bottom = new QHBoxLayout;
    bottom->addWidget(m_complaint, 1);
    bottom->addWidget(m_show);
    bottom->addWidget(m_discard);
    auto* all = new QVBoxLayout(this);
    all->setContentsMargins(look::kNear, look::kNear, look::kNear, look::kNear);
    all->setSpacing(look::kNear);
    all->addLayout(top);
    all->addWidget(m_stack, 1);
    all->addLayout(bottom);

    connect(m_tabs, &QTabBar::currentChanged, this, [this](int index) {
        m_stack->setCurrentIndex(index);
        refreshComplaint({});
    });
    connect(m_filter, &QLineEdit::textChanged, this, [this](const QString& text) {
        m_runs->filter(text);
        m_heights->filter(text);
    });
    connect(m_basis, &QComboBox::currentIndexChanged, this, [this] {
        const int chosen = m_basis->currentData().toInt();
        const auto basis = chosen < 0 ? std::nullopt : std::optional(static_cast<parts::Basis>(chosen));
        m_runs->survey().setBasis(basis);
        m_heights->survey().setBasis(basis);
    });
    for (auto* table : {m_runs, m_heights}) {
        connect(&table->survey(), &SurveyModel::said, this, &SurveyPanel::refreshComplaint);
        connect(&table->survey(), &SurveyModel::refusedChanged, this,
                [this] { refreshComplaint(m_complaint->text()); });
    }
    connect(m_show, &QPushButton::clicked, this, [this] { shownTable().showRefused(); });
    connect(m_discard, &QPushButton::clicked, this, [this] { shownTable().survey().discardRefused(); });
    refreshComplaint({});
}

SurveyTable& SurveyPanel::table(SurveySheet sheet) { return sheet == SurveySheet::Runs ? *m_runs : *m_heights; }

SurveyTable& SurveyPanel::shownTable() { return m_tabs->currentIndex() == 0 ? *m_runs : *m_heights; }

void SurveyPanel::showSheet(SurveySheet sheet) { m_tabs->setCurrentIndex(sheet == SurveySheet::Runs ? 0 : 1); }

void SurveyPanel::refreshComplaint(const QString& text)
{
    const bool refused = shownTable().survey().refusedCount() > 0;
    m_show->setVisible(refused);
    m_discard->setVisible(refused);
    QString words = text;
    if (words.isEmpty() && refused)
        words = tr("%n text(s) were not taken; the cells keep them.", nullptr,
                   static_cast<int>(shownTable().survey().refusedCount()));
    m_complaint->setVisible(!words.isEmpty());
    if (!words.isEmpty() && !words.startsWith(QChar(0x25B2)))
        words = QStringLiteral("\u25B2 %1").arg(words);
    m_complaint->setText(words);
}

}  // namespace tapward::app
