// SPDX-License-Identifier: GPL-3.0-or-later
#include "panels/value_edit.h"

#include <cmath>
#include <QKeyEvent>

#include "panels/say.h"

namespace tapward::app {

ValueEdit::ValueEdit(Quantity quantity, UnitSystem units, QWidget* parent)
    : QLineEdit(parent), m_quantity(quantity), m_units(units)
{
    setAlignment(Qt::AlignRight | Qt::AlignVCenter);
    connect(this, &QLineEdit::textEdited, this, [this] {
        m_dirty = true;
        if (m_refused) {
            m_refused = false;
            Q_EMIT complaint({});
        }
    });
}

void ValueEdit::setMayBeEmpty(bool may, const QString& placeholder)
{
    m_mayBeEmpty = may;
    m_placeholder = placeholder;
    if (!m_dirty)
        display();
}

void ValueEdit::setValue(double si)
{
    m_value = si;
    m_mixed = false;
    if (!m_dirty)
        display();
}

void ValueEdit::setMixed()
{
    m_value.reset();
    m_mixed = true;
    if (!m_dirty)
        display();
}

void ValueEdit::setNone()
{
    m_value.reset();
    m_mixed = false;
    if (!m_dirty)
        display();
}

void ValueEdit::display()
{
    m_carried.reset();
    if (m_refused) {
        m_refused = false;
        Q_EMIT complaint({});
    }
    setText(m_value ? editableNumber(*m_value, m_whole ? Quantity::None : m_quantity, m_units) : QString());
    setPlaceholderText(m_mixed ? tr("mixed") : m_placeholder);
    setCursorPosition(0);
}

std::optional<double> ValueEdit::read(QString* why) const
{
    if (m_carried && text() == m_carriedText)
        return m_carried;
    const auto parsed = parseMeasure(text().toStdString(), m_quantity, m_units);
    if (!parsed) {
        if (why)
            *why = say(parsed.error().what);
        return std::nullopt;
    }
    if (m_whole && *parsed != std::floor(*parsed)) {
        if (why)
            *why = tr("Only whole numbers count here. Type a number without a fraction.");
        return std::nullopt;
    }
    return *parsed;
}

void ValueEdit::setUnits(UnitSystem units)
{
    if (units == m_units)
        return;
    if (!m_dirty) {
        m_units = units;
        display();
        return;
    }
    const auto half = read(nullptr);
    m_units = units;
    if (!half)
        return;  // not a number yet: the text stays as typed
    m_carried = half;
    m_carriedText = editableNumber(*half, m_whole ? Quantity::None : m_quantity, m_units);
    setText(m_carriedText);
}

void ValueEdit::revert()
{
    m_dirty = false;
    display();
}

void ValueEdit::complain(const Problem& problem)
{
    m_dirty = true;  // the typed text stays until it is put right or taken back
    m_refused = true;
    Q_EMIT complaint(sayProblem(problem, m_units));
}

void ValueEdit::commit()
{
    if (!m_dirty || m_refused)
        return;
    if (text().trimmed().isEmpty() && (m_mayBeEmpty || m_mixed)) {
        m_dirty = false;
        const bool had = m_value.has_value();
        if (m_mayBeEmpty && had)
            Q_EMIT cleared();
        else
            display();
        return;
    }
    QString why;
    const auto typed = read(&why);
    if (!typed) {
        m_refused = true;
        Q_EMIT complaint(why);
        return;
    }
    if (m_check) {
        if (const auto refused = m_check(*typed)) {
            complain(*refused);
            return;
        }
    }
    m_dirty = false;
    if (m_value && *m_value == *typed) {
        display();
        return;
    }
    const QString shown = text();
    Q_EMIT committed(*typed);
    // The owner answers by setValue(); with nothing changed the old value comes back.
    if (!m_dirty && text() == shown)
        display();
}

void ValueEdit::keyPressEvent(QKeyEvent* event)
{
    if (event->key() == Qt::Key_Return || event->key() == Qt::Key_Enter) {
        m_refused = false;  // ask again
        commit();
        if (!m_dirty)
            selectAll();
        event->accept();
        return;
    }
    if (event->key() == Qt::Key_Escape && m_dirty) {
        revert();
        selectAll();
        event->accept();
        return;
    }
    if (m_whole && (event->key() == Qt::Key_Up || event->key() == Qt::Key_Down) && m_value) {
        const double next = *m_value + (event->key() == Qt::Key_Up ? 1 : -1);
        setText(QString::number(next, 'f', 0));
        m_dirty = true;
        m_refused = false;
        commit();
        event->accept();
        return;
    }
    QLineEdit::keyPressEvent(event);
}

void ValueEdit::focusOutEvent(QFocusEvent* event)
{
    QLineEdit::focusOutEvent(event);
    if (event->reason() != Qt::PopupFocusReason && event->reason() != Qt::ActiveWindowFocusReason)
        commit();
}

}  // namespace tapward::app
