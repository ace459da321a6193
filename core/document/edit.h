// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <optional>
#include <string>
#include <variant>
#include <vector>

#include "base/result.h"
#include "document/drawing.h"

namespace tapward::document {

// Steps. Each carries everything needed to make it; apply() returns the edit that takes it back.
// `nextId` in the first two is for taking steps back: the drawing's id counter afterwards, none = as it
// follows. So a drawing whose edits are all undone is the same to the last byte.
struct AddPart {
    Part part;
    PartId nextId = kNoPart;
};      ///< part.id 0 = given at apply
/// A pipe, or a part whose ports hold no pipe; nothing may refer to it (controller, case, dismissal).
struct RemovePart {
    PartId id;
    PartId nextId = kNoPart;
};
/// Takes the place of the part with the same id and kind, whole: place, turn, tag, stage, ends, bends, label,
/// height, values. For one value use SetField.
struct ChangePart {
    Part part;
};
struct SetField {
    PartId id;
    std::string key;
    std::optional<parts::Entry> entry;
};  ///< nullopt = default
struct SetJob {
    Job job;
};
struct SetCases {
    std::vector<Case> cases;
};
struct SetDismissals {
    std::vector<Dismissal> dismissals;
};
using Step = std::variant<AddPart, RemovePart, ChangePart, SetField, SetJob, SetCases, SetDismissals>;

/// One user gesture: a title ("Move circulator pump") and its steps, applied in order, all or none.
struct Edit {
    Message title;
    std::vector<Step> steps;
};

/// Why the edit cannot be made (first reason), or nothing.
std::optional<Problem> refusal(const Drawing& drawing, const Edit& edit);

/// Makes the edit and returns the one that takes it back. @pre !refusal(drawing, edit)
Edit apply(Drawing& drawing, Edit edit);

// --- gestures, each one Edit; none changes the drawing ---

/// A new part with a free tag at a place. For pipes use connect().
Result<Edit> placePart(const Drawing& drawing, std::string_view kind, Point at, Stage stage, int turn = 0);
/// A pipe run between two free ports / loose places. Where its usual way would lie on another pipe it gets bends of its
/// own, as if made by hand.
Result<Edit> connect(const Drawing& drawing, PipeEnd from, PipeEnd to, Stage stage);
/// A two-port (or tee-like) part dropped on a pipe: the pipe becomes two, real lengths and counted fittings
/// divided by `share` (0..1 from ends[0]); the part turns to the pipe's direction.
Result<Edit> splitPipe(const Drawing& drawing, PartId pipe, std::string_view kind, Point at, double share, Stage stage);
/// A part with one port dropped on a pipe: a tee is put in there, the part beside it where there is room, joined by a new
/// pipe. A part with more ports is refused in the words of splitPipe(), or goes into the line.
Result<Edit> hangOnPipe(const Drawing& drawing, PartId pipe, std::string_view kind, Point at, double share,
                        Stage stage);
/// Start or end a new pipe on an existing pipe: a tee is put in at the place.
Result<Edit> teeOff(const Drawing& drawing, PartId pipe, Point at, double share, Stage stage);
/// Removes parts and the pipes that hang on them; `heal` joins the two pipes of an in-line part into one
/// (lengths and fittings added, fields of the longer one).
Result<Edit> removeParts(const Drawing& drawing, const std::vector<PartId>& ids, bool heal);
/// Moves parts; pipes stay attached. Bends move when both ends move.
Result<Edit> moveParts(const Drawing& drawing, const std::vector<PartId>& ids, double dx, double dy);
Result<Edit> turnParts(const Drawing& drawing, const std::vector<PartId>& ids, int quarterTurns);
Result<Edit> flipParts(const Drawing& drawing, const std::vector<PartId>& ids);
Result<Edit> setStage(const Drawing& drawing, const std::vector<PartId>& ids, Stage stage);
/// Copies of parts (and the pipes between them) from any drawing, moved, with new ids and tags.
Result<Edit> pasteParts(const Drawing& drawing, const std::vector<Part>& copied, double dx, double dy);

}  // namespace tapward::document
