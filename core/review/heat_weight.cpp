// SPDX-License-Identifier: GPL-3.0-or-later
#include "review/heat_weight.h"

#include "review/scald.h"

namespace tapward::review {

double yardstick_C(study::HeatPlace place)
{
    switch (place) {
    case study::HeatPlace::ColdEntry:
    case study::HeatPlace::OutletCold:
        return kColdLineLimit_C;
    case study::HeatPlace::Join:
    case study::HeatPlace::HeaterOutlet:
    case study::HeatPlace::HeaterInlet:
    case study::HeatPlace::Sensor:
    case study::HeatPlace::OutletHot:
        break;
    }
    return kScaldGuidance_C;
}

Severity heatSeverity(study::HeatPlace place, double celsius)
{
    if (study::isOutlet(place) && celsius > kScaldGuidance_C) {
        return Severity::Danger;
    }
    return celsius > yardstick_C(place) ? Severity::Caution : Severity::Note;
}

}  // namespace tapward::review
