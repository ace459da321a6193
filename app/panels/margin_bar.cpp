// SPDX-License-Identifier: GPL-3.0-or-later
#include "panels/margin_bar.h"

#include <algorithm>
#include <QPainter>

#include "look/theme.h"
#include "panels/icons.h"

namespace tapward::app {

MarginBar::MarginBar(QWidget* parent) : QWidget(parent)
{
    setSizePolicy(QSizePolicy::Expanding, QSizePolicy::Fixed);
    setAccessibleName(tr("Loop flow against activation flow"));
}

QSize MarginBar::sizeHint() const { return {160, fontMetrics().height() + 22}; }

void MarginBar::setMargin(const std::optional<Margin>& margin)
{
    m_margin = margin;
    setAccessibleDescription(margin ? margin->word + QStringLiteral(". ") + margin->text : QString());
    update();
}

void MarginBar::paintEvent(QPaintEvent*)
{
    if (!m_margin)
        return;
    QPainter painter(this);
    painter.setRenderHint(QPainter::Antialiasing);
    const double letters = fontMetrics().height();
    const QRectF bar(1, letters + 4, width() - 2, 14);
    // The activation flow stands at 60 % of the width, so both sides of it have room.
    const double full = std::max(m_margin->activation_m3s / 0.6, m_margin->flow_m3s * 1.05);
    const double flowAt = bar.left() + m_margin->flow_m3s / full * bar.width();
    const double needAt = bar.left() + m_margin->activation_m3s / full * bar.width();

    const bool off = !isEnabled();
    const QColor text = palette().color(off ? QPalette::Disabled : QPalette::Active, QPalette::WindowText);
    painter.setPen(QPen(palette().color(QPalette::Mid), 1));
    painter.setBrush(palette().base());
    painter.drawRoundedRect(bar, 3, 3);
    const QColor fill =
        off ? palette().color(QPalette::Disabled, QPalette::WindowText) : look::severity(m_margin->weight, palette());
    painter.setPen(Qt::NoPen);
    painter.setBrush(fill);
    painter.drawRoundedRect(QRectF(bar.left(), bar.top(), std::max(2.0, flowAt - bar.left()), bar.height()), 3, 3);
    if (m_margin->weight == review::Severity::Danger) {  // hatched: told apart without colour
        painter.setBrush(QBrush(palette().color(QPalette::Base), Qt::BDiagPattern));
        painter.drawRoundedRect(QRectF(bar.left(), bar.top(), std::max(2.0, flowAt - bar.left()), bar.height()), 3, 3);
    }
    painter.setPen(QPen(text, 2));
    painter.drawLine(QPointF(needAt, bar.top() - 4), QPointF(needAt, bar.bottom() + 3));
    const QString need = tr("needed to light");
    const double wide = fontMetrics().horizontalAdvance(need);
    const double left = std::clamp(needAt - wide / 2, 0.0, std::max(0.0, width() - wide));
    painter.drawText(QRectF(left, 0, wide + 4, letters), Qt::AlignLeft | Qt::AlignVCenter, need);
}

}  // namespace tapward::app
