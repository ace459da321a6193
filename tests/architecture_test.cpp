// SPDX-License-Identifier: GPL-3.0-or-later
// Holds the house against its plan: arrows between rooms, no Qt in core, a licence line everywhere.
#include <algorithm>
#include <cctype>
#include <filesystem>
#include <fstream>
#include <map>
#include <regex>
#include <set>
#include <sstream>
#include <string>
#include <vector>

#include "support/catch.h"

namespace fs = std::filesystem;
using Rooms = std::map<std::string, std::set<std::string>>;  // a room and all it may include, itself not among them

namespace {

const fs::path kRoot = TAPWARD_SOURCE_DIR;

std::string contentOf(const fs::path& path)
{
    std::ifstream file(path, std::ios::binary);
    std::ostringstream text;
    text << file.rdbuf();
    return text.str();
}

struct Include {
    std::string path;
    bool angled;
};

std::vector<Include> includesOf(const std::string& source)
{
    static const std::regex pattern(R"re((?:^|\n)[ \t]*#[ \t]*include[ \t]*([<"])([^>"\n]+)[>"])re");
    std::vector<Include> found;
    for (std::sregex_iterator it(source.begin(), source.end(), pattern), end; it != end; ++it)
        found.push_back({(*it)[2], (*it)[1] == "<"});
    return found;
}

std::string firstFolder(const std::string& path)
{
    const auto slash = path.find('/');
    return slash == std::string::npos ? std::string() : path.substr(0, slash);
}

/// The NEEDS of every tapward_room() call in one CMake text.
std::vector<std::pair<std::string, std::vector<std::string>>> roomsIn(const std::string& cmake)
{
    static const std::regex call(R"(tapward_room\s*\(\s*(\w+)\s+([^)]*)\))");
    std::vector<std::pair<std::string, std::vector<std::string>>> rooms;
    for (std::sregex_iterator it(cmake.begin(), cmake.end(), call), end; it != end; ++it) {
        std::istringstream words((*it)[2]);
        std::vector<std::string> needs;
        bool inNeeds = false;
        for (std::string word; words >> word;) {
            if (word == "NEEDS" || word == "SOURCES" || word == "LINK")
                inNeeds = word == "NEEDS";
            else if (inNeeds)
                needs.push_back(word);
        }
        rooms.emplace_back((*it)[1], needs);
    }
    return rooms;
}

/// Needs carry through; a need that is not declared before its user is reported in `wrong`.
Rooms closed(const std::vector<std::pair<std::string, std::vector<std::string>>>& declared,
             std::vector<std::string>& wrong)
{
    Rooms rooms;
    for (const auto& [room, needs] : declared) {
        std::set<std::string>& all = rooms[room];
        for (const std::string& need : needs) {
            const auto known = rooms.find(need);
            if (need == room || known == rooms.end()) {
                wrong.push_back(room + " needs " + need + ", which does not come before it");
                continue;
            }
            all.insert(need);
            all.insert(known->second.begin(), known->second.end());
        }
    }
    return rooms;
}

/// What a source text of `room` includes that it may not.
std::vector<std::string> missingArrows(const std::string& source, const std::string& room, const Rooms& rooms)
{
    std::vector<std::string> missing;
    const std::set<std::string>& allowed = rooms.at(room);
    for (const Include& include : includesOf(source)) {
        const std::string target = firstFolder(include.path);
        if (rooms.count(target) && target != room && !allowed.count(target))
            missing.push_back(room + " -> " + include.path);
    }
    return missing;
}

bool includesQt(const std::string& source)
{
    const auto includes = includesOf(source);
    return std::any_of(includes.begin(), includes.end(), [](const Include& include) {
        const std::string& path = include.path;
        const bool qtClass = path.size() > 1 && path[0] == 'Q' && std::isupper(static_cast<unsigned char>(path[1]));
        return qtClass || path.rfind("Qt", 0) == 0 || path.rfind("qt", 0) == 0;
    });
}

bool isCpp(const fs::path& path) { return path.extension() == ".h" || path.extension() == ".cpp"; }

bool isSource(const fs::path& path)
{
    const std::string name = path.filename().string();
    static const std::set<std::string> extensions{".h", ".cpp", ".cmake", ".sh", ".py"};
    static const std::set<std::string> names{"CMakeLists.txt", "start",         "run",
                                             "packages",       ".clang-format", ".clang-tidy"};
    return extensions.count(path.extension().string()) || names.count(name);
}

/// The licence line is the first, or the second after "#!".
bool hasLicenceLine(const std::string& content)
{
    static const std::string line = std::string("SPDX-License") + "-Identifier: GPL-3.0-or-later";
    std::istringstream lines(content);
    std::string first;
    std::getline(lines, first);
    if (first.rfind("#!", 0) == 0)
        std::getline(lines, first);
    return first.find(line) != std::string::npos;
}

std::vector<fs::path> filesUnder(const fs::path& folder)
{
    std::vector<fs::path> files;
    if (fs::exists(folder))
        for (const auto& entry : fs::recursive_directory_iterator(folder))
            if (entry.is_regular_file())
                files.push_back(entry.path());
    std::sort(files.begin(), files.end());
    return files;
}

std::vector<std::pair<std::string, std::vector<std::string>>> declaredCoreRooms()
{
    // In the order of core/CMakeLists.txt: that order is the plan's "up".
    static const std::regex sub(R"(add_subdirectory\((\w+)\))");
    const std::string list = contentOf(kRoot / "core/CMakeLists.txt");
    std::vector<std::pair<std::string, std::vector<std::string>>> declared;
    for (std::sregex_iterator it(list.begin(), list.end(), sub), end; it != end; ++it)
        for (auto& room : roomsIn(contentOf(kRoot / "core" / (*it)[1].str() / "CMakeLists.txt")))
            declared.push_back(std::move(room));
    return declared;
}

Rooms appRooms()
{
    // The window's side of the plan; every room may also use all of core. Tray and panels know neither
    // each other nor the canvas, so that each can be tested and replaced alone.
    std::vector<std::string> wrong;
    Rooms rooms = closed({{"look", {}},
                          {"session", {}},
                          {"canvas", {"session", "look"}},
                          {"tools", {"canvas"}},
                          {"print", {"canvas"}},
                          {"tray", {"session", "look"}},
                          {"panels", {"session", "look"}},
                          {"batch", {"print"}},
                          {"shell", {"tools", "print", "tray", "panels"}}},
                         wrong);
    REQUIRE(wrong.empty());
    return rooms;
}

}  // namespace

TEST_CASE("the checker of this file sees a wrong arrow, Qt and a missing licence line", "[architecture]")
{
    std::vector<std::string> wrong;
    const Rooms rooms =
        closed(roomsIn("tapward_room(base SOURCES a.cpp)\ntapward_room(water NEEDS base\n SOURCES b.cpp)\n"
                       "tapward_room(network NEEDS water SOURCES c.cpp LINK Eigen3::Eigen)"),
               wrong);
    CHECK(wrong.empty());
    CHECK(rooms.at("network") == std::set<std::string>{"base", "water"});
    CHECK(missingArrows("#include \"base/units.h\"\n#include <vector>\n", "network", rooms).empty());
    CHECK(missingArrows("// x\n  # include \"network/law.h\"\n", "water", rooms).size() == 1);
    CHECK(missingArrows("#include <network/law.h>\n", "base", rooms).size() == 1);

    closed(roomsIn("tapward_room(water NEEDS base SOURCES b.cpp)\ntapward_room(base SOURCES a.cpp)"), wrong);
    CHECK(wrong.size() == 1);

    CHECK(includesQt("#include <QString>\n"));
    CHECK(includesQt("\n#include <QtCore/qglobal.h>\n"));
    CHECK_FALSE(includesQt("#include <vector>\n#include \"base/Quantity.h\"\n"));

    const std::string line = std::string("SPDX-License") + "-Identifier: GPL-3.0-or-later";
    CHECK(hasLicenceLine("// " + line + "\nint x;\n"));
    CHECK(hasLicenceLine("#!/bin/bash\n# " + line + "\n"));
    CHECK_FALSE(hasLicenceLine("int x;\n// " + line + "\n"));
}

TEST_CASE("rooms of core need only rooms that come before them", "[architecture]")
{
    std::vector<std::string> wrong;
    const auto declared = declaredCoreRooms();
    const Rooms rooms = closed(declared, wrong);
    CAPTURE(wrong);
    CHECK(wrong.empty());
    CHECK(rooms.size() == declared.size());
    for (const auto& entry : fs::directory_iterator(kRoot / "core"))
        if (entry.is_directory()) {
            CAPTURE(entry.path().filename().string());
            CHECK(rooms.count(entry.path().filename().string()) == 1);
        }
}

TEST_CASE("every include in core follows an arrow and core knows no Qt", "[architecture]")
{
    std::vector<std::string> wrong;
    Rooms rooms = closed(declaredCoreRooms(), wrong);
    const Rooms app = appRooms();
    for (const auto& [room, needs] : app)
        rooms.emplace(room, needs);  // so that an include of an app room is seen as missing too
    int seen = 0;
    for (const fs::path& path : filesUnder(kRoot / "core")) {
        if (!isCpp(path))
            continue;
        ++seen;
        const std::string room = (*fs::relative(path, kRoot / "core").begin()).string();
        const std::string source = contentOf(path);
        CAPTURE(path.string());
        REQUIRE(rooms.count(room) == 1);
        const auto missing = missingArrows(source, room, rooms);
        CAPTURE(missing);
        CHECK(missing.empty());
        CHECK_FALSE(includesQt(source));
        CHECK(source.find("Q_OBJECT") == std::string::npos);
    }
    CHECK(seen > 20);
}

TEST_CASE("every include in app follows an arrow; tray and panels stand alone", "[architecture]")
{
    std::vector<std::string> wrong;
    const Rooms core = closed(declaredCoreRooms(), wrong);
    Rooms rooms = appRooms();
    for (auto& [room, needs] : rooms)
        for (const auto& [coreRoom, coreNeeds] : core)
            needs.insert(coreRoom);
    rooms.insert(core.begin(), core.end());
    for (const fs::path& path : filesUnder(kRoot / "app")) {
        if (!isCpp(path))
            continue;
        const fs::path relative = fs::relative(path, kRoot / "app");
        if (relative.parent_path().empty())
            continue;  // main.cpp may use everything
        const std::string room = (*relative.begin()).string();
        CAPTURE(path.string());
        REQUIRE(rooms.count(room) == 1);
        const auto missing = missingArrows(contentOf(path), room, rooms);
        CAPTURE(missing);
        CHECK(missing.empty());
    }
}

TEST_CASE("nothing in the window takes a text for mark-up", "[architecture]")
{
    // The style shows every label's text as it is; a widget of these has its own mind, and a file's words may reach it.
    static const std::regex guesses(
        R"(\b(RichText|AutoText|MarkdownText|setHtml|insertHtml|setMarkdown|QTextDocument)"
        R"(|QTextEdit|QTextBrowser|QGraphicsTextItem|QStaticText|setWhatsThis|WhatsThisRole)"
        R"(|QErrorMessage)\b)");
    // The help and the notice hold nothing but our own words; the style asks who has not decided.
    static const std::set<std::string> knows{"help_window.cpp", "help_window.h", "window_style.cpp"};
    for (const fs::path& path : filesUnder(kRoot / "app")) {
        if (!isCpp(path) || knows.count(path.filename().string()) > 0)
            continue;
        const std::string text = contentOf(path);
        std::smatch found;
        std::regex_search(text, found, guesses);
        CAPTURE(path.string(), found.str());
        CHECK(found.empty());
    }
    CHECK(contentOf(kRoot / "app/shell/main.cpp").find("QApplication::setStyle(new WindowStyle)") != std::string::npos);
}

TEST_CASE("every source file names its licence on its first line", "[architecture]")
{
    CHECK(contentOf(kRoot / "LICENSE").find("GNU GENERAL PUBLIC LICENSE") != std::string::npos);
    std::vector<fs::path> files;
    for (const char* folder : {"core", "app", "tests", "resources", ".ci"})
        for (const fs::path& path : filesUnder(kRoot / folder))
            files.push_back(path);
    for (const char* name : {"CMakeLists.txt", ".clang-format", ".clang-tidy"})
        files.push_back(kRoot / name);
    for (const fs::path& path : files) {
        if (!isSource(path))
            continue;
        CAPTURE(path.string());
        CHECK(hasLicenceLine(contentOf(path)));
    }
}

TEST_CASE("the top folder holds only what the plan names", "[architecture]")
{
    static const std::set<std::string> allowed{".ci", ".clang-format", ".clang-tidy", ".git", ".gitattributes",
                                               ".gitignore", "CMakeLists.txt", "CMakePresets.json",
                                               "CMakeUserPresets.json", "DEVELOPERS.md", "LICENSE", "README.md", "app",
                                               "core", "resources", "samples", "tests",
                                               // made by tools, not kept
                                               ".cache", "compile_commands.json"};
    for (const auto& entry : fs::directory_iterator(kRoot)) {
        const std::string name = entry.path().filename().string();
        if (name.rfind("build", 0) == 0 || entry.path().extension() == ".user")
            continue;  // see .gitignore
        CAPTURE(name);
        CHECK(allowed.count(name) == 1);
    }
}
