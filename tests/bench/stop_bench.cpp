// SPDX-License-Identifier: GPL-3.0-or-later
// Samples a second of the suggested stop on the full sample coach, on one thread and on two. Times vary with
// the machine; the ratio is what to compare.

#include <chrono>

#include <fmt/format.h>

#include "document/file.h"
#include "study/stop.h"

using namespace tapward;

int main()
{
    const auto drawing = document::load(TAPWARD_SOURCE_DIR "/samples/long_hall_coach.tapward");
    if (!drawing) {
        fmt::print(stderr, "The sample could not be read.\n");
        return 2;
    }
    double before_s = 0;
    for (const unsigned threads : {1U, 2U}) {
        study::StopOptions options;
        options.threads = threads;
        options.confirmations = 0;
        const auto start = std::chrono::steady_clock::now();
        const auto found = study::suggestStop(*drawing, options);
        const double taken_s = std::chrono::duration<double>(std::chrono::steady_clock::now() - start).count();
        if (!found) {
            return 2;
        }
        fmt::print("suggested stop, {} samples on {} thread(s): {:.2f} s, {:.0f} samples/s{}\n", found->samples,
                   threads, taken_s, found->samples / taken_s,
                   before_s > 0 ? fmt::format(", ratio {:.2f}", before_s / taken_s) : std::string());
        before_s = taken_s;
    }
    return 0;
}
