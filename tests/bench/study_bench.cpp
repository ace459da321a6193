// SPDX-License-Identifier: GPL-3.0-or-later
// What the safety studies cost on the full sample coach: cases per second on one core and on two. Times vary
// with the machine; the ratio is what to compare.

#include <chrono>

#include <fmt/format.h>

#include "document/file.h"
#include "study/faults.h"
#include "study/presses.h"

using namespace tapward;

namespace {

template <class Work>
double secondsOf(Work work)
{
    const auto start = std::chrono::steady_clock::now();
    work();
    return std::chrono::duration<double>(std::chrono::steady_clock::now() - start).count();
}

}  // namespace

int main()
{
    const auto drawing = document::load(TAPWARD_SOURCE_DIR "/samples/long_hall_coach.tapward");
    if (!drawing) {
        fmt::print(stderr, "The sample could not be read.\n");
        return 2;
    }
    const auto report = [](const char* name, auto run) {
        double rate[2] = {0, 0};
        for (const unsigned hands : {1u, 2u}) {
            int cases = 0;
            const double taken_s = secondsOf([&] { cases = run(hands); });
            rate[hands - 1] = cases / taken_s;
            fmt::print("{}, {} core{}: {} cases in {:.2f} s, {:.0f} cases per second\n", name, hands,
                       hands == 1 ? "" : "s", cases, taken_s, rate[hands - 1]);
        }
        fmt::print("{}: two cores / one core: {:.2f}\n", name, rate[1] / rate[0]);
    };
    report("repeated presses", [&](unsigned hands) {
        study::PressesOptions options;
        options.hands = hands;
        const auto study = study::studyPresses(*drawing, options);
        return study ? study->cases : 0;
    });
    report("fault table", [&](unsigned hands) {
        study::FaultsOptions options;
        options.hands = hands;
        const auto study = study::studyFaults(*drawing, options);
        return study ? study->simulated : 0;
    });
    return 0;
}
