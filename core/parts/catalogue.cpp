// SPDX-License-Identifier: GPL-3.0-or-later
#include <algorithm>

#include "parts/accumulator.h"
#include "parts/appliance.h"
#include "parts/battery.h"
#include "parts/check_valve.h"
#include "parts/circulator.h"
#include "parts/city_inlet.h"
#include "parts/controller.h"
#include "parts/demand_pump.h"
#include "parts/dimension.h"
#include "parts/drain_valve.h"
#include "parts/faucet.h"
#include "parts/filter.h"
#include "parts/floor_plan.h"
#include "parts/flow_sensor.h"
#include "parts/fresh_tank.h"
#include "parts/fuse.h"
#include "parts/hand_valve.h"
#include "parts/mixing_valve.h"
#include "parts/motor_valve.h"
#include "parts/note.h"
#include "parts/outside_outlet.h"
#include "parts/pipe_run.h"
#include "parts/push_button.h"
#include "parts/regulator.h"
#include "parts/shower.h"
#include "parts/storage_heater.h"
#include "parts/tankless_heater.h"
#include "parts/tee.h"
#include "parts/temperature_sensor.h"
#include "parts/toilet.h"

namespace tapward::parts {

const std::vector<const PartKind*>& catalogue()
{
    // The only list of kinds, in tray order. Written out because a static library drops objects that
    // register themselves.
    static const std::vector<const PartKind*> kinds{
        &pipeRun(),        &tee(),           &checkValve(), &handValve(),  &motorValve(),
        &mixingValve(),    &drainValve(),    &circulator(), &flowSensor(), &temperatureSensor(),
        &tanklessHeater(), &storageHeater(), &faucet(),     &shower(),     &toilet(),
        &outsideOutlet(),  &appliance(),     &cityInlet(),  &regulator(),  &freshTank(),
        &demandPump(),     &accumulator(),   &filter(),     &controller(), &pushButton(),
        &battery(),        &fuse(),          &note(),       &dimension(),  &floorPlan(),
    };
    return kinds;
}

const PartKind* find(std::string_view id)
{
    const auto& kinds = catalogue();
    const auto at = std::find_if(kinds.begin(), kinds.end(), [id](const PartKind* kind) { return kind->id == id; });
    return at == kinds.end() ? nullptr : *at;
}

}  // namespace tapward::parts
