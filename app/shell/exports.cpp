// SPDX-License-Identifier: GPL-3.0-or-later
#include "shell/exports.h"

#include <algorithm>
#include <atomic>
#include <chrono>
#include <future>
#include <memory>
#include <QCoreApplication>
#include <QEventLoop>
#include <QFileDialog>
#include <QFileInfo>
#include <QLocale>
#include <QMessageBox>
#include <QPrintDialog>
#include <QPrinter>
#include <QProgressDialog>
#include <QSettings>
#include <QTimer>
#include <thread>
#include <vector>

#include "panels/say.h"
#include "print/export_drawing.h"
#include "print/page.h"
#include "print/survey_sheet.h"
#include "report/report.h"
#include "session/work_folder.h"
#include "shell/page_preview.h"
#include "shell/places.h"

namespace tapward::app {

namespace {

QString tr(const char* text) { return QCoreApplication::translate("tapward::app", text); }

const study::Prediction& predictionOf(const Session& session)
{
    static const study::Prediction none;
    return session.prediction() ? *session.prediction() : none;
}

/// The paper of the person's country: Letter where letters are, else A4.
print::PaperSize usualPaper()
{
    return QLocale::system().measurementSystem() == QLocale::ImperialUSSystem ? print::PaperSize::Letter
                                                                              : print::PaperSize::A4;
}

void complain(QWidget* parent, const QString& title, const Problem& problem, UnitSystem units)
{
    QMessageBox box(QMessageBox::Warning, title, sayMessage(problem.what, units), QMessageBox::NoButton, parent);
    box.setInformativeText(sayMessage(problem.remedy, units));
    box.addButton(tr("Close"), QMessageBox::RejectRole);
    box.exec();
}

void preparePrinter(QPrinter& printer, const Session& session)
{
    printer.setPageSize(QPageSize(usualPaper() == print::PaperSize::Letter ? QPageSize::Letter : QPageSize::A4));
    printer.setDocName(session.path().isEmpty() ? tr("Untitled") : QFileInfo(session.path()).completeBaseName());
    printer.setCreator(QStringLiteral("Tapward"));
}

}  // namespace

std::optional<study::Assessment> assessedFully(Session& session, QWidget* parent)
{
    const auto* known = session.assessment();
    if (!session.prediction() || !known)
        return study::Assessment{};
    if (!known->isAtLeast())
        return *known;
    // Off this thread; what it finds is for this paper, and told to the session as well.
    const auto drawing = std::make_shared<const document::Drawing>(session.drawing());
    const auto prediction = session.sharedPrediction();
    std::atomic<int> percent = 0;
    std::promise<Result<study::Assessment>> promise;
    auto answer = promise.get_future();
    std::jthread thread([&](const std::stop_token& stop) {
        study::AssessOptions options;
        options.stop = stop;
        options.progress = [&percent](double share) { percent = static_cast<int>(100 * share); };
        promise.set_value(study::assessFully(*drawing, *prediction, options));
    });
    QProgressDialog dialog(tr("Looking for the hottest water and the best stop\u2026"), tr("Cancel"), 0, 100, parent);
    dialog.setWindowTitle(tr("Customer's Page"));
    dialog.setWindowModality(Qt::ApplicationModal);
    dialog.setMinimumDuration(300);
    while (answer.wait_for(std::chrono::milliseconds(0)) != std::future_status::ready) {
        dialog.setValue(std::min(percent.load(), 99));
        QEventLoop turn;
        QTimer::singleShot(30, &turn, &QEventLoop::quit);
        turn.exec(parent ? QEventLoop::AllEvents : QEventLoop::ExcludeUserInputEvents);
        if (dialog.wasCanceled())
            thread.request_stop();
    }
    auto found = answer.get();
    if (!found)
        return std::nullopt;
    session.learn({drawing, found->presses, found->noPresses, found->stop, found->noStop});
    return *found;
}

bool waitForPrediction(Session& session, int most_ms)
{
    if (!session.isStale() && !session.isWorking())
        return true;
    QEventLoop loop;
    QObject::connect(&session, &Session::predictionChanged, &loop, [&] {
        if (!session.isStale() && !session.isWorking())
            loop.quit();
    });
    QTimer::singleShot(most_ms, &loop, &QEventLoop::quit);
    loop.exec(QEventLoop::ExcludeUserInputEvents);
    return !session.isStale() && !session.isWorking();
}

namespace {

/// What is printed, at full depth.
struct CustomersPage {
    report::PageContent content;
    std::vector<review::Finding> findings;
};

/// Empty when called off.
std::optional<CustomersPage> customersPage(Session& session, QWidget* parent)
{
    const auto assessment = assessedFully(session, parent);
    if (!assessment)
        return std::nullopt;
    const auto& prediction = predictionOf(session);
    CustomersPage page;
    page.findings = review::review(session.drawing(), prediction, *assessment);
    page.content = report::page(session.drawing(), prediction, *assessment, page.findings);
    return page;
}

}  // namespace

std::optional<Problem> exportBytes(Session& session, ExportKind kind, QByteArray& out, QWidget* parent)
{
    const auto& drawing = session.drawing();
    const UnitSystem units = session.units();
    if ((kind == ExportKind::PagePdf || kind == ExportKind::SeriesCsv) && !waitForPrediction(session))
        return Problem{Message("The prediction is still being worked out."), Message("Try again in a moment."), {}};
    switch (kind) {
    case ExportKind::PagePdf: {
        const auto page = customersPage(session, parent);
        if (!page)
            return Problem{Message("The page was called off."), Message("Start it again."), {}};
        return print::printPagePdf(drawing, page->content, page->findings, units, usualPaper(), out);
    }
    case ExportKind::SurveyPdf:
        return print::surveySheetPdf(report::blankSurvey(drawing, units), usualPaper(), out);
    case ExportKind::DrawingSvg:
    case ExportKind::DrawingPng: {
        print::ExportOptions options;
        options.units = units;
        options.view = session.view();
        return kind == ExportKind::DrawingSvg ? print::exportSvg(drawing, options, out)
                                              : print::exportPng(drawing, options, out);
    }
    case ExportKind::PartsCsv:
        out = QByteArray::fromStdString(report::partsCsv(drawing, units));
        return std::nullopt;
    case ExportKind::SeriesCsv: {
        const auto* result = session.currentCase();
        if (!result)
            return session.predictionProblem().value_or(
                Problem{Message("There is no predicted case to write."), Message("Choose a case, or add one."), {}});
        if (result->noAnswer)
            return *result->noAnswer;
        out = QByteArray::fromStdString(report::seriesCsv(*result, units));
        return std::nullopt;
    }
    }
    return std::nullopt;
}

QString exportTitle(ExportKind kind)
{
    switch (kind) {
    case ExportKind::PagePdf:
        return tr("Customer's Page as PDF");
    case ExportKind::DrawingSvg:
        return tr("Drawing as SVG");
    case ExportKind::DrawingPng:
        return tr("Drawing as PNG");
    case ExportKind::PartsCsv:
        return tr("Parts List as CSV");
    case ExportKind::SeriesCsv:
        return tr("Warm-Up as CSV");
    case ExportKind::SurveyPdf:
        return tr("Blank Survey Sheet as PDF");
    }
    return {};
}

QString exportSuffix(ExportKind kind)
{
    switch (kind) {
    case ExportKind::PagePdf:
    case ExportKind::SurveyPdf:
        return QStringLiteral("pdf");
    case ExportKind::DrawingSvg:
        return QStringLiteral("svg");
    case ExportKind::DrawingPng:
        return QStringLiteral("png");
    case ExportKind::PartsCsv:
    case ExportKind::SeriesCsv:
        return QStringLiteral("csv");
    }
    return {};
}

QString exportWithDialog(Session& session, ExportKind kind, QWidget* parent)
{
    QSettings settings;
    const QString folder =
        settings
            .value(QStringLiteral("exportFolder"),
                   session.path().isEmpty() ? workFolder() : QFileInfo(session.path()).absolutePath())
            .toString();
    QString base = session.path().isEmpty() ? tr("untitled") : QFileInfo(session.path()).completeBaseName();
    if (kind == ExportKind::PartsCsv)
        base += tr("-parts");
    if (kind == ExportKind::SeriesCsv)
        base += tr("-warm-up");
    if (kind == ExportKind::SurveyPdf)
        base += tr("-survey");
    const QString suffix = exportSuffix(kind);
    QFileDialog dialog(parent, tr("Export %1").arg(exportTitle(kind)), folder,
                       tr("%1 file (*.%2)").arg(suffix.toUpper(), suffix));
    dialog.setAcceptMode(QFileDialog::AcceptSave);
    dialog.setDefaultSuffix(suffix);
    dialog.selectFile(base + QLatin1Char('.') + suffix);
    dialog.setLabelText(QFileDialog::Accept, tr("Export"));
    if (dialog.exec() != QDialog::Accepted || dialog.selectedFiles().isEmpty())
        return {};
    const QString path = dialog.selectedFiles().constFirst();
    settings.setValue(QStringLiteral("exportFolder"), QFileInfo(path).absolutePath());
    QByteArray bytes;
    auto problem = exportBytes(session, kind, bytes, parent);
    if (!problem)
        problem = writeWholeFile(path, bytes);
    if (problem) {
        complain(parent, exportTitle(kind), *problem, session.units());
        return {};
    }
    return path;
}

void printPage(Session& session, QWidget* parent)
{
    waitForPrediction(session);
    const auto page = customersPage(session, parent);
    if (!page)
        return;
    QPrinter printer(QPrinter::HighResolution);
    preparePrinter(printer, session);
    QPrintDialog dialog(&printer, parent);
    dialog.setWindowTitle(tr("Print Customer's Page"));
    if (dialog.exec() != QDialog::Accepted)
        return;
    if (print::paintPages(printer, session.drawing(), page->content, page->findings, session.units()) == 0)
        complain(parent, tr("Print"),
                 Problem{Message("The page could not be printed."),
                         Message("Check the printer, or export the page as PDF."),
                         {}},
                 session.units());
}

void previewPage(Session& session, QWidget* parent)
{
    waitForPrediction(session);
    const auto page = customersPage(session, parent);
    if (!page)
        return;
    QPrinter printer(QPrinter::HighResolution);
    preparePrinter(printer, session);
    const auto paint = [&session, &page](QPrinter& device) {
        print::paintPages(device, session.drawing(), page->content, page->findings, session.units());
    };
    PagePreview(printer, paint, tr("Print Preview"), parent).exec();
}

void previewSurveySheet(Session& session, QWidget* parent)
{
    QPrinter printer(QPrinter::HighResolution);
    printer.setPageSize(QPageSize(usualPaper() == print::PaperSize::A4 ? QPageSize::A4 : QPageSize::Letter));
    const auto sheet = report::blankSurvey(session.drawing(), session.units());
    printer.setDocName(QString::fromStdString(sheet.title));
    const auto paint = [&sheet](QPrinter& device) { print::paintSurveySheet(device, sheet); };
    PagePreview(printer, paint, tr("Blank Survey Sheet"), parent).exec();
}

}  // namespace tapward::app
