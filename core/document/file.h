// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <cstddef>
#include <string>
#include <string_view>

#include "base/result.h"
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

/// Reads a `.tapward` document (JSON, schema resources/schema/tapward-1.schema.json). Unknown keys are
/// kept. Bad input: a Problem with the JSON pointer of the place; nothing is loaded by half.
Result<Drawing> read(std::string_view json, const Limits& limits = {});

/// The document as JSON text: fixed key order, two-space indent, shortest numbers that read back exactly,
/// newline at the end. write(read(write(d))) is byte-identical to write(d).
std::string write(const Drawing& drawing);

/// Whole-file helpers for the batch program; the window uses its own atomic save.
Result<Drawing> load(const std::string& path);
Result<void> save(const Drawing& drawing, const std::string& path);  ///< temp file, fsync, rename

/// What is kept on the clipboard: the parts given and the pipes between them.
std::string writeParts(const Drawing& drawing, const std::vector<PartId>& ids);
Result<std::vector<Part>> readParts(std::string_view json, const Limits& limits = {});

}  // namespace tapward::document
