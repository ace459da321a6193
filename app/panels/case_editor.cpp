// SPDX-License-Identifier: GPL-3.0-or-later
#include "panels/case_editor.h"

#include <algorithm>
#include <QFormLayout>
#include <QHBoxLayout>
#include <QLabel>
#include <QLineEdit>
#include <QListWidget>
#include <QPushButton>
#include <QVBoxLayout>

#include "panels/case_actions.h"
#include "panels/case_words.h"
#include "panels/quiet_combo.h"
#include "panels/say.h"
#include "panels/value_edit.h"

namespace tapward::app {

using document::Action;
using document::ActionKind;
using document::Case;

CaseEditor::CaseEditor(Session& session, QWidget* parent)
    : QDialog(parent), m_session(session), m_list(new QListWidget), m_name(new QLineEdit), m_view(new QuietCombo),
      m_target(new QuietCombo), m_actions(new CaseActions(session)), m_complaint(new QLabel),
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
    connect(m_actions, &CaseActions::actionChanged, this, &CaseEditor::changeAction);
    connect(m_actions, &CaseActions::complaint, this, [this](const QString& text) {
        m_complaint->setText(text.isEmpty() ? text : QStringLiteral("\u25B2 ") + text);
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

void CaseEditor::changeAction(int row, const std::function<void(Action&)>& edit)
{
    change(Message("Change action"), [&](Case& one) {
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
    change(Message("Add action"), [this](Case& one) { one.actions.push_back(nextAction(m_session.drawing(), one)); });
    m_actions->setCurrentCell(m_actions->rowCount() - 1, 0);
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
                m_target->addItem(sayWhere(part), part.id);
        }
        m_target->setCurrentIndex(std::max(0, m_target->findData(one->targetPart)));
    }
    m_filling = false;
    m_actions->showCase(one);
    m_removeAction->setEnabled(m_actions->rowCount() > 0);
}

}  // namespace tapward::app
