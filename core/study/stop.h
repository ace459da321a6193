// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <array>
#include <cstdint>
#include <functional>
#include <optional>
#include <stop_token>
#include <string>
#include <vector>

#include "study/prediction.h"
#include "study/presses.h"
#include "study/ranges.h"

namespace tapward::study {

/// What a run must not exceed. A sample keeps its limits when none is passed up to the stop.
struct StopLimits {
    double tap_C = kOutletLimit_C;  ///< water ready at the tap: 120 °F, the guidance for delivered water (CPSC; ASTM
                                  ///< F444; ASSE 1016)
    double coldEntry_C = kColdEntryLimit_C;  ///< water entering a line that cold outlets draw from: 104 °F (IECC C404,
        ///< IPC); nothing where the loop returns by a line of its own
    // The heater's own outlet limit and the pumps' temperature limits are read from the drawing.
};

struct StopOptions {
    std::string caseName;  ///< empty: the first case of the coach as it will be that presses a button
    int samples = 256;  ///< 16 or more
    std::uint64_t seed = 1;
    unsigned threads = 0;  ///< 0 = one per core; the answer is the same with any number
    double cell_m = 0.30;  ///< samples may be coarser than predictions; the suggestion is then run at theirs
    double step_s = 1.0;
    int confirmations = 48;  ///< fresh samples run with the suggested stop itself, at default resolution; 0 = none
    double keepAtLeast = 0.95;  ///< share of samples that must keep every limit, and of those whose heater lights
        ///< that must come to the stop
    double bothAtLeast = 0.75;  ///< share of samples whose heater lights that must reach the target and keep every
        ///< limit for a stop to be suggested at all: our choice
    StopLimits limits;
    std::optional<double> target_C;  ///< at the tap; none = the case's
    std::optional<std::vector<Range>> ranges;  ///< none = study::ranges() of the drawing and the case
    std::stop_token stop = {};
    std::function<void(int done, int all)> progress = {};  ///< one call at a time, from any thread
};

enum class StopKind { Volume, Time, Temperature, VolumeOrTemperature };

/// One way to end a run, and how it does over the samples. Shares are of all samples.
struct StopChoice {
    StopKind kind = StopKind::Volume;
    Message notPossible;  ///< why there is no such stop here; then the rest means nothing
    std::optional<double> volume_m3, time_s, temperature_C;  ///< as the sensors read them; whichever comes first
    double least = 0, most = 0;  ///< window of the first of them that does as well within one percent of samples
    double reaches = 0;  ///< the target at the tap
    double keeps = 0;  ///< every limit
    double comes = 0;  ///< the stop, of the samples whose heater lights
    double both = 0;
    double bothError = 0;  ///< standard error of `both` (binomial; a Latin hypercube's is smaller)
    double bothIfLit = 0;  ///< share of the samples whose heater lights
    double tapLow_C = 0, tapMiddle_C = 0, tapHigh_C = 0;  ///< 10, 50, 90 % of samples, at the stop
    double worstTap_C = 0;  ///< hottest of all samples
    double worstOvershoot_K = 0;  ///< that above the target; below zero when never reached
    double longestRun_s = 0;  ///< of the lit samples that reach their stop; the run timer must be above
};

/// A band over samples: the value that 10, 50 and 90 % of them stay below.
struct Band {
    std::vector<double> x;  ///< m³ pumped, or s since the press
    std::vector<double> low, middle, high;
};

/// How much one input matters for the water at the tap when the suggested stop comes.
struct Influence {
    Range range;
    double coefficient = 0;  ///< standardised rank regression: -1 ... 1; its sign says which way
};

/// The suggested stop with its proof.
struct StopStudy {
    std::string caseName;
    double target_C = 0;
    StopLimits limits;
    bool byColdLine = false;  ///< the loop returns through a line that cold outlets draw from
    double heaterOutletLimit_C = 0, pumpLimit_C = 0;  ///< 0 = none known
    int samples = 0;
    std::vector<Range> ranges;
    double lights = 0;  ///< share of samples whose heater lights at all
    std::array<StopChoice, 4> choices;  ///< in the order of StopKind
    int suggested = -1;  ///< index of the best choice; -1 = none is any good, see `reason`
    Message reason;
    /// Where none is good: the highest temperature at the tap that a stop would bring with every limit kept.
    std::optional<double> possibleTarget_C;
    Band byVolume, byTime;  ///< water at the tap while it warms up, run not stopped
    std::vector<Influence> influences;  ///< biggest first: measure this first
    double rankFit = 0;  ///< R² of the rank regression; below 0.7 the order is a hint only
    // the suggestion itself, run at default resolution on fresh samples
    int confirmed = 0;
    double confirmedReaches = 0, confirmedKeeps = 0, confirmedBoth = 0;
    double confirmedWorstTap_C = 0;
    double resolutionError_K = 0;  ///< coarse against default resolution on the drawing as it is: water at
        ///< the tap when the suggested stop comes
    const StopChoice* best() const { return suggested >= 0 ? &choices[static_cast<std::size_t>(suggested)] : nullptr; }
};

/// Samples what is not known (Latin hypercube, fixed seed), runs one press without a stop for each, and looks
/// on those runs for the stop that most often brings the target to the tap while every limit is kept. A stop
/// by temperature goes by the stop sensor's own lag, one by volume by the flow sensor's own reading.
/// Influences: standardised rank regression coefficients, Iman & Conover (1979), Technometrics 21(4), 499-509.
/// @return a Problem when stopped, or when there is no loop, no controller or no case to ask about.
Result<StopStudy> suggestStop(const document::Drawing& drawing, const StopOptions& options = {});

/// How one given stop does on samples of its own: the same count as suggestStop makes of its choices. The
/// values of `choice` that are set are used; the rest of it is filled in anew.
Result<StopChoice> tryStop(const document::Drawing& drawing, StopChoice choice, const StopOptions& options = {});

/// The drawing with its controller set to this stop, for the window's "use it".
document::Drawing withStop(const document::Drawing& drawing, const StopChoice& choice);

}  // namespace tapward::study
