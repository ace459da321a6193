// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <map>
#include <QPainter>
#include <QPushButton>
#include <QToolButton>
#include <utility>

namespace tapward::app {

/// A button of two texts: what it does in bold, and more below, both wrapped. Qt's own command link keeps letters of
/// nine points whatever the desktop says.
class LinkButton final : public QPushButton {
    Q_OBJECT
public:
    LinkButton(const QIcon& icon, const QString& text, const QString& more, QWidget* parent = nullptr);

    QSize sizeHint() const override;
    QSize minimumSizeHint() const override;
    int heightForWidth(int width) const override;

protected:
    void paintEvent(QPaintEvent* event) override;
    void changeEvent(QEvent* event) override;

private:
    QFont bold() const;
    int textLeft() const;
    /// The rooms of both texts in a button this wide.
    std::pair<QRect, QRect> texts(int width) const;

    QString m_more;
    mutable std::map<int, std::pair<QRect, QRect>> m_texts;  ///< by width: layouts ask again and again
};

/// Around the whole of a button that has no frame of its own: the style shows its focus hardly or not at all.
/// A path that may be broken behind each of its folders.
QString breakable(QString path);

void paintFocusFrame(const QWidget& widget, QPainter& painter);

/// A picture with a name under it, no frame until the pointer is over it.
class PictureButton final : public QToolButton {
    Q_OBJECT
public:
    PictureButton()
    {
        setAutoRaise(true);  // a frame's shades cost a pool of threads before the first frame
        setToolButtonStyle(Qt::ToolButtonTextUnderIcon);
    }

protected:
    void paintEvent(QPaintEvent* event) override
    {
        QToolButton::paintEvent(event);
        QPainter painter(this);
        if (hasFocus())
            paintFocusFrame(*this, painter);
    }
};

}  // namespace tapward::app
