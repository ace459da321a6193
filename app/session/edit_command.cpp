// SPDX-License-Identifier: GPL-3.0-or-later
#include "session/edit_command.h"

#include <utility>

#include "session/message_text.h"
#include "session/session.h"

namespace tapward::app {

namespace {

/// The part a step changes in place, or kNoPart when the step does something else.
document::PartId changedPart(const document::Step& step)
{
    if (const auto* change = std::get_if<document::ChangePart>(&step))
        return change->part.id;
    return document::kNoPart;
}

/// True when undoing `older` alone already undoes `newer` too: both put back the same whole parts.
bool samePlaces(const document::Edit& older, const document::Edit& newer)
{
    if (older.steps.size() != newer.steps.size())
        return false;
    for (std::size_t i = 0; i < older.steps.size(); ++i) {
        const auto* a = std::get_if<document::SetField>(&older.steps[i]);
        const auto* b = std::get_if<document::SetField>(&newer.steps[i]);
        const bool sameField = a != nullptr && b != nullptr && a->id == b->id && a->key == b->key;
        const auto part = changedPart(older.steps[i]);
        if (!sameField && (part == document::kNoPart || part != changedPart(newer.steps[i])))
            return false;
    }
    return true;
}

}  // namespace

EditCommand::EditCommand(Session& session, document::Edit edit, int burst)
    : m_session(session), m_title(edit.title), m_edit(std::move(edit)), m_before(session.selection()), m_burst(burst)
{
    sayAgain();
}

void EditCommand::sayAgain() { setText(messageText(m_title, m_session.units())); }

void EditCommand::redo()
{
    flip();
    if (std::exchange(m_done, true))
        m_session.select(m_after);
}

void EditCommand::undo()
{
    m_after = m_session.selection();
    flip();
    m_session.select(m_before);
}

void EditCommand::flip() { m_edit = m_session.flip(std::move(m_edit)); }

bool EditCommand::mergeWith(const QUndoCommand* newer)
{
    const auto* other = dynamic_cast<const EditCommand*>(newer);
    if (other == nullptr || other->m_burst != m_burst)
        return false;
    if (!samePlaces(m_edit, other->m_edit)) {
        auto steps = other->m_edit.steps;  // undo the newer one first
        steps.insert(steps.end(), m_edit.steps.begin(), m_edit.steps.end());
        m_edit.steps = std::move(steps);
    }
    return true;
}

}  // namespace tapward::app
