// SPDX-License-Identifier: GPL-3.0-or-later
#include "document/cell_block.h"

#include <rapidcheck.h>

#include "support/catch.h"

using namespace tapward;
using namespace tapward::document;

TEST_CASE("a block from a spreadsheet is read by its tabs, quoted cells whole", "[survey]")
{
    const auto block = readCells("L1\t2 ft 3 in\t\"12\"\"\"\r\n\"a\tb\nc\"\t\t 1,5 \r\n\r\n");
    REQUIRE(block);
    CHECK(*block == CellBlock{{"L1", "2 ft 3 in", "12\""}, {"a\tb\nc", "", "1,5"}});
}

TEST_CASE("without tabs commas or semicolons part the cells", "[survey]")
{
    CHECK(readCells("L1,3,\"a,b\"\nL2,4,\n").value() == CellBlock{{"L1", "3", "a,b"}, {"L2", "4", ""}});
    CHECK(readCells("L1;0,7\nL2;1,25\n").value() == CellBlock{{"L1", "0,7"}, {"L2", "1,25"}});
}

TEST_CASE("a single column of numbers with decimal commas stays one column", "[survey]")
{
    CHECK(readCells("0,7\n1,25\n-3,0\n").value() == CellBlock{{"0,7"}, {"1,25"}, {"-3,0"}});
    CHECK(readCells("0,7\nL2,1\n").value() == CellBlock{{"0", "7"}, {"L2", "1"}});
}

TEST_CASE("inch signs inside a cell are letters, not quotes", "[survey]")
{
    CHECK(readCells("PEX 1/2\"\t2' 3\"\n").value() == CellBlock{{"PEX 1/2\"", "2' 3\""}});
}

TEST_CASE("a clipboard that is too large, not text, or has an open quote is refused with a reason", "[survey]")
{
    CHECK_FALSE(readCells(std::string((2u << 20) + 1, 'a')));
    CHECK_FALSE(readCells(std::string(6000, '\n') + "a"));
    CHECK_FALSE(readCells(std::string(300, '\t')));
    CHECK_FALSE(readCells("a\xff\tb"));
    const auto open = readCells("\"never closed\tb");
    REQUIRE_FALSE(open);
    CHECK(open.error().what.text.find("never closed") != std::string::npos);
    CHECK_FALSE(open.error().remedy.empty());
}

TEST_CASE("what is copied out reads back as it was", "[survey]")
{
    CHECK(rc::check([] {
        const auto cell = rc::gen::container<std::string>(
            rc::gen::element('a', '7', '"', ',', ';', '\t', '\n', '/', '.', '-', '=', '\''));
        auto block =
            *rc::gen::container<CellBlock>(rc::gen::nonEmpty(rc::gen::container<std::vector<std::string>>(cell)));
        while (!block.empty() && std::all_of(block.back().begin(), block.back().end(), [](const auto& one) {
            return one.find_first_not_of(" \t\n") == std::string::npos;
        }))
            block.pop_back();
        const auto back = readCells(writeCells(block));
        RC_ASSERT(back.has_value());
        RC_ASSERT(*back == block);
    }));
}

TEST_CASE("no cell that is copied out is run as a formula, and it comes back as it was", "[survey]")
{
    CHECK(writeCells({{"@SUM(1)", "-0.5 m", "2"}}) == "'@SUM(1)\t-0.5 m\t2\n");
    const CellBlock block{{"=1+1", "'=1", "''@x", "'tis", "-2", "+x"}};
    const std::string text = writeCells(block);
    CHECK(text.find("\t=") == std::string::npos);
    CHECK(readCells(text).value() == block);
}

TEST_CASE("any text at all gives cells within the limits or a reason", "[survey]")
{
    CHECK(rc::check([](const std::string& text) {
        const auto block = readCells(text);
        if (block)
            for (const auto& row : *block)
                RC_ASSERT(row.size() <= CellLimits{}.columns);
        else
            RC_ASSERT(!block.error().remedy.empty());
    }));
}
