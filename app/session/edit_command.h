// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QUndoCommand>
#include <vector>

#include "document/edit.h"

namespace tapward::app {

class Session;

/// One command for every edit; holds part ids and values, never scene items. Brings the selection of
/// its moment back with it.
class EditCommand final : public QUndoCommand {
public:
    EditCommand(Session& session, document::Edit edit, int burst);
    void redo() override;
    void undo() override;
    int id() const override { return m_burst != 0 ? 1 : -1; }
    bool mergeWith(const QUndoCommand* newer) override;  ///< only edits of the same burst
    void sayAgain();  ///< its text, in the language and units of now

private:
    void flip();

    Session& m_session;
    Message m_title;
    document::Edit m_edit;  // what the next undo or redo will do
    std::vector<document::PartId> m_before, m_after;
    int m_burst;
    bool m_done = false;
};

}  // namespace tapward::app
