// SPDX-License-Identifier: GPL-3.0-or-later
// What the window says in another language: nothing is missing, and the choice loses no work.
#include <algorithm>
#include <QAction>
#include <QActionGroup>
#include <QCoreApplication>
#include <QFile>
#include <QLabel>
#include <QMenuBar>
#include <QProcess>
#include <QRegularExpression>
#include <QSettings>
#include <QStandardPaths>
#include <QTemporaryDir>
#include <QTranslator>
#include <QXmlStreamReader>
#include <set>

#include "document/edit.h"
#include "look/kind_text.h"
#include "panels/answers.h"
#include "panels/case_editor.h"
#include "panels/chart_data.h"
#include "panels/question_list.h"
#include "panels/safety_panel.h"
#include "panels/say.h"
#include "panels_support.h"
#include "parts/part_kind.h"
#include "print/page.h"
#include "print/survey_sheet.h"
#include "report/report.h"
#include "session/message_text.h"
#include "shell/first_job.h"
#include "shell/help_window.h"
#include "shell/language.h"
#include "shell/main_window.h"
#include "shell/pseudo_translator.h"
#include "shell/start_page.h"
#include "tools/editing_canvas.h"

using namespace tapward;
using namespace tapward::app;
using namespace tapward::app::test;

namespace {

/// The Spanish file, which notes what it was asked for and does not have.
class Noting final : public QTranslator {
public:
    Noting()
    {
        good = m_spanish.load(QStringLiteral(":/translations/tapward_es.qm"));
        QCoreApplication::installTranslator(this);
    }
    ~Noting() override { QCoreApplication::removeTranslator(this); }
    bool isEmpty() const override { return false; }
    QString translate(const char* context, const char* source, const char* comment, int n) const override
    {
        const QString text = m_spanish.translate(context, source, comment, n);
        if (text.isNull() && *source != '\0' && *context != 'Q')
            missing.insert(QString::fromUtf8(context) + QStringLiteral(": ") + QString::fromUtf8(source));
        return text;
    }
    bool has(std::string_view text) const { return !m_spanish.translate("core", std::string(text).c_str()).isNull(); }

    bool good = false;
    mutable std::set<QString> missing;

private:
    QTranslator m_spanish;
};

/// English again at the end of a test, whatever happened in it.
struct BackToEnglish {
    ~BackToEnglish()
    {
        QSettings().remove(QStringLiteral("language"));
        speak(QStringLiteral("en"));
    }
};

QString menuTitles(const MainWindow& window)
{
    QString all;
    for (const QAction* action : window.menuBar()->actions())
        all += action->text() + QLatin1Char(' ');
    return all;
}

}  // namespace

TEST_CASE("every fixed text of every kind of part has a Spanish entry", "[shell][language]")
{
    const Noting spanish;
    REQUIRE(spanish.good);
    const auto expect = [&](std::string_view text) {
        if (text.empty())
            return;
        CAPTURE(std::string(text));
        CHECK(spanish.has(text));
    };
    for (const auto* kind : parts::catalogue()) {
        expect(kind->title);
        expect(parts::title(kind->group));
        expect(kind->caution);
        expect(kind->searchWords);
        for (const auto& port : kind->ports)
            expect(port.title);
        for (const auto& fault : kind->faults)
            expect(fault.title);
        for (const auto& field : kind->fields) {
            expect(field.label);
            expect(field.source);
            expect(field.help);
            for (const auto& choice : field.choices)
                if (!choice.title.english().starts_with("AWG"))
                    expect(choice.title);
        }
    }
}

TEST_CASE("texts the core joins from pieces are translated piece by piece, tags and standards kept",
          "[shell][language]")
{
    const Noting spanish;
    const auto spoken = [](const Message& message) { return messageText(message, UnitSystem::Us); };
    CHECK(spoken({"Elbow, {0}, {1}", {Text("PEX 1/2 in"), Text("Brass insert (crimp, clamp)")}})
          == QStringLiteral("Codo, PEX 1/2 in, Inserto de latón (engaste, abrazadera)"));
    CHECK(spoken({"Tube, {0}, {1}", {Text("PEX 1/2 in"), std::string("ASTM F876")}})
          == QStringLiteral("Tubo, PEX 1/2 in, ASTM F876"));
    CHECK(spoken({"Copper wire, out and back, AWG {0}", {std::string("14")}})
          == QStringLiteral("Cable de cobre, ida y vuelta, AWG 14"));
    CHECK(spoken({"Sensor {0}", {std::string("TE1")}}) == QStringLiteral("Sensor TE1"));
    CHECK(spoken({"Hottest at the sensor, run {0}", {std::int64_t{2}}})
          == QStringLiteral("Máxima en el sensor, ciclo 2"));
    CHECK(spoken({"{0} has these switched on without a sensor for them: {1}.",
                  {std::string("C1"), std::vector<Text>{"Length", "Faucet"}}})
              .contains(QStringLiteral("Longitud, Grifo")));
    CHECK(coreText("measured; width: common practice, no published source")
          == QStringLiteral("medido; anchura: práctica habitual, sin fuente publicada"));
    CHECK(coreText("Not understood: 3 xy") == QStringLiteral("No se entendió: 3 xy"));
    CHECK(messageText({"Set {0}", {Text("Length")}}, UnitSystem::Us) == QStringLiteral("Fijar Longitud"));
    CHECK(messageText({"{0} locked out: {1}.", {std::string("WH1"), Text("ignition failed")}}, UnitSystem::Us)
          == QStringLiteral("WH1 se bloqueó: falló el encendido."));
}

TEST_CASE("without a translation a joined text stays letter for letter", "[shell][language]")
{
    for (const char* text :
         {"Elbow, PEX 1/2 in, Brass insert (crimp, clamp)", "Sensor TE1", "a: b; c, d", ", ", "x,", ""})
        CHECK(coreText(text).toStdString() == text);
}

TEST_CASE("nothing the window, its predictions, its page and its help show on a sample lacks Spanish",
          "[shell][language]")
{
    const Noting spanish;
    REQUIRE(spanish.good);
    for (const auto* drawings : {&samples(), &templates()})
        for (const auto& one : *drawings) {
            CAPTURE(one.title.toStdString());
            CHECK(one.shown() != one.title);
        }
    for (const auto& sample : samples()) {
        CAPTURE(sample.resource.toStdString());
        MainWindow window;
        window.resize(1400, 900);
        window.show();
        REQUIRE(window.openSample(sample.resource));
        REQUIRE(waitForAnswer(window.session()));
        const auto& drawing = window.session().drawing();
        for (const auto& part : drawing.parts) {
            window.session().select({part.id});
            QCoreApplication::processEvents();
        }
        for (const auto& one : drawing.cases) {
            window.session().setCaseName(QString::fromStdString(one.name));
            QCoreApplication::processEvents();
        }
        for (const auto& one : window.session().prediction()->cases) {
            for (const auto& event : one.events)
                sayMessage(event.what, UnitSystem::Us);
            for (const auto& scalar : one.scalars) {
                sayMessage(scalar.label, UnitSystem::Us);
                sayMessage(scalar.reason, UnitSystem::Us);
            }
        }
        for (const auto& finding : window.session().findings()) {
            for (const Message& text : {finding.what, finding.why, finding.remedy})
                sayMessage(text, UnitSystem::Us);
            say(finding.source);
        }
        QByteArray pdf;
        CHECK_FALSE(exportBytes(window.session(), ExportKind::PagePdf, pdf));
        CHECK(pdf.contains("/Lang (es)"));
        CaseEditor cases(window.session());
        cases.show();
        HelpWindow help;
        help.showFor(nullptr);
        QCoreApplication::processEvents();
    }
    // What somebody wrote, tags and numbers are asked for too where they stand in a sentence: they stay.
    std::set<QString> written;
    for (const auto& sample : samples()) {
        QFile file(sample.resource);
        REQUIRE(file.open(QIODevice::ReadOnly));
        const QString text = QString::fromUtf8(file.readAll());
        for (const QString& key : spanish.missing)
            if (key.startsWith(QLatin1String("core: "))
                && text.contains(QLatin1Char('"') + key.mid(6) + QLatin1Char('"')))
                written.insert(key);
    }
    for (const QString& key : spanish.missing) {
        // A joined text is looked up whole and in ever smaller pieces: only a whole sentence that has no
        // translation is one that somebody would read in English.
        if (written.contains(key) || !(key.endsWith(QLatin1Char('.')) && key.count(QLatin1Char(' ')) > 3))
            continue;
        CAPTURE(key.toStdString());
        CHECK(false);
    }
}

TEST_CASE("what somebody typed stays as typed in Spanish, also where it is a word of the catalogue",
          "[shell][language]")
{
    const BackToEnglish later;
    speak(QStringLiteral("es"));
    REQUIRE(coreText("Faucet") == QStringLiteral("Grifo"));
    Session session;
    REQUIRE_FALSE(session.open(samplePath()));
    auto drawing = session.drawing();
    const auto rename = [&](const char* tag, const char* to) { drawing.find(drawing.findTag(tag)->id)->tag = to; };
    rename("F1", "Faucet");
    rename("TE1", "Battery");
    rename("C1", "Filter");
    const auto washer = drawing.findTag("A2")->id;
    drawing.find(washer)->stage = document::Stage::Added;
    drawing.find(washer)->entries["name"] = {std::string("Drain"), parts::Basis::Estimated};
    drawing.job.title = "Hot water";
    drawing.job.customer = "Length";
    for (auto& one : drawing.cases)
        one.name = one.name == "One preheat run, cold" ? "Shower" : one.name;
    session.startNew(drawing);
    REQUIRE(waitForAnswer(session));
    const UnitSystem units = session.units();

    // Predictions and findings name tags and cases.
    QString said;
    for (const auto& line : collectAnswers(session).lines)
        said += line.note + QLatin1Char('\n');
    CHECK(said.contains(QStringLiteral("«Shower»")));
    CHECK_FALSE(said.contains(QStringLiteral("«Ducha»")));
    QString found;
    for (const auto& finding : session.findings())
        found +=
            sayMessage(finding.what, units) + QLatin1Char(' ') + sayMessage(finding.remedy, units) + QLatin1Char('\n');
    CHECK(found.contains(QStringLiteral("Faucet")));
    CHECK_FALSE(found.contains(QStringLiteral("Grifo ")));
    CHECK(found.contains(QStringLiteral("Filter")));
    // Curves name the tag, the parts list the appliance, the page the title.
    session.setCaseName(QStringLiteral("Shower"));
    const auto lines = chartLines(*session.currentCase());
    CHECK(std::ranges::any_of(lines, [](const auto& line) { return line.name == QStringLiteral("Sensor Battery"); }));
    const auto parts = report::partsList(session.drawing());
    CHECK(std::ranges::any_of(parts.lines, [&](const auto& line) { return messageText(line.item, units) == "Drain"; }));
    const auto content = report::page(session.drawing(), *session.prediction(), *session.assessment(), {});
    CHECK(messageText(content.title, units) == QStringLiteral("Hot water"));
    // Undo steps name what they changed.
    REQUIRE_FALSE(
        session.perform(document::moveParts(session.drawing(), {session.drawing().findTag("Faucet")->id}, 1, 0)));
    CHECK(session.undoStack().undoText().contains(QStringLiteral("Faucet")));
}

TEST_CASE("choosing a language makes the window anew with the unsaved work in it", "[shell][language]")
{
    const BackToEnglish later;
    QTemporaryDir folder;
    const QString path = folder.filePath(QStringLiteral("coach.tapward"));
    {
        QFile::copy(samples().front().resource, path);
        QFile(path).setPermissions(QFile::ReadOwner | QFile::WriteOwner);
    }
    MainWindow before;
    before.show();
    REQUIRE(before.openFile(path));
    const auto id = before.session().drawing().parts.front().id;
    document::Edit edit;
    edit.title = {"Rename {0}", {before.session().drawing().parts.front().tag}};
    auto part = before.session().drawing().parts.front();
    part.tag = "ZZ9";
    edit.steps = {document::ChangePart{part}};
    REQUIRE_FALSE(before.session().perform(edit));
    before.session().select({id});
    waitForPrediction(before.session());
    before.session().setTime(20);
    auto& studies = before.safety().worker();
    studies.start();
    REQUIRE(QTest::qWaitFor([&] { return studies.answers().winter != nullptr; }, 120'000));
    studies.callOff();
    const auto curve = studies.answers().loop;
    REQUIRE(curve);

    auto* guide = before.findChild<FirstJob*>();
    guide->begin();
    const int done = guide->doneCount();
    const QString step = guide->stepTitle();
    CHECK(done > 0);

    QAction* spanish = nullptr;
    for (auto* action : before.findChildren<QAction*>())
        if (action->text() == QStringLiteral("Español"))
            spanish = action;
    REQUIRE(spanish);
    int asked = 0;
    QObject::connect(&before, &MainWindow::languageChosen, [&] { ++asked; });
    spanish->trigger();
    CHECK(asked == 1);
    CHECK(chosenLanguage() == QStringLiteral("es"));

    speak(languageFor(chosenLanguage()));
    MainWindow after(before);
    CHECK(after.session().time() == 20);
    const auto* carried = after.findChild<FirstJob*>();
    CHECK_FALSE(carried->isHidden());
    CHECK(carried->doneCount() == done);
    CHECK(carried->stepTitle() != step);  // the same one, in Spanish
    CHECK_FALSE(after.session().isStale());
    CHECK(after.safety().worker().answers().loop == curve);
    CHECK(after.safety().titles().contains(QStringLiteral("Curva del bucle")));
    CHECK(after.session().undoStack().undoText().startsWith(QStringLiteral("Renombrar")));
    CHECK(menuTitles(after).contains(QStringLiteral("&Archivo")));
    CHECK(after.session().path() == path);
    CHECK(after.session().isModified());
    CHECK(after.session().drawing().find(id)->tag == "ZZ9");
    CHECK(after.session().selection() == std::vector{id});
    after.session().undoStack().undo();
    CHECK_FALSE(after.session().isModified());
    CHECK(after.session().drawing().find(id)->tag != "ZZ9");
    after.session().undoStack().redo();

    speak(QStringLiteral("en"));
    MainWindow english(after);
    CHECK(menuTitles(english).contains(QStringLiteral("&File")));
    CHECK(english.session().drawing().find(id)->tag == "ZZ9");
}

TEST_CASE("the desktop's language is taken where it is shipped, a chosen one always", "[shell][language]")
{
    const BackToEnglish later;
    CHECK(languageFor(QStringLiteral("es")) == QStringLiteral("es"));
    CHECK(languageFor(QStringLiteral("en")) == QStringLiteral("en"));
    const QString system = languageFor({});
    CHECK((system == QStringLiteral("en") || system == QStringLiteral("es")));
    chooseLanguage(QStringLiteral("xx"));
    CHECK(chosenLanguage().isEmpty());  // a language that is no longer shipped is no choice
}

TEST_CASE("the accelerators of one menu are all different in Spanish", "[shell][language]")
{
    const BackToEnglish later;
    speak(QStringLiteral("es"));
    MainWindow window;
    const std::function<void(const QList<QAction*>&, const QString&)> walk = [&](const QList<QAction*>& actions,
                                                                                 const QString& menu) {
        std::map<QChar, int> letters;
        static const QRegularExpression letter(QStringLiteral("&([^&])"));
        for (const QAction* action : actions) {
            if (const auto found = letter.match(action->text()); found.hasMatch())
                ++letters[found.captured(1).at(0).toLower()];
            if (action->menu())
                walk(action->menu()->actions(), action->text());
        }
        for (const auto& [key, count] : letters) {
            CAPTURE(menu.toStdString(), QString(key).toStdString());
            CHECK(count == 1);
        }
    };
    walk(window.menuBar()->actions(), QStringLiteral("(bar)"));
}

TEST_CASE("the stretched language keeps placeholders and markup of every text and is half as long again",
          "[shell][language]")
{
    QFile file(QStringLiteral(TAPWARD_SOURCE_DIR "/resources/translations/tapward_es.ts"));
    REQUIRE(file.open(QIODevice::ReadOnly));
    static const QRegularExpression kept(QStringLiteral("\\{\\d+\\}|%L?\\d+|%n|<[^>]*>|\\*\\.\\w+"));
    const auto marks = [](const QString& text) {
        QStringList all;
        for (auto found = kept.globalMatch(text); found.hasNext();)
            all << found.next().captured();
        return all;
    };
    QXmlStreamReader xml(&file);
    int texts = 0;
    while (!xml.atEnd()) {
        if (xml.readNext() != QXmlStreamReader::StartElement || xml.name() != QLatin1String("source"))
            continue;
        const QString source = xml.readElementText();
        const QString stretched = PseudoTranslator::stretched(source);
        CAPTURE(source.toStdString(), stretched.toStdString());
        CHECK(marks(stretched) == marks(source));
        QString words = source;
        words.remove(kept);
        CHECK(stretched.size() + 1 >= source.size() + words.size() / 2);  // placeholders are left out
        ++texts;
    }
    CHECK(texts > 1000);
}

TEST_CASE("the survey sheet on paper speaks Spanish too, and breaks no word of its heads", "[shell][language]")
{
    if (QStandardPaths::findExecutable(QStringLiteral("pdftotext")).isEmpty())
        return;
    const BackToEnglish back;
    speak(QStringLiteral("es"));
    const auto drawing = document::load(samplePath().toStdString());
    REQUIRE(drawing);
    QByteArray pdf;
    REQUIRE_FALSE(print::surveySheetPdf(report::blankSurvey(*drawing, UnitSystem::Us), print::PaperSize::Letter, pdf));
    CHECK(pdf.contains("/Lang (es)"));
    QTemporaryDir folder;
    QFile file(folder.filePath(QStringLiteral("sheet.pdf")));
    REQUIRE(file.open(QIODevice::WriteOnly));
    file.write(pdf);
    file.close();
    QProcess process;
    process.start(QStringLiteral("pdftotext"), {QStringLiteral("-layout"), file.fileName(), QStringLiteral("-")});
    REQUIRE(process.waitForFinished(30000));
    const QString text = QString::fromUtf8(process.readAllStandardOutput());
    for (const char* const words : {"Toma de datos: ", "Qué medir", "Precauciones", "T hacia", "F1 Caliente",
                                    "Etiqueta", "Aislamiento", "compartimento", "Página 1 de", "(continuación)"}) {
        CAPTURE(words);
        CHECK(text.contains(QString::fromUtf8(words)));
    }
    for (const char* const words : {"Branch", "Take care", "Page 1", "other end"})
        CHECK_FALSE(text.contains(QString::fromUtf8(words)));
}
