// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "study/bench.h"

namespace tapward::test {

/// The shortest loop there is: WH1 - P1 - CV1 - back, joined by tube without length, plus battery, controller
/// and fuse where asked for. For checks against printed answers.
class Ring : public Bench {
public:
    Ring()
    {
        const auto heater = add("tankless_heater", "WH1"), pump = add("circulator", "P1");
        const auto check = add("check_valve", "CV1");
        pipe(heater, "hot", pump, "inlet");
        pipe(pump, "outlet", check, "inlet");
        pipe(check, "outlet", heater, "cold");
        set("CV1", "flow_coefficient_m3s_sqrtPa", 2.4e-2);  // as good as none
    }
};

}  // namespace tapward::test
