// SPDX-License-Identifier: GPL-3.0-or-later
// What a case is set to: the form above its actions.
#include <algorithm>
#include <QFormLayout>
#include <QHBoxLayout>
#include <QLabel>
#include <QLineEdit>

#include "panels/case_editor.h"
#include "panels/case_words.h"
#include "panels/figures.h"
#include "panels/quiet_combo.h"
#include "panels/say.h"
#include "panels/value_edit.h"

namespace tapward::app {

using document::Case;

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
    edit->setCheck(inRange(least, most, quantity));
    edit->setMayBeEmpty(mayBeEmpty, mayBeEmpty ? tr("as drawn") : QString());
    auto* unit = new QuietLabel;
    auto* box = new QWidget;
    auto* line = new QHBoxLayout(box);
    line->setContentsMargins(0, 0, 0, 0);
    line->addWidget(edit);
    line->addWidget(unit);
    line->addStretch(1);
    const int words = mayBeEmpty ? fontMetrics().horizontalAdvance(tr("as drawn")) + 24 : 0;
    edit->setFixedWidth(std::max(fontMetrics().averageCharWidth() * 14, words));
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

}  // namespace tapward::app
