// SPDX-License-Identifier: GPL-3.0-or-later
#include "network/friction.h"

#include <cmath>

#include "support/catch.h"

using namespace tapward::network;

namespace {

struct Point {
    double reynolds, roughness, factor;
};

// Colebrook (1939), J. Inst. Civ. Eng. 11, 133, with 3.7 and 2.51. Computed with the library fluids 1.0.22.
const Point kColebrook[] = {
    {3000, 0, 0.0435192},       {4000, 0, 0.0399070},       {5000, 0, 0.0373927},        {7000, 0, 0.0340101},
    {10000, 0, 0.0308830},      {15000, 0, 0.0278058},      {20000, 0, 0.0258831},       {50000, 0, 0.0208914},
    {100000, 0, 0.0179898},     {3000, 1e-05, 0.0435282},   {4000, 1e-05, 0.0399172},    {5000, 1e-05, 0.0374039},
    {7000, 1e-05, 0.0340231},   {10000, 1e-05, 0.0308984},  {15000, 1e-05, 0.0278248},   {20000, 1e-05, 0.0259051},
    {50000, 1e-05, 0.0209276},  {100000, 1e-05, 0.0180438}, {3000, 0.0001, 0.0436091},   {4000, 0.0001, 0.0400084},
    {5000, 0.0001, 0.0375045},  {7000, 0.0001, 0.0341403},  {10000, 0.0001, 0.0310372},  {15000, 0.0001, 0.0279944},
    {20000, 0.0001, 0.0261015}, {50000, 0.0001, 0.0212479}, {100000, 0.0001, 0.0185139}, {3000, 0.001, 0.0444113},
    {4000, 0.001, 0.0409104},   {5000, 0.001, 0.0384954},   {7000, 0.001, 0.0352870},    {10000, 0.001, 0.0323818},
    {15000, 0.001, 0.0296113},  {20000, 0.001, 0.0279457},  {50000, 0.001, 0.0240208},   {100000, 0.001, 0.0221745},
    {3000, 0.005, 0.0478412},   {4000, 0.005, 0.0447112},   {5000, 0.005, 0.0426128},    {7000, 0.005, 0.0399276},
    {10000, 0.005, 0.0376299},  {15000, 0.005, 0.0355974},  {20000, 0.005, 0.0344700},   {50000, 0.005, 0.0321746},
    {100000, 0.005, 0.0313064},
};

// Churchill (1977), Chem. Eng. 84(24), 91-92. Computed with the library fluids 1.0.22.
const Point kChurchill[] = {
    {500, 0, 0.1280000},       {1000, 0, 0.0640000},       {1500, 0, 0.0426667},       {2000, 0, 0.0320433},
    {2100, 0, 0.0307063},      {2300, 0, 0.0308401},       {2500, 0, 0.0351451},       {2700, 0, 0.0396332},
    {3000, 0, 0.0429747},      {3500, 0, 0.0422623},       {4000, 0, 0.0405897},       {5000, 0, 0.0378872},
    {7000, 0, 0.0342863},      {10000, 0, 0.0310021},      {20000, 0, 0.0258365},      {100000, 0, 0.0178748},
    {500, 0.0001, 0.1280000},  {1000, 0.0001, 0.0640000},  {1500, 0.0001, 0.0426667},  {2000, 0.0001, 0.0320433},
    {2100, 0.0001, 0.0307063}, {2300, 0.0001, 0.0308409},  {2500, 0.0001, 0.0351513},  {2700, 0.0001, 0.0396581},
    {3000, 0.0001, 0.0430490}, {3500, 0.0001, 0.0423697},  {4000, 0.0001, 0.0407055},  {5000, 0.0001, 0.0380150},
    {7000, 0.0001, 0.0344351}, {10000, 0.0001, 0.0311782}, {20000, 0.0001, 0.0260851}, {100000, 0.0001, 0.0184626},
    {500, 0.001, 0.1280000},   {1000, 0.001, 0.0640000},   {1500, 0.001, 0.0426667},   {2000, 0.001, 0.0320433},
    {2100, 0.001, 0.0307065},  {2300, 0.001, 0.0308479},   {2500, 0.001, 0.0352027},   {2700, 0.001, 0.0398652},
    {3000, 0.001, 0.0436915},  {3500, 0.001, 0.0433181},   {4000, 0.001, 0.0417280},   {5000, 0.001, 0.0391381},
    {7000, 0.001, 0.0357302},  {10000, 0.001, 0.0326902},  {20000, 0.001, 0.0281343},  {100000, 0.001, 0.0223432},
};

struct Measured {
    double reynolds, factor;
};

// Measured in smooth pipe: McKeon, Swanson, Zagarola, Donnelly & Smits (2004), J. Fluid Mech. 511, 41-44, the
// Oregon rig, as tabled in the library fluids 1.0.22. The first table is turbulent, the second laminar.
const Measured kTurbulent[] = {
    {3980.0, 0.03995},   {4835.0, 0.03797},   {5959.0, 0.0361},    {8162.0, 0.03364},    {10900.0, 0.03088},
    {13650.0, 0.02903},  {18990.0, 0.0267},   {29430.0, 0.02386},  {40850.0, 0.02086},   {59220.0, 0.02},
    {84760.0, 0.01805},  {120000.0, 0.01686}, {176000.0, 0.01594}, {237700.0, 0.01511},  {298200.0, 0.01462},
    {467800.0, 0.01365}, {587500.0, 0.01313}, {824200.0, 0.01244}, {1050000.0, 0.01198},
};
const Measured kLaminar[] = {
    {522.5, 0.1245},   {583.1, 0.1126},  {671.8, 0.09917},  {789.8, 0.08501},  {891.0, 0.07722},
    {1013.0, 0.06707}, {1197.0, 0.0588}, {1300.0, 0.05328}, {1390.0, 0.04815}, {1669.0, 0.04304},
};

}  // namespace

TEST_CASE("Laminar friction is 64/Re", "[network][published]")
{
    // Hagen-Poiseuille, exact
    for (double reynolds : {1e-3, 1.0, 500.0, 999.0, 1000.0, 1300.0})
        CHECK_THAT(frictionFactor(reynolds, 1e-4), WithinRel(64 / reynolds, 1e-8));
    // From here the formula's way to turbulence begins: 0.14 % above at 2000.
    CHECK_THAT(frictionFactor(2000, 0), WithinRel(0.032, 2e-3));
}

TEST_CASE("The all-regime formula gives its computed values", "[network][published]")
{
    for (const Point& p : kChurchill) {
        CAPTURE(p.reynolds, p.roughness);
        CHECK_THAT(frictionFactor(p.reynolds, p.roughness), WithinRel(p.factor, 3e-6));
    }
}

TEST_CASE("Colebrook's formula gives its computed values", "[network][published]")
{
    for (const Point& p : kColebrook) {
        CAPTURE(p.reynolds, p.roughness);
        CHECK_THAT(colebrook(p.reynolds, p.roughness), WithinRel(p.factor, 3e-6));
    }
}

TEST_CASE("The all-regime formula stays within 3 % of Colebrook's for the smooth tubes of a coach",
          "[network][published]")
{
    for (const Point& p : kColebrook) {
        if (p.reynolds < 3300 || p.roughness > 1e-3)
            continue;
        CAPTURE(p.reynolds, p.roughness);
        CHECK_THAT(frictionFactor(p.reynolds, p.roughness), WithinRel(p.factor, 0.03));
    }
}

TEST_CASE("Measured friction in smooth pipe is met within 4 % above Re 3300", "[network][published]")
{
    for (const Measured& m : kTurbulent) {
        CAPTURE(m.reynolds);
        // One point of the published set, at Re 40850, lies 4.3 % below its neighbours' trend.
        const double tolerance = m.reynolds == 40850 ? 0.045 : 0.04;
        CHECK_THAT(frictionFactor(m.reynolds, 0), WithinRel(m.factor, tolerance));
    }
}

TEST_CASE("Measured laminar friction lies on or above 64/Re, by at most 13 %", "[network][published]")
{
    for (const Measured& m : kLaminar) {
        CAPTURE(m.reynolds);
        const double ratio = m.factor / frictionFactor(m.reynolds, 0);
        CHECK(ratio > 1.0);
        CHECK(ratio < 1.13);
    }
}

TEST_CASE("Friction has no jumps and its stated slope is that of the curve", "[network]")
{
    for (double roughness : {0.0, 1e-4, 1e-3, 0.02}) {
        for (double reynolds = 100; reynolds < 1e6; reynolds *= 1.013) {
            CAPTURE(reynolds, roughness);
            const double above = frictionFactor(reynolds * 1.0001, roughness);
            const double below = frictionFactor(reynolds / 1.0001, roughness);
            const double slope = std::log(above / below) / std::log(1.0001 * 1.0001);
            CHECK_THAT(friction(reynolds, roughness).slope, WithinAbs(slope, 2e-4));
            CHECK(slope > -1.001);  // so that pressure rises with flow, through the transition too
        }
    }
}
