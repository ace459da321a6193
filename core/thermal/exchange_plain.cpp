// SPDX-License-Identifier: GPL-3.0-or-later
#include "thermal/exchange_kernel.h"

namespace tapward::thermal {

const ExchangeVariant kPlainExchange = kVariant;

}  // namespace tapward::thermal
