// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <functional>
#include <QTreeWidget>

namespace tapward::app {

/// Calls `pick` for what is clicked once or entered; a second click of a double one is not another.
void onPicked(QTreeWidget& list, const std::function<void(QTreeWidgetItem*)>& pick);

/// Gives each row, of groups and of what they hold, the lines its words need: the view measures rows as if they had one.
void fitRows(QTreeWidget& list);

/// The assemblies one can draw at once: preheat loops in all their variants, and what the person has kept. Dragged onto
/// the canvas, or picked with a click or Enter.
class AssemblyList final : public QTreeWidget {
    Q_OBJECT
public:
    explicit AssemblyList(QWidget* parent = nullptr);
    void refresh();  ///< the kept ones may have changed
    void filter(const QString& words);

Q_SIGNALS:
    void variantPicked(const QString& id);
    void ownPicked(const QString& file);
    void deleteRequested(const QString& file, const QString& title);

protected:
    void startDrag(Qt::DropActions) override;
    void keyPressEvent(QKeyEvent* event) override;
    void contextMenuEvent(QContextMenuEvent* event) override;
    void changeEvent(QEvent* event) override;
    void resizeEvent(QResizeEvent* event) override;

private:
    void pick(QTreeWidgetItem* item);
    void askDelete(QTreeWidgetItem* item);

    QString m_words;
};

}  // namespace tapward::app
