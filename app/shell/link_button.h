// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <map>
#include <QPushButton>
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

}  // namespace tapward::app
