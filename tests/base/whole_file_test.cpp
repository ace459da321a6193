// SPDX-License-Identifier: GPL-3.0-or-later
// Files are there whole or not at all; what is no file is written to, never replaced. Everything happens in a folder
// of the test's own.
#include "base/whole_file.h"

#include <array>
#include <chrono>
#include <csignal>
#include <filesystem>
#include <fstream>
#include <future>
#include <thread>

#include <fcntl.h>
#include <sys/resource.h>
#include <sys/stat.h>
#include <sys/syscall.h>
#include <sys/sysmacros.h>
#include <unistd.h>

#include "support/catch.h"

using namespace tapward;
namespace fs = std::filesystem;
using namespace std::chrono_literals;

namespace {

int g_foldersSynced = 0, g_filesSynced = 0;

struct Folder {
    fs::path path;
    Folder()
    {
        std::string name = (fs::temp_directory_path() / "tapward_whole_file.XXXXXX").string();
        path = ::mkdtemp(name.data());
    }
    ~Folder() { fs::remove_all(path); }
    Folder(const Folder&) = delete;
    Folder& operator=(const Folder&) = delete;
    std::string at(const char* name) const { return (path / name).string(); }
    long entries() const { return std::distance(fs::directory_iterator(path), fs::directory_iterator{}); }
};

std::string contents(const std::string& path)
{
    std::ifstream in(path, std::ios::binary);
    return {std::istreambuf_iterator<char>(in), {}};
}

mode_t kindOf(const std::string& path)
{
    struct stat what{};
    REQUIRE(::lstat(path.c_str(), &what) == 0);
    return what.st_mode & S_IFMT;
}

std::string allFrom(int file)
{
    std::string got;
    std::array<char, 4096> block{};
    for (ssize_t n = 0; (n = ::read(file, block.data(), block.size())) > 0;) {
        got.append(block.data(), static_cast<std::size_t>(n));
    }
    return got;
}

}  // namespace

// Stands in for the C library's in this program: counts, then syncs.
extern "C" int fsync(int file)
{
    struct stat what{};
    if (::fstat(file, &what) == 0) {
        ++(S_ISDIR(what.st_mode) ? g_foldersSynced : g_filesSynced);
    }
    return static_cast<int>(::syscall(SYS_fsync, file));
}

TEST_CASE("a file is written whole, over an old one too, with nothing left beside it", "[file]")
{
    const Folder folder;
    const std::string path = folder.at("a.txt");
    CHECK_FALSE(writeWholeFile(path, "one"));
    CHECK(contents(path) == "one");
    REQUIRE(::chmod(path.c_str(), 0640) == 0);
    CHECK_FALSE(writeWholeFile(path, "two"));
    CHECK(contents(path) == "two");
    CHECK((fs::status(path).permissions() & fs::perms::all) == fs::perms(0640));
    CHECK(folder.entries() == 1);
    const auto back = readWholeFile(path, 100);
    REQUIRE(back);
    CHECK(*back == "two");
}

TEST_CASE("the file is on the disk before it has its name, and the name when the folder is", "[file]")
{
    const Folder folder;
    g_filesSynced = g_foldersSynced = 0;
    REQUIRE_FALSE(writeWholeFile(folder.at("a.txt"), "one"));
    CHECK(g_filesSynced == 1);
    CHECK(g_foldersSynced == 1);
}

TEST_CASE("a link stays a link: the file it leads to is replaced", "[file]")
{
    const Folder folder;
    fs::create_directory(folder.path / "deep");
    std::ofstream(folder.at("deep/real.txt")) << "old";
    fs::create_symlink("deep/real.txt", folder.path / "link");
    fs::create_symlink("link", folder.path / "linklink");
    CHECK_FALSE(writeWholeFile(folder.at("linklink"), "new"));
    CHECK(kindOf(folder.at("linklink")) == S_IFLNK);
    CHECK(kindOf(folder.at("link")) == S_IFLNK);
    CHECK(contents(folder.at("deep/real.txt")) == "new");
    fs::create_symlink("round", folder.path / "round");
    CHECK(writeWholeFile(folder.at("round"), "x"));
}

TEST_CASE("what cannot be written says why and leaves the old file", "[file]")
{
    const Folder folder;
    const std::string path = folder.at("a.txt");
    REQUIRE_FALSE(writeWholeFile(path, "old"));
    CHECK(writeWholeFile(folder.at("no/such/a.txt"), "x") == "the folder is not there");
    CHECK(writeWholeFile(folder.path.string(), "x") == "it is a folder");
    CHECK(writeWholeFile(folder.path.string() + "/", "x") == "it is a folder");
    CHECK(writeWholeFile("", "x"));

    // No file may grow past 4 KiB for a while: writing ends as on a full disk, in the middle.
    rlimit before{};
    REQUIRE(getrlimit(RLIMIT_FSIZE, &before) == 0);
    const auto ignored = std::signal(SIGXFSZ, SIG_IGN);
    const rlimit small{4096, before.rlim_max};
    REQUIRE(setrlimit(RLIMIT_FSIZE, &small) == 0);
    const auto why = writeWholeFile(path, std::string(10'000, 'x'));
    setrlimit(RLIMIT_FSIZE, &before);
    std::signal(SIGXFSZ, ignored);
    CHECK(why == "there is no room left");
    CHECK(contents(path) == "old");
    CHECK(folder.entries() == 1);
    if (::geteuid() != 0) {
        REQUIRE(::chmod(path.c_str(), 0444) == 0);
        CHECK(writeWholeFile(path, "x") == "it is not allowed");
    }
}

TEST_CASE("a pipe is written to and stays a pipe", "[file]")
{
    const Folder folder;
    const std::string pipe = folder.at("pipe");
    REQUIRE(::mkfifo(pipe.c_str(), 0600) == 0);
    fs::create_symlink("pipe", folder.path / "link");
    const std::string much(300'000, 'y');  // more than a pipe holds
    for (const char* name : {"pipe", "link"}) {
        auto reader = std::async(std::launch::async, [&pipe] {
            const int file = ::open(pipe.c_str(), O_RDONLY | O_CLOEXEC);
            std::string got = allFrom(file);
            ::close(file);
            return got;
        });
        CHECK_FALSE(writeWholeFile(folder.at(name), much));
        CHECK(reader.get() == much);
        CHECK(kindOf(pipe) == S_IFIFO);
    }
    CHECK(folder.entries() == 2);
}

TEST_CASE("a pipe without a reader, or with one that sleeps, does not hold up a window", "[file]")
{
    const Folder folder;
    const std::string pipe = folder.at("pipe");
    REQUIRE(::mkfifo(pipe.c_str(), 0600) == 0);
    const auto start = std::chrono::steady_clock::now();
    CHECK(writeWholeFile(pipe, "x", Waiting::Briefly) == "no program reads from it");
    CHECK(std::chrono::steady_clock::now() - start < 1s);
    const int sleeper = ::open(pipe.c_str(), O_RDONLY | O_NONBLOCK | O_CLOEXEC);
    REQUIRE(sleeper >= 0);
    CHECK(writeWholeFile(pipe, std::string(1 << 20, 'z'), Waiting::Briefly)
          == "the program that reads from it does not take it");
    CHECK(std::chrono::steady_clock::now() - start < 10s);
    ::close(sleeper);
}

TEST_CASE("a reader that goes away ends the write, not the program", "[file]")
{
    const Folder folder;
    const std::string pipe = folder.at("pipe");
    REQUIRE(::mkfifo(pipe.c_str(), 0600) == 0);
    std::thread reader([&pipe] {
        const int file = ::open(pipe.c_str(), O_RDONLY | O_CLOEXEC);
        char one = 0;
        (void)!::read(file, &one, 1);
        ::close(file);
    });
    const auto why = writeWholeFile(pipe, std::string(1 << 20, 'z'));
    reader.join();
    CHECK(why == "the program that read from it has ended");
}

TEST_CASE("a device is written to and stays a device", "[file]")
{
    const Folder folder;
    const std::string device = folder.at("device");
    // One that swallows all, made here: major 1, minor 3.
    if (::mknod(device.c_str(), S_IFCHR | 0600, makedev(1, 3)) != 0) {
        WARN("needs root and a file system with devices");
        return;
    }
    const auto why = writeWholeFile(device, "swallowed");
    CHECK((!why || why == "it is not allowed"));  // a container may forbid devices of one's own
    CHECK(kindOf(device) == S_IFCHR);
    CHECK(folder.entries() == 1);
}

TEST_CASE("an open file of the program's own is written on, not replaced", "[file]")
{
    const Folder folder;
    const std::string path = folder.at("log.txt");
    const int file = ::open(path.c_str(), O_WRONLY | O_CREAT | O_CLOEXEC, 0600);
    REQUIRE(file >= 0);
    REQUIRE(::write(file, "before ", 7) == 7);
    fs::create_symlink("/proc/self/fd/" + std::to_string(file), folder.path / "output");
    CHECK_FALSE(writeWholeFile(folder.at("output"), "answer"));
    REQUIRE(::write(file, " after", 6) == 6);
    ::close(file);
    CHECK(contents(path) == "before answer after");
    CHECK(kindOf(folder.at("output")) == S_IFLNK);
}

TEST_CASE("only a file is read where nobody may wait, and that is said at once", "[file]")
{
    const Folder folder;
    const std::string pipe = folder.at("pipe");
    REQUIRE(::mkfifo(pipe.c_str(), 0600) == 0);
    auto asked = std::async(std::launch::async, [&pipe] { return readWholeFile(pipe, 100); });
    const bool answered = asked.wait_for(5s) == std::future_status::ready;
    if (!answered) {  // let it go
        ::close(::open(pipe.c_str(), O_WRONLY | O_NONBLOCK | O_CLOEXEC));
    }
    REQUIRE(answered);
    const auto refused = asked.get();
    REQUIRE_FALSE(refused);
    CHECK_FALSE(refused.error().remedy.empty());
    CHECK(render(refused.error().what, UnitSystem::Us).find("not a file") != std::string::npos);
    CHECK_FALSE(readWholeFile(folder.path.string(), 100));
    CHECK_FALSE(readWholeFile(folder.path.string(), 100, ReadFrom::PipesToo));
    CHECK_FALSE(readWholeFile(folder.at("nothing"), 100));
    CHECK_FALSE(readWholeFile("-", 100));
}

TEST_CASE("a pipe is read to its end, but for no more than one byte past the bound", "[file]")
{
    const Folder folder;
    const std::string pipe = folder.at("pipe");
    REQUIRE(::mkfifo(pipe.c_str(), 0600) == 0);
    for (const std::size_t given : {std::size_t{0}, std::size_t{70'000}, std::size_t{200'000}}) {
        std::thread writer([&pipe, given] { (void)writeWholeFile(pipe, std::string(given, 'p')); });
        const auto got = readWholeFile(pipe, 100'000, ReadFrom::PipesToo);
        writer.join();
        REQUIRE(got);
        CHECK(got->size() == std::min<std::size_t>(given, 100'001));
    }
}
