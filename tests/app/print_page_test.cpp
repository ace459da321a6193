// SPDX-License-Identifier: GPL-3.0-or-later
#include <QFile>
#include <QProcess>
#include <QRegularExpression>
#include <QStandardPaths>
#include <QTemporaryDir>

#include "app/print_recorder.h"
#include "document/edit.h"
#include "document/file.h"
#include "print/page.h"
#include "print/pdf_finish.h"
#include "support/catch.h"

using namespace tapward;
using namespace tapward::app;
using print::PaperSize;

namespace {

/// One part of every kind, each joined to the next: every symbol and label there is.
document::Drawing oneOfEach()
{
    document::Drawing drawing;
    drawing.job.title = "Preheat loop for a coach with an office";  // "ffi": the ligature trap
    drawing.job.customer = "Sample customer";
    drawing.job.sampleFigures = true;
    drawing.job.hours = 6;
    drawing.job.hourlyRate = 85;
    int count = 0;
    for (const parts::PartKind* kind : parts::catalogue()) {
        if (kind->isPipe)
            continue;
        const document::Point at{10.0 * (count % 8), 9.0 * (count / 8)};
        const auto stage = count % 3 == 0 ? document::Stage::Added : document::Stage::Existing;
        auto edit = document::placePart(drawing, kind->id, at, stage);
        REQUIRE(edit);
        document::apply(drawing, *edit);
        ++count;
    }
    const std::vector<document::Part> symbols = drawing.parts;
    for (std::size_t i = 1; i < symbols.size(); ++i) {
        const auto& from = document::kindOf(symbols[i - 1]).ports;
        const auto& to = document::kindOf(symbols[i]).ports;
        if (from.empty() || to.empty())
            continue;
        auto edit = document::connect(drawing, {symbols[i - 1].id, std::string(from.back().id), {}},
                                      {symbols[i].id, std::string(to.front().id), {}}, document::Stage::Added);
        if (edit)
            document::apply(drawing, *edit);
    }
    return drawing;
}

/// Page content with so many cautions.
report::PageContent contentWith(const document::Drawing& drawing, int cautions)
{
    report::PageContent content;
    content.title = drawing.job.title;
    content.subtitle = "Proposal";
    content.titleBlock = {{"Customer", drawing.job.customer}, {"Date", "2025-05-04"}, {"Revision", "B"}};
    content.answers.push_back(
        {"loop_flow", "Loop flow", {3e-5, Quantity::Flow}, true, {}, {"At {0}.", {Measure{12.6, Quantity::Voltage}}}});
    content.answers.push_back(
        {"wait", "Wait before the loop", {}, false, {"No case draws hot water without the loop."}, {}});
    for (int i = 0; i < cautions; ++i)
        content.cautions.push_back({"Caution number {0}: the cold tap may be hot for {1} after a run.",
                                    {std::int64_t(i + 1), Measure{2e-3, Quantity::Volume}}});
    content.parts = report::partsList(drawing);
    content.footnotes = {"Yardsticks, not a declaration of compliance. The person signing decides what applies."};
    return content;
}

std::vector<review::Finding> someFindings()
{
    review::Finding danger, aside;
    danger.severity = review::Severity::Danger;
    danger.what = {"Water at the tap reaches {0}.", {Measure{61.1, Quantity::Temperature}}};
    danger.remedy = "Add an independent high limit.";
    aside.severity = review::Severity::Caution;
    aside.what = "The loop does not drain.";
    aside.dismissed = true;
    aside.dismissReason = "The coach is kept in a heated hall.";
    return {danger, aside};
}

QString allText(const Recorder& paper)
{
    QStringList words;
    for (const Recorder::Written& written : paper.written)
        words << written.text;
    return words.join(QLatin1Char(' ')).simplified();
}

QString run(const QString& program, const QStringList& arguments)
{
    QProcess process;
    process.start(program, arguments);
    REQUIRE(process.waitForFinished(30000));
    CAPTURE(program.toStdString(), process.readAllStandardError().toStdString());
    REQUIRE(process.exitCode() == 0);
    return QString::fromUtf8(process.readAllStandardOutput());
}

/// As QRectF::contains, but lines have no area and count too.
bool isWithin(const QRectF& outer, const QRectF& box)
{
    return box.left() >= outer.left() && box.right() <= outer.right() && box.top() >= outer.top()
           && box.bottom() <= outer.bottom();
}

bool have(const char* program) { return !QStandardPaths::findExecutable(QString::fromLatin1(program)).isEmpty(); }

QByteArray withoutDate(QByteArray pdf)
{
    REQUIRE(pdf.contains("/CreationDate"));
    // Latin-1: a character a byte. Qt 6.8 writes the date into its metadata too.
    static const QRegularExpression dates(
        QStringLiteral(R"re(/(Creation|Mod)Date [^\n]*|xmp:(Create|Modify|Metadata)Date="[^"]*")re"));
    return QString::fromLatin1(pdf).remove(dates).toLatin1();
}

}  // namespace

TEST_CASE("every text on the page is 7 pt or larger and inside the margins, on both papers", "[print]")
{
    const auto paperId = GENERATE(QPageSize::Letter, QPageSize::A4);
    const int cautions = GENERATE(3, 40);
    const document::Drawing drawing = oneOfEach();
    Recorder paper(paperId);
    const int pages = paper.take(drawing, contentWith(drawing, cautions), someFindings(), UnitSystem::Us);
    REQUIRE(pages >= 1);
    REQUIRE(paper.written.size() > 40);
    CHECK(paper.bitmaps == 0);
    const QRectF inside = paper.paper_pt().adjusted(print::kMargin_pt - 1, print::kMargin_pt - 1, 1 - print::kMargin_pt,
                                                    1 - print::kMargin_pt);
    for (const Recorder::Written& written : paper.written) {
        CAPTURE(written.text.toStdString(), written.page, written.size_pt, written.box_pt.left(), written.box_pt.top(),
                written.box_pt.right(), written.box_pt.bottom());
        CHECK(written.size_pt >= 6.99);
        CHECK(isWithin(inside, written.box_pt));
        CHECK_FALSE(written.text.contains(QChar(0x2026)));  // nothing cut short
    }
    for (const QRectF& box : paper.painted) {
        CAPTURE(box.left(), box.top(), box.right(), box.bottom());
        CHECK(isWithin(inside, box));
    }
}

TEST_CASE("what does not fit goes to a second page and nothing is lost", "[print]")
{
    const document::Drawing drawing = oneOfEach();
    Recorder few(QPageSize::Letter), many(QPageSize::Letter);
    few.take(drawing, contentWith(drawing, 3), {}, UnitSystem::Us);
    const int pages = many.take(drawing, contentWith(drawing, 150), {}, UnitSystem::Us);
    CAPTURE(pages);
    CHECK(pages >= 2);
    const QString text = allText(many);
    for (int i = 1; i <= 150; ++i) {
        CAPTURE(i);
        CHECK(text.contains(QStringLiteral("number %1:").arg(i)));
    }
    CHECK(text.contains(QStringLiteral("%1 of %1").arg(pages)));
    int lastPage = 0;
    for (const auto& written : many.written)
        lastPage = std::max(lastPage, written.page);
    CHECK(lastPage + 1 == pages);
}

TEST_CASE("a text longer than a whole column is broken, not lost", "[print]")
{
    const document::Drawing drawing = oneOfEach();
    report::PageContent content = contentWith(drawing, 1);
    std::string longText;
    for (int i = 0; i < 1500; ++i)
        longText += "word" + std::to_string(i) + " ";
    content.footnotes.push_back(longText);
    Recorder paper(QPageSize::Letter);
    REQUIRE(paper.take(drawing, content, {}, UnitSystem::Us) >= 2);
    const QString text = allText(paper);
    CHECK(text.contains(QStringLiteral("word0 ")));
    CHECK(text.contains(QStringLiteral("word777 ")));
    CHECK(text.contains(QStringLiteral("word1499")));
    for (const Recorder::Written& written : paper.written)
        CHECK(written.box_pt.bottom() <= paper.paper_pt().bottom() - print::kMargin_pt + 1);
}

TEST_CASE("the page says what the content holds: answers, reasons, signs in words, tags, parts and notes", "[print]")
{
    const document::Drawing drawing = oneOfEach();
    const report::PageContent content = contentWith(drawing, 2);
    Recorder us(QPageSize::Letter), metric(QPageSize::A4);
    us.take(drawing, content, someFindings(), UnitSystem::Us);
    metric.take(drawing, content, someFindings(), UnitSystem::Metric);
    const QString text = allText(us);
    for (const char* words :
         {"Loop flow", "0.48 gpm", "no answer", "No case draws hot water without the loop.", "Danger.", "142 °F",
          "Add an independent high limit.", "Caution.", "Set aside.", "heated hall", "SAMPLE FIGURES", "not to scale",
          "Legend", "Total", "declaration of", "Sample customer"}) {
        CAPTURE(words);
        CHECK(text.contains(QString::fromUtf8(words)));
    }
    CHECK(allText(metric).contains(QStringLiteral("1.80 L/min")));
    CHECK(allText(metric).contains(QStringLiteral("61.1 °C")));
    for (const document::Part& part : drawing.parts) {
        const parts::PartKind& kind = document::kindOf(part);
        if (kind.isPipe || kind.ports.empty())
            continue;
        CAPTURE(part.tag, part.kind);
        CHECK(text.contains(QString::fromStdString(part.tag)));
    }
    for (const report::PartLine& line : content.parts.lines) {
        const std::string item = inEnglish(line.item);
        CAPTURE(item);
        CHECK(text.contains(QString::fromStdString(item).simplified().section(QLatin1Char(' '), 0, 1)));
    }
}

TEST_CASE("texts use the room there is: larger letters on an emptier page, never under 7 pt", "[print]")
{
    const document::Drawing drawing = oneOfEach();
    const auto sizeOfNotes = [&](int cautions) {
        Recorder paper(QPageSize::Letter);
        paper.take(drawing, contentWith(drawing, cautions), {}, UnitSystem::Us);
        for (const Recorder::Written& written : paper.written)
            if (written.text.contains(QStringLiteral("number 1:")))
                return written.size_pt;
        return 0.0;
    };
    const double roomy = sizeOfNotes(1), crowded = sizeOfNotes(45);
    CHECK(roomy > crowded);
    CHECK(crowded >= 6.99);
    CHECK(roomy <= 8.21);
}

TEST_CASE("an empty drawing still gives a page that says so", "[print]")
{
    const document::Drawing drawing;
    Recorder paper(QPageSize::A4);
    CHECK(paper.take(drawing, report::PageContent{}, {}, UnitSystem::Metric) == 1);
    CHECK(allText(paper).contains(QStringLiteral("Nothing is drawn yet.")));
}

TEST_CASE("the PDF has the same bytes each time but for its date, a title, a language and no bitmap", "[print]")
{
    const document::Drawing drawing = oneOfEach();
    const report::PageContent content = contentWith(drawing, 4);
    const auto paper = GENERATE(PaperSize::Letter, PaperSize::A4);
    QByteArray first, second;
    REQUIRE_FALSE(print::printPagePdf(drawing, content, someFindings(), UnitSystem::Us, paper, first));
    REQUIRE_FALSE(print::printPagePdf(drawing, content, someFindings(), UnitSystem::Us, paper, second));
    CHECK(withoutDate(first) == withoutDate(second));
    CHECK(first.startsWith("%PDF-"));
    CHECK(first.contains("/Lang (en)"));
    CHECK_FALSE(first.contains("/Subtype /Image"));

    QTemporaryDir folder;
    const QString path = folder.filePath(QStringLiteral("page.pdf"));
    QFile file(path);
    REQUIRE(file.open(QIODevice::WriteOnly));
    REQUIRE(file.write(first) == first.size());
    file.close();
    if (have("qpdf"))
        CHECK(run(QStringLiteral("qpdf"), {QStringLiteral("--check"), path}).contains(QStringLiteral("No syntax")));
    if (have("pdfinfo")) {
        const QString info = run(QStringLiteral("pdfinfo"), {path});
        CAPTURE(info.toStdString());
        CHECK(info.contains(QString::fromStdString(drawing.job.title)));
        static const QRegularExpression letter(QStringLiteral("Page size: +(612 x 792|792 x 612) ")),
            a4(QStringLiteral("Page size: +(595[.\\d]* x 842[.\\d]*|842[.\\d]* x 595[.\\d]*) "));
        CHECK(info.contains(paper == PaperSize::A4 ? a4 : letter));
    }
    if (have("pdftotext")) {
        const QString text = run(QStringLiteral("pdftotext"), {QStringLiteral("-layout"), path, QStringLiteral("-")});
        CHECK(text.contains(QStringLiteral("office")));  // three letters, not one ligature
        CHECK(text.contains(QStringLiteral("0.48 gpm")));
        for (const document::Part& part : drawing.parts)
            if (!document::kindOf(part).isPipe && !document::kindOf(part).ports.empty()) {
                CAPTURE(part.tag);
                CHECK(text.contains(QString::fromStdString(part.tag)));
            }
    }
    if (have("pdfimages"))
        CHECK(run(QStringLiteral("pdfimages"), {QStringLiteral("-list"), path}).trimmed().count(QLatin1Char('\n'))
              == 1);
    if (have("pdffonts")) {
        const QStringList lines = run(QStringLiteral("pdffonts"), {path}).trimmed().split(QLatin1Char('\n'));
        REQUIRE(lines.size() > 2);
        for (qsizetype i = 2; i < lines.size();
             ++i)  // columns from the right: object id (2), unicode, subset, embedded
            CHECK(lines[i].simplified().split(QLatin1Char(' ')).value(lines[i].simplified().count(QLatin1Char(' ')) - 4)
                  == QStringLiteral("yes"));
    }
}

TEST_CASE("a PDF that is not laid out as expected is left alone", "[print]")
{
    CHECK(print::withLanguage("", "en") == QByteArray());
    CHECK(print::withLanguage("%PDF-1.4\nnothing here", "en") == QByteArray("%PDF-1.4\nnothing here"));
    CHECK(print::withLanguage("trailer\n<< /Size 3 >>\nstartxref\n9\n%%EOF", "en")
          == QByteArray("trailer\n<< /Size 3 >>\nstartxref\n9\n%%EOF"));
}

TEST_CASE("the samples' pages fit their paper: one page, or a second one for the texts", "[print][samples]")
{
    const char* name = GENERATE("long_hall_coach", "storage_coach");
    const auto drawing = document::load(std::string(TAPWARD_SOURCE_DIR "/samples/") + name + ".tapward");
    REQUIRE(drawing);
    const auto prediction = study::predict(*drawing);
    REQUIRE(prediction);
    const auto findings = review::review(*drawing, *prediction, study::assess(*drawing, *prediction));
    const auto paperId = GENERATE(QPageSize::Letter, QPageSize::A4);
    Recorder paper(paperId);
    const int pages =
        paper.take(*drawing, report::page(*drawing, *prediction, study::assess(*drawing, *prediction), findings),
                   findings, UnitSystem::Us);
    CAPTURE(name, pages);
    CHECK(pages >= 1);
    CHECK(pages <= 2);
    CHECK(paper.bitmaps == 0);
    for (const Recorder::Written& written : paper.written) {
        CAPTURE(written.text.toStdString(), written.page, written.size_pt);
        CHECK(written.size_pt >= 6.99);
        CHECK(paper.paper_pt().adjusted(29, 29, -29, -29).contains(written.box_pt));
    }
}
