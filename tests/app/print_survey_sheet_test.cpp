// SPDX-License-Identifier: GPL-3.0-or-later
#include <QFile>
#include <QProcess>
#include <QRegularExpression>
#include <QStandardPaths>
#include <QTemporaryDir>

#include "document/file.h"
#include "document/survey.h"
#include "print/survey_sheet.h"
#include "support/catch.h"

using namespace tapward;
using namespace tapward::app;
using print::PaperSize;

namespace {

document::Drawing coach()
{
    auto drawing = document::load(std::string(TAPWARD_SOURCE_DIR) + "/samples/long_hall_coach.tapward");
    REQUIRE(drawing);
    return *drawing;
}

QByteArray pdfOf(const document::Drawing& drawing, PaperSize paper)
{
    QByteArray pdf;
    const auto problem = print::surveySheetPdf(report::blankSurvey(drawing, UnitSystem::Us), paper, pdf);
    REQUIRE_FALSE(problem);
    return pdf;
}

int pagesIn(const QByteArray& pdf)
{
    const auto match = QRegularExpression(QStringLiteral("/Count (\\d+)")).match(QString::fromLatin1(pdf));
    return match.captured(1).toInt();
}

}  // namespace

TEST_CASE("without a drawing the survey sheet has empty lines to write on, with one it has its tags", "[print]")
{
    const auto blank = report::blankSurvey({}, UnitSystem::Us);
    REQUIRE(blank.tables.size() == 4);
    CHECK(blank.tables[0].rows.size() >= 20);
    for (const auto& row : blank.tables[0].rows)
        for (const auto& cell : row)
            CHECK(cell.empty());
    const auto drawing = coach();
    const auto filled = report::blankSurvey(drawing, UnitSystem::Us);
    const auto runs = document::surveyRows(drawing, document::SurveySheet::Runs);
    REQUIRE(filled.tables[0].rows.size() > runs.size());  // spare lines for what is not drawn yet
    for (std::size_t i = 0; i < runs.size(); ++i) {
        CHECK(filled.tables[0].rows[i][0].text == drawing.find(runs[i])->tag);
        CHECK(filled.tables[0].rows[i][4].empty());  // a measured length is asked for, not shown
    }
    CHECK_FALSE(filled.cautions.empty());
    CHECK(filled.tables[0].columns[4].unit == "ft");
    CHECK(report::blankSurvey(drawing, UnitSystem::Metric).tables[0].columns[4].unit == "m");
}

TEST_CASE("the survey sheet is two or three pages on Letter and on A4, more with a long drawing", "[print]")
{
    for (const PaperSize paper : {PaperSize::Letter, PaperSize::A4}) {
        const int blank = pagesIn(pdfOf({}, paper));
        CHECK(blank >= 2);
        CHECK(blank <= 3);
        CHECK(pagesIn(pdfOf(coach(), paper)) > blank);
    }
}

TEST_CASE("the printed survey sheet holds every tag, the cautions and its page numbers as text", "[print]")
{
    if (QStandardPaths::findExecutable(QStringLiteral("pdftotext")).isEmpty())
        return;
    const auto drawing = coach();
    QTemporaryDir folder;
    const QString path = folder.filePath(QStringLiteral("sheet.pdf"));
    QFile file(path);
    REQUIRE(file.open(QIODevice::WriteOnly));
    file.write(pdfOf(drawing, PaperSize::Letter));
    file.close();
    QProcess process;
    process.start(QStringLiteral("pdftotext"), {QStringLiteral("-layout"), path, QStringLiteral("-")});
    REQUIRE(process.waitForFinished(30000));
    const QString text = QString::fromUtf8(process.readAllStandardOutput());
    for (const auto& part : drawing.parts)
        if (!document::kindOf(part).ports.empty() || document::kindOf(part).isPipe) {
            CAPTURE(part.tag);
            CHECK(text.contains(QString::fromStdString(part.tag)));
        }
    CHECK(text.contains(QStringLiteral("Hot water can burn")));
    CHECK(text.contains(QStringLiteral("Page 1 of")));
}
