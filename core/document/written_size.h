// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <cstddef>
#include <optional>

#include "document/edit.h"

// How long a drawing gets as a file; private to this room. What can be written is what the reader takes back: the
// edit door asks here, and saving reads back what it wrote.
namespace tapward::document {

/// No fewer bytes than write() takes on one line. Cheap: nothing is written, texts are looked at once.
std::size_t mostBytes(const Drawing& drawing);
/// The same after one step; nothing is copied. @pre the step can be made
std::size_t mostBytes(const Drawing& drawing, const Step& step);

/// The bytes on one line, exactly: everything but the pictures is written for it.
std::size_t tightBytes(const Drawing& drawing);

/// Why the drawing after a change could not be opened again for its length. What makes a drawing that is too long
/// already no longer is no reason.
std::optional<Problem> lengthFlaw(const Drawing& before, const Drawing& after);

}  // namespace tapward::document
