// SPDX-License-Identifier: GPL-3.0-or-later
#include "panels/figures.h"

#include <QApplication>
#include <QEvent>
#include <QHBoxLayout>
#include <QPainter>

#include "look/spacing.h"
#include "look/theme.h"

namespace tapward::app {

QuietLabel::QuietLabel(const QString& text, QWidget* parent) : QLabel(text, parent) { soften(); }

void QuietLabel::soften()
{
    const QColor quiet = Theme::of(palette()).quietText;
    if (palette().color(QPalette::Active, QPalette::WindowText) == quiet)
        return;
    QPalette softer;  // this role only: all others come from the window
    softer.setColor(QPalette::Active, QPalette::WindowText, quiet);
    softer.setColor(QPalette::Inactive, QPalette::WindowText, quiet);
    softer.setColor(QPalette::Disabled, QPalette::WindowText, palette().color(QPalette::Disabled, QPalette::Text));
    setPalette(softer);
}

void QuietLabel::changeEvent(QEvent* event)
{
    QLabel::changeEvent(event);
    if (event->type() == QEvent::PaletteChange)
        soften();
}

FigureLabel::FigureLabel(QWidget* parent) : QWidget(parent), m_figure(new QLabel), m_unit(new QuietLabel)
{
    auto* line = new QHBoxLayout(this);
    line->setContentsMargins(0, 0, 0, 0);
    line->setSpacing(look::kNear);
    line->addStretch(1);
    line->addWidget(m_figure, 0, Qt::AlignTop);
    line->addWidget(m_unit, 0, Qt::AlignTop);
}

void FigureLabel::show(const QString& figure, const QString& unit)
{
    m_figure->setText(figure);
    m_unit->setText(unit);
    m_unit->setVisible(!unit.isEmpty());
}

void FigureLabel::setStrong(bool strong) { m_figure->setFont(strong ? look::strongFont(font()) : font()); }

int FigureLabel::widthOfUnit() const
{
    return m_unit->text().isEmpty() ? 0 : m_unit->fontMetrics().horizontalAdvance(m_unit->text());
}

void FigureLabel::setWidthOfUnit(int pixels) { m_unit->setMinimumWidth(pixels); }

void FigureDelegate::paint(QPainter* painter, const QStyleOptionViewItem& option, const QModelIndex& index) const
{
    const QString unit = index.data(kUnitRole).toString();
    if (unit.isEmpty())
        return QStyledItemDelegate::paint(painter, option, index);
    QStyleOptionViewItem cell(option);
    initStyleOption(&cell, index);
    const QString figure = cell.text.chopped(unit.size());
    cell.text.clear();
    const QStyle* style = cell.widget ? cell.widget->style() : QApplication::style();
    style->drawControl(QStyle::CE_ItemViewItem, &cell, painter, cell.widget);

    const auto group = !(cell.state & QStyle::State_Enabled) ? QPalette::Disabled
                       : cell.state & QStyle::State_Active   ? QPalette::Active
                                                             : QPalette::Inactive;
    const bool chosen = cell.state & QStyle::State_Selected;
    const QColor ink = cell.palette.color(group, chosen ? QPalette::HighlightedText : QPalette::Text);
    const int margin = style->pixelMetric(QStyle::PM_FocusFrameHMargin, &cell, cell.widget) + 1;
    QRect room = cell.rect.adjusted(margin, 0, -margin, 0);
    painter->save();
    painter->setFont(cell.font);
    painter->setPen(chosen || group == QPalette::Disabled ? ink : Theme::of(cell.palette).quietText);
    painter->drawText(room, Qt::AlignRight | Qt::AlignVCenter, unit);
    room.setRight(room.right() - cell.fontMetrics.horizontalAdvance(unit));
    painter->setPen(ink);
    painter->drawText(room, Qt::AlignRight | Qt::AlignVCenter, figure);
    painter->restore();
}

int decimalsOf(const QString& number)
{
    const qsizetype point = number.indexOf(QLatin1Char('.'));
    return point < 0 ? 0 : static_cast<int>(number.size() - point - 1);
}

QString alignedByPoint(const QString& number, int decimals)
{
    const QChar digitWide(0x2007), pointWide(0x2008);
    const int own = decimalsOf(number);
    if (own >= decimals)
        return number;
    QString text = number;
    if (own == 0)
        text += pointWide;
    return text + QString(decimals - own, digitWide);
}

}  // namespace tapward::app
