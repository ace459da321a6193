// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

namespace tapward::app {

/// A kind's id, dragged from the tray.
inline constexpr const char* kKindMime = "application/x-tapward-kind";
/// An assembly dragged from the tray: "variant:<id>" or "own:<file name>".
inline constexpr const char* kAssemblyMime = "application/x-tapward-assembly";
/// Parts as JSON (document::writeParts), on the clipboard.
inline constexpr const char* kPartsMime = "application/x-tapward-parts";

}  // namespace tapward::app
