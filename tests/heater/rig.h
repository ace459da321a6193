// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <algorithm>
#include <array>
#include <utility>
#include <vector>

#include "heater/tankless.h"
#include "thermal/run.h"
#include "water/water.h"

namespace tapward::test {

struct Exchanger {
    double water_m3 = 0.4e-3, copper_kg = 2;
    double film_W_K = 500;
    double bore_m = 0;  ///< of a coil; 0: mixed cells
    int cells = 3;
    double loss_W_K = 0;
    double cell_m = 0.15;
    double capacity_J_K() const { return water_m3 * water::referenceVolumeHeat() + copper_kg * 385; }
};

/// The exchanger that a coach's heater has: a coil, its metal one with its water.
inline Exchanger coil() { return {.film_W_K = 0, .bore_m = 0.0114}; }

/// Water through one exchanger from a supply, under a tankless control.
struct Rig {
    thermal::Field field;
    heater::Tankless control;
    int run;
    double now = 0;
    double step_s = 0.5;
    double trueFire = 1;  ///< heat really put in over what the control believes
    std::vector<heater::TanklessChange> told;

    Rig(const heater::TanklessSpec& spec, const Exchanger& exchanger, double inlet) : control(spec)
    {
        thermal::Stretch body;
        body.volume_m3 = exchanger.water_m3;
        body.body_J_K = exchanger.copper_kg * 385;
        body.bodyFilm_W_K = exchanger.film_W_K;
        body.bodyCells = exchanger.cells;
        body.bodyBore_m = exchanger.bore_m;
        body.loss_W_K = exchanger.loss_W_K;
        run = field.addRun(-1, -1, {body});
        field.prepare({.cell_m = exchanger.cell_m});
        field.fill(inlet);
        setInlet(inlet);
    }
    void setInlet(double inlet)
    {
        m_inlet = inlet;
        field.setSupply(run, inlet);
    }
    double outlet() const { return field.outletTemperature(run); }

    /// Calls see(rig) after every step.
    template <class See>
    void go(double seconds, double flow, See see)
    {
        const double end = now + seconds;
        while (now < end - 1e-9) {
            heater::TanklessInputs in;
            in.flow_m3s = flow;
            in.inlet_C = m_inlet;
            in.outlet_C = outlet();
            in.exchanger_C = outlet();
            control.look(in);
            const double dt = std::min({step_s, end - now, std::max(1e-3, control.timeToNextEvent_s())});
            const auto change = control.advance(now, dt, in);
            const double used = change ? change->at_s - now : dt;
            field.setSource(run, 0, trueFire * control.meanPower_W());
            field.step(used, std::array{flow});
            now += used;
            if (change)
                told.push_back(*change);
            see(*this);
        }
    }
    /// @return the hottest and coldest outlet on the way
    std::pair<double, double> go(double seconds, double flow)
    {
        std::pair<double, double> range{-1e9, 1e9};
        go(seconds, flow, [&range](const Rig& rig) {
            range.first = std::max(range.first, rig.outlet());
            range.second = std::min(range.second, rig.outlet());
        });
        return range;
    }

private:
    double m_inlet = 0;
};

}  // namespace tapward::test
