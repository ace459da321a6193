// SPDX-License-Identifier: GPL-3.0-or-later
#include <algorithm>
#include <clocale>
#include <cstdlib>
#include <functional>
#include <memory>
#include <optional>
#include <QApplication>
#include <QCommandLineParser>
#include <QDebug>
#include <QDockWidget>
#include <QElapsedTimer>
#include <QFontDatabase>
#include <QTextStream>
#include <QTimer>
#include <string_view>
#include <thread>
#include <utility>

#include "document/file.h"
#include "panels/icons.h"
#include "panels/safety_panel.h"
#include "shell/exports.h"
#include "shell/first_frame.h"
#include "shell/language.h"
#include "shell/main_window.h"
#include "shell/start_page.h"
#include "shell/window_style.h"
#include "tools/editing_canvas.h"

// tapward [FILE]: the window.

namespace {

using namespace tapward::app;

/// For checks: waits for the first prediction, takes the picture, ends.
int takeScreenshot(MainWindow& window, const QCommandLineParser& line)
{
    Session& session = window.session();
    if (line.isSet(QStringLiteral("case")))
        session.setCaseName(line.value(QStringLiteral("case")));
    waitForPrediction(session);
    QElapsedTimer waiting;
    waiting.start();
    constexpr qint64 kMost_ms = 120'000;
    while (
        line.isSet(QStringLiteral("studied")) && waiting.elapsed() < kMost_ms
        && (!window.safety().worker().answers().faults || window.safety().worker().isRunning() || session.isWorking()))
        QCoreApplication::processEvents(QEventLoop::AllEvents | QEventLoop::WaitForMoreEvents, 50);
    if (line.isSet(QStringLiteral("time")))
        session.setTime(line.value(QStringLiteral("time")).toDouble());
    if (const auto* part = session.drawing().findTag(line.value(QStringLiteral("select")).toStdString()))
        session.select({part->id});
    if (line.isSet(QStringLiteral("area")))
        window.showArea(line.value(QStringLiteral("area")));
    if (window.findChild<QDockWidget*>(line.value(QStringLiteral("pane"))) && line.isSet(QStringLiteral("pane")))
        window.showPane(line.value(QStringLiteral("pane")).toLatin1().constData());
    window.canvas().fitDrawing();
    QElapsedTimer settle;
    settle.start();
    while (settle.elapsed() < 800)
        QCoreApplication::processEvents(QEventLoop::AllEvents, 50);
    if (window.grab().save(line.value(QStringLiteral("screenshot"))))
        return 0;
    QTextStream(stderr) << "tapward: the picture could not be written\n";
    return 2;
}

void nameProgram()
{
    QCoreApplication::setOrganizationName(QStringLiteral("tapward"));
    QCoreApplication::setApplicationName(QStringLiteral("tapward"));
    QCoreApplication::setApplicationVersion(QStringLiteral(TAPWARD_VERSION));
}

void describe(QCommandLineParser& line)
{
    line.setApplicationDescription(QCoreApplication::translate(
        "main", "Hot-water preheat loops in recreational coaches: drawn, predicted, printed."));
    line.addHelpOption();
    line.addVersionOption();
    line.addPositionalArgument(QStringLiteral("file"),
                               QCoreApplication::translate("main", "A .tapward drawing to open."),
                               QStringLiteral("[FILE]"));
    const auto hidden = [&](const char* name, bool value) {
        QCommandLineOption option(QString::fromLatin1(name));
        option.setFlags(QCommandLineOption::HiddenFromHelp);
        if (value)
            option.setValueName(QStringLiteral("value"));
        line.addOption(option);
    };
    for (const char* name : {"screenshot", "size", "time", "case", "select", "font", "pane", "area", "language"})
        hidden(name, true);
    for (const char* name : {"dark", "contrast", "metric", "sample", "pseudo", "first-frame", "studied"})
        hidden(name, false);
}

/// --help and --version need no display: they are answered before one is asked for.
void answerWithoutWindow(int argc, char** argv)
{
    const auto isQuestion = [](std::string_view word) {
        return word == "--help" || word == "-h" || word == "--help-all" || word == "--version" || word == "-v";
    };
    if (std::none_of(argv + std::min(argc, 1), argv + argc, isQuestion))
        return;
    const QCoreApplication app(argc, argv);
    nameProgram();
    speak(languageFor(chosenLanguage()));
    QCommandLineParser line;
    describe(line);
    line.parse(QCoreApplication::arguments());
    if (line.isSet(QStringLiteral("version")))
        line.showVersion();  // ends the program
    if (line.isSet(QStringLiteral("help")) || line.isSet(QStringLiteral("help-all")))
        line.showHelp();
}

/// What Qt says while it looks for a display.
QStringList& saidAtStart()
{
    static QStringList said;
    return said;
}

/// Where there is no display Qt ends the program by an abort; this says what to do and ends it in order.
void sayAtStart(QtMsgType type, const QMessageLogContext&, const QString& text)
{
    if (type != QtFatalMsg) {
        saidAtStart() << text.trimmed();
        return;
    }
    QTextStream(stderr) << QStringLiteral(
                               "tapward: no window can be opened here (%1). Start it on a desktop; without one, "
                               "tapward-batch predicts and prints: tapward-batch check FILE, tapward-batch predict "
                               "FILE, tapward-batch sheet FILE -o page.pdf\n")
                               .arg(saidAtStart().value(0, text.section(QLatin1Char('\n'), 0, 0)));
    std::_Exit(2);
}

}  // namespace

int main(int argc, char** argv)
{
    answerWithoutWindow(argc, argv);
    const QtMessageHandler usual = qInstallMessageHandler(sayAtStart);
    QApplication app(argc, argv);
    qInstallMessageHandler(usual);
    for (const QString& text : std::as_const(saidAtStart()))
        qWarning().noquote() << text;
    QApplication::setStyle(new WindowStyle);
    std::setlocale(LC_NUMERIC, "C");  // files and readouts use '.', whatever the desktop's locale
    nameProgram();
    QGuiApplication::setApplicationDisplayName(QStringLiteral("Tapward"));
    QGuiApplication::setDesktopFileName(QStringLiteral("tapward"));

    speak(languageFor(chosenLanguage()));

    QCommandLineParser line;
    describe(line);
    line.process(app);  // may end the program

    // Reading the system's fonts takes as long as putting up a window, and the first word waits for them.
    const std::jthread fonts([] { QFontDatabase::families(); });

    if (line.isSet(QStringLiteral("language")))
        speak(line.value(QStringLiteral("language")));
    if (line.isSet(QStringLiteral("pseudo")))
        speak(QStringLiteral("pseudo"));
    if (line.isSet(QStringLiteral("dark")))
        QApplication::setPalette(look::darkPalette());
    if (line.isSet(QStringLiteral("contrast")))
        QApplication::setPalette(look::strongPalette(line.isSet(QStringLiteral("dark"))));
    if (line.isSet(QStringLiteral("font"))) {
        QFont font = QApplication::font();
        font.setPointSizeF(line.value(QStringLiteral("font")).toDouble());
        QApplication::setFont(font);
    }
    const bool picture = line.isSet(QStringLiteral("screenshot"));
    std::unique_ptr<MainWindow> window;
    const std::function<void()> makeWindow = [&] {
        auto before = std::move(window);
        window = before ? std::make_unique<MainWindow>(*before) : std::make_unique<MainWindow>();
        window->studyByItself();
        QObject::connect(
            window.get(), &MainWindow::languageChosen, &app,
            [&] {
                speak(languageFor(chosenLanguage()));
                makeWindow();
            },
            Qt::QueuedConnection);
    };
    makeWindow();
    if (line.isSet(QStringLiteral("size"))) {
        const QStringList size = line.value(QStringLiteral("size")).split(QLatin1Char('x'));
        if (size.size() == 2)
            window->resize(size[0].toInt(), size[1].toInt());
    }
    if (line.isSet(QStringLiteral("metric")))
        window->session().setUnits(tapward::UnitSystem::Metric);
    std::optional<QuitAtFirstFrame> quit;
    if (line.isSet(QStringLiteral("first-frame")))
        quit.emplace(*window);
    window->show();
    const QStringList files = line.positionalArguments();
    const auto begin = [&] {
        if (!picture)
            window->offerRecovery();
        if (window->hasDrawing())
            return;
        if (!files.isEmpty())
            window->openFile(files.constFirst());
        else if (line.isSet(QStringLiteral("sample")) && !samples().empty())
            window->openSample(samples().front().resource);
    };
    if (picture) {
        begin();
        return takeScreenshot(*window, line);
    }
    QTimer::singleShot(0, window.get(), begin);
    return QApplication::exec();
}
