// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <array>
#include <cstdint>
#include <map>
#include <optional>
#include <string>
#include <vector>

#include "parts/part_kind.h"

namespace tapward::document {

/// A part's id inside one drawing: positive, never used again in that drawing.
using PartId = std::int32_t;
inline constexpr PartId kNoPart = 0;

/// Existing plumbing, what the job adds, what it takes out.
enum class Stage { Existing, Added, Removed };
/// Before = existing + removed. After = existing + added. An absent part with exactly two present pipes
/// is bridged: the pipes join straight, as the technician would leave or find them.
enum class View { Before, After, Both };
bool isPresent(Stage stage, View view);

/// Canvas place in modules (grid steps), x right, y down. Not a real length.
struct Point {
    double x = 0;
    double y = 0;
    friend bool operator==(const Point&, const Point&) = default;
};

/// One end of a pipe: a port of a part, or loose at a place on the canvas.
struct PipeEnd {
    PartId part = kNoPart;   ///< kNoPart = loose
    std::string port;        ///< port id of that part's kind
    Point loose;             ///< where it hangs when loose
    friend bool operator==(const PipeEnd&, const PipeEnd&) = default;
};

/// Keys this version does not know, kept as compact JSON text so that they survive a round trip. The key is
/// the JSON pointer from the object that holds them: "/maker", "/fields/length_m/read_by".
using Unknown = std::map<std::string, std::string, std::less<>>;

/// A part drawn by an assembly (document/proposal.h) remembers which one and as what, so that the assembly can
/// be swapped for another variant as a whole. A copied part has no mark.
struct Mark {
    std::string variant;             ///< Variant as in files: "cold_line.two_parallel"
    std::string role;                ///< "pump_1"; once in a drawing
    PartId coldPipe = kNoPart;  ///< on the first tee: the place asked for on the cold side; its pipe may be gone
    double coldShare = 0.5;  ///< ... share of that pipe's drawn length
    Unknown unknown;
    friend bool operator==(const Mark&, const Mark&) = default;
};

/// A part: a symbol with ports, or (kind "pipe_run") a line between two ports.
struct Part {
    PartId id = kNoPart;
    std::string kind;  ///< PartKind::id
    std::string tag;  ///< unique in the drawing: "P1"
    Stage stage = Stage::Existing;
    Point at;  ///< symbol centre; unused for pipes
    int turn = 0;  ///< quarter turns clockwise, 0..3
    bool flipped = false;  ///< mirrored left-right before turning
    std::optional<Point> label;  ///< hand-placed label offset from the centre
    double height_m = 0;  ///< above the coach floor; pipes take theirs from their ends
    parts::Entries entries;
    // pipes only:
    std::array<PipeEnd, 2> ends;  ///< water flows from ends[0] to ends[1] when flow is positive
    std::vector<Point> bends;  ///< hand-made corners in order; empty = routed by itself
    std::optional<Mark> mark;  ///< the assembly it belongs to
    Unknown unknown;
    friend bool operator==(const Part&, const Part&) = default;
};

/// What happens in a case, and when.
enum class ActionKind {
    OpenOutlet,  ///< value = opening 0..1, second = hot share 0..1 (negative = the outlet's own)
    CloseOutlet,
    PressButton,
    SetValve,  ///< hand valve, value = opening
    UseCity,
    UsePump,
    UseNothing,  ///< which supply feeds the coach
    SetVoltage,  ///< value = V at the battery
    StartFault,  ///< fault = id of one of the part kind's faults
    EndFault
};
struct Action {
    double at_s = 0;
    ActionKind kind = ActionKind::PressButton;
    PartId part = kNoPart;
    double value = 1;
    double second = -1;
    std::string fault;
    Unknown unknown;
    friend bool operator==(const Action&, const Action&) = default;
};

/// A named script of actions with its starting state.
struct Case {
    std::string name;  ///< unique in the drawing
    View view = View::After;  ///< Before or After
    double duration_s = 180;  ///< 1 .. 7200
    double start_C = (70 - 32) / 1.8;  ///< all water and walls (70 °F)
    std::optional<double> ambient_C;  ///< overrides every bay
    std::optional<double> supply_C;  ///< overrides the supplies' own water temperature
    std::optional<double> storedHeater_C;  ///< storage heater water at the start; default its setpoint
    double target_C = (105 - 32) / 1.8;  ///< "warm" at the tap (105 °F)
    PartId targetPart = kNoPart;  ///< outlet or sensor the question is about; none = chosen by itself
    std::vector<Action> actions;  ///< any order; applied by time, then by place
    Unknown unknown;
    friend bool operator==(const Case&, const Case&) = default;
};

/// Title block and job data.
struct Job {
    std::string title, customer, coach, technician, date, revision, notes;
    std::string currency = "USD";
    double hours = 0;  ///< labour
    double hourlyRate = 0;
    double altitude_m = 0;
    bool sampleFigures = false;  ///< invented scenario: shown on screen and on every page
    Unknown unknown;
    friend bool operator==(const Job&, const Job&) = default;
};

/// A finding somebody looked at and set aside, with the reason; stored and printed.
struct Dismissal {
    std::string rule;
    PartId part = kNoPart;
    std::string reason;
    Unknown unknown;
    friend bool operator==(const Dismissal&, const Dismissal&) = default;
};

/// The whole document. Parts are kept sorted by id.
struct Drawing {
    Job job;
    std::vector<Part> parts;
    std::vector<Case> cases;
    std::vector<Dismissal> dismissals;
    Unknown unknown;
    PartId nextId = 1;

    const Part* find(PartId id) const;
    Part* find(PartId id);
    const Part* findTag(std::string_view tag) const;
    const Case* findCase(std::string_view name) const;
    /// The pipe whose end sits on this port, if any (a port holds one pipe end at most).
    const Part* pipeAt(PartId part, std::string_view port) const;
    /// "P3": the kind's letter and the lowest free number.
    std::string freeTag(const parts::PartKind& kind) const;
    friend bool operator==(const Drawing&, const Drawing&) = default;
};

/// Values of a part with its kind's defaults behind. @pre the kind exists (documents are checked on load)
parts::Values values(const Part& part);
const parts::PartKind& kindOf(const Part& part);

/// Where a port is on the canvas and which way it faces, turn and flip applied.
Point portPlace(const Part& part, const parts::Port& port);
parts::Side portSide(const Part& part, const parts::Port& port);

/// The corners of a pipe on the canvas, ends included, right-angled. Hand-made bends are kept; without
/// them a short route leaving both ports straight is made.
std::vector<Point> route(const Drawing& drawing, const Part& pipe);

}  // namespace tapward::document
