// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QLayout>
#include <vector>

namespace tapward::app {

/// Puts its widgets side by side and goes on in the next line when there is no more room: a bar that is as narrow
/// as its widest group. What may grow (an expanding width) shares the room left in its line.
class FlowLayout final : public QLayout {
    Q_OBJECT
public:
    explicit FlowLayout(QWidget* parent = nullptr) : QLayout(parent) {}
    ~FlowLayout() override;

    void addItem(QLayoutItem* item) override { m_items.push_back(item); }
    int count() const override { return static_cast<int>(m_items.size()); }
    QLayoutItem* itemAt(int index) const override;
    QLayoutItem* takeAt(int index) override;
    Qt::Orientations expandingDirections() const override { return Qt::Horizontal; }
    bool hasHeightForWidth() const override { return true; }
    int heightForWidth(int width) const override { return arrange(QRect(0, 0, width, 0), false); }
    QSize sizeHint() const override;
    QSize minimumSize() const override;
    void setGeometry(const QRect& rect) override;

private:
    int arrange(const QRect& rect, bool move) const;

    std::vector<QLayoutItem*> m_items;
};

}  // namespace tapward::app
