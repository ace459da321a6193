// SPDX-License-Identifier: GPL-3.0-or-later
#include "thermal/exchange.h"

#include "thermal/exchange_variants.h"

namespace tapward::thermal {

namespace {

const ExchangeVariant& variant()
{
    static const ExchangeVariant& chosen = hasWideExchange() ? kWideExchange : kPlainExchange;
    return chosen;
}

}  // namespace

bool hasWideExchange()
{
#if defined(__x86_64__)
    return __builtin_cpu_supports("avx2");
#else
    return false;
#endif
}

void solveLadder(const Ladder& ladder, double time_s, bool withSources, Propagator& half, Propagator& whole)
{
    variant().solveLadder(ladder, time_s, withSources, half, whole);
}

double exchange(const Propagator& p, int nodes, double* const* temperature, std::size_t cells, double surroundings,
                double waterWatts, double bodyWatts, double* sums)
{
    return variant().exchange(p, nodes, temperature, cells, surroundings, waterWatts, bodyWatts, sums);
}

}  // namespace tapward::thermal
