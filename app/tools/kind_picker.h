// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QWidget>

class QLineEdit;
class QListWidget;

namespace tapward::app {

/// A small list of all kinds that opens at a place, filters while one types, and goes away: Enter or a
/// click chooses, Esc gives up.
class KindPicker final : public QWidget {
    Q_OBJECT
public:
    explicit KindPicker(QWidget* parent);
    void popup(const QPoint& global);

Q_SIGNALS:
    void chosen(const QString& kind);

protected:
    bool eventFilter(QObject* watched, QEvent* event) override;

private:
    void filter(const QString& words);
    void choose();

    QLineEdit* m_search;
    QListWidget* m_list;
};

}  // namespace tapward::app
