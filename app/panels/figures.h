// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QLabel>
#include <QStyledItemDelegate>

namespace tapward::app {

/// Words that stand back behind what they belong to: units, notes under a figure.
class QuietLabel final : public QLabel {
    Q_OBJECT
public:
    explicit QuietLabel(const QString& text = {}, QWidget* parent = nullptr);

protected:
    void changeEvent(QEvent* event) override;

private:
    void soften();
};

/// A figure and its unit, which is lighter. Figures of one column end at one edge where each is given the same width for
/// its unit.
class FigureLabel final : public QWidget {
public:
    explicit FigureLabel(QWidget* parent = nullptr);

    void show(const QString& figure, const QString& unit);
    void setStrong(bool strong);
    /// What the unit needs; a figure without a unit reaches to the right edge and needs nothing.
    int widthOfUnit() const;
    void setWidthOfUnit(int pixels);

private:
    QLabel* m_figure;
    QuietLabel* m_unit;
};

/// Cells of numbers: the unit that kUnitRole names is lighter than the figure before it. What is read aloud and copied is
/// the display text, figure and unit, as ever.
class FigureDelegate : public QStyledItemDelegate {
    Q_OBJECT
public:
    static constexpr int kUnitRole = Qt::UserRole + 40;

    using QStyledItemDelegate::QStyledItemDelegate;

    void paint(QPainter* painter, const QStyleOptionViewItem& option, const QModelIndex& index) const override;
};

/// How many digits stand behind the decimal point.
int decimalsOf(const QString& number);
/// The number with room behind it, as wide as the decimals it lacks, so that a column set to the right is aligned by
/// its decimal points. Only for painting: a copy has nothing to do with it.
QString alignedByPoint(const QString& number, int decimals);

}  // namespace tapward::app
