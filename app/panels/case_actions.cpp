// SPDX-License-Identifier: GPL-3.0-or-later
#include "panels/case_actions.h"

#include <algorithm>
#include <QHeaderView>
#include <QLabel>
#include <QLineEdit>
#include <QTableWidgetItem>

#include "panels/case_words.h"
#include "panels/quiet_combo.h"
#include "panels/say.h"

namespace tapward::app {

using document::Action;
using document::ActionKind;
using document::Case;

CaseActions::CaseActions(Session& session, QWidget* parent) : QTableWidget(0, 5, parent), m_session(session)
{
    setAccessibleName(tr("Actions of the case"));
    verticalHeader()->hide();
    verticalHeader()->setDefaultSectionSize(QLineEdit().sizeHint().height() + 4);
    setTabKeyNavigation(false);
    setSelectionBehavior(QAbstractItemView::SelectRows);
    horizontalHeader()->setSectionResizeMode(QHeaderView::Stretch);
    horizontalHeader()->setSectionResizeMode(0, QHeaderView::Fixed);
    horizontalHeader()->resizeSection(0, fontMetrics().averageCharWidth() * 12);
    horizontalHeader()->setHighlightSections(false);
}

void CaseActions::showCase(const Case* one)
{
    // Cells are rebuilt with every change; the keyboard stays where it was.
    int row = currentRow(), column = currentColumn();
    for (int r = 0; r < rowCount(); ++r)
        for (int c = 0; c < columnCount(); ++c)
            if (QWidget* cell = cellWidget(r, c); cell && cell->hasFocus())
                row = r, column = c;
    const bool hadFocus = cellWidget(row, column) && cellWidget(row, column)->hasFocus();
    setHorizontalHeaderLabels({quantityHead(tr("At"), Quantity::Time, m_session.units()), tr("What"), tr("Part"),
                               tr("Opening or volts"), tr("Hot share or fault")});
    const int least = fontMetrics().averageCharWidth() * 12;
    horizontalHeader()->resizeSection(0, std::max(least, horizontalHeader()->sectionSizeHint(0)));
    for (int head = 0; head < columnCount(); ++head)
        horizontalHeaderItem(head)->setToolTip(horizontalHeaderItem(head)->text());
    setRowCount(0);
    if (one) {
        setRowCount(static_cast<int>(one->actions.size()));
        for (int r = 0; r < rowCount(); ++r)
            fillRow(r, one->actions[static_cast<std::size_t>(r)]);
    }
    if (row >= 0 && row < rowCount()) {
        setCurrentCell(row, std::max(0, column));
        if (QWidget* cell = cellWidget(row, std::max(0, column)); cell && hadFocus)
            cell->setFocus();
    }
}

ValueEdit* CaseActions::number(int row, int column, Quantity quantity, double value, const QString& name, double least,
                               double most, std::function<void(Action&, double)> set)
{
    auto* edit = new ValueEdit(quantity, m_session.units());
    edit->setValue(value);
    edit->setFrame(false);
    edit->setAccessibleName(tr("%1 of action %2").arg(name).arg(row + 1));
    edit->setCheck(inRange(least, most, quantity));
    // Queued: the change rebuilds the cells, this one among them.
    connect(
        edit, &ValueEdit::committed, this,
        [this, row, set](double si) { Q_EMIT actionChanged(row, [&](Action& a) { set(a, si); }); },
        Qt::QueuedConnection);
    connect(edit, &ValueEdit::complaint, this, &CaseActions::complaint);
    setCellWidget(row, column, edit);
    return edit;
}

QComboBox* CaseActions::combo(int row, int column, const QString& name)
{
    auto* box = new QuietCombo;
    box->setFrame(false);
    box->setAccessibleName(tr("%1 of action %2").arg(name).arg(row + 1));
    setCellWidget(row, column, box);
    // A combo box speaks its choice; its name comes from a label, which here need not be seen.
    auto* unseen = new QLabel(box->accessibleName(), box->parentWidget());
    unseen->setBuddy(box);
    unseen->hide();
    connect(box, &QObject::destroyed, unseen, &QObject::deleteLater);
    return box;
}

void CaseActions::fillWhat(int row, const Action& action)
{
    auto* what = combo(row, 1, tr("Kind"));
    for (const auto kind : actionKinds())
        what->addItem(sayAction(kind), int(kind));
    what->setCurrentIndex(what->findData(int(action.kind)));
    connect(
        what, &QComboBox::activated, this,
        [this, row, what](int i) {
            const auto kind = static_cast<ActionKind>(what->itemData(i).toInt());
            const auto fitting = fittingParts(m_session.drawing(), kind);
            Q_EMIT actionChanged(row, [&](Action& a) {
                a.kind = kind;
                if (!hasPart(kind))
                    a.part = document::kNoPart;
                else if (std::ranges::find(fitting, a.part) == fitting.end())
                    a.part = fitting.empty() ? document::kNoPart : fitting.front();
                a.value = kind == ActionKind::SetVoltage ? 12.6 : 1;
                a.second = -1;
                a.fault.clear();
                const auto* part = m_session.drawing().find(a.part);
                if ((kind == ActionKind::StartFault || kind == ActionKind::EndFault) && part)
                    a.fault = document::kindOf(*part).faults.front().id;
            });
        },
        Qt::QueuedConnection);
}

void CaseActions::fillWhich(int row, const Action& action)
{
    auto* which = combo(row, 2, tr("Part"));
    if (action.kind == ActionKind::PressButton)
        which->addItem(tr("Automatic"), 0);
    for (const auto id : fittingParts(m_session.drawing(), action.kind))
        which->addItem(sayWhere(*m_session.drawing().find(id)), id);
    which->setCurrentIndex(which->findData(action.part));
    connect(
        which, &QComboBox::activated, this,
        [this, row, which](int i) {
            const auto id = which->itemData(i).toInt();
            Q_EMIT actionChanged(row, [&](Action& a) {
                a.part = id;
                const auto* part = m_session.drawing().find(id);
                if ((a.kind == ActionKind::StartFault || a.kind == ActionKind::EndFault) && part)
                    a.fault = document::kindOf(*part).faults.front().id;
            });
        },
        Qt::QueuedConnection);
}

void CaseActions::fillFault(int row, const Action& action)
{
    auto* fault = combo(row, 4, tr("Fault"));
    if (const auto* part = m_session.drawing().find(action.part))
        for (const auto& one : document::kindOf(*part).faults)
            fault->addItem(say(one.title), plain(one.id));
    fault->setCurrentIndex(fault->findData(plain(action.fault)));
    connect(
        fault, &QComboBox::activated, this,
        [this, row, fault](int i) {
            const std::string id = fault->itemData(i).toString().toStdString();
            Q_EMIT actionChanged(row, [&](Action& a) { a.fault = id; });
        },
        Qt::QueuedConnection);
}

void CaseActions::fillRow(int row, const Action& action)
{
    number(row, 0, Quantity::Time, action.at_s, tr("Time"), 0, 7200, [](Action& a, double v) { a.at_s = v; });
    fillWhat(row, action);
    if (hasPart(action.kind))
        fillWhich(row, action);
    if (const auto quantity = valueOf(action.kind))
        number(row, 3, *quantity, action.value, tr("Value"), 0, *quantity == Quantity::Voltage ? 30 : 1,
               [](Action& a, double v) { a.value = v; });
    if (action.kind == ActionKind::OpenOutlet) {
        auto* share = number(row, 4, Quantity::Percent, action.second, tr("Hot share"), 0, 1,
                             [](Action& a, double v) { a.second = v; });
        share->setMayBeEmpty(true, tr("its own"));
        if (action.second < 0)
            share->setNone();
        connect(
            share, &ValueEdit::cleared, this,
            [this, row] { Q_EMIT actionChanged(row, [](Action& a) { a.second = -1; }); }, Qt::QueuedConnection);
    } else if (action.kind == ActionKind::StartFault || action.kind == ActionKind::EndFault) {
        fillFault(row, action);
    }
}

}  // namespace tapward::app
