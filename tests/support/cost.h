// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <chrono>
#include <optional>
#include <sys/resource.h>
#include <sys/wait.h>
#include <unistd.h>

// A sanitizer's runtime brings these into the program, whoever compiled this file.
extern "C" {
[[gnu::weak]] void __asan_init();
[[gnu::weak]] void __tsan_init();
}

// What a piece of work costs: for tests of bounds on memory and time.
namespace tapward::spent {

inline bool sanitized() { return &__asan_init || &__tsan_init; }

/// The most memory this process had at a time, MB; under a sanitizer it says nothing about the program.
inline long peakMemory_MB()
{
    rusage use{};
    getrusage(RUSAGE_SELF, &use);
    return use.ru_maxrss / 1024;
}

struct Cost {
    bool done = false;  ///< it ended by itself, with true
    double seconds = 0, processor_s = 0;
    long peak_MB = 0;
};

/// Does the work in a child process of its own and tells what it took. Threads of the caller are not in the child.
template <class Work>
Cost costOf(Work work)
{
    const auto begin = std::chrono::steady_clock::now();
    const pid_t child = fork();
    if (child == 0) {
        bool fine = false;
        try {
            fine = work();
        } catch (...) {
        }
        _exit(fine ? 0 : 1);
    }
    Cost cost;
    int status = 0;
    rusage use{};
    if (child < 0 || wait4(child, &status, 0, &use) != child) {
        return cost;
    }
    const auto seconds = [](const timeval& time) {
        return static_cast<double>(time.tv_sec) + 1e-6 * static_cast<double>(time.tv_usec);
    };
    cost.done = WIFEXITED(status) && WEXITSTATUS(status) == 0;
    cost.seconds = std::chrono::duration<double>(std::chrono::steady_clock::now() - begin).count();
    cost.processor_s = seconds(use.ru_utime) + seconds(use.ru_stime);
    cost.peak_MB = use.ru_maxrss / 1024;
    return cost;
}

}  // namespace tapward::spent
