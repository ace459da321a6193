// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "session/session.h"
#include "session/study_worker.h"

namespace tapward::app {

/// What outlives a window that is made anew (a change of language): the drawing with its undo steps, what is predicted
/// of it, and what its studies found.
struct Desk {
    Session session;
    StudyWorker studies{session};
};

}  // namespace tapward::app
