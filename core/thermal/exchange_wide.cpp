// SPDX-License-Identifier: GPL-3.0-or-later
// Compiled for AVX2 where there is such a thing (CMakeLists.txt).
#include "thermal/exchange_kernel.h"

namespace tapward::thermal {

const ExchangeVariant kWideExchange = kVariant;

}  // namespace tapward::thermal
