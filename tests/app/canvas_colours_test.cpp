// SPDX-License-Identifier: GPL-3.0-or-later
// Colours as people see them who tell some colours apart badly or not at all.
#include <algorithm>
#include <array>
#include <cmath>
#include <string>
#include <vector>

#include <QPalette>

#include "canvas/temperature_scale.h"
#include "contrast.h"
#include "look/theme.h"
#include "support/catch.h"

using namespace tapward::app;

namespace {

using Triple = std::array<double, 3>;
using Matrix = std::array<Triple, 3>;

struct Sight {
    const char* name;
    Matrix matrix;
};

// How linear RGB looks to people without one kind of cone: Machado, Oliveira and Fernandes, "A physiologically-based
// model for simulation of color vision deficiency", IEEE Transactions on Visualization and Computer Graphics 15(6),
// 2009, severity 1.0; figures from memory.
const std::vector<Sight> kSights{
    {"all cones", {{{1, 0, 0}, {0, 1, 0}, {0, 0, 1}}}},
    {"no long-wave cones",
     {{{0.152286, 1.052583, -0.204868}, {0.114503, 0.786281, 0.099216}, {-0.003882, -0.048116, 1.051998}}}},
    {"no middle-wave cones",
     {{{0.367322, 0.860646, -0.227968}, {0.280085, 0.672501, 0.047413}, {-0.011820, 0.042940, 0.968881}}}},
    {"no short-wave cones",
     {{{1.255528, -0.076749, -0.178779}, {-0.078411, 0.930809, 0.147602}, {0.004733, 0.691367, 0.303900}}}},
};

/// L*, a*, b* (CIE 15) of an sRGB colour (IEC 61966-2-1) as that sight has it.
Triple seen(const QColor& colour, const Matrix& sight)
{
    const Triple rgb{test::linear(colour.redF()), test::linear(colour.greenF()), test::linear(colour.blueF())};
    Triple as{};
    for (std::size_t row = 0; row < 3; ++row)
        as[row] = std::clamp(sight[row][0] * rgb[0] + sight[row][1] * rgb[1] + sight[row][2] * rgb[2], 0.0, 1.0);
    const auto part = [](double t) {
        return t > std::pow(6.0 / 29, 3) ? std::cbrt(t) : t / (3 * std::pow(6.0 / 29, 2)) + 4.0 / 29;
    };
    const double x = part((0.4124 * as[0] + 0.3576 * as[1] + 0.1805 * as[2]) / 0.9505);
    const double y = part(0.2126 * as[0] + 0.7152 * as[1] + 0.0722 * as[2]);
    const double z = part((0.0193 * as[0] + 0.1192 * as[1] + 0.9505 * as[2]) / 1.089);
    return {116 * y - 16, 500 * (x - y), 200 * (y - z)};
}

double apart(const Triple& a, const Triple& b) { return std::hypot(a[0] - b[0], a[1] - b[1], a[2] - b[2]); }

}  // namespace

TEST_CASE("cold, hot, returning and plain pipes are told apart by every kind of colour sight", "[canvas]")
{
    // A difference of 2.3 is just seen (Mahy, Van Eycken and Oosterlinck, Color Research & Application 19, 1994);
    // five times that is plain. The lines differ by their dashes as well.
    for (const Theme& theme : {Theme::light(), Theme::darkOne(), Theme::strongLight(), Theme::strongDark()})
        for (const auto& sight : kSights) {
            INFO(sight.name << (theme.dark ? ", dark" : ", light"));
            const std::vector<QColor> pipes{theme.cold, theme.hot, theme.returning, theme.ink};
            for (std::size_t a = 0; a < pipes.size(); ++a)
                for (std::size_t b = a + 1; b < pipes.size(); ++b)
                    CHECK(apart(seen(pipes[a], sight.matrix), seen(pipes[b], sight.matrix)) > 5 * 2.3);
        }
}

TEST_CASE("hotter water is lighter to every kind of colour sight, five kelvin plainly so", "[canvas]")
{
    for (const auto& sight : kSights) {
        INFO(sight.name);
        for (double celsius = kScaleCold_C; celsius + 5 <= kScaleHot_C; celsius += 1) {
            const Triple cool = seen(temperatureColour(celsius), sight.matrix);
            const Triple warm = seen(temperatureColour(celsius + 5), sight.matrix);
            CHECK(warm[0] > cool[0] + 2.3);
        }
    }
}

TEST_CASE("text and graphics keep the contrast that each palette promises", "[canvas]")
{
    // WCAG 2.2, success criteria 1.4.3 and 1.4.11 (AA: text 4.5:1, graphics 3:1); 1.4.6 (AAA: text 7:1).
    struct Promise {
        Theme theme;
        double text, graphics;
    };
    for (const Promise& one : {Promise{Theme::light(), 4.5, 3}, Promise{Theme::darkOne(), 4.5, 3},
                               Promise{Theme::strongLight(), 7, 4.5}, Promise{Theme::strongDark(), 7, 4.5}}) {
        const Theme& theme = one.theme;
        INFO((theme.dark ? "dark" : "light") << ", text " << one.text);
        for (const QColor& text : {theme.text, theme.quietText})
            CHECK(test::contrast(text, theme.paper) >= one.text);
        for (const QColor& line : {theme.ink, theme.cold, theme.hot, theme.returning, theme.added, theme.removed,
                                   theme.selection, theme.target, theme.danger, theme.caution, theme.note})
            CHECK(test::contrast(line, theme.paper) >= one.graphics);
    }
    // A desktop set to pure black and white gets the stronger one, any other does not.
    CHECK(Theme::of(QPalette(Qt::black, Qt::white, {}, {}, {}, {}, Qt::black, Qt::white, Qt::white)).quietText
          == Theme::strongLight().quietText);
    CHECK(Theme::of(QPalette(Qt::white, Qt::black, {}, {}, {}, {}, Qt::white, Qt::black, Qt::black)).paper
          == Qt::black);
    CHECK(Theme::of(QPalette(QColor(0xef, 0xef, 0xef))).quietText == Theme::light().quietText);
}
