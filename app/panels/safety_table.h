// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <optional>
#include <QTableWidget>
#include <QVariant>
#include <vector>

#include "base/units.h"
#include "review/finding.h"

namespace tapward::app {

/// One cell: what is read and what it is sorted by.
struct SafetyCell {
    QString text;
    QString unit;    ///< with which the text of a number ends; it is painted lighter
    QVariant order;  ///< invalid: the text
    std::optional<review::Severity> weight;  ///< icon before the text, which says the word
    bool number = false;

    SafetyCell(QString words = {}) : text(std::move(words)) {}  // NOLINT(google-explicit-constructor)
    static SafetyCell measure(std::optional<double> si, Quantity quantity, UnitSystem units);
    /// Icon and word; sorts dangers first.
    static SafetyCell severity(review::Severity severity);
};

/// A table that is read, sorted and copied, by mouse and by keys. Filling it anew keeps the row chosen and
/// the order of the rows.
class SafetyTable final : public QTableWidget {
    Q_OBJECT
public:
    explicit SafetyTable(const QString& accessibleName, QWidget* parent = nullptr);

    void fill(const QStringList& heads, const std::vector<std::vector<SafetyCell>>& rows);
    /// Index into the rows given to fill(), whatever the order; -1 = none.
    int chosenRow() const;
    void chooseRow(int row);
    /// The rows as they are shown, tabs between the cells.
    QString asText(bool onlySelected = false) const;
    void hideRows(const std::vector<bool>& hidden);  ///< by index given to fill()

Q_SIGNALS:
    void rowOpened(int row);  ///< clicked, or Enter

protected:
    void keyPressEvent(QKeyEvent* event) override;
    void changeEvent(QEvent* event) override;
    void resizeEvent(QResizeEvent* event) override;

private:
    void copy();
    void fitRows();
    void stretchLast();

    bool m_filled = false, m_fitting = false;
    int m_last = 0;  ///< what the last column needs
};

}  // namespace tapward::app
