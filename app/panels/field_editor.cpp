// SPDX-License-Identifier: GPL-3.0-or-later
#include "panels/field_editor.h"

#include <QCheckBox>
#include <QComboBox>
#include <QGridLayout>
#include <QLabel>
#include <QLineEdit>
#include <QToolButton>

#include "look/spacing.h"
#include "panels/curve_editor.h"
#include "panels/figures.h"
#include "panels/icons.h"
#include "panels/quiet_combo.h"
#include "panels/say.h"
#include "panels/value_edit.h"

namespace tapward::app {

using parts::FieldType;

FieldEditor::FieldEditor(Session& session, const parts::PartKind& kind, const parts::Field& field, QGridLayout& grid,
                         QWidget* parent)
    : QObject(parent), m_session(session), m_kind(kind), m_field(field), m_label(new QLabel(say(field.label), parent)),
      m_complaint(new QLabel(parent)), m_reset(new QToolButton(parent))
{
    const QString name = say(field.label);
    const QString help = say(field.help);
    m_label->setWordWrap(true);
    m_label->setToolTip(help);
    buildEditor(parent);
    m_editor->setAccessibleName(name);
    m_editor->setAccessibleDescription(help);
    m_editor->setToolTip(help);
    m_label->setBuddy(m_value ? static_cast<QWidget*>(m_value) : m_editor);

    m_complaint->setWordWrap(true);
    m_complaint->setObjectName(QStringLiteral("complaint"));
    m_complaint->hide();

    m_reset->setIcon(look::icon(QStringLiteral("reset")));
    m_reset->setAutoRaise(true);
    m_reset->setAccessibleName(tr("Reset %1 to the default").arg(name));
    m_reset->setToolTip(tr("Reset to the default"));
    connect(m_reset, &QToolButton::clicked, this, &FieldEditor::reset);

    if (field.type == FieldType::Number || field.type == FieldType::Count || field.type == FieldType::Curve) {
        m_basis = new QuietCombo(parent);
        // A combo box speaks its choice; its name comes from a label, which here need not be seen.
        auto* unseen = new QLabel(tr("Basis of %1").arg(name), parent);
        unseen->setBuddy(m_basis);
        unseen->hide();
        m_basis->setAccessibleName(unseen->text());
        for (const auto basis : {parts::Basis::Measured, parts::Basis::DataSheet, parts::Basis::Estimated})
            m_basis->addItem(sayBasis(basis), static_cast<int>(basis));
        connect(m_basis, &QComboBox::activated, this,
                [this](int index) { storeBasis(static_cast<parts::Basis>(m_basis->itemData(index).toInt())); });
    }

    // A number takes two lines, so that label, value, unit and basis fit a narrow pane at large letters.
    const int row = grid.rowCount();
    if (m_curve) {
        grid.addWidget(m_label, row, 0, 1, 2);
        grid.addWidget(m_basis, row, 2);
        grid.addWidget(m_reset, row, 3);
        grid.addWidget(m_editor, row + 1, 0, 1, 4);
    } else if (m_flag) {
        m_label->hide();
        grid.addWidget(m_editor, row, 0, 1, 3);
        grid.addWidget(m_reset, row, 3);
    } else if (m_basis) {
        grid.addWidget(m_label, row, 0, 1, 4);
        grid.addWidget(m_editor, row + 1, 0, 1, 2);
        grid.addWidget(m_basis, row + 1, 2);
        grid.addWidget(m_reset, row + 1, 3);
    } else {
        grid.addWidget(m_label, row, 0);
        grid.addWidget(m_editor, row, 1, 1, 2);
        grid.addWidget(m_reset, row, 3);
    }
    grid.addWidget(m_complaint, row + 2, 0, 1, 4);
}

void FieldEditor::buildEditor(QWidget* parent)
{
    switch (m_field.type) {
    case FieldType::Number:
    case FieldType::Count: {
        const bool count = m_field.type == FieldType::Count;
        m_value = new ValueEdit(m_field.quantity, m_session.units(), parent);
        m_value->setAccessibleName(say(m_field.label));
        m_value->setAccessibleDescription(say(m_field.help));
        m_value->setWholeNumbers(count);
        m_value->setMinimumWidth(m_value->fontMetrics().horizontalAdvance(QStringLiteral("00000.00")));
        m_value->setCheck([this](double si) { return parts::refusal(m_kind, m_field, si); });
        if (!m_field.unset.empty())
            m_value->setMayBeEmpty(true, say(m_field.unset));
        connect(m_value, &ValueEdit::committed, this, [this](double si) { store(si); });
        connect(m_value, &ValueEdit::cleared, this, [this] { store(0.0); });
        connect(m_value, &ValueEdit::complaint, this, &FieldEditor::complain);
        m_unit = new QuietLabel({}, parent);
        auto* box = new QWidget(parent);
        auto* line = new QHBoxLayout(box);
        line->setContentsMargins(0, 0, 0, 0);
        line->setSpacing(look::kNear);
        line->addWidget(m_value, 1);
        line->addWidget(m_unit);
        m_unit->setMinimumWidth(m_unit->fontMetrics().horizontalAdvance(QStringLiteral("gpm")));
        m_editor = box;
        box->setFocusProxy(m_value);
        return;
    }
    case FieldType::Choice:
    case FieldType::PartRef:
        m_choice = new QuietCombo(parent);
        if (m_field.type == FieldType::Choice)
            for (const auto& choice : m_field.choices)
                m_choice->addItem(say(choice.title), plain(choice.id));
        m_choice->setPlaceholderText(tr("mixed"));
        connect(m_choice, &QComboBox::activated, this,
                [this](int index) { store(m_choice->itemData(index).toString().toStdString()); });
        m_editor = m_choice;
        return;
    case FieldType::Flag:
        m_flag = new QCheckBox(say(m_field.label), parent);
        connect(m_flag, &QCheckBox::clicked, this, [this](bool on) {
            m_flag->setTristate(false);
            store(on);
        });
        m_editor = m_flag;
        return;
    case FieldType::Text:
        m_text = new QLineEdit(parent);
        connect(m_text, &QLineEdit::editingFinished, this, [this] {
            if (m_text->isModified() && !m_filling) {
                m_text->setModified(false);
                store(m_text->text().toStdString());
            }
        });
        m_editor = m_text;
        return;
    case FieldType::Curve:
        m_curve = new CurveEditor(m_kind, m_field, m_session.units(), parent);
        connect(m_curve, &CurveEditor::committed, this, [this](const parts::Curve& curve) {
            if (const auto refused = parts::refusal(m_kind, m_field, curve))
                complain(sayProblem(*refused, m_session.units()));
            else
                store(curve);
        });
        connect(m_curve, &CurveEditor::complaint, this, &FieldEditor::complain);
        m_editor = m_curve;
        return;
    }
}

}  // namespace tapward::app
