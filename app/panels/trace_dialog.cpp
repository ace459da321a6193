// SPDX-License-Identifier: GPL-3.0-or-later
#include "panels/trace_dialog.h"

#include <algorithm>
#include <QDialogButtonBox>
#include <QHeaderView>
#include <QLabel>
#include <QPushButton>
#include <QTableWidget>
#include <QVBoxLayout>

#include "panels/say.h"
#include "session/session.h"

namespace tapward::app {

TraceDialog::TraceDialog(Session& session, QWidget* parent)
    : QDialog(parent), m_session(session), m_table(new QTableWidget(0, 4)), m_complaint(new QLabel)
{
    setWindowTitle(tr("Lengths from the Floor Plan"));
    resize(fontMetrics().averageCharWidth() * 80, fontMetrics().height() * 22);
    const UnitSystem units = session.units();
    // What is selected, if a pipe is; else every pipe over a plan.
    std::vector<document::PartId> pipes = session.selection();
    std::erase_if(pipes, [&](auto id) { return !document::kindOf(*session.drawing().find(id)).isPipe; });
    m_lengths = document::tracedLengths(session.drawing(), pipes);

    auto* intro = new QLabel(
        m_lengths.empty()
            ? tr("No pipe lies wholly over a scaled floor plan, or all have these lengths already.")
            : tr("The drawn lines have these lengths over the plan, differences in height added. Tubes wander: a "
                 "measured length is better, and such lengths are not ticked."));
    intro->setWordWrap(true);
    m_table->setAccessibleName(tr("Proposed lengths"));
    m_table->setHorizontalHeaderLabels({tr("Pipe"), quantityHead(tr("From the plan"), Quantity::Length, units),
                                        quantityHead(tr("Now"), Quantity::Length, units), tr("Basis now")});
    m_table->verticalHeader()->hide();
    m_table->verticalHeader()->setDefaultSectionSize(std::max(24, fontMetrics().height() + 8));
    m_table->horizontalHeader()->setSectionResizeMode(QHeaderView::ResizeToContents);
    m_table->horizontalHeader()->setSectionResizeMode(0, QHeaderView::Stretch);
    m_table->setEditTriggers(QAbstractItemView::NoEditTriggers);
    m_table->setTabKeyNavigation(false);
    m_table->setRowCount(static_cast<int>(m_lengths.size()));
    for (int row = 0; row < m_table->rowCount(); ++row) {
        const auto& one = m_lengths[static_cast<std::size_t>(row)];
        const document::Part& pipe = *session.drawing().find(one.pipe);
        auto* tag = new QTableWidgetItem(plain(pipe.tag));
        tag->setFlags(tag->flags() | Qt::ItemIsUserCheckable);
        tag->setCheckState(one.better ? Qt::Unchecked : Qt::Checked);
        m_table->setItem(row, 0, tag);
        m_table->setItem(row, 1, new QTableWidgetItem(sayMeasure(one.traced_m, Quantity::Length, units)));
        m_table->setItem(row, 2, new QTableWidgetItem(sayMeasure(one.now_m, Quantity::Length, units)));
        m_table->setItem(row, 3, new QTableWidgetItem(sayBasis(document::values(pipe).basis("length_m"))));
    }
    m_complaint->setWordWrap(true);
    auto* buttons = new QDialogButtonBox(QDialogButtonBox::Ok | QDialogButtonBox::Cancel);
    m_take = buttons->button(QDialogButtonBox::Ok);
    m_take->setText(tr("Take Ticked as Estimates"));
    buttons->button(QDialogButtonBox::Cancel)->setText(tr("Cancel"));
    auto* all = new QVBoxLayout(this);
    for (QWidget* widget : std::initializer_list<QWidget*>{intro, m_table, m_complaint, buttons})
        all->addWidget(widget);
    connect(buttons, &QDialogButtonBox::accepted, this, &TraceDialog::accept);
    connect(buttons, &QDialogButtonBox::rejected, this, &TraceDialog::reject);
    connect(m_table, &QTableWidget::itemChanged, this, [this] { m_take->setEnabled(!ticked().empty()); });
    m_take->setEnabled(!ticked().empty());
}

std::vector<document::TracedLength> TraceDialog::ticked() const
{
    std::vector<document::TracedLength> chosen;
    for (int row = 0; row < m_table->rowCount(); ++row)
        if (m_table->item(row, 0)->checkState() == Qt::Checked)
            chosen.push_back(m_lengths[static_cast<std::size_t>(row)]);
    return chosen;
}

void TraceDialog::accept()
{
    if (const auto refused = m_session.perform(document::takeTraced(m_session.drawing(), ticked()))) {
        m_complaint->setText(QStringLiteral("\u25B2 %1").arg(sayProblem(*refused, m_session.units())));
        return;
    }
    QDialog::accept();
}

}  // namespace tapward::app
