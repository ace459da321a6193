// SPDX-License-Identifier: GPL-3.0-or-later
#include "base/whole_file.h"

#include <algorithm>
#include <cerrno>
#include <charconv>
#include <climits>
#include <csignal>
#include <cstdlib>
#include <ctime>
#include <random>
#include <system_error>
#include <utility>

#include <fcntl.h>
#include <fmt/format.h>
#include <poll.h>
#include <sys/stat.h>
#include <unistd.h>

namespace tapward {
namespace {

constexpr int kBrief_ms = 2000;  // without a byte taken

/// An open file that is closed with its holder.
class Handle {
public:
    explicit Handle(int number) : m_number(number) {}
    ~Handle()
    {
        if (m_number >= 0) {
            ::close(m_number);
        }
    }
    Handle(const Handle&) = delete;
    Handle& operator=(const Handle&) = delete;
    int operator*() const { return m_number; }
    bool isOpen() const { return m_number >= 0; }
    /// Some systems tell only here that not everything reached the disk.
    bool close() { return ::close(std::exchange(m_number, -1)) == 0; }

private:
    int m_number;
};

std::string words(int error)
{
    switch (error) {
    case ENOSPC:
    case EDQUOT:
    case EFBIG:
        return "there is no room left";
    case EACCES:
    case EPERM:
        return "it is not allowed";
    case EROFS:
        return "the disk can only be read";
    case ENOENT:
        return "it is not there";
    case EISDIR:
        return "it is a folder";
    case ENXIO:
        return "no program reads from it";
    case EPIPE:
        return "the program that read from it has ended";
    case ETIMEDOUT:
        return "the program that reads from it does not take it";
    default:
        return std::generic_category().message(error);
    }
}

/// Keeps a pipe that nobody reads from ending the program; the write says so instead.
class NoPipeSignal {
public:
    NoPipeSignal()
    {
        sigemptyset(&m_pipe);
        sigaddset(&m_pipe, SIGPIPE);
        sigset_t pending;
        m_waiting = sigpending(&pending) == 0 && sigismember(&pending, SIGPIPE) == 1;
        pthread_sigmask(SIG_BLOCK, &m_pipe, &m_before);
    }
    ~NoPipeSignal()
    {
        const timespec now{};
        while (!m_waiting && sigtimedwait(&m_pipe, nullptr, &now) > 0) {}
        pthread_sigmask(SIG_SETMASK, &m_before, nullptr);
    }
    NoPipeSignal(const NoPipeSignal&) = delete;
    NoPipeSignal& operator=(const NoPipeSignal&) = delete;

private:
    sigset_t m_pipe{}, m_before{};
    bool m_waiting = false;
};

/// @return errno of the first write that failed, 0 when all was taken
int writeAll(int file, std::string_view bytes)
{
    while (!bytes.empty()) {
        const ssize_t written = ::write(file, bytes.data(), bytes.size());
        if (written >= 0) {
            bytes.remove_prefix(static_cast<std::size_t>(written));
        } else if (errno == EAGAIN) {
            pollfd room{file, POLLOUT, 0};
            if (::poll(&room, 1, kBrief_ms) == 0) {
                return ETIMEDOUT;
            }
        } else if (errno != EINTR) {
            return errno;
        }
    }
    return 0;
}

/// Where a path leads once every link is followed.
struct Target {
    std::string folder, name;
    int error = 0;
    bool isProcess() const { return folder.starts_with("/proc/"); }
    std::string path() const { return folder + (folder == "/" ? "" : "/") + name; }
};

/// Links are followed by hand: those of a process's open files lead to what has no name.
Target targetOf(std::string path)
{
    Target target;
    for (int links = 0; links < 40; ++links) {
        const std::size_t slash = path.rfind('/');
        const std::string folder = slash == path.npos ? "." : slash == 0 ? "/" : path.substr(0, slash);
        char* const real = ::realpath(folder.c_str(), nullptr);
        if (!real) {
            target.error = errno;
            return target;
        }
        target.folder = real;
        std::free(real);
        target.name = slash == path.npos ? path : path.substr(slash + 1);
        struct stat found{};
        if (target.isProcess() || ::lstat(target.path().c_str(), &found) != 0 || !S_ISLNK(found.st_mode)) {
            return target;
        }
        char link[PATH_MAX];
        const ssize_t length = ::readlink(target.path().c_str(), link, sizeof link);
        if (length < 0) {
            target.error = errno;
            return target;
        }
        path.assign(link, static_cast<std::size_t>(length));
        if (path.empty() || path[0] != '/') {
            path.insert(0, target.folder + '/');
        }
    }
    target.error = ELOOP;
    return target;
}

/// The number of one of this process's own open files, or -1: it is written on from where it stands.
int openAlready(const Target& target)
{
    int number = -1;
    const char* const end = target.name.data() + target.name.size();
    const bool own = target.folder.starts_with(fmt::format("/proc/{}/", ::getpid())) && target.folder.ends_with("/fd");
    return own && std::from_chars(target.name.data(), end, number).ptr == end ? number : -1;
}

std::optional<std::string> writeThrough(const Handle& file, std::string_view bytes)
{
    if (!file.isOpen()) {
        return words(errno);
    }
    int error = 0;
    {
        const NoPipeSignal quiet;
        error = writeAll(*file, bytes);
    }
    // Pipes and most devices cannot be synced, and need not be.
    if (error == 0 && ::fsync(*file) != 0 && (errno == EIO || errno == ENOSPC)) {
        error = errno;
    }
    return error == 0 ? std::nullopt : std::optional(words(error));
}

/// A new file beside the one meant, with a name nobody has; `path` becomes its name.
int newBeside(std::string& path)
{
    std::random_device random;
    for (int tries = 0; tries < 100; ++tries) {
        const std::string name = fmt::format("{}.{:06x}", path, random() & 0xffffffu);
        const int file = ::open(name.c_str(), O_WRONLY | O_CREAT | O_EXCL | O_CLOEXEC, 0666);
        if (file >= 0 || errno != EEXIST) {
            path = name;
            return file;
        }
    }
    return -1;
}

/// The folder's entry for a new name is on the disk too once the folder is.
void syncFolder(const std::string& folder)
{
    const Handle handle(::open(folder.c_str(), O_RDONLY | O_DIRECTORY | O_CLOEXEC));
    if (handle.isOpen()) {
        ::fsync(*handle);
    }
}

std::optional<std::string> replace(const Target& target, const struct stat* old, std::string_view bytes)
{
    if (old && ::faccessat(AT_FDCWD, target.path().c_str(), W_OK, AT_EACCESS) != 0) {
        return words(errno);  // a file that may not be written stays, though its folder would let it go
    }
    std::string temporary = target.path();
    Handle file(newBeside(temporary));
    if (!file.isOpen()) {
        return words(errno);
    }
    if (old) {
        // Whose it is may be kept by root only; the permissions come after, which a change of owner would cut.
        const bool kept = ::fchown(*file, old->st_uid, old->st_gid) == 0;
        ::fchmod(*file, old->st_mode & (kept ? 07777 : 0777));
    }
    int error = writeAll(*file, bytes);
    if (error == 0 && ::fsync(*file) != 0) {
        error = errno;
    }
    if (!file.close() && error == 0) {
        error = errno;
    }
    if (error == 0 && ::rename(temporary.c_str(), target.path().c_str()) != 0) {
        error = errno;
    }
    if (error != 0) {
        ::unlink(temporary.c_str());
        return words(error);
    }
    syncFolder(target.folder);
    return std::nullopt;
}

}  // namespace

Result<std::string> readWholeFile(const std::string& path, std::size_t most, ReadFrom from)
{
    const auto cannot = [&path](int error) {
        return problem({"The file {0} cannot be read: {1}.", {path, words(error)}},
                       "Check that it is there and that you may read it, or open a saved copy.");
    };
    const auto isRead = [from](const struct stat& what) {
        return S_ISREG(what.st_mode) || (from == ReadFrom::PipesToo && !S_ISDIR(what.st_mode));
    };
    const auto noFile = [&path] {
        return problem({"{0} is a folder, a pipe or a device, not a file.", {path}},
                       "Choose a file. What comes out of a pipe can be saved as a file first.");
    };
    const bool input = path == "-" && from == ReadFrom::PipesToo;
    struct stat what{};
    // Asked before it is opened: opening a device can do something by itself.
    if (!input && ::stat(path.c_str(), &what) != 0) {
        return cannot(errno);
    }
    if (!input && !isRead(what)) {
        return noFile();
    }
    const int flags = O_RDONLY | O_CLOEXEC | O_NOCTTY | (from == ReadFrom::FilesOnly ? O_NONBLOCK : 0);
    const Handle file(input ? ::dup(STDIN_FILENO) : ::open(path.c_str(), flags));
    if (!file.isOpen() || ::fstat(*file, &what) != 0) {
        return cannot(errno);
    }
    if (!isRead(what)) {
        return noFile();
    }
    std::string bytes;
    char block[65536];
    while (bytes.size() <= most) {
        const ssize_t got = ::read(*file, block, std::min(sizeof block, most + 1 - bytes.size()));
        if (got < 0 && errno == EINTR) {
            continue;
        }
        if (got < 0) {
            return cannot(errno);
        }
        if (got == 0) {
            break;
        }
        bytes.append(block, static_cast<std::size_t>(got));
    }
    return bytes;
}

std::optional<std::string> writeWholeFile(const std::string& path, std::string_view bytes, Waiting waiting)
{
    if (path == "-") {
        return writeThrough(Handle(::dup(STDOUT_FILENO)), bytes);
    }
    const Target target = targetOf(path);
    if (target.error != 0) {
        return target.error == ENOENT ? "the folder is not there" : words(target.error);
    }
    if (const int number = openAlready(target); number >= 0) {
        return writeThrough(Handle(::dup(number)), bytes);
    }
    struct stat found{};
    const bool there = ::stat(target.path().c_str(), &found) == 0;
    if (!there && errno != ENOENT) {
        return words(errno);
    }
    if (target.name.empty() || (there && S_ISDIR(found.st_mode))) {
        return words(EISDIR);
    }
    if (target.isProcess() || (there && !S_ISREG(found.st_mode))) {
        const int flags = O_WRONLY | O_NOCTTY | O_CLOEXEC | (waiting == Waiting::Briefly ? O_NONBLOCK : 0);
        return writeThrough(Handle(::open(target.path().c_str(), flags)), bytes);
    }
    return replace(target, there ? &found : nullptr, bytes);
}

}  // namespace tapward
