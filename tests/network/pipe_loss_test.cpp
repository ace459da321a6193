// SPDX-License-Identifier: GPL-3.0-or-later
#include <cmath>

#include "base/units.h"
#include "network/friction.h"
#include "network/law.h"
#include "support/catch.h"
#include "water/water.h"

using namespace tapward;
using namespace tapward::network;

namespace {

double lossPerMetre(double bore_m, double flow_m3s, double celsius)
{
    const auto w = water::at(celsius);
    return evaluate(PipeLaw{1, bore_m, 1.5e-6, 0}, flow_m3s, w.density, w.viscosity).loss;
}

struct Gradient {
    const char* tube;
    double bore_mm, celsius, gpm;
    double colebrook;  // 0 below Re 3300
    double kPaPerMetre;
};

// Darcy-Weisbach with Churchill's factor, roughness 1.5e-6 m, water IF97 at 0.3 MPa. Computed with the
// libraries fluids 1.0.22 and iapws 1.5.3.
const Gradient kGradients[] = {
    {"PEX 3/8", 8.890, 15.56, 0.25, 0, 0.11551},       {"PEX 3/8", 8.890, 15.56, 0.5, 0.04000, 0.59067},
    {"PEX 3/8", 8.890, 15.56, 1, 0.03296, 1.92742},    {"PEX 3/8", 8.890, 15.56, 1.5, 0.02967, 3.88886},
    {"PEX 3/8", 8.890, 15.56, 2, 0.02764, 6.42621},    {"PEX 3/8", 8.890, 50.0, 0.25, 0.03984, 0.14542},
    {"PEX 3/8", 8.890, 50.0, 0.5, 0.03284, 0.47472},   {"PEX 3/8", 8.890, 50.0, 1, 0.02755, 1.58342},
    {"PEX 3/8", 8.890, 50.0, 1.5, 0.02505, 3.23326},   {"PEX 3/8", 8.890, 50.0, 2, 0.02349, 5.38734},
    {"PEX 1/2", 12.065, 15.56, 0.25, 0, 0.03399},      {"PEX 1/2", 12.065, 15.56, 0.5, 0, 0.13531},
    {"PEX 1/2", 12.065, 15.56, 1, 0.03576, 0.45591},   {"PEX 1/2", 12.065, 15.56, 1.5, 0.03204, 0.91426},
    {"PEX 1/2", 12.065, 15.56, 2, 0.02973, 1.50436},   {"PEX 1/2", 12.065, 15.56, 3, 0.02689, 3.05257},
    {"PEX 1/2", 12.065, 15.56, 4, 0.02512, 5.06286},   {"PEX 1/2", 12.065, 50.0, 0.25, 0, 0.03359},
    {"PEX 1/2", 12.065, 50.0, 0.5, 0.03562, 0.11227},  {"PEX 1/2", 12.065, 50.0, 1, 0.02963, 0.37060},
    {"PEX 1/2", 12.065, 50.0, 1.5, 0.02680, 0.75217},  {"PEX 1/2", 12.065, 50.0, 2, 0.02504, 1.24770},
    {"PEX 1/2", 12.065, 50.0, 3, 0.02286, 2.55986},    {"PEX 1/2", 12.065, 50.0, 4, 0.02150, 4.27854},
    {"PEX 3/4", 17.043, 15.56, 0.25, 0, 0.00854},      {"PEX 3/4", 17.043, 15.56, 0.5, 0, 0.01720},
    {"PEX 3/4", 17.043, 15.56, 1, 0.03942, 0.08984},   {"PEX 3/4", 17.043, 15.56, 1.5, 0.03513, 0.17893},
    {"PEX 3/4", 17.043, 15.56, 2, 0.03248, 0.29306},   {"PEX 3/4", 17.043, 15.56, 3, 0.02922, 0.59090},
    {"PEX 3/4", 17.043, 15.56, 4, 0.02720, 0.97569},   {"PEX 3/4", 17.043, 50.0, 0.25, 0, 0.00421},
    {"PEX 3/4", 17.043, 50.0, 0.5, 0.03926, 0.02212},  {"PEX 3/4", 17.043, 50.0, 1, 0.03236, 0.07218},
    {"PEX 3/4", 17.043, 50.0, 1.5, 0.02912, 0.14557},  {"PEX 3/4", 17.043, 50.0, 2, 0.02711, 0.24040},
    {"PEX 3/4", 17.043, 50.0, 3, 0.02461, 0.49008},    {"PEX 3/4", 17.043, 50.0, 4, 0.02305, 0.81524},
    {"PEX 1", 21.920, 15.56, 0.25, 0, 0.00312},        {"PEX 1", 21.920, 15.56, 0.5, 0, 0.00624},
    {"PEX 1", 21.920, 15.56, 1, 0, 0.02741},           {"PEX 1", 21.920, 15.56, 1.5, 0.03769, 0.05476},
    {"PEX 1", 21.920, 15.56, 2, 0.03475, 0.08938},     {"PEX 1", 21.920, 15.56, 3, 0.03115, 0.17940},
    {"PEX 1", 21.920, 15.56, 4, 0.02892, 0.29531},     {"PEX 1", 21.920, 50.0, 0.25, 0, 0.00152},
    {"PEX 1", 21.920, 50.0, 0.5, 0.04229, 0.00676},    {"PEX 1", 21.920, 50.0, 1, 0.03462, 0.02201},
    {"PEX 1", 21.920, 50.0, 1.5, 0.03104, 0.04419},    {"PEX 1", 21.920, 50.0, 2, 0.02882, 0.07275},
    {"PEX 1", 21.920, 50.0, 3, 0.02607, 0.14768},      {"PEX 1", 21.920, 50.0, 4, 0.02436, 0.24492},
    {"Cu M 1/2", 14.453, 15.56, 0.25, 0, 0.01651},     {"Cu M 1/2", 14.453, 15.56, 0.5, 0, 0.04422},
    {"Cu M 1/2", 14.453, 15.56, 1, 0.03761, 0.19490},  {"Cu M 1/2", 14.453, 15.56, 1.5, 0.03359, 0.38944},
    {"Cu M 1/2", 14.453, 15.56, 2, 0.03112, 0.63925},  {"Cu M 1/2", 14.453, 15.56, 3, 0.02806, 1.29280},
    {"Cu M 1/2", 14.453, 15.56, 4, 0.02617, 2.13910},  {"Cu M 1/2", 14.453, 50.0, 0.25, 0, 0.01120},
    {"Cu M 1/2", 14.453, 50.0, 0.5, 0.03746, 0.04799}, {"Cu M 1/2", 14.453, 50.0, 1, 0.03100, 0.15746},
    {"Cu M 1/2", 14.453, 50.0, 1.5, 0.02797, 0.31852}, {"Cu M 1/2", 14.453, 50.0, 2, 0.02608, 0.52710},
    {"Cu M 1/2", 14.453, 50.0, 3, 0.02374, 1.07771},   {"Cu M 1/2", 14.453, 50.0, 4, 0.02227, 1.79663},
    {"Cu M 3/4", 20.599, 15.56, 0.25, 0, 0.00400},     {"Cu M 3/4", 20.599, 15.56, 0.5, 0, 0.00800},
    {"Cu M 3/4", 20.599, 15.56, 1, 0.04168, 0.03687},  {"Cu M 3/4", 20.599, 15.56, 1.5, 0.03703, 0.07333},
    {"Cu M 3/4", 20.599, 15.56, 2, 0.03417, 0.11980},  {"Cu M 3/4", 20.599, 15.56, 3, 0.03066, 0.24073},
    {"Cu M 3/4", 20.599, 15.56, 4, 0.02848, 0.39657},  {"Cu M 3/4", 20.599, 50.0, 0.25, 0, 0.00195},
    {"Cu M 3/4", 20.599, 50.0, 0.5, 0.04151, 0.00908}, {"Cu M 3/4", 20.599, 50.0, 1, 0.03404, 0.02950},
    {"Cu M 3/4", 20.599, 50.0, 1.5, 0.03055, 0.05930}, {"Cu M 3/4", 20.599, 50.0, 2, 0.02838, 0.09770},
    {"Cu M 3/4", 20.599, 50.0, 3, 0.02570, 0.19853},   {"Cu M 3/4", 20.599, 50.0, 4, 0.02402, 0.32949},
};

struct Published {
    const char* tube;
    double bore_mm, gpm, psiPer100ft;
};

// PEX maker design manual, form IM-PR 566442 (11/14), page 137. By its numbers a Hazen-Williams table, C = 150.
const Published kPexTable[] = {
    {"PEX 1/2", 12.065, 1, 1.6},   {"PEX 1/2", 12.065, 1.5, 3.4}, {"PEX 1/2", 12.065, 2.2, 6.9},
    {"PEX 1/2", 12.065, 2.5, 8.7}, {"PEX 1/2", 12.065, 3, 12.2},  {"PEX 1/2", 12.065, 3.5, 16.2},
    {"PEX 1/2", 12.065, 4, 20.8},  {"PEX 1/2", 12.065, 5, 31.4},  {"PEX 1/2", 12.065, 6, 44.0},
    {"PEX 3/4", 17.043, 1, 0.3},   {"PEX 3/4", 17.043, 1.5, 0.6}, {"PEX 3/4", 17.043, 2.2, 1.3},
    {"PEX 3/4", 17.043, 2.5, 1.6}, {"PEX 3/4", 17.043, 3, 2.3},   {"PEX 3/4", 17.043, 3.5, 3.0},
    {"PEX 3/4", 17.043, 4, 3.9},   {"PEX 3/4", 17.043, 5, 5.9},   {"PEX 3/4", 17.043, 6, 8.2},
    {"PEX 3/4", 17.043, 8, 14.0},  {"PEX 3/4", 17.043, 10, 21.1}, {"PEX 1", 21.92, 2.2, 0.4},
    {"PEX 1", 21.92, 3, 0.7},      {"PEX 1", 21.92, 4, 1.1},      {"PEX 1", 21.92, 5, 1.7},
    {"PEX 1", 21.92, 6, 2.4},      {"PEX 1", 21.92, 8, 4.1},      {"PEX 1", 21.92, 10, 6.2},
};

// Copper friction table of an irrigation tutorial site; by its numbers Hazen-Williams, C about 137.
const Published kCopperTable[] = {
    {"Cu L 1/2", 13.843, 1, 0.95},  {"Cu L 1/2", 13.843, 2, 3.44}, {"Cu L 1/2", 13.843, 3, 7.29},
    {"Cu L 1/2", 13.843, 4, 12.41}, {"Cu L 3/4", 19.939, 1, 0.16}, {"Cu L 3/4", 19.939, 2, 0.57},
    {"Cu L 3/4", 19.939, 3, 1.2},   {"Cu L 3/4", 19.939, 4, 2.05}, {"Cu L 3/4", 19.939, 5, 3.09},
};

}  // namespace

TEST_CASE("The pressure gradient of small tube gives its computed values", "[network][published]")
{
    for (const Gradient& g : kGradients) {
        CAPTURE(g.tube, g.celsius, g.gpm);
        CHECK_THAT(lossPerMetre(g.bore_mm * 1e-3, g.gpm * us::kGpm, g.celsius), WithinRel(g.kPaPerMetre * 1e3, 0.005));
    }
}

TEST_CASE("Colebrook's gradient is met within 4 % outside the transition", "[network][published]")
{
    for (const Gradient& g : kGradients) {
        if (g.colebrook == 0)
            continue;
        CAPTURE(g.tube, g.celsius, g.gpm);
        const double velocity = g.gpm * us::kGpm / (3.14159265 / 4 * g.bore_mm * g.bore_mm * 1e-6);
        const double other = g.colebrook / (g.bore_mm * 1e-3) * 0.5 * water::density(g.celsius) * velocity * velocity;
        CHECK_THAT(lossPerMetre(g.bore_mm * 1e-3, g.gpm * us::kGpm, g.celsius), WithinRel(other, 0.04));
    }
}

TEST_CASE("A published PEX table is met from above, by at most 20 % where its own formula holds",
          "[network][published]")
{
    // Below about Re 7000 the table's formula is outside its range and the measured friction factors side
    // with Darcy-Weisbach, so there it is allowed 35 %; a tenth of a psi is the table's rounding.
    for (const Published& p : kPexTable) {
        CAPTURE(p.tube, p.gpm);
        const double ours =
            lossPerMetre(p.bore_mm * 1e-3, p.gpm * us::kGpm, us::celsius(60)) * 100 * us::kFoot / us::kPsi;
        const double velocity = p.gpm * us::kGpm / (3.14159265 / 4 * p.bore_mm * p.bore_mm * 1e-6);
        const double reynolds = velocity * p.bore_mm * 1e-3 * 999.0 / 1.1217e-3;
        CHECK(ours > 0.98 * p.psiPer100ft - 0.05);
        CHECK(ours < (reynolds < 8000 ? 1.35 : 1.20) * p.psiPer100ft + 0.05);
    }
}

TEST_CASE("A published copper table is met within 20 %", "[network][published]")
{
    for (const Published& p : kCopperTable) {
        CAPTURE(p.tube, p.gpm);
        const double ours =
            lossPerMetre(p.bore_mm * 1e-3, p.gpm * us::kGpm, us::celsius(60)) * 100 * us::kFoot / us::kPsi;
        CHECK_THAT(ours, WithinRel(p.psiPer100ft, 0.20));
    }
}

TEST_CASE("Worked pipe examples come out as printed", "[network][published]")
{
    // Cengel & Cimbala, Fluid Mechanics, chapter 8 (data and answers from memory; arithmetic reproduces them).
    // Water at 40 F in 0.12 in bore (the book takes 0.010 ft), 30 ft, 3.0 ft/s: 6.45 psi, laminar.
    {
        const double bore = 0.010 * us::kFoot;
        const double flow = 3.14159265358979 / 4 * bore * bore * 3.0 * us::kFoot;
        const double density = 62.42 * us::kPound / std::pow(us::kFoot, 3);
        const double viscosity = 1.038e-3 * us::kPound / us::kFoot;
        CHECK_THAT(evaluate(PipeLaw{30 * us::kFoot, bore, 0, 0}, flow, density, viscosity).loss / us::kPsi,
                   WithinRel(6.45, 0.003));
    }
    // Water at 60 F, 2 in stainless with e = 7e-6 ft, 0.2 ft³/s, 200 ft: 11.8 psi; f by Colebrook there.
    {
        const double density = 62.36 * us::kPound / std::pow(us::kFoot, 3);
        const double viscosity = 7.536e-4 * us::kPound / us::kFoot;
        const double flow = 0.2 * std::pow(us::kFoot, 3);
        CHECK_THAT(evaluate(PipeLaw{200 * us::kFoot, 2 * us::kInch, 7e-6 * us::kFoot, 0}, flow, density, viscosity).loss
                       / us::kPsi,
                   WithinRel(11.8, 0.01));
    }
    // Water 999.1 kg/m³, 1.138e-3 Pa s, 4 cm stainless e = 0.002 mm, 8 L/s, 30 m: 239 kPa.
    CHECK_THAT(evaluate(PipeLaw{30, 0.04, 2e-6, 0}, 8e-3, 999.1, 1.138e-3).loss, WithinRel(238807.0, 0.01));
}

TEST_CASE("Pressure rises with flow at every Reynolds number", "[network]")
{
    for (double K : {0.0, 6.0}) {
        const PipeLaw pipe{3, 0.012065, 1.5e-6, K};
        double before = evaluate(pipe, 0, 998.2, 1e-3).loss;
        CHECK(before == 0);
        for (double flow = 1e-9; flow < 1e-3; flow *= 1.003) {
            CAPTURE(flow);
            const double now = evaluate(pipe, flow, 998.2, 1e-3).loss;
            CHECK(now > before);
            CHECK_THAT(evaluate(pipe, -flow, 998.2, 1e-3).loss, WithinRel(-now, 1e-12));
            before = now;
        }
    }
}

TEST_CASE("Twice the laminar pipe loses twice the pressure", "[network]")
{
    for (double flow : {1e-8, 1e-6, 5e-6}) {  // Reynolds 530 at most
        const double once = evaluate(PipeLaw{1.3, 0.012065, 1.5e-6, 0}, flow, 998.2, 1e-3).loss;
        const double twice = evaluate(PipeLaw{2.6, 0.012065, 1.5e-6, 0}, flow, 998.2, 1e-3).loss;
        CHECK_THAT(twice, WithinRel(2 * once, 1e-12));
        // Hagen-Poiseuille
        CHECK_THAT(once, WithinRel(128 * 1e-3 * 1.3 * flow / (3.141592653589793 * std::pow(0.012065, 4)), 1e-12));
    }
}

TEST_CASE("Twice the turbulent pipe loses twice the pressure, fittings not counted", "[network]")
{
    const double once = evaluate(PipeLaw{1.3, 0.012065, 1.5e-6, 0}, 1e-4, 998.2, 1e-3).loss;
    CHECK_THAT(evaluate(PipeLaw{2.6, 0.012065, 1.5e-6, 0}, 1e-4, 998.2, 1e-3).loss, WithinRel(2 * once, 1e-12));
    // a K adds that many velocity heads
    const double velocity = 1e-4 / (3.141592653589793 / 4 * 0.012065 * 0.012065);
    CHECK_THAT(evaluate(PipeLaw{1.3, 0.012065, 1.5e-6, 5}, 1e-4, 998.2, 1e-3).loss - once,
               WithinRel(5 * 0.5 * 998.2 * velocity * velocity, 1e-9));
}
