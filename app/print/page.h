// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <optional>
#include <QByteArray>
#include <QPageLayout>
#include <vector>

#include "base/result.h"
#include "report/report.h"
#include "review/finding.h"
#include "study/prediction.h"

class QPagedPaintDevice;

namespace tapward::app::print {

enum class PaperSize { Letter, A4 };

/// The margin that paintPages() asks of the device.
inline constexpr double kMargin_pt = 30;

/// Paints the customer's page on a printer, a preview or a PDF: diagram with legend, title block, key
/// answers, cautions, parts added, footnotes. Always light on white; text never under 7 pt; what does
/// not fit goes to further pages. The device's paper is kept; its margins are set, and unless
/// `orientation` says otherwise the one with fewer pages, then the bigger diagram, is taken.
/// @return the number of pages, or 0 when the device cannot be painted on.
int paintPages(QPagedPaintDevice& device, const document::Drawing& drawing, const report::PageContent& content,
               const std::vector<review::Finding>& findings, UnitSystem units,
               std::optional<QPageLayout::Orientation> orientation = {});

/// The customer's page as a PDF file in memory: vectors and text, fonts embedded, title and language set.
/// The same input gives the same bytes but for the creation date; to that end the process's hash seed is
/// fixed. Save with a QSaveFile and check every write: a full disk must not replace a good file.
std::optional<Problem> printPagePdf(const document::Drawing& drawing, const report::PageContent& content,
                                    const std::vector<review::Finding>& findings, UnitSystem units, PaperSize paper,
                                    QByteArray& out);

}  // namespace tapward::app::print
