// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <functional>
#include <optional>
#include <QLineEdit>

#include "base/result.h"
#include "base/units.h"

namespace tapward::app {

/// A line to type a number with a unit into. Keeps the exact SI value; what it shows is rounded and is
/// never read back unless the person changed it. Enter or leaving the field commits, Esc reverts; what
/// cannot be understood or is out of range stays in the field and is explained through complaint().
class ValueEdit final : public QLineEdit {
    Q_OBJECT
public:
    explicit ValueEdit(Quantity quantity, UnitSystem units, QWidget* parent = nullptr);

    /// Says why a value is not allowed; asked on commit.
    using Check = std::function<std::optional<Problem>(double si)>;
    void setCheck(Check check) { m_check = std::move(check); }
    void setWholeNumbers(bool whole) { m_whole = whole; }
    /// An emptied field commits "no value" through cleared() instead of complaining.
    void setMayBeEmpty(bool may, const QString& placeholder = {});

    /// The value in the drawing. What a person is typing at the moment stays.
    void setValue(double si);
    /// Several parts with different values; typing sets them all.
    void setMixed();
    void setNone();
    std::optional<double> value() const { return m_value; }

    /// Shows the same value, or the same half-typed value, in the other units.
    void setUnits(UnitSystem units);
    bool isPending() const { return m_dirty; }
    void revert();
    /// Shows a refusal that came from further in; the typed text stays.
    void complain(const Problem& problem);

Q_SIGNALS:
    void committed(double si);
    void cleared();
    void complaint(const QString& text);  ///< empty = nothing to complain about

protected:
    void keyPressEvent(QKeyEvent* event) override;
    void focusOutEvent(QFocusEvent* event) override;

private:
    void commit();
    void display();
    std::optional<double> read(QString* why) const;

    Quantity m_quantity;
    UnitSystem m_units;
    Check m_check;
    std::optional<double> m_value;
    bool m_mixed = false, m_dirty = false, m_whole = false, m_mayBeEmpty = false, m_refused = false;
    QString m_placeholder;
    // A half-typed value carried through a change of units: the text we made of it, and what it means.
    std::optional<double> m_carried;
    QString m_carriedText;
};

}  // namespace tapward::app
