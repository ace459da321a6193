// SPDX-License-Identifier: GPL-3.0-or-later
#include "panels/safety_words.h"

#include <cmath>
#include <QCoreApplication>

#include "panels/say.h"
#include "review/scald.h"

namespace tapward::app {

namespace {

QString tr(const char* text) { return QCoreApplication::translate("tapward::app::safety", text); }

}  // namespace

QString sayBurnTime(double seconds)
{
    return seconds >= 120 ? tr("%1 min").arg(std::floor(seconds / 60)) : tr("%1 s").arg(std::floor(seconds));
}

QString sayPlace(const document::Drawing& drawing, study::HeatPlace place, document::PartId part)
{
    const QString tag = sayTag(drawing, part);
    switch (place) {
    case study::HeatPlace::HeaterOutlet:
        return tr("%1, heater outlet").arg(tag);
    case study::HeatPlace::HeaterInlet:
        return tr("%1, heater inlet").arg(tag);
    case study::HeatPlace::Sensor:
        return tr("%1, at the sensor").arg(tag);
    case study::HeatPlace::Join:
        return tr("%1, where the loop leaves the hot line").arg(tag);
    case study::HeatPlace::OutletHot:
        return tr("%1, hot outlet").arg(tag);
    case study::HeatPlace::OutletCold:
        return tr("%1, cold outlet").arg(tag);
    case study::HeatPlace::ColdEntry:
        return tr("%1, where the return enters the cold line").arg(tag);
    }
    return tag;
}

QString sayBurnAdult(double celsius)
{
    const auto seconds = review::wholeBurnSeconds(celsius);
    return seconds ? tr("about %1").arg(sayBurnTime(*seconds)) : tr("below the published times");
}

QString sayBurnChild(double celsius)
{
    const auto seconds = review::wholeBurnSeconds(celsius);
    return seconds ? tr("less than %1").arg(sayBurnTime(*seconds)) : tr("below the published times");
}

QString sayWait(double seconds)
{
    if (seconds < 60)
        return tr("%1 s").arg(std::ceil(seconds));
    const int halves = static_cast<int>(std::ceil(seconds / 30));
    const int hours = halves / 120;
    const double minutes = (halves - hours * 120) / 2.0;
    if (hours > 0)
        return tr("%1 h %2 min").arg(hours).arg(minutes);
    return tr("%1 min").arg(minutes);
}

}  // namespace tapward::app
