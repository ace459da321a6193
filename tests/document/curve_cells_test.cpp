// SPDX-License-Identifier: GPL-3.0-or-later
#include "document/curve_cells.h"

#include "support/catch.h"

using namespace tapward;
using namespace tapward::document;

namespace {

const parts::PartKind& pump() { return *parts::find("circulator"); }
const parts::Field& curveField() { return *pump().field("curve"); }

Result<parts::Curve> cells(const char* text, UnitSystem units = UnitSystem::Us)
{
    return readCurve(readCells(text).value(), pump(), curveField(), units);
}

}  // namespace

TEST_CASE("two columns of a spreadsheet become a curve, headings skipped and rows sorted", "[survey]")
{
    const auto curve = cells("Flow\tHead\n2\t0\n0\t11\n1\t8 ft\n\n");
    REQUIRE(curve);
    REQUIRE(curve->size() == 3);
    // 1 gpm = 3.785411784e-3 / 60 m3/s, 1 ft = 0.3048 m: NIST SP 811:2008
    CHECK_THAT((*curve)[1].x, WithinRel(3.785411784e-3 / 60, 1e-12));
    CHECK_THAT((*curve)[1].y, WithinRel(8 * 0.3048, 1e-12));
    CHECK((*curve)[0].x == 0);
    CHECK_THAT((*curve)[0].y, WithinRel(11 * 0.3048, 1e-12));
}

TEST_CASE("a curve block with a bad cell, one column, a rise or one reading is refused with the row or reason",
          "[survey]")
{
    const auto bad = cells("0\t11\n1\tlots\n");
    REQUIRE_FALSE(bad);
    CHECK(bad.error().where == "2");
    CHECK_FALSE(cells("0\n1\n"));
    CHECK_FALSE(cells("0\t5\n1\t9\n"));
    CHECK_FALSE(cells("0\t5\n"));
    CHECK_FALSE(cells(""));
    CHECK_FALSE(cells("Flow\tHead\n"));
}

TEST_CASE("readings copied out read back within the digits shown", "[survey]")
{
    const auto curve = cells("0\t11\n0.7\t9.25\n2\t0\n");
    REQUIRE(curve);
    for (const UnitSystem units : {UnitSystem::Us, UnitSystem::Metric}) {
        const auto back = readCurve(readCells(writeCells(curveCells(*curve, curveField(), units))).value(), pump(),
                                    curveField(), units);
        REQUIRE(back);
        REQUIRE(back->size() == curve->size());
        for (std::size_t i = 0; i < curve->size(); ++i) {
            CHECK_THAT((*back)[i].x, WithinAbs((*curve)[i].x, 1e-8));
            CHECK_THAT((*back)[i].y, WithinAbs((*curve)[i].y, 1e-3));
        }
    }
}
