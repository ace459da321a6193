// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QWidget>

class QLineEdit;
class QTreeWidget;
class QTreeWidgetItem;

namespace tapward::app {

class AssemblyList;

/// The list of parts to drag onto the canvas, by group, with a search field. Enter or a double click
/// picks a part for the next click on the canvas.
class Tray final : public QWidget {
    Q_OBJECT
public:
    explicit Tray(QWidget* parent = nullptr);

    QTreeWidget* list() const { return m_list; }
    QLineEdit* search() const { return m_search; }
    AssemblyList* assemblies() const { return m_assemblies; }
    /// Nothing of it is in hand any more.
    void layDown();

Q_SIGNALS:
    void kindPicked(const QString& kind);

protected:
    void changeEvent(QEvent* event) override;
    bool eventFilter(QObject* watched, QEvent* event) override;

private:
    void fill();
    void filter(const QString& words);
    void pick(QTreeWidgetItem* item);

    QLineEdit* m_search;
    QTreeWidget* m_list;
    AssemblyList* m_assemblies;
};

}  // namespace tapward::app
