// SPDX-License-Identifier: GPL-3.0-or-later
#include "document/file.h"

namespace tapward::document {

Result<Drawing> load(const std::string& path, ReadFrom from)
{
    const Limits limits;
    const auto text = readWholeFile(path, limits.bytes, from);
    if (!text) {
        return tl::unexpected(text.error());
    }
    return read(*text, limits);
}

Result<std::string> writeReadable(const Drawing& drawing)
{
    std::string text = write(drawing);
    if (const auto again = read(text); !again) {
        return problem(again.error().what,
                       "The drawing was not saved: it could not be opened again. The file that was there is unchanged. "
                       "Undo the last changes, or make notes and pictures smaller, then save again.",
                       again.error().where);
    }
    return text;
}

Result<void> save(const Drawing& drawing, const std::string& path, Waiting waiting)
{
    const auto text = writeReadable(drawing);
    if (!text) {
        return tl::unexpected(text.error());
    }
    if (auto why = writeWholeFile(path, *text, waiting)) {
        return problem(
            {"The drawing could not be saved as {0}: {1}.", {path, std::move(*why)}},
            "The file that was there is unchanged. Free some room or choose another folder, then save again.");
    }
    return {};
}

}  // namespace tapward::document
