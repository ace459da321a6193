// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <optional>
#include <QByteArray>
#include <QObject>

#include "session/session.h"

class QWidget;

namespace tapward::app {

/// What can be written to a file.
enum class ExportKind { PagePdf, DrawingSvg, DrawingPng, PartsCsv, SeriesCsv, SurveyPdf };

/// Makes the file's content; waits for the newest prediction where the file holds results, and for the full
/// assessment where it is the customer's page: above `parent` its progress is shown and can be called off.
std::optional<Problem> exportBytes(Session& session, ExportKind kind, QByteArray& out, QWidget* parent = nullptr);
/// All that can be known of the drawing, worked out now where it is not known yet; empty when called off.
std::optional<study::Assessment> assessedFully(Session& session, QWidget* parent = nullptr);
QString exportTitle(ExportKind kind);
QString exportSuffix(ExportKind kind);

/// Asks where to, writes it whole, and says what went wrong.
/// @return the file written, or empty
QString exportWithDialog(Session& session, ExportKind kind, QWidget* parent);

/// Lets the running prediction finish. False when it takes longer than this.
bool waitForPrediction(Session& session, int most_ms = 15000);

void printPage(Session& session, QWidget* parent);
void previewPage(Session& session, QWidget* parent);
/// The sheet to fill in by hand: with the drawing's tags, or blank when nothing is drawn.
void previewSurveySheet(Session& session, QWidget* parent);

}  // namespace tapward::app
