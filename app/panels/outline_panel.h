// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QWidget>

#include "session/session.h"

class QLineEdit;
class QTreeWidget;
class QTreeWidgetItem;

namespace tapward::document {
class PipesAtPorts;
}

namespace tapward::app {

class CatchUp;

/// The drawing as words: every part with its kind, stage, what it is joined to, and the flow and warmth in
/// it at the slider's second. A full equivalent of the picture; selecting here selects there.
class OutlinePanel final : public QWidget {
    Q_OBJECT
public:
    explicit OutlinePanel(Session& session, QWidget* parent = nullptr);
    void focusFilter();
    void findNext();  ///< the next part that fits the words typed, shown on the drawing
    QTreeWidget& tree();  ///< up to date even while the pane is hidden

private:
    void refresh();
    void rebuild();
    bool reuse(const std::vector<document::PartId>& order);
    void fillRow(QTreeWidgetItem& item, const document::Part& part, const document::PipesAtPorts& pipeAt);
    void refreshLive();
    void showSelection();
    void filter();

    Session& m_session;
    QLineEdit* m_filter;
    QTreeWidget* m_tree;
    bool m_filling = false;
    bool m_outdated = false;  ///< more than flow and warmth
    CatchUp* m_catchUp;
};

}  // namespace tapward::app
