// SPDX-License-Identifier: GPL-3.0-or-later
#include <cmath>

#include "network/fittings.h"
#include "parts/part_kind.h"
#include "parts/tubing.h"
#include "support/catch.h"
#include "water/water.h"

using namespace tapward;
using parts::Basis;
using parts::Entries;

namespace {

parts::PartModel modelOf(const char* kindId, const Entries& entries = {})
{
    const parts::PartKind& kind = *parts::find(kindId);
    auto model = kind.model(parts::Values(kind, entries));
    REQUIRE(model);
    return *model;
}

parts::Entry measured(parts::Value value) { return {std::move(value), Basis::Measured}; }

template <class Law>
const Law& law(const parts::PartModel& model, std::size_t path = 0, std::size_t at = 0)
{
    return std::get<Law>(model.paths.at(path).laws.at(at));
}

}  // namespace

TEST_CASE("the circulator's default curve droops from the sheet's shut-off to its run-out", "[parts][published]")
{
    // Shut-off 10.8 ft and run-out 1.9 gpm: one published data sheet of a small 12 V circulator. Shape
    // between a parabola and a straight line, H = Hmax (1 - s)(1 + s/2): common practice, no published source.
    const auto model = modelOf("circulator");
    const auto& curve = *law<network::PumpLaw>(model).curve;
    CHECK_THAT(curve.headAt(0) / us::kFoot, WithinAbs(10.8, 1e-9));
    CHECK_THAT(curve.headAt(1.9 * us::kGpm), WithinAbs(0.0, 1e-4));  // the curve is kept strictly falling
    // Between nine readings the monotone cubic stays within half a percent of shut-off of the shape.
    for (double share = 0.05; share < 1; share += 0.1) {
        CHECK_THAT(curve.headAt(share * 1.9 * us::kGpm) / (10.8 * us::kFoot),
                   WithinAbs((1 - share * share + 1 - share) / 2, 0.005));
    }
}

TEST_CASE("wire to a pump counts out and back", "[parts][published]")
{
    // 60 ft of AWG 18 one way: 2 x 60 ft x 6.385 ohm/1,000 ft (ASTM B258 / NBS Handbook 100, 20 °C) = 0.766 ohm.
    const auto model = modelOf(
        "circulator", {{"wire_length_m", measured(60 * us::kFoot)}, {"wire_gauge", measured(std::string("18"))}});
    CHECK_THAT(model.circulator->wireResistance_ohm, WithinRel(0.7662, 0.001));
}

TEST_CASE("a valve passes its Cv in gpm at 1 psi", "[parts]")
{
    // The definition of Cv, water at 60 °F; our density 998.2 kg/m³ against 999.0 there: 0.1 %.
    const double cv = 3.5;
    const auto model =
        modelOf("check_valve", {{"flow_coefficient_m3s_sqrtPa", measured(network::coefficientFromCv(cv))}});
    const double flow = cv * us::kGpm;
    CHECK_THAT(law<network::CheckLaw>(model).R * flow * flow / us::kPsi, WithinAbs(1.0, 0.002));
    CHECK_THAT(law<network::CheckLaw>(model).crack_Pa / us::kPsi, WithinAbs(0.5, 1e-9));
}

TEST_CASE("a tap gives its rated flow at its rated pressure, and is shut at rest", "[parts]")
{
    const auto id = GENERATE("faucet", "shower", "toilet", "outside_outlet", "appliance");
    CAPTURE(id);
    const auto model = modelOf(id, {{"rated_flow_m3s", measured(1e-4)}, {"rated_pressure_Pa", measured(300e3)}});
    REQUIRE(model.outlet);
    for (std::size_t path = 0; path < model.paths.size(); ++path) {
        CHECK_THAT(law<network::ResistanceLaw>(model, path).R * 1e-4 * 1e-4, WithinRel(300e3, 1e-12));
        CHECK(law<network::ResistanceLaw>(model, path).opening == 0);
        CHECK(model.paths[path].to == parts::Path::kOutside);
    }
}

TEST_CASE("a tap has the lines it says it has", "[parts]")
{
    const auto both = modelOf("faucet");
    CHECK(both.outlet->hotPath == 0);
    CHECK(both.outlet->coldPath == 1);
    const auto cold = modelOf("faucet", {{"serves", measured(std::string("cold"))}});
    CHECK(cold.paths.size() == 1);
    CHECK(cold.outlet->hotPath == -1);
    CHECK(cold.outlet->coldPath == 0);
    CHECK(cold.outlet->defaultHotShare == 0);
    CHECK(cold.paths[0].from == parts::find("faucet")->portIndex("cold"));
    const auto hot = modelOf("faucet", {{"serves", measured(std::string("hot"))}});
    CHECK(hot.outlet->coldPath == -1);
    CHECK(hot.outlet->defaultHotShare == 1);
    CHECK(hot.paths[0].from == parts::find("faucet")->portIndex("hot"));
}

TEST_CASE("a pipe sums its fittings at its own bore", "[parts]")
{
    const auto model = modelOf("pipe_run", {{"tube", measured(std::string("pex_3_8"))},
                                            {"length_m", measured(4.0)},
                                            {"elbows", measured(3.0)},
                                            {"couplings", measured(2.0)},
                                            {"extra_k", measured(1.5)},
                                            {"fittings", measured(std::string("expansion"))}});
    const double bore = 0.350 * us::kInch;
    using network::FittingFamily;
    using network::FittingShape;
    const auto& pipe = law<network::PipeLaw>(model);
    CHECK(pipe.bore_m == bore);
    CHECK(pipe.length_m == 4.0);
    CHECK_THAT(pipe.minorK,
               WithinRel(3 * network::fittingK(FittingFamily::Expansion, FittingShape::Elbow, bore)
                             + 2 * network::fittingK(FittingFamily::Expansion, FittingShape::Coupling, bore) + 1.5,
                         1e-12));
    CHECK(model.paths[0].body.bore_m == bore);
    CHECK_THAT(model.paths[0].body.wall_m, WithinAbs((0.5 - 0.35) / 2 * us::kInch, 1e-12));
}

TEST_CASE("what was measured on a pipe run takes the place of the table, each figure by itself", "[parts]")
{
    const auto plain = modelOf("pipe_run", {{"elbows", measured(2.0)}});
    const auto own = modelOf("pipe_run", {{"elbows", measured(2.0)},
                                          {"own_bore_m", measured(0.007)},
                                          {"own_wall_m", measured(0.0015)},
                                          {"own_conductivity_W_mK", measured(0.16)},
                                          {"own_wall_heat_J_m3K", measured(1.5e6)},
                                          {"measured_loss_W_mK", measured(0.4)}});
    const auto& stretch = own.paths[0].body;
    CHECK(stretch.bore_m == 0.007);
    CHECK_THAT(stretch.wall_m, WithinAbs(0.0015, 1e-12));
    CHECK(stretch.wallConductivity == 0.16);
    CHECK(stretch.wallVolumeHeat == 1.5e6);
    CHECK(stretch.loss_W_mK == 0.4);
    CHECK(law<network::PipeLaw>(own).bore_m == 0.007);
    CHECK_THAT(
        law<network::PipeLaw>(own).minorK,
        WithinRel(2 * network::fittingK(network::FittingFamily::PolymerInsert, network::FittingShape::Elbow, 0.007),
                  1e-12));
    // 0 is 'not measured': the table's, to the bit.
    const auto zero = modelOf("pipe_run", {{"elbows", measured(2.0)},
                                           {"own_bore_m", measured(0.0)},
                                           {"own_wall_m", measured(0.0)},
                                           {"own_conductivity_W_mK", measured(0.0)},
                                           {"own_wall_heat_J_m3K", measured(0.0)},
                                           {"measured_loss_W_mK", measured(0.0)}});
    CHECK(zero.paths[0].body.bore_m == plain.paths[0].body.bore_m);
    CHECK_THAT(zero.paths[0].body.wall_m, WithinAbs(plain.paths[0].body.wall_m, 1e-15));
    CHECK(zero.paths[0].body.wallConductivity == plain.paths[0].body.wallConductivity);
    CHECK(zero.paths[0].body.wallVolumeHeat == plain.paths[0].body.wallVolumeHeat);
    CHECK(zero.paths[0].body.loss_W_mK == 0);
    // A bore alone leaves the wall as thick as the table's.
    const auto bore = modelOf("pipe_run", {{"own_bore_m", measured(0.008)}});
    CHECK_THAT(bore.paths[0].body.wall_m, WithinAbs(plain.paths[0].body.wall_m, 1e-12));
}

TEST_CASE("a tee loses its run's K straight on and its branch's K round the corner", "[parts]")
{
    const auto model = modelOf("tee");
    const double bore = parts::tube("pex_1_2").bore_m;
    const double area = 3.141592653589793 / 4 * bore * bore;
    const double flow = 1e-4;
    const double velocityHead = 998.2 / 2 * (flow / area) * (flow / area);
    const auto loss = [&](std::size_t path) { return law<network::ResistanceLaw>(model, path).R * flow * flow; };
    using network::FittingFamily;
    using network::FittingShape;
    CHECK_THAT((loss(0) + loss(1)) / velocityHead,
               WithinRel(network::fittingK(FittingFamily::PolymerInsert, FittingShape::TeeRun, bore), 1e-9));
    CHECK_THAT((loss(0) + loss(2)) / velocityHead,
               WithinRel(network::fittingK(FittingFamily::PolymerInsert, FittingShape::TeeBranch, bore), 1e-9));
}

TEST_CASE("the demand pump gives its open flow at no pressure and nothing well past cut-out", "[parts]")
{
    const auto model = modelOf("demand_pump");
    const auto& curve = *law<network::PumpLaw>(model).curve;
    CHECK_THAT(curve.headAt(3.5 * us::kGpm), WithinAbs(0, 1e-3));  // of some 44 m
    const double stall_psi = curve.headAt(0) * 998.2 * 9.80665 / us::kPsi;
    CHECK(stall_psi > 55);
    CHECK(stall_psi < 1.3 * 55);
    const parts::PartKind& kind = *parts::find("demand_pump");
    const Entries senseless{{"cut_in_Pa", measured(400e3)}, {"cut_out_Pa", measured(300e3)}};
    CHECK_FALSE(kind.model(parts::Values(kind, senseless)));
}

TEST_CASE("a demand pump whose readings are entered gives those", "[parts]")
{
    const parts::Curve readings{{0, 400e3}, {1e-4, 250e3}, {2e-4, 0}};
    const auto model = modelOf("demand_pump", {{"curve", {readings, parts::Basis::DataSheet}}});
    const auto& curve = *law<network::PumpLaw>(model).curve;
    for (const parts::CurvePoint& point : readings)  // 1 m of water at 20 °C is 998.2 x 9.80665 Pa
        CHECK_THAT(curve.headAt(point.x) * 998.2 * 9.80665, WithinAbs(point.y, 1));
    CHECK(model.supply->openFlow_m3s == 2e-4);
}

TEST_CASE("an accumulator gives what Boyle's law says", "[parts]")
{
    // 1 L at 200 kPa gauge pre-charge: at 300 kPa it holds 1 - 301.325/401.325 of a litre. The slope there is
    // checked against a difference quotient.
    const auto model =
        modelOf("accumulator", {{"vessel_volume_m3", measured(1e-3)}, {"precharge_Pa", measured(200e3)}});
    const auto held = [](double gauge_Pa) { return 1e-3 * (1 - (200e3 + 101325) / (gauge_Pa + 101325)); };
    CHECK_THAT(model.supply->compliance_m3_Pa, WithinRel((held(300e3 + 10) - held(300e3 - 10)) / 20, 1e-6));
}

TEST_CASE("a controller's fields arrive one to one", "[parts]")
{
    const auto spec = modelOf("controller", {{"stop_by_volume", measured(false)},
                                             {"stop_volume_m3", measured(2e-3)},
                                             {"stop_by_time", measured(true)},
                                             {"stop_time_s", measured(33.0)},
                                             {"stop_by_temperature", measured(true)},
                                             {"stop_temperature_C", measured(41.0)},
                                             {"refuse_when_warm", measured(true)},
                                             {"high_limit", measured(true)},
                                             {"high_limit_C", measured(50.0)},
                                             {"inlet_lockout", measured(true)},
                                             {"inlet_lockout_C", measured(39.0)},
                                             {"cool_down_wait_s", measured(60.0)},
                                             {"longest_run_s", measured(120.0)},
                                             {"no_flow_s", measured(7.0)},
                                             {"no_flow_below_m3s", measured(5e-6)},
                                             {"pump_delay_s", measured(2.0)},
                                             {"pump_after_valve", measured(false)}})
                          .controller->spec;
    CHECK_FALSE(spec.stopByVolume);
    CHECK(spec.stopVolume_m3 == 2e-3);
    CHECK(spec.stopByTime);
    CHECK(spec.stopTime_s == 33.0);
    CHECK(spec.stopByTemperature);
    CHECK(spec.stopTemperature_C == 41.0);
    CHECK(spec.refuseWhenWarm);
    CHECK(spec.highLimit);
    CHECK(spec.highLimit_C == 50.0);
    CHECK(spec.inletLockout);
    CHECK(spec.inletLockout_C == 39.0);
    CHECK(spec.coolDownWait_s == 60.0);
    CHECK(spec.longestRun_s == 120.0);
    CHECK(spec.noFlow_s == 7.0);
    CHECK(spec.noFlowBelow_m3s == 5e-6);
    CHECK(spec.pumpDelay_s == 2.0);
    CHECK_FALSE(spec.pumpAfterValve);
}

TEST_CASE("the default tankless heater is a measured one, scaled by its gas input", "[parts][published]")
{
    const parts::PartModel model = modelOf("tankless_heater");
    // A home-size gas tankless calibrated to hours of test data (University of Colorado Boulder, graduate thesis in civil
    // engineering, spring 2010, abstract): 8.36 +- 0.6 kJ/K of water and metal, loss 3.61 +- 1.1 W/K. Its input is not in
    // the abstract: 199,000 BTU/h, the usual size of a home unit, from memory.
    const double scale = model.tankless->maximumInput_W / (199000 * us::kBtuPerHour);
    const thermal::Stretch& body = model.paths.at(0).body;
    CHECK_THAT(model.tankless->exchanger_J_K, WithinAbs(8360 * scale, 600 * scale));
    CHECK_THAT(body.loss_W_K, WithinAbs(3.61 * scale, 1.1 * scale));
    // The field holds what the control reckons with: water and the copper's 385 J/(kg K).
    CHECK_THAT(body.volume_m3 * water::referenceVolumeHeat() + body.body_J_K,
               WithinRel(model.tankless->exchanger_J_K, 1e-12));
    CHECK_THAT(body.body_J_K, WithinRel(5 * us::kPound * 385, 1e-12));
    // 3/8 in copper tube type M: 0.450 in bore (ASTM B88).
    CHECK_THAT(body.bodyBore_m, WithinRel(0.45 * us::kInch, 1e-12));
}

TEST_CASE("a tankless heater's fields arrive one to one", "[parts]")
{
    const auto spec = *modelOf("tankless_heater", {{"control_time_s", measured(4.0)},
                                                   {"fire_travel_s", measured(5.0)},
                                                   {"sensor_lag_s", measured(2.5)},
                                                   {"outlet_limit_C", measured(80.0)},
                                                   {"outlet_limit_hysteresis_K", measured(7.0)},
                                                   {"inlet_limit_C", measured(60.0)},
                                                   {"inlet_limit_hysteresis_K", measured(3.0)},
                                                   {"shuts_off_when_too_hot", measured(true)},
                                                   {"too_hot_above_K", measured(9.0)},
                                                   {"too_hot_for_s", measured(6.0)},
                                                   {"relight_below_K", measured(2.0)},
                                                   {"purge_loss_W_K", measured(8.0)}})
                           .tankless;
    CHECK(spec.controlTime_s == 4.0);
    CHECK(spec.fireTravel_s == 5.0);
    CHECK(spec.sensorLag_s == 2.5);
    CHECK(spec.outletLimit_C == 80.0);
    CHECK(spec.outletHysteresis_K == 7.0);
    CHECK(spec.inletLimit_C == 60.0);
    CHECK(spec.inletHysteresis_K == 3.0);
    CHECK(spec.shutsOffWhenTooHot);
    CHECK(spec.tooHotAbove_K == 9.0);
    CHECK(spec.tooHotFor_s == 6.0);
    CHECK(spec.relightBelow_K == 2.0);
    CHECK(spec.purgeLoss_W_K == 8.0);
}

TEST_CASE("a heater whose flame would go out above the flow that lights it is refused", "[parts]")
{
    const parts::PartKind& kind = *parts::find("tankless_heater");
    const Entries hold{{"hold_flow_m3s", measured(4e-5)}, {"activation_flow_m3s", measured(3e-5)}};
    const auto model = kind.model(parts::Values(kind, hold));
    REQUIRE_FALSE(model);
    CHECK_FALSE(model.error().remedy.empty());
    const Entries fire{{"minimum_input_W", measured(20e3)}, {"maximum_input_W", measured(10e3)}};
    CHECK_FALSE(kind.model(parts::Values(kind, fire)));
}

TEST_CASE("the parts list counts what is bought", "[parts]")
{
    const parts::PartKind& pipe = *parts::find("pipe_run");
    const Entries entries{{"length_m", measured(12.0)},
                          {"elbows", measured(4.0)},
                          {"price_per_m", measured(1.25)},
                          {"fitting_price", measured(2.0)},
                          {"insulation_m", measured(0.013)}};
    const auto bought = pipe.materials(parts::Values(pipe, entries));
    REQUIRE(bought.size() == 3);
    CHECK(bought[0].perMetre);
    CHECK(bought[0].quantity == 12.0);
    CHECK(bought[0].unitPrice == 1.25);
    CHECK(bought[1].quantity == 4.0);
    CHECK(bought[1].unitPrice == 2.0);
    CHECK(bought[2].perMetre);

    const parts::PartKind& pump = *parts::find("circulator");
    const Entries wire{{"wire_length_m", measured(5.0)}};
    const auto wired = pump.materials(parts::Values(pump, wire));
    REQUIRE(wired.size() == 2);
    CHECK(wired[1].quantity == 10.0);
}
