// SPDX-License-Identifier: GPL-3.0-or-later
#include "panels/case_editor.h"

#include <algorithm>
#include <QFormLayout>
#include <QHBoxLayout>
#include <QHeaderView>
#include <QLabel>
#include <QLineEdit>
#include <QListWidget>
#include <QPushButton>
#include <QTableWidget>
#include <QVBoxLayout>

#include "panels/quiet_combo.h"
#include "panels/say.h"
#include "panels/value_edit.h"

namespace tapward::app {

using document::Action;
using document::ActionKind;
using document::Case;

namespace {

constexpr ActionKind kActions[] = {ActionKind::OpenOutlet, ActionKind::CloseOutlet, ActionKind::PressButton,
                                   ActionKind::SetValve,   ActionKind::UseCity,     ActionKind::UsePump,
                                   ActionKind::UseNothing, ActionKind::SetVoltage,  ActionKind::StartFault,
                                   ActionKind::EndFault};

QString sayAction(ActionKind kind)
{
    switch (kind) {
    case ActionKind::OpenOutlet:
        return CaseEditor::tr("Open outlet");
    case ActionKind::CloseOutlet:
        return CaseEditor::tr("Close outlet");
    case ActionKind::PressButton:
        return CaseEditor::tr("Press button");
    case ActionKind::SetValve:
        return CaseEditor::tr("Set hand valve");
    case ActionKind::UseCity:
        return CaseEditor::tr("Use city water");
    case ActionKind::UsePump:
        return CaseEditor::tr("Use demand pump");
    case ActionKind::UseNothing:
        return CaseEditor::tr("Turn supply off");
    case ActionKind::SetVoltage:
        return CaseEditor::tr("Set battery voltage");
    case ActionKind::StartFault:
        return CaseEditor::tr("Start fault");
    case ActionKind::EndFault:
        return CaseEditor::tr("End fault");
    }
    return {};
}

bool hasPart(ActionKind kind)
{
    return kind == ActionKind::OpenOutlet || kind == ActionKind::CloseOutlet || kind == ActionKind::PressButton
           || kind == ActionKind::SetValve || kind == ActionKind::StartFault || kind == ActionKind::EndFault;
}

std::optional<Quantity> valueOf(ActionKind kind)
{
    if (kind == ActionKind::OpenOutlet || kind == ActionKind::SetValve)
        return Quantity::Percent;
    if (kind == ActionKind::SetVoltage)
        return Quantity::Voltage;
    return std::nullopt;
}

/// The role a part of this kind plays in a case; asked of the kind's own model, never of its name.
parts::Role roleOf(const document::Part& part)
{
    const auto& kind = document::kindOf(part);
    if (!kind.model)
        return parts::Role::None;
    const auto model = kind.model(document::values(part));
    return model ? model->role : parts::Role::None;
}

ValueEdit::Check range(double least, double most, Quantity quantity)
{
    return [=](double si) -> std::optional<Problem> {
        if (si >= least && si <= most)
            return std::nullopt;
        return Problem{Message("{0} is outside {1} to {2}.",
                               {Measure{si, quantity}, Measure{least, quantity}, Measure{most, quantity}}),
                       Message("Type a value in that range."),
                       {}};
    };
}

}  // namespace

CaseEditor::CaseEditor(Session& session, QWidget* parent)
    : QDialog(parent), m_session(session), m_list(new QListWidget), m_name(new QLineEdit), m_view(new QuietCombo),
      m_target(new QuietCombo), m_actions(new QTableWidget(0, 5)), m_complaint(new QLabel),
      m_remove(new QPushButton(tr("Remove Case"))), m_removeAction(new QPushButton(tr("Remove Action"))),
      m_addAction(new QPushButton(tr("Add Action"))), m_form(new QWidget)
{
    setWindowTitle(tr("Cases"));
    setModal(false);
    resize(fontMetrics().averageCharWidth() * 150, fontMetrics().height() * 34);
    m_list->setAccessibleName(tr("Cases of the drawing"));
    m_list->setMinimumWidth(fontMetrics().averageCharWidth() * 24);
    m_list->setWordWrap(true);
    auto* addButton = new QPushButton(tr("Add Case"));
    auto* left = new QVBoxLayout;
    left->addWidget(m_list, 1);
    left->addWidget(addButton);
    left->addWidget(m_remove);

    auto* form = new QFormLayout;
    buildForm(form);
    m_actions->setAccessibleName(tr("Actions of the case"));
    m_actions->verticalHeader()->hide();
    m_actions->verticalHeader()->setDefaultSectionSize(m_name->sizeHint().height() + 4);
    m_actions->setTabKeyNavigation(false);
    m_actions->setSelectionBehavior(QAbstractItemView::SelectRows);
    m_actions->horizontalHeader()->setSectionResizeMode(QHeaderView::Stretch);
    m_actions->horizontalHeader()->setSectionResizeMode(0, QHeaderView::Fixed);
    m_actions->horizontalHeader()->resizeSection(0, fontMetrics().averageCharWidth() * 12);
    m_actions->horizontalHeader()->setHighlightSections(false);
    m_complaint->setWordWrap(true);
    auto* actionButtons = new QHBoxLayout;
    actionButtons->addWidget(m_addAction);
    actionButtons->addWidget(m_removeAction);
    actionButtons->addStretch();
    auto* closeButton = new QPushButton(tr("Close"));
    closeButton->setAutoDefault(false);
    actionButtons->addWidget(closeButton);

    auto* right = new QVBoxLayout(m_form);
    right->setContentsMargins(0, 0, 0, 0);
    right->addLayout(form);
    auto* heading = new QLabel(tr("What happens, and when"));
    right->addWidget(heading);
    right->addWidget(m_actions, 1);
    right->addWidget(m_complaint);
    right->addLayout(actionButtons);
    auto* all = new QHBoxLayout(this);
    all->addLayout(left, 1);
    all->addWidget(m_form, 3);
    for (QPushButton* button : {addButton, m_remove, m_addAction, m_removeAction})
        button->setAutoDefault(false);

    connect(addButton, &QPushButton::clicked, this, &CaseEditor::addCase);
    connect(m_remove, &QPushButton::clicked, this, &CaseEditor::removeCase);
    connect(m_addAction, &QPushButton::clicked, this, &CaseEditor::addAction);
    connect(closeButton, &QPushButton::clicked, this, &QDialog::close);
    connect(m_removeAction, &QPushButton::clicked, this, [this] {
        const int row = m_actions->currentRow();
        if (row >= 0)
            change(Message("Remove action"), [row](Case& one) { one.actions.erase(one.actions.begin() + row); });
    });
    connect(m_list, &QListWidget::currentRowChanged, this, [this](int row) {
        if (!m_filling && row >= 0)
            chooseCase(row);
    });
    connect(&session, &Session::changed, this, &CaseEditor::refresh);
    connect(&session, &Session::viewChanged, this, &CaseEditor::refresh);
    const auto& cases = session.drawing().cases;
    const auto at = std::ranges::find(cases, session.caseName().toStdString(), &Case::name);
    m_index = at == cases.end() ? 0 : static_cast<int>(at - cases.begin());
    refresh();
}

void CaseEditor::buildForm(QFormLayout* form)
{
    m_name->setAccessibleName(tr("Name of the case"));
    m_name->setMaxLength(120);
    form->addRow(tr("Name"), m_name);
    connect(m_name, &QLineEdit::editingFinished, this, [this] {
        if (!m_name->isModified())
            return;
        m_name->setModified(false);
        const std::string name = m_name->text().trimmed().toStdString();
        const bool follows = shown() && plain(shown()->name) == m_session.caseName();
        if (change(Message("Rename case"), [&](Case& one) { one.name = name; }) && follows)
            m_session.setCaseName(plain(name));
    });
    m_view->setAccessibleName(tr("State of the coach"));
    m_view->addItem(tr("Before the job"), int(document::View::Before));
    m_view->addItem(tr("After the job"), int(document::View::After));
    form->addRow(tr("Coach"), m_view);
    connect(m_view, &QComboBox::activated, this, [this](int i) {
        const auto view = static_cast<document::View>(m_view->itemData(i).toInt());
        change(Message("Change case"), [view](Case& one) { one.view = view; });
    });
    using Maybe = std::optional<double>;
    addNumber(
        form, tr("Duration"), Quantity::Time, 1, 7200, false, [](const Case& c) { return Maybe(c.duration_s); },
        [](Case& c, Maybe v) { c.duration_s = *v; });
    addNumber(
        form, tr("Start temperature"), Quantity::Temperature, 0.5, 90, false,
        [](const Case& c) { return Maybe(c.start_C); }, [](Case& c, Maybe v) { c.start_C = *v; });
    addNumber(
        form, tr("Warm at the tap"), Quantity::Temperature, 20, 60, false,
        [](const Case& c) { return Maybe(c.target_C); }, [](Case& c, Maybe v) { c.target_C = *v; });
    addNumber(
        form, tr("Supply water"), Quantity::Temperature, 0.5, 60, true, [](const Case& c) { return c.supply_C; },
        [](Case& c, Maybe v) { c.supply_C = v; });
    addNumber(
        form, tr("Bay air"), Quantity::Temperature, -30, 60, true, [](const Case& c) { return c.ambient_C; },
        [](Case& c, Maybe v) { c.ambient_C = v; });
    m_target->setAccessibleName(tr("Where it should be warm"));
    form->addRow(tr("Measured at"), m_target);
    connect(m_target, &QComboBox::activated, this, [this](int i) {
        const auto id = m_target->itemData(i).toInt();
        change(Message("Change case"), [id](Case& one) { one.targetPart = id; });
    });
}

CaseEditor::NumberRow& CaseEditor::addNumber(QFormLayout* form, const QString& label, Quantity quantity, double least,
                                             double most, bool mayBeEmpty,
                                             std::function<std::optional<double>(const Case&)> get,
                                             std::function<void(Case&, std::optional<double>)> set)
{
    auto* edit = new ValueEdit(quantity, m_session.units());
    edit->setAccessibleName(label);
    edit->setCheck(range(least, most, quantity));
    edit->setMayBeEmpty(mayBeEmpty, mayBeEmpty ? tr("as drawn") : QString());
    auto* unit = new QLabel;
    auto* box = new QWidget;
    auto* line = new QHBoxLayout(box);
    line->setContentsMargins(0, 0, 0, 0);
    line->addWidget(edit);
    line->addWidget(unit);
    line->addStretch(1);
    edit->setMaximumWidth(fontMetrics().averageCharWidth() * 16);
    form->addRow(label, box);
    connect(edit, &ValueEdit::committed, this,
            [this, set](double si) { change(Message("Change case"), [&](Case& one) { set(one, si); }); });
    connect(edit, &ValueEdit::cleared, this,
            [this, set] { change(Message("Change case"), [&](Case& one) { set(one, std::nullopt); }); });
    connect(edit, &ValueEdit::complaint, m_complaint, [this](const QString& text) {
        m_complaint->setText(text.isEmpty() ? text : QStringLiteral("\u25B2 ") + text);
    });
    m_numbers.push_back({edit, unit, quantity, std::move(get)});
    return m_numbers.back();
}

const Case* CaseEditor::shown() const
{
    const auto& cases = m_session.drawing().cases;
    return m_index >= 0 && m_index < static_cast<int>(cases.size()) ? &cases[static_cast<std::size_t>(m_index)]
                                                                    : nullptr;
}

bool CaseEditor::store(const Message& title, std::vector<Case> cases)
{
    const auto refused = m_session.perform(document::Edit{title, {document::SetCases{std::move(cases)}}});
    m_complaint->setText(refused ? QStringLiteral("\u25B2 ") + sayProblem(*refused, m_session.units()) : QString());
    if (refused)
        refresh();
    return !refused;
}

bool CaseEditor::change(const Message& title, const std::function<void(Case&)>& change)
{
    if (!shown())
        return false;
    auto cases = m_session.drawing().cases;
    Case& one = cases[static_cast<std::size_t>(m_index)];
    change(one);
    if (one == *shown())
        return true;
    return store(title, std::move(cases));
}

bool CaseEditor::changeAction(int row, const std::function<void(Action&)>& edit)
{
    return change(Message("Change action"), [&](Case& one) {
        if (row >= 0 && row < static_cast<int>(one.actions.size()))
            edit(one.actions[static_cast<std::size_t>(row)]);
    });
}

void CaseEditor::chooseCase(int index)
{
    m_index = index;
    refresh();
    if (shown())
        m_session.setCaseName(plain(shown()->name));
}

void CaseEditor::addCase()
{
    auto cases = m_session.drawing().cases;
    Case one = shown() ? *shown() : Case{};
    std::string base = tr("New case").toStdString();
    std::string name = base;
    for (int n = 2; m_session.drawing().findCase(name); ++n)
        name = base + " " + std::to_string(n);
    one.name = name;
    cases.push_back(std::move(one));
    const int index = static_cast<int>(cases.size()) - 1;
    if (store(Message("Add case"), std::move(cases)))
        chooseCase(index);
    m_name->setFocus();
    m_name->selectAll();
}

void CaseEditor::removeCase()
{
    if (!shown())
        return;
    auto cases = m_session.drawing().cases;
    cases.erase(cases.begin() + m_index);
    const int next = std::max(0, m_index - 1);
    if (store(Message("Remove case"), std::move(cases)))
        chooseCase(next);
}

void CaseEditor::addAction()
{
    change(Message("Add action"), [this](Case& one) {
        Action action;
        action.kind = ActionKind::PressButton;
        auto parts = fittingParts(action.kind);
        if (parts.empty()) {
            action.kind = ActionKind::OpenOutlet;
            parts = fittingParts(action.kind);
        }
        action.part = parts.empty() ? document::kNoPart : parts.front();
        if (parts.empty())
            action.kind = ActionKind::UseCity;
        action.at_s = one.actions.empty() ? 1 : one.actions.back().at_s + 10;
        one.actions.push_back(action);
    });
    m_actions->setCurrentCell(m_actions->rowCount() - 1, 0);
}

std::vector<document::PartId> CaseEditor::fittingParts(ActionKind kind) const
{
    std::vector<document::PartId> ids;
    for (const auto& part : m_session.drawing().parts) {
        const auto role = roleOf(part);
        const bool fits = kind == ActionKind::PressButton
                              ? role == parts::Role::Button || role == parts::Role::Controller
                          : kind == ActionKind::SetValve ? role == parts::Role::HandValve
                          : kind == ActionKind::OpenOutlet || kind == ActionKind::CloseOutlet
                              ? role == parts::Role::Outlet
                              : !document::kindOf(part).faults.empty();
        if (fits)
            ids.push_back(part.id);
    }
    return ids;
}

void CaseEditor::refresh()
{
    m_filling = true;
    const auto& cases = m_session.drawing().cases;
    m_index = std::clamp(m_index, 0, std::max(0, static_cast<int>(cases.size()) - 1));
    QStringList names;
    for (const auto& one : cases)
        names << plain(one.name);
    QStringList listed;
    for (int i = 0; i < m_list->count(); ++i)
        listed << m_list->item(i)->text();
    if (names != listed) {
        m_list->clear();
        m_list->addItems(names);
    }
    m_list->setCurrentRow(cases.empty() ? -1 : m_index);
    const Case* one = shown();
    m_remove->setEnabled(one);
    m_form->setEnabled(one);
    if (one) {
        if (!(m_name->hasFocus() && m_name->isModified()) && m_name->text() != plain(one->name))
            m_name->setText(plain(one->name));
        m_view->setCurrentIndex(m_view->findData(int(one->view)));
        for (auto& row : m_numbers) {
            row.edit->setUnits(m_session.units());
            row.unit->setText(unitSymbol(row.quantity, m_session.units()));
            if (const auto value = row.get(*one))
                row.edit->setValue(*value);
            else
                row.edit->setNone();
        }
        m_target->clear();
        m_target->addItem(tr("Automatic"), 0);
        for (const auto& part : m_session.drawing().parts) {
            const auto role = roleOf(part);
            if (role == parts::Role::Outlet || role == parts::Role::TemperatureSensor)
                m_target->addItem(sayPart(part), part.id);
        }
        m_target->setCurrentIndex(std::max(0, m_target->findData(one->targetPart)));
    }
    m_filling = false;
    refreshActions();
}

void CaseEditor::refreshActions()
{
    // Cells are rebuilt with every change; the keyboard stays where it was.
    int row = m_actions->currentRow(), column = m_actions->currentColumn();
    for (int r = 0; r < m_actions->rowCount(); ++r)
        for (int c = 0; c < m_actions->columnCount(); ++c)
            if (QWidget* cell = m_actions->cellWidget(r, c); cell && cell->hasFocus())
                row = r, column = c;
    const bool hadFocus = m_actions->cellWidget(row, column) && m_actions->cellWidget(row, column)->hasFocus();
    m_filling = true;
    m_actions->setHorizontalHeaderLabels({quantityHead(tr("At"), Quantity::Time, m_session.units()), tr("What"),
                                          tr("Part"), tr("Opening or volts"), tr("Hot share or fault")});
    const Case* one = shown();
    m_actions->setRowCount(0);
    if (one) {
        m_actions->setRowCount(static_cast<int>(one->actions.size()));
        for (int r = 0; r < m_actions->rowCount(); ++r)
            fillRow(r, one->actions[static_cast<std::size_t>(r)]);
    }
    m_filling = false;
    m_removeAction->setEnabled(m_actions->rowCount() > 0);
    if (row >= 0 && row < m_actions->rowCount()) {
        m_actions->setCurrentCell(row, std::max(0, column));
        if (QWidget* cell = m_actions->cellWidget(row, std::max(0, column)); cell && hadFocus)
            cell->setFocus();
    }
}

void CaseEditor::fillRow(int row, const Action& action)
{
    const UnitSystem units = m_session.units();
    const auto number = [&](int column, Quantity quantity, double value, const QString& name, double least, double most,
                            std::function<void(Action&, double)> set) {
        auto* edit = new ValueEdit(quantity, units);
        edit->setValue(value);
        edit->setFrame(false);
        edit->setAccessibleName(tr("%1 of action %2").arg(name).arg(row + 1));
        edit->setCheck(range(least, most, quantity));
        connect(
            edit, &ValueEdit::committed, this,
            [this, row, set](double si) { changeAction(row, [&](Action& a) { set(a, si); }); }, Qt::QueuedConnection);
        connect(edit, &ValueEdit::complaint, m_complaint, [this](const QString& text) {
            m_complaint->setText(text.isEmpty() ? text : QStringLiteral("\u25B2 ") + text);
        });
        m_actions->setCellWidget(row, column, edit);
        return edit;
    };
    const auto combo = [&](int column, const QString& name) {
        auto* box = new QuietCombo;
        box->setFrame(false);
        box->setAccessibleName(tr("%1 of action %2").arg(name).arg(row + 1));
        m_actions->setCellWidget(row, column, box);
        return box;
    };
    number(0, Quantity::Time, action.at_s, tr("Time"), 0, 7200, [](Action& a, double v) { a.at_s = v; });

    auto* what = combo(1, tr("Kind"));
    for (const auto kind : kActions)
        what->addItem(sayAction(kind), int(kind));
    what->setCurrentIndex(what->findData(int(action.kind)));
    connect(
        what, &QComboBox::activated, this,
        [this, row, what](int i) {
            const auto kind = static_cast<ActionKind>(what->itemData(i).toInt());
            const auto fitting = fittingParts(kind);
            changeAction(row, [&](Action& a) {
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

    if (hasPart(action.kind)) {
        auto* which = combo(2, tr("Part"));
        if (action.kind == ActionKind::PressButton)
            which->addItem(tr("Automatic"), 0);
        for (const auto id : fittingParts(action.kind))
            which->addItem(sayPart(*m_session.drawing().find(id)), id);
        which->setCurrentIndex(which->findData(action.part));
        connect(
            which, &QComboBox::activated, this,
            [this, row, which](int i) {
                const auto id = which->itemData(i).toInt();
                changeAction(row, [&](Action& a) {
                    a.part = id;
                    const auto* part = m_session.drawing().find(id);
                    if ((a.kind == ActionKind::StartFault || a.kind == ActionKind::EndFault) && part)
                        a.fault = document::kindOf(*part).faults.front().id;
                });
            },
            Qt::QueuedConnection);
    }
    if (const auto quantity = valueOf(action.kind))
        number(3, *quantity, action.value, tr("Value"), 0, *quantity == Quantity::Voltage ? 30 : 1,
               [](Action& a, double v) { a.value = v; });
    if (action.kind == ActionKind::OpenOutlet) {
        auto* share = number(4, Quantity::Percent, action.second, tr("Hot share"), 0, 1,
                             [](Action& a, double v) { a.second = v; });
        share->setMayBeEmpty(true, tr("its own"));
        if (action.second < 0)
            share->setNone();
        connect(
            share, &ValueEdit::cleared, this, [this, row] { changeAction(row, [](Action& a) { a.second = -1; }); },
            Qt::QueuedConnection);
    } else if (action.kind == ActionKind::StartFault || action.kind == ActionKind::EndFault) {
        auto* fault = combo(4, tr("Fault"));
        if (const auto* part = m_session.drawing().find(action.part))
            for (const auto& one : document::kindOf(*part).faults)
                fault->addItem(say(one.title), plain(one.id));
        fault->setCurrentIndex(fault->findData(plain(action.fault)));
        connect(
            fault, &QComboBox::activated, this,
            [this, row, fault](int i) {
                const std::string id = fault->itemData(i).toString().toStdString();
                changeAction(row, [&](Action& a) { a.fault = id; });
            },
            Qt::QueuedConnection);
    }
}

}  // namespace tapward::app
