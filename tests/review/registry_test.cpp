// SPDX-License-Identifier: GPL-3.0-or-later
// The list of rules itself, and that each of them has a test with both twins.
#include <filesystem>
#include <fstream>
#include <regex>
#include <set>
#include <sstream>

#include "review/finding.h"
#include "support/catch.h"

using namespace tapward;

namespace {

std::string textsIn(const std::string& folder)
{
    std::string all;
    for (const auto& entry : std::filesystem::directory_iterator(folder)) {
        std::ifstream in(entry.path());
        std::ostringstream text;
        text << in.rdbuf();
        all += text.str();
    }
    return all;
}

}  // namespace

TEST_CASE("every rule has an id of its own and a file that names a source for what it finds", "[review]")
{
    std::set<std::string> ids;
    for (const review::Rule& rule : review::rules()) {
        CAPTURE(rule.id);
        CHECK(ids.insert(rule.id).second);
        CHECK(rule.look != nullptr);
    }
    std::size_t files = 0;
    for (const auto& entry : std::filesystem::directory_iterator(TAPWARD_SOURCE_DIR "/core/review/rules")) {
        if (entry.path().extension() != ".cpp") {
            continue;
        }
        CAPTURE(entry.path().filename().string());
        ++files;
        std::ifstream in(entry.path());
        std::ostringstream text;
        text << in.rdbuf();
        CHECK(text.str().find("finding.source =") != std::string::npos);
    }
    CHECK(files == ids.size());
}

TEST_CASE("every rule has a test with a coach that raises it and one that does not", "[review]")
{
    const std::string tests = textsIn(TAPWARD_SOURCE_DIR "/tests/review");
    for (const review::Rule& rule : review::rules()) {
        CAPTURE(rule.id);
        const std::string call = "\\(\"" + rule.id + "\"\\)";
        CHECK(std::regex_search(tests, std::regex("CHECK_FALSE\\([^;]*finds" + call)));
        CHECK(std::regex_search(tests, std::regex("(REQUIRE\\(|CHECK\\(|found = )[^;]*(finds|found)" + call)));
    }
}
