// SPDX-License-Identifier: GPL-3.0-or-later
#include "shell/link_button.h"

#include <algorithm>
#include <QDir>
#include <QEvent>
#include <QFontMetrics>
#include <QStyleOptionButton>
#include <QStylePainter>

#include "look/spacing.h"

namespace tapward::app {

namespace {

constexpr int kMargin = look::kNear, kGap = look::kNext;
constexpr QChar kMayBreak(0x200B);  // zero-width space
constexpr int kWrapped = Qt::AlignLeft | Qt::AlignTop | Qt::TextWordWrap | Qt::TextHideMnemonic;

int heightOf(const QFont& font, const QString& text, int width)
{
    return QFontMetrics(font).boundingRect(QRect(0, 0, width, 10000), kWrapped, text).height();
}

int longestWord(const QFont& font, const QString& text)
{
    int most = 0;
    for (const auto& word : QString(text).replace(kMayBreak, QLatin1Char(' ')).split(QLatin1Char(' ')))
        most = std::max(most, QFontMetrics(font).horizontalAdvance(word));
    return most;
}

}  // namespace

QString breakable(QString path)
{
    const QChar separator = QDir::separator();
    return path.replace(separator, QString(separator) + kMayBreak);
}

void paintFocusFrame(const QWidget& widget, QPainter& painter)
{
    painter.setRenderHint(QPainter::Antialiasing);
    painter.setBrush(Qt::NoBrush);
    painter.setPen(QPen(widget.palette().color(QPalette::Highlight), 2));
    painter.drawRoundedRect(QRectF(widget.rect()).adjusted(1, 1, -1, -1), 3, 3);
}

LinkButton::LinkButton(const QIcon& icon, const QString& text, const QString& more, QWidget* parent)
    : QPushButton(icon, text, parent), m_more(more)
{
    setIconSize({24, 24});
    setAccessibleName(text);
    setAccessibleDescription(QString(more).remove(kMayBreak));
    QSizePolicy policy(QSizePolicy::Preferred, QSizePolicy::Fixed);
    policy.setHeightForWidth(true);
    setSizePolicy(policy);
    setAttribute(Qt::WA_Hover);
}

QFont LinkButton::bold() const { return look::strongFont(font()); }

int LinkButton::textLeft() const { return kMargin + iconSize().width() + kGap; }

std::pair<QRect, QRect> LinkButton::texts(int width) const
{
    if (const auto known = m_texts.find(width); known != m_texts.end())
        return known->second;
    const int room = std::max(1, width - textLeft() - kMargin);
    const int title = heightOf(bold(), text(), room), more = heightOf(font(), m_more, room);
    const std::pair both{QRect(textLeft(), kMargin, room, title), QRect(textLeft(), kMargin + title, room, more)};
    return m_texts[width] = both;
}

int LinkButton::heightForWidth(int width) const
{
    return std::max(texts(width).second.bottom() + 1, kMargin + iconSize().height()) + kMargin;
}

QSize LinkButton::sizeHint() const
{
    const int natural =
        std::max(QFontMetrics(bold()).horizontalAdvance(text()), fontMetrics().horizontalAdvance(m_more));
    const int width = textLeft() + kMargin + 2 + std::min(natural, 70 * fontMetrics().averageCharWidth());
    return {width, heightForWidth(width)};
}

QSize LinkButton::minimumSizeHint() const
{
    const int width = textLeft() + kMargin + 1 + std::max(longestWord(bold(), text()), longestWord(font(), m_more));
    return {width, 2 * kMargin + QFontMetrics(bold()).height() + fontMetrics().height()};
}

void LinkButton::changeEvent(QEvent* event)
{
    m_texts.clear();
    QPushButton::changeEvent(event);
    if (event->type() == QEvent::FontChange)
        updateGeometry();
}

void LinkButton::paintEvent(QPaintEvent*)
{
    QStylePainter painter(this);
    QStyleOptionButton option;
    initStyleOption(&option);
    option.features |= QStyleOptionButton::CommandLinkButton;
    option.text.clear();
    option.icon = QIcon();
    painter.drawControl(QStyle::CE_PushButton, option);

    const auto [title, more] = texts(width());
    const int lift = (QFontMetrics(bold()).height() - iconSize().height()) / 2;  // level with the first line
    const QRect picture(QPoint(kMargin, std::max(1, title.top() + lift)), iconSize());
    icon().paint(&painter, picture, Qt::AlignCenter, isEnabled() ? QIcon::Normal : QIcon::Disabled);
    painter.setFont(bold());
    painter.drawItemText(title, kWrapped, option.palette, isEnabled(), text(), QPalette::ButtonText);
    painter.setFont(font());
    painter.drawItemText(more, kWrapped, option.palette, isEnabled(), m_more, QPalette::ButtonText);
    if (hasFocus())
        paintFocusFrame(*this, painter);
}

}  // namespace tapward::app
