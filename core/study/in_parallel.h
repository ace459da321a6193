// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <algorithm>
#include <atomic>
#include <cstddef>
#include <thread>
#include <vector>

namespace tapward::study {

/// Runs work(0) ... work(count - 1) on `hands` threads, 0 = one per core; returns when all are done. Each
/// call of `work` has its own slot to write to, so the answer does not depend on the number of hands.
template <class Work>
void inParallel(std::size_t count, Work work, unsigned hands = 0)
{
    std::atomic<std::size_t> next{0};
    const auto take = [&] {
        for (std::size_t i = next++; i < count; i = next++) {
            work(i);
        }
    };
    const std::size_t wanted = hands > 0 ? hands : std::max(1u, std::thread::hardware_concurrency());
    std::vector<std::jthread> others;
    for (std::size_t h = 1; h < std::min(wanted, count); ++h) {
        others.emplace_back(take);
    }
    take();
}

}  // namespace tapward::study
