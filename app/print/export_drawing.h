// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <optional>
#include <QByteArray>

#include "base/result.h"
#include "document/drawing.h"

namespace tapward::app::print {

struct ExportOptions {
    UnitSystem units = UnitSystem::Us;
    document::View view = document::View::Both;
    bool transparent = false;  ///< else white
    bool legend = true;
    double dpi = 200;          ///< PNG only: 72 .. 1200, at ten points a module
};

/// The drawing as SVG: real text, a viewBox, the job's title; a tag's text carries that tag as its id.
std::optional<Problem> exportSvg(const document::Drawing& drawing, const ExportOptions& options, QByteArray& out);
/// The drawing as PNG. A picture that would be too large for memory is a Problem.
std::optional<Problem> exportPng(const document::Drawing& drawing, const ExportOptions& options, QByteArray& out);

}  // namespace tapward::app::print
