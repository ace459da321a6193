// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <initializer_list>
#include <memory>
#include <optional>
#include <stop_token>
#include <vector>

#include "study/prediction.h"
#include "study/presses.h"
#include "study/stop.h"

namespace tapward::study {

/// The hottest water known of at one place, and the script that shows it.
struct HotPlace {
    HeatPlace place = HeatPlace::HeaterOutlet;
    document::PartId part = document::kNoPart;
    double hottest_C = 0;
    double at_s = 0;  ///< in `script`
    int presses = 0;  ///< started runs it takes
    bool searched = false;  ///< found by the search over presses; else `script` is a case of the drawing
    bool faulty = false;  ///< the script begins a fault
    document::Case script;
};

/// What is known of a drawing, and the only source of what any surface says of how hot it gets and where to stop.
/// `Drawn`: the drawing's own cases alone. `Full`: every place searched over presses, the stop held against samples.
struct Assessment {
    enum class Depth { Drawn, Full } depth = Depth::Drawn;
    bool searchable = false;  ///< a loop is drawn that can be pressed: there is something to search
    /// Per place the hottest with nothing broken, and the hottest of the drawn cases that begin a fault; hottest first.
    std::vector<HotPlace> sound, broken;
    std::shared_ptr<const PressesStudy> presses;  ///< at full depth, where it has an answer; else why not
    Message noPresses;
    std::shared_ptr<const StopStudy> stop;
    Message noStop;

    /// Whether more is to be expected than is known: then figures are told as 'at least'.
    bool isAtLeast() const { return searchable && depth == Depth::Drawn; }
    /// The hottest of all places of these kinds (at one part, where one is given), faults left out or not; null where
    /// there is none.
    const HotPlace* hottest(std::initializer_list<HeatPlace> places, bool withFaults = false,
                            document::PartId part = document::kNoPart) const;
};

/// At once, from what has been predicted.
Assessment assess(const document::Drawing& drawing, const Prediction& prediction);

/// With the answers of the two studies, or why they have none.
Assessment assess(const document::Drawing& drawing, const Prediction& prediction,
                  std::shared_ptr<const PressesStudy> presses, Message noPresses, std::shared_ptr<const StopStudy> stop,
                  Message noStop);

struct AssessOptions {
    std::stop_token stop = {};
    Progress progress = {};
};

/// At full depth: runs both studies, as they are run when one is asked for alone.
/// @return a Problem only when stopped; a drawing without a loop is fully known from its cases.
Result<Assessment> assessFully(const document::Drawing& drawing, const Prediction& prediction,
                               const AssessOptions& options = {});

}  // namespace tapward::study
