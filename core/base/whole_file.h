// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <optional>
#include <string>
#include <string_view>

#include "base/result.h"

// Files read and written whole: the one place for it. A file is there complete or not at all; what is no file (a pipe,
// a device, the program's own output) is written to and never replaced.
namespace tapward {

/// What may be read besides a file: pipes and devices wait for somebody, which a window must not.
enum class ReadFrom { FilesOnly, PipesToo };

/// The bytes of a file; of one that is longer than `most`, one byte more than that, so that the reader can say so.
/// "-" with PipesToo is standard input. Errors: not there, not readable, not of a kind to read from.
Result<std::string> readWholeFile(const std::string& path, std::size_t most, ReadFrom from = ReadFrom::FilesOnly);

/// How long a write waits for whoever reads at the other end of a pipe.
enum class Waiting { AsLongAsItTakes, Briefly };

/// A file at the end of `path`'s links, or none, becomes one with these bytes: written beside it, synced to the disk,
/// renamed, the folder synced; the old one is untouched when anything fails, and gives its permissions and owner. What
/// is no file is written to. "-" is standard output.
/// @return why it could not be written, in words that end a sentence; nothing when it was
std::optional<std::string> writeWholeFile(const std::string& path, std::string_view bytes,
                                          Waiting waiting = Waiting::AsLongAsItTakes);

}  // namespace tapward
