// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <cstddef>
#include <string>
#include <string_view>

#include "base/result.h"
#include "base/whole_file.h"
#include "document/drawing.h"

namespace tapward::document {

inline constexpr int kFormatVersion = 1;

/// Bounds on what a file from a stranger may hold.
struct Limits {
    std::size_t bytes = 8u << 20;
    int depth = 24;
    std::size_t parts = 4000;
    std::size_t cases = 200;
    std::size_t actionsPerCase = 2000;
    std::size_t textBytes = 8192;
    std::size_t curvePoints = 64;
    std::size_t bendsPerPipe = 200;
};
inline constexpr Limits kLimits;

/// Reads a `.tapward` document (JSON, schema resources/schema/tapward-1.schema.json). Unknown keys are
/// kept. Bad input: a Problem with the JSON pointer of the place; nothing is loaded by half.
Result<Drawing> read(std::string_view json, const Limits& limits = {});

/// The document as JSON text: fixed key order, two-space indent, shortest numbers that read back exactly,
/// newline at the end; on one line where the indent would make it longer than the reader takes.
/// write(read(write(d))) is byte-identical to write(d).
std::string write(const Drawing& drawing);
/// write(), once read() has taken the text back. Errors: what the reader would refuse, so that nothing is saved that
/// cannot be opened again.
Result<std::string> writeReadable(const Drawing& drawing);

/// A file, whole; "-" and pipes only where the caller may wait for them.
Result<Drawing> load(const std::string& path, ReadFrom from = ReadFrom::FilesOnly);
/// writeReadable() by writeWholeFile(): the file is complete or the old one untouched.
Result<void> save(const Drawing& drawing, const std::string& path, Waiting waiting = Waiting::AsLongAsItTakes);

/// What is kept on the clipboard: the parts given and the pipes between them.
std::string writeParts(const Drawing& drawing, const std::vector<PartId>& ids);
Result<std::vector<Part>> readParts(std::string_view json, const Limits& limits = {});

}  // namespace tapward::document
