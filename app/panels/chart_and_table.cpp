// SPDX-License-Identifier: GPL-3.0-or-later
#include <QHBoxLayout>
#include <QStackedWidget>
#include <QVBoxLayout>

#include "look/spacing.h"
#include "panels/choice_button.h"
#include "panels/safety_plot.h"
#include "panels/safety_table.h"

namespace tapward::app {

ChartAndTable::ChartAndTable(const QString& name, QWidget* beside, QWidget* parent)
    : QWidget(parent), m_plot(new SafetyPlot(name)), m_table(new SafetyTable(tr("%1, as a table").arg(name))),
      m_stack(new QStackedWidget), m_asTable(new ChoiceButton)
{
    m_asTable->setText(tr("Table"));
    m_asTable->setCheckable(true);
    m_asTable->setAccessibleName(tr("%1 as a table").arg(name));
    m_asTable->setToolTip(tr("Show the same figures as a table"));
    m_asTable->setMinimumHeight(24);
    m_stack->addWidget(m_plot);
    m_stack->addWidget(m_table);
    auto* bar = new QHBoxLayout;
    bar->setContentsMargins(look::kNext, look::kNear, look::kNext, 0);
    if (beside)
        bar->addWidget(beside, 1);
    else
        bar->addStretch(1);
    bar->addWidget(m_asTable, 0, Qt::AlignTop);
    auto* all = new QVBoxLayout(this);
    all->setContentsMargins(0, 0, 0, 0);
    all->setSpacing(look::kNear);
    all->addLayout(bar);
    all->addWidget(m_stack, 1);
    connect(m_asTable, &QToolButton::toggled, this, [this](bool on) { m_stack->setCurrentIndex(on ? 1 : 0); });
}

}  // namespace tapward::app
