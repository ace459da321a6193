// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
// Counts what a test program asks of new. Include in one file of a program only: it replaces the
// global operators, every form a sanitizer also replaces, so that none is mixed with another's.

#include <atomic>
#include <cstdlib>
#include <new>

namespace tapward::tests {
inline std::atomic<long> allocations{0};

inline void* counted(std::size_t size) noexcept
{
    ++allocations;
    return std::malloc(size == 0 ? 1 : size);
}
inline void* countedOrThrow(std::size_t size)
{
    if (void* memory = counted(size))
        return memory;
    throw std::bad_alloc();
}
}  // namespace tapward::tests

// g++ 12 does not see that these belong together.
#pragma GCC diagnostic ignored "-Wpragmas"
#pragma GCC diagnostic ignored "-Wmismatched-new-delete"

void* operator new(std::size_t size) { return tapward::tests::countedOrThrow(size); }
void* operator new[](std::size_t size) { return tapward::tests::countedOrThrow(size); }
void* operator new(std::size_t size, const std::nothrow_t&) noexcept { return tapward::tests::counted(size); }
void* operator new[](std::size_t size, const std::nothrow_t&) noexcept { return tapward::tests::counted(size); }
void operator delete(void* memory) noexcept { std::free(memory); }
void operator delete[](void* memory) noexcept { std::free(memory); }
void operator delete(void* memory, std::size_t) noexcept { std::free(memory); }
void operator delete[](void* memory, std::size_t) noexcept { std::free(memory); }
void operator delete(void* memory, const std::nothrow_t&) noexcept { std::free(memory); }
void operator delete[](void* memory, const std::nothrow_t&) noexcept { std::free(memory); }
