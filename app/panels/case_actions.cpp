// SPDX-License-Identifier: GPL-3.0-or-later
#include "panels/case_actions.h"

#include <algorithm>
#include <QApplication>
#include <QHBoxLayout>
#include <QHeaderView>
#include <QLabel>
#include <QLineEdit>
#include <QTableWidgetItem>

#include "look/spacing.h"
#include "panels/case_words.h"
#include "panels/figures.h"
#include "panels/quiet_combo.h"
#include "panels/say.h"

namespace tapward::app {

using document::Action;
using document::ActionKind;
using document::Case;

CaseActions::CaseActions(Session& session, QWidget* parent) : QTableWidget(0, 4, parent), m_session(session)
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
    horizontalHeader()->setStretchLastSection(true);
}

void CaseActions::showCase(const Case* one)
{
    // Cells are rebuilt with every change; the keyboard stays where it was.
    const int row = currentRow(), column = currentColumn();
    const QWidget* focus = QApplication::focusWidget();
    const QString focused = focus && isAncestorOf(focus) ? focus->accessibleName() : QString();
    setHorizontalHeaderLabels(
        {quantityHead(tr("At"), Quantity::Time, m_session.units()), tr("What"), tr("Part"), tr("How")});
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
    if (row >= 0 && row < rowCount())
        setCurrentCell(row, std::max(0, column));
    if (focused.isEmpty())
        return;
    // Only among the new cells: those they replace go when this is over.
    for (int r = 0; r < rowCount(); ++r)
        for (int c = 0; c < columnCount(); ++c)
            if (QWidget* cell = cellWidget(r, c)) {
                QList<QWidget*> editors = cell->findChildren<QWidget*>();
                editors << cell;
                for (QWidget* editor : editors)
                    if (editor->accessibleName() == focused)
                        editor->setFocus();
            }
}

ValueEdit* CaseActions::number(int row, Quantity quantity, double value, const QString& name, double least, double most,
                               std::function<void(Action&, double)> set)
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
    return edit;
}

QComboBox* CaseActions::combo(int row, const QString& name)
{
    auto* box = new QuietCombo;
    box->setFrame(false);
    box->setAccessibleName(tr("%1 of action %2").arg(name).arg(row + 1));
    return box;
}

/// A combo box speaks its choice; its name comes from a label beside it, which here need not be seen.
/// @pre the box is where it is to be
void CaseActions::nameBeside(QComboBox* box)
{
    auto* unseen = new QLabel(box->accessibleName(), box->parentWidget());
    unseen->setBuddy(box);
    unseen->hide();
    connect(box, &QObject::destroyed, unseen, &QObject::deleteLater);
}

void CaseActions::fillWhat(int row, const Action& action)
{
    auto* what = combo(row, tr("Kind"));
    setCellWidget(row, 1, what);
    nameBeside(what);
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
    auto* which = combo(row, tr("Part"));
    setCellWidget(row, 2, which);
    nameBeside(which);
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

QComboBox* CaseActions::faults(int row, const Action& action)
{
    auto* fault = combo(row, tr("Fault"));
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
    return fault;
}

void CaseActions::fillHow(int row, const Action& action)
{
    auto* form = new QWidget;
    auto* line = new QHBoxLayout(form);
    line->setContentsMargins(look::kNear, 0, look::kNear, 0);
    line->setSpacing(look::kNear);
    const auto ask = [&](const QString& name, QWidget* editor, const QString& unit) {
        line->addWidget(new QuietLabel(name));
        line->addWidget(editor, 1);
        if (!unit.isEmpty())
            line->addWidget(new QuietLabel(unit));
    };
    const UnitSystem units = m_session.units();
    if (const auto quantity = valueOf(action.kind)) {
        const bool volts = *quantity == Quantity::Voltage;
        const QString name = volts ? tr("Voltage") : tr("Opening");
        ask(name,
            number(row, *quantity, action.value, name, 0, volts ? 30 : 1, [](Action& a, double v) { a.value = v; }),
            unitSymbol(*quantity, units));
    }
    if (action.kind == ActionKind::OpenOutlet) {
        auto* share = number(row, Quantity::Percent, action.second, tr("Hot share"), 0, 1,
                             [](Action& a, double v) { a.second = v; });
        share->setMayBeEmpty(true, tr("its own"));
        if (action.second < 0)
            share->setNone();
        connect(
            share, &ValueEdit::cleared, this,
            [this, row] { Q_EMIT actionChanged(row, [](Action& a) { a.second = -1; }); }, Qt::QueuedConnection);
        ask(tr("Hot share"), share, unitSymbol(Quantity::Percent, units));
    } else if (action.kind == ActionKind::StartFault || action.kind == ActionKind::EndFault) {
        auto* fault = faults(row, action);
        ask(tr("Fault"), fault, {});
        nameBeside(fault);
    }
    setCellWidget(row, 3, form);
}

void CaseActions::fillRow(int row, const Action& action)
{
    setCellWidget(
        row, 0, number(row, Quantity::Time, action.at_s, tr("Time"), 0, 7200, [](Action& a, double v) { a.at_s = v; }));
    fillWhat(row, action);
    if (hasPart(action.kind))
        fillWhich(row, action);
    fillHow(row, action);
}

}  // namespace tapward::app
