// SPDX-License-Identifier: GPL-3.0-or-later
#include <cerrno>
#include <cstdio>
#include <memory>
#include <system_error>

#include <fcntl.h>
#include <sys/stat.h>
#include <unistd.h>

#include "document/file.h"

namespace tapward::document {
namespace {

std::string reason() { return std::generic_category().message(errno); }

struct Close {
    void operator()(std::FILE* file) const { std::fclose(file); }
};
using File = std::unique_ptr<std::FILE, Close>;

tl::unexpected<Problem> cannotSave(const std::string& path, const std::string& why)
{
    return problem({"The drawing could not be saved as {0}: {1}.", {path, why}},
                   "The file that was there is unchanged. Free some room or choose another folder, then save again.");
}

bool writeAll(int file, std::string_view text)
{
    while (!text.empty()) {
        const ssize_t written = ::write(file, text.data(), text.size());
        if (written < 0) {
            if (errno == EINTR) {
                continue;
            }
            return false;
        }
        text.remove_prefix(static_cast<std::size_t>(written));
    }
    return ::fsync(file) == 0;
}

/// The folder's entry for the new name is on disk too once the folder is.
void syncFolder(const std::string& path)
{
    const std::size_t slash = path.rfind('/');
    const std::string folder = slash == path.npos ? "." : slash == 0 ? "/" : path.substr(0, slash);
    if (const int handle = ::open(folder.c_str(), O_RDONLY | O_DIRECTORY | O_CLOEXEC); handle >= 0) {
        ::fsync(handle);
        ::close(handle);
    }
}

}  // namespace

Result<Drawing> load(const std::string& path)
{
    const File file(std::fopen(path.c_str(), "rbe"));
    if (!file) {
        return problem({"The file {0} cannot be opened: {1}.", {path, reason()}},
                       "Check that it is there and that you may read it.");
    }
    // One byte past the limit is enough for the reader to say that the file is too large.
    const Limits limits;
    std::string text;
    char block[65536];
    while (text.size() <= limits.bytes) {
        const std::size_t got = std::fread(block, 1, sizeof block, file.get());
        text.append(block, got);
        if (got < sizeof block) {
            break;
        }
    }
    if (std::ferror(file.get())) {
        return problem({"The file {0} cannot be read: {1}.", {path, reason()}},
                       "Check the disk, or open a saved copy.");
    }
    return read(text, limits);
}

Result<void> save(const Drawing& drawing, const std::string& path)
{
    const std::string text = write(drawing);
    std::string temporary = path + ".XXXXXX";
    const int file = ::mkostemp(temporary.data(), O_CLOEXEC);
    if (file < 0) {
        return cannotSave(path, reason());
    }
    ::fchmod(file, 0644);
    const bool written = writeAll(file, text);
    const std::string why = reason();
    ::close(file);
    if (!written) {
        ::unlink(temporary.c_str());
        return cannotSave(path, why);
    }
    if (std::rename(temporary.c_str(), path.c_str()) != 0) {
        const std::string renameWhy = reason();
        ::unlink(temporary.c_str());
        return cannotSave(path, renameWhy);
    }
    syncFolder(path);
    return {};
}

}  // namespace tapward::document
