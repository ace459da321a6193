// SPDX-License-Identifier: GPL-3.0-or-later
// Hot fronts in a tube against published and exact solutions: water properties are those of one temperature,
// so every step of the inlet is small and the answers are shares of it.
#include <cmath>
#include <numbers>
#include <utility>
#include <vector>

#include "support/catch.h"
#include "support/units.h"
#include "thermal/film.h"
#include "thermal/run.h"
#include "water/water.h"

using namespace tapward;
using std::numbers::pi;
using test::kGpm;
using namespace tapward::thermal;

namespace {

struct Tube {
    double bore, outer, conductivity, volumeHeat;
};
constexpr Tube kHalfInchPex{0.012065, 0.015875, 0.40, 940 * 2300.0};
constexpr Tube kThreeQuarterPex{0.0170434, 0.022225, 0.40, 940 * 2300.0};
constexpr Tube kHalfInchCopperM{0.0144526, 0.015875, 390, 8940 * 385.0};

Stretch stretchOf(const Tube& tube, double length)
{
    Stretch s;
    s.length_m = length;
    s.bore_m = tube.bore;
    s.wall_m = 0.5 * (tube.outer - tube.bore);
    s.wallConductivity = tube.conductivity;
    s.wallVolumeHeat = tube.volumeHeat;
    return s;
}

/// Outlet history of a step of one unit at the inlet of a tube that starts at its surroundings.
class Step {
public:
    static constexpr double kCold = 39.5;
    Step(const Stretch& stretch, const Grid& grid, double flow, double dt) : m_flow(flow), m_dt(dt)
    {
        Stretch s = stretch;
        s.ambient = kCold;
        m_run = m_field.addRun(-1, -1, {s});
        m_field.prepare(grid);
        m_field.fill(kCold);
        m_field.setSupply(m_run, kCold + 1);
        m_plug = m_field.volume(m_run) / flow;
    }
    double plugTime() const { return m_plug; }
    const Field& field() const { return m_field; }

    /// Share of the step at the outlet; times must rise from call to call.
    double at(double time)
    {
        while (m_now < time) {
            m_before = {m_now, m_value};
            m_field.step(m_dt, std::vector<double>{m_flow});
            m_clock += m_dt;
            m_now = m_clock - 0.5 * m_dt;  // what left, as a mean over the step
            m_value = m_field.outletTemperature(m_run) - kCold;
        }
        const double share = (time - m_before.first) / (m_now - m_before.first);
        return m_before.second + share * (m_value - m_before.second);
    }

private:
    Field m_field;
    int m_run = 0;
    double m_flow, m_dt, m_plug = 0, m_clock = 0, m_now = 0, m_value = 0;
    std::pair<double, double> m_before{0, 0};
};

}  // namespace

TEST_CASE("a front in a pipe with a lumped wall follows Anzelius and Schumann", "[front][published]")
{
    // Anzelius 1926; Schumann 1929, J. Franklin Inst. 208:405: outlet share J(X, tau), X the transfer units of
    // the length, tau the time since the plug in units of the wall's time constant. Values by quadrature
    // (scipy 1.10.1), confirmed by Laplace inversion and the exact identity J(x,x) = [1+exp(-2x) I0(2x)]/2.
    struct Row {
        double tau, j;
    };
    struct Length {
        double x;
        std::vector<Row> rows;
    };
    const auto length = GENERATE(
        Length{
            2,
            {{0.5, 0.26901206}, {1, 0.39429686}, {1.5, 0.50643758}, {2, 0.60350096}, {3, 0.75301130}, {4, 0.85193636}}},
        Length{5,
               {{1.25, 0.08779108},
                {2.5, 0.23130845},
                {3.75, 0.40110961},
                {5, 0.56391667},
                {6.25, 0.70024029},
                {7.5, 0.80383971},
                {10, 0.92560799}}},
        Length{10,
               {{2.5, 0.01882628},
                {5, 0.11979375},
                {7.5, 0.31634469},
                {10, 0.54489016},
                {12.5, 0.73707864},
                {15, 0.86577983},
                {20, 0.97420563}}},
        Length{20,
               {{10, 0.03934503},
                {15, 0.22301699},
                {20, 0.53163914},
                {25, 0.79432690},
                {30, 0.93227832},
                {40, 0.99638508}}});
    CAPTURE(length.x);

    const double flow = 1.0 * kGpm;
    const double conductance = insideFilm(flow, kHalfInchPex.bore, 40) * pi * kHalfInchPex.bore;  // W/(m K)
    const double wallHeat = 0.25 * pi
                            * (kHalfInchPex.outer * kHalfInchPex.outer - kHalfInchPex.bore * kHalfInchPex.bore)
                            * kHalfInchPex.volumeHeat;  // J/(m K)
    Stretch s = stretchOf(kHalfInchPex, length.x * water::referenceVolumeHeat() * flow / conductance);
    s.loss_W_mK = 1e-9;
    Grid grid;
    grid.wallLayers = 1;
    grid.filmOnlyWall = true;
    grid.dispersion = false;
    grid.cell_m = 0.02 * length.x;
    Step step(s, grid, flow, 0.05);
    for (const Row& row : length.rows) {
        CAPTURE(row.tau);
        // 0.005 is asked of a discretised pipe.
        CHECK_THAT(step.at(step.plugTime() + row.tau * wallHeat / conductance), WithinAbs(row.j, 0.005));
    }
}

namespace {

struct RadialRow {
    double t, share, lumped;
};
struct RadialCase {
    const char* name;
    Tube tube;
    double gpm;
    std::vector<RadialRow> rows;
};

// Step of inlet temperature, radial conduction in the wall, 10 W/(m² K) to air at the outside, plug flow, 10 m,
// water at 40 °C; seconds after the plug. Laplace transform with modified Bessel functions, fixed-Talbot
// inversion (scipy 1.10.1, 28 against 40 terms < 2e-6); two cases confirmed by an independent finite-volume
// run to 0.003. Last column: the wall lumped behind film and thickness/(3 k), without loss.
const std::vector<RadialCase>& radialCases()
{
    static const std::vector<RadialCase> cases{{"PEX 1/2, 1 gpm",
                                                kHalfInchPex,
                                                1,
                                                {{2, 0.51967, 0.53617},
                                                 {3, 0.58394, 0.56974},
                                                 {5, 0.65935, 0.63017},
                                                 {8, 0.73050, 0.70605},
                                                 {12, 0.79863, 0.78453},
                                                 {20, 0.88500, 0.88576},
                                                 {30, 0.93885, 0.94939},
                                                 {60, 0.97856, 0.99602},
                                                 {120, 0.98212, 0.99998}}},
                                               {"PEX 1/2, 0.5 gpm",
                                                kHalfInchPex,
                                                0.5,
                                                {{2, 0.28053, 0.32520},
                                                 {3, 0.34313, 0.35666},
                                                 {5, 0.42803, 0.41627},
                                                 {8, 0.51564, 0.49755},
                                                 {12, 0.60607, 0.59143},
                                                 {20, 0.73835, 0.73528},
                                                 {30, 0.84040, 0.85084},
                                                 {60, 0.94639, 0.97695},
                                                 {120, 0.96443, 0.99963}}},
                                               {"PEX 3/4, 1 gpm",
                                                kThreeQuarterPex,
                                                1,
                                                {{2, 0.42749, 0.50991},
                                                 {3, 0.49042, 0.52840},
                                                 {5, 0.56804, 0.56345},
                                                 {8, 0.63544, 0.61147},
                                                 {12, 0.69321, 0.66780},
                                                 {20, 0.77369, 0.75811},
                                                 {30, 0.84247, 0.83839},
                                                 {60, 0.93835, 0.95355},
                                                 {120, 0.97292, 0.99659}}},
                                               {"copper M 1/2, 1 gpm",
                                                kHalfInchCopperM,
                                                1,
                                                {{2, 0.22526, 0.22629},
                                                 {3, 0.36745, 0.37000},
                                                 {5, 0.62685, 0.63382},
                                                 {8, 0.85995, 0.87329},
                                                 {12, 0.96009, 0.97759},
                                                 {20, 0.98087, 0.99964},
                                                 {60, 0.98120, 1.0}}}};
    return cases;
}

Stretch inStillAir(const Tube& tube)
{
    Stretch s = stretchOf(tube, 10);
    // The loss is told as a whole, standing water to bay: film, wall and 10 W/(m² K) outside in series.
    s.loss_W_mK =
        1.0
        / (filmResistance(insideFilm(0, tube.bore, 40), tube.bore, 1)
           + shellResistance(tube.bore, tube.outer, tube.conductivity, 1) + filmResistance(10, tube.outer, 1));
    return s;
}

}  // namespace

TEST_CASE("a front in a tube with radial conduction in its wall follows the exact solution", "[front][published]")
{
    const std::size_t which = GENERATE(range(0, 4));
    const RadialCase& c = radialCases()[which];
    CAPTURE(c.name);
    Grid grid;
    grid.dispersion = false;
    grid.cell_m = 0.05;
    Step step(inStillAir(c.tube), grid, c.gpm * kGpm, 0.05);
    for (const RadialRow& row : c.rows) {
        CAPTURE(row.t);
        CHECK_THAT(step.at(step.plugTime() + row.t), WithinAbs(row.share, 0.005));
    }
}

TEST_CASE("the default grid rounds the edge of a sharp front for three seconds and is right after",
          "[front][published]")
{
    const std::size_t which = GENERATE(range(0, 4));
    const RadialCase& c = radialCases()[which];
    CAPTURE(c.name);
    Grid grid;
    grid.dispersion = false;
    Step step(inStillAir(c.tube), grid, c.gpm * kGpm, 0.5);
    for (const RadialRow& row : c.rows) {
        CAPTURE(row.t);
        // 10 m in 33 cells; a step this sharp does not leave a heater, see the convergence test.
        CHECK_THAT(step.at(step.plugTime() + row.t), WithinAbs(row.share, row.t < 5 ? 0.06 : 0.013));
    }
}

TEST_CASE("one wall layer is the lumped wall behind film and a third of its own resistance", "[front][published]")
{
    const std::size_t which = GENERATE(range(0, 4));
    const RadialCase& c = radialCases()[which];
    CAPTURE(c.name);
    Grid grid;
    grid.dispersion = false;
    grid.cell_m = 0.05;
    grid.wallLayers = 1;
    Stretch s = stretchOf(c.tube, 10);
    s.loss_W_mK = 1e-9;
    Step step(s, grid, c.gpm * kGpm, 0.05);
    for (const RadialRow& row : c.rows) {
        CAPTURE(row.t);
        // The table's thickness/(3 k) is that of a flat wall, ours of the cylinder: 1 % apart in resistance.
        CHECK_THAT(step.at(step.plugTime() + row.t), WithinAbs(row.lumped, 0.005));
    }
}

TEST_CASE("the wall delays the heat by its share of the water's", "[front][published]")
{
    struct Row {
        Tube tube;
        double ratio;
    };

    // Energy balance: delay volume / pipe volume = 1 + (rho cp A) wall / (rho cp A) water, water at 40 °C,
    // PEX 940 kg/m³ and 2300 J/(kg K), copper 8940 and 385; plain arithmetic.
    const auto row = GENERATE(Row{kHalfInchPex, 1.3814}, Row{kThreeQuarterPex, 1.3653}, Row{kHalfInchCopperM, 1.1715},
                              Row{Tube{0.0205994, 0.022225, 390, 8940 * 385.0}, 1.1362});
    Stretch s = stretchOf(row.tube, 3);
    s.loss_W_mK = 1e-9;
    Field field;
    field.addRun(-1, -1, {s});
    field.prepare();
    field.fill(20);
    field.setSupply(0, 50);
    double missing = 0;
    const double flow = kGpm, dt = 0.5;
    for (int k = 0; k < 1200; ++k) {
        field.step(dt, std::vector<double>{flow});
        missing += (50 - field.outletTemperature(0)) * flow * dt;
    }
    CHECK_THAT(missing / 30 / field.volume(0), WithinAbs(row.ratio, 1e-3));
}

TEST_CASE("water cools on its way by the exponential of the transfer units", "[front][published]")
{
    struct Row {
        double loss, length, gpm, outlet;
    };

    // Exact: T = Ta + (T0 - Ta) exp(-UA x/(m cp)), m = 0.031171 kg/s per 0.5 gpm at 50 °C, cp 4179.1, T0 50, Ta 20.
    const auto row = GENERATE(Row{0.50, 10, 0.5, 48.87033}, Row{0.50, 10, 1, 49.42974}, Row{0.25, 10, 0.5, 49.42974},
                              Row{0.70, 30, 1, 47.67675});
    CAPTURE(row.loss, row.length, row.gpm);
    Stretch s = stretchOf(kHalfInchPex, row.length);
    s.loss_W_mK = row.loss;
    s.ambient = 20;
    Field field;
    field.addRun(-1, -1, {s});
    Grid grid;
    grid.wallLayers = 0;
    field.prepare(grid);
    field.fill(50);
    field.setSupply(0, 50);
    // The row's heat flow, carried by our constant volume heat.
    const double flow = row.gpm / 0.5 * 0.031171 * 4179.1 / water::referenceVolumeHeat();
    for (int k = 0; k < 400; ++k)
        field.step(0.5, std::vector<double>{flow});
    CHECK_THAT(field.outletTemperature(0), WithinAbs(row.outlet, 1e-4));
}

TEST_CASE("dispersion widens a front as Taylor's Gaussian does", "[front][published]")
{
    // 10-90 % width in time 2.563 sqrt(2 K L / u³) (variance 2 K L / u³ of a Gaussian); 1.283 s for 10 m of
    // half-inch PEX at 1 gpm with Taylor's own K of 0.0021054 m²/s, here with the K we use.
    const double flow = kGpm, speed = flow / (0.25 * pi * kHalfInchPex.bore * kHalfInchPex.bore);
    CHECK_THAT(2.563 * std::sqrt(2 * 0.0021054 * 10 / std::pow(speed, 3)), WithinRel(1.2831, 1e-2));
    const double k = axialDispersion(flow, kHalfInchPex.bore, 10, 40);
    Stretch s = stretchOf(kHalfInchPex, 10);
    s.loss_W_mK = 1e-9;
    Grid grid;
    grid.wallLayers = 0;
    grid.cell_m = GENERATE(0.02, 0.04);  // dispersion implicit on the first, explicit on the second
    CAPTURE(grid.cell_m);
    Step step(s, grid, flow, 0.05);
    double tenth = 0, nineTenths = 0;
    for (double t = 0.5 * step.plugTime(); nineTenths == 0; t += 0.005) {
        const double share = step.at(t);
        if (tenth == 0 && share >= 0.1)
            tenth = t;
        if (share >= 0.9)
            nineTenths = t;
    }
    CHECK_THAT(nineTenths - tenth, WithinRel(2.563 * std::sqrt(2 * k * 10 / std::pow(speed, 3)), 0.05));
    CHECK_THAT(0.5 * (tenth + nineTenths), WithinRel(step.plugTime(), 0.01));
}
