// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "thermal/exchange.h"

namespace tapward::thermal {

/// The functions of exchange.h as compiled for one kind of machine. All variants give the same bytes.
struct ExchangeVariant {
    void (*solveLadder)(const Ladder&, double, bool, Propagator&, Propagator&);
    double (*exchange)(const Propagator&, int, double* const*, std::size_t, double, double, double, double*);
};

extern const ExchangeVariant kPlainExchange;  ///< any machine
extern const ExchangeVariant kWideExchange;   ///< with AVX2; elsewhere the same as the plain one
bool hasWideExchange();                       ///< this machine can run it

}  // namespace tapward::thermal
