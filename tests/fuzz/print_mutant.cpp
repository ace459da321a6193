// SPDX-License-Identifier: GPL-3.0-or-later
#include "fuzz/print_mutant.h"

#include <QByteArray>
#include <QGuiApplication>

#include "print/page.h"
#include "print/survey_sheet.h"

namespace tapward::test {
namespace {

bool isWhole(const QByteArray& pdf) { return pdf.startsWith("%PDF-") && pdf.trimmed().endsWith("%%EOF"); }

}  // namespace

void beginPrinting()
{
    static int argc = 1;
    static char name[] = "tapward_behind_reader";
    static char* argv[] = {name, nullptr};
    qputenv("QT_QPA_PLATFORM", "offscreen");
    static const QGuiApplication application(argc, argv);
}

std::string printed(const document::Drawing& drawing, const study::Prediction& prediction,
                    const std::vector<review::Finding>& findings, bool metric)
{
    const UnitSystem units = metric ? UnitSystem::Metric : UnitSystem::Us;
    const auto paper = metric ? app::print::PaperSize::A4 : app::print::PaperSize::Letter;
    QByteArray pdf;
    if (const auto problem = app::print::printPagePdf(
            drawing, report::page(drawing, prediction, study::assess(drawing, prediction), findings), findings, units,
            paper, pdf)) {
        return "the page cannot be printed: " + render(problem->what, units);
    }
    if (!isWhole(pdf)) {
        return "the page is no whole PDF";
    }
    if (const auto problem = app::print::surveySheetPdf(report::blankSurvey(drawing, units), paper, pdf)) {
        return "the survey sheet cannot be printed: " + render(problem->what, units);
    }
    return isWhole(pdf) ? std::string{} : "the survey sheet is no whole PDF";
}

}  // namespace tapward::test
