// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <array>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "document/edit.h"

// Proposing a preheat loop: one gesture from a place on the hot side to a place on the cold side draws all of it.
namespace tapward::document {

/// The way the water goes back to the heater.
enum class ReturnWay {
    ColdLine,  ///< through the cold line from near the tap
    OwnLine,   ///< a new line to the heater's inlet
    Tank       ///< into the fresh tank; the demand pump brings it back
};
enum class PumpSet { One, TwoInParallel, TwoInSeries };

struct Variant {
    ReturnWay way = ReturnWay::ColdLine;
    PumpSet pumps = PumpSet::One;
    friend bool operator==(const Variant&, const Variant&) = default;
};
/// All nine, by return and then by pumps.
std::array<Variant, 9> variants();
std::string_view idOf(const Variant& variant);                ///< in files: "cold_line.two_parallel"
std::optional<Variant> variantNamed(std::string_view id);
Text title(ReturnWay way);  ///< "Return by the cold line"
Text title(PumpSet pumps);  ///< "two circulators in parallel"

/// A place where the proposal begins or ends.
struct Place {
    PartId pipe = kNoPart;  ///< on a pipe ...
    double share = 0.5;     ///< ... at this share of its drawn length from ends[0]
    PipeEnd port{};         ///< or a free port, when pipe is kNoPart
};

enum class WaterSide { None, Hot, Cold };
/// Which water stands at a place with the coach as it is, proposals left out; None when no heater is joined to it.
WaterSide sideOf(const Drawing& drawing, const Place& place);

/// Why a proposal cannot begin (`hot`) or end there, or nothing.
std::optional<Problem> beginRefusal(const Drawing& drawing, const Place& hot);
std::optional<Problem> endRefusal(const Drawing& drawing, const Place& hot, const Place& cold, ReturnWay way);
/// Where a proposal from `hot` would usually end: the cold side of the nearest tap, the heater's inlet, the tank. None when
/// `hot` is neither on a pipe nor a port.
std::optional<Place> usualEnd(const Drawing& drawing, const Place& hot, ReturnWay way);

/// The whole loop as one edit, all of it 'added': tee, sensors, motorized valve, flow sensor, circulators, check
/// valves, the way back (into a tank through a throttle), controller, button, fuse; laid out in free room, wired, with safe settings (stop sensor and
/// volume, high limit, inlet lockout, cool-down wait). Lengths are estimates, to be measured. A case that presses the
/// button comes with it when there is none. Refused, with the reason: a place on the wrong side, no heater, a loop
/// that is there already, no room for a tee, no fresh tank to return to.
/// With ReturnWay::OwnLine the line goes to the heater's inlet, whatever `cold` says, unless `cold` is there; with
/// ReturnWay::Tank it goes to the tank.
Result<Edit> propose(const Drawing& drawing, const Place& hot, const Place& cold, Variant variant);

/// The variant of the proposal in the drawing, if there is one.
std::optional<Variant> proposed(const Drawing& drawing);
/// Whether a loop is drawn at all, proposed or by hand.
bool hasLoop(const Drawing& drawing);
/// Its parts and pipes, in id order.
std::vector<PartId> proposalParts(const Drawing& drawing);
/// Another variant in the same place, as one edit. Parts and pipes that both have stay what they are: tags, typed
/// lengths, settings, cases that name them. Refused when something else was joined to the proposal by hand, and
/// for a loop that was drawn part by part: which part plays which role is not known.
Result<Edit> swapVariant(const Drawing& drawing, Variant variant);

}  // namespace tapward::document
