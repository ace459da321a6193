// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <optional>
#include <QByteArray>

#include "base/result.h"
#include "print/page.h"
#include "report/survey_sheet.h"

namespace tapward::app::print {

/// Paints the survey sheet, portrait, black on white, rows high enough for a pencil; tables that go over a page
/// repeat their headings. Margins are set as for the customer's page.
/// @return the number of pages, or 0 when the device cannot be painted on.
int paintSurveySheet(QPagedPaintDevice& device, const report::BlankSurvey& sheet);

/// The sheet as a PDF file in memory.
std::optional<Problem> surveySheetPdf(const report::BlankSurvey& sheet, PaperSize paper, QByteArray& out);

}  // namespace tapward::app::print
