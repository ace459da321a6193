// SPDX-License-Identifier: GPL-3.0-or-later
// The runner of every test with Qt in it: offscreen unless told otherwise, a home of its own, one application.
#include <clocale>
#include <QApplication>
#include <QLocale>
#include <QStandardPaths>
#include <QTemporaryDir>

#ifdef CATCH2_V2
#define CATCH_CONFIG_RUNNER
#include <catch2/catch.hpp>
#else
#include <catch2/catch_session.hpp>
#endif

int main(int argc, char** argv)
{
    if (qEnvironmentVariableIsEmpty("QT_QPA_PLATFORM"))
        qputenv("QT_QPA_PLATFORM", "offscreen");  // test discovery runs this program while building
    // A home of its own: settings, stock list and assemblies are one person's, and tests run side by side.
    const QTemporaryDir home;
    if (!home.isValid())
        return 2;
    qputenv("HOME", home.path().toLocal8Bit());
    for (const char* place : {"XDG_CONFIG_HOME", "XDG_DATA_HOME", "XDG_STATE_HOME"})
        qunsetenv(place);
    QStandardPaths::setTestModeEnabled(true);
    QLocale::setDefault(QLocale::c());
    QApplication application(argc, argv);
    std::setlocale(LC_NUMERIC, "C");
    return Catch::Session().run(argc, argv);
}
