// SPDX-License-Identifier: GPL-3.0-or-later
// What a field editor reads from the parts and writes back to them.
#include <QCheckBox>
#include <QComboBox>
#include <QLabel>
#include <QLineEdit>
#include <QToolButton>

#include "panels/curve_editor.h"
#include "panels/field_editor.h"
#include "panels/say.h"
#include "panels/value_edit.h"

namespace tapward::app {

using parts::FieldType;

void FieldEditor::setParts(const std::vector<document::PartId>& ids)
{
    m_ids = ids;
    refresh();
}

namespace {
parts::Value valueOf(const parts::Values& values, const parts::Field& field)
{
    switch (field.type) {
    case FieldType::Number:
    case FieldType::Count:
        return values.number(field.key);
    case FieldType::Flag:
        return values.flag(field.key);
    case FieldType::Curve:
        return values.curve(field.key);
    default:
        return values.text(field.key);
    }
}
}  // namespace

std::optional<parts::Value> FieldEditor::sharedValue() const
{
    std::optional<parts::Value> shared;
    for (const auto id : m_ids) {
        const document::Part* part = m_session.drawing().find(id);
        if (!part)
            continue;
        auto value = valueOf(document::values(*part), m_field);
        if (shared && *shared != value)
            return std::nullopt;
        shared = std::move(value);
    }
    return shared;
}

void FieldEditor::refreshRefs()
{
    const QString kinds = QLatin1Char(' ') + plain(m_field.refKinds) + QLatin1Char(' ');
    m_choice->clear();
    m_choice->addItem(tr("Automatic"), QString());
    for (const auto& part : m_session.drawing().parts) {
        const QString padded = QLatin1Char(' ') + plain(part.kind) + QLatin1Char(' ');
        if (m_field.refKinds.empty() || kinds.contains(padded))
            m_choice->addItem(sayWhere(part), QString::number(part.id));
    }
}

void FieldEditor::refresh()
{
    m_filling = true;
    const UnitSystem units = m_session.units();
    const auto shared = sharedValue();
    bool anySet = false, sameBasis = true;
    std::optional<parts::Basis> basis;
    for (const auto id : m_ids) {
        const document::Part* part = m_session.drawing().find(id);
        if (!part)
            continue;
        const parts::Values values = document::values(*part);
        anySet = anySet || values.isSet(m_field.key);
        if (basis && *basis != values.basis(m_field.key))
            sameBasis = false;
        basis = values.basis(m_field.key);
    }
    const bool unset = m_value && shared && !m_field.unset.empty() && std::get<double>(*shared) == 0;
    if (m_value) {
        m_value->setUnits(units);
        m_unit->setText(unitSymbol(m_field.quantity, units));
        if (unset)
            m_value->setNone();
        else if (shared)
            m_value->setValue(std::get<double>(*shared));
        else
            m_value->setMixed();
    } else if (m_choice) {
        if (m_field.type == FieldType::PartRef)
            refreshRefs();
        const int at = shared ? m_choice->findData(plain(std::get<std::string>(*shared))) : -1;
        if (shared && at < 0) {  // a part that is gone, or a choice of a later version
            m_choice->addItem(tr("Missing part"), plain(std::get<std::string>(*shared)));
            m_choice->setCurrentIndex(m_choice->count() - 1);
        } else {
            m_choice->setCurrentIndex(at);
        }
    } else if (m_flag) {
        m_flag->setTristate(!shared);
        m_flag->setCheckState(!shared ? Qt::PartiallyChecked : std::get<bool>(*shared) ? Qt::Checked : Qt::Unchecked);
    } else if (m_text) {
        if (!(m_text->hasFocus() && m_text->isModified())) {
            const QString text = shared ? plain(std::get<std::string>(*shared)) : QString();
            if (m_text->text() != text) {
                m_text->setText(text);
                m_text->setCursorPosition(0);
            }
            m_text->setPlaceholderText(shared ? QString() : tr("mixed"));
        }
    } else if (m_curve) {
        m_curve->setUnits(units);
        if (shared)
            m_curve->setCurve(std::get<parts::Curve>(*shared));
        else
            m_curve->setMixed();
        complain({});
    }
    if (m_basis) {
        m_basis->setCurrentIndex(basis && sameBasis && !unset ? m_basis->findData(static_cast<int>(*basis)) : -1);
        m_basis->setPlaceholderText(unset ? QString() : tr("mixed"));
        m_basis->setEnabled(!unset);
        m_basis->setToolTip(anySet ? tr("Where this value comes from")
                                   : tr("Default. Source: %1").arg(say(m_field.source)));
    }
    m_reset->setEnabled(anySet);
    m_filling = false;
}

void FieldEditor::perform(const Message& title,
                          const std::function<std::optional<parts::Entry>(const parts::Values&)>& entry)
{
    document::Edit edit{title, {}};
    for (const auto id : m_ids)
        if (const document::Part* part = m_session.drawing().find(id))
            edit.steps.push_back(document::SetField{id, std::string(m_field.key), entry(document::values(*part))});
    if (edit.steps.empty())
        return;
    if (const auto refused = m_session.perform(std::move(edit))) {
        if (m_value)
            m_value->complain(*refused);
        else
            complain(sayProblem(*refused, m_session.units()));
        return;
    }
    refresh();
}

void FieldEditor::store(const parts::Value& value)
{
    // A typed value is an estimate until somebody says where it comes from.
    perform(Message("Set {0}", {m_field.label}), [&](const parts::Values& values) {
        const auto basis = values.isSet(m_field.key) ? values.basis(m_field.key) : parts::Basis::Estimated;
        return std::optional(parts::Entry{value, basis});
    });
}

void FieldEditor::storeBasis(parts::Basis basis)
{
    perform(Message("Set basis of {0}", {m_field.label}),
            [&](const parts::Values& values) { return std::optional(parts::Entry{valueOf(values, m_field), basis}); });
}

void FieldEditor::reset()
{
    if (m_value)
        m_value->revert();
    perform(Message("Reset {0}", {m_field.label}), [](const parts::Values&) { return std::optional<parts::Entry>(); });
}

void FieldEditor::complain(const QString& text)
{
    m_complaint->setVisible(!text.isEmpty());
    m_complaint->setText(text.isEmpty() ? QString() : QStringLiteral("\u25B2 %1").arg(text));
    m_complaint->setAccessibleName(text.isEmpty() ? QString() : tr("%1: %2").arg(say(m_field.label), text));
}

}  // namespace tapward::app
