// SPDX-License-Identifier: GPL-3.0-or-later
// From starting the program to its first painted frame, as a ratio to an empty Qt window.
//   tapward_start_bench [rounds]
#include <algorithm>
#include <chrono>
#include <cstdlib>
#include <QApplication>
#include <QProcess>
#include <QStandardPaths>
#include <vector>

#include <fmt/format.h>

#include "first_frame.h"
#include "shell/main_window.h"
#include "shell/window_style.h"

namespace {

/// Seconds from start to end of the program, or a negative number when it failed.
double secondsOf(const QString& program, const QStringList& arguments)
{
    const auto start = std::chrono::steady_clock::now();
    const int code = QProcess::execute(program, arguments);
    const double taken = std::chrono::duration<double>(std::chrono::steady_clock::now() - start).count();
    return code == 0 ? taken : -1;
}

}  // namespace

int main(int argc, char** argv)
{
    if (!qEnvironmentVariableIsSet("QT_QPA_PLATFORM"))
        qputenv("QT_QPA_PLATFORM", "offscreen");
    QStandardPaths::setTestModeEnabled(true);
    if (argc > 1 && QByteArray(argv[1]) == "--window") {
        QApplication app(argc, argv);
        QApplication::setStyle(new tapward::app::WindowStyle);
        tapward::app::MainWindow window;
        window.resize(1360, 860);  // as the empty one, whatever the screen
        const tapward::bench::QuitAtFirstFrame quit(window);
        window.show();
        return QApplication::exec();
    }
    const QCoreApplication app(argc, argv);
    const int rounds = argc > 1 ? std::max(3, std::atoi(argv[1])) : 11;
    const QString self = QCoreApplication::applicationFilePath();
    const QString empty = QCoreApplication::applicationDirPath() + QStringLiteral("/tapward_empty_window");
    std::vector<double> bare, word, whole;
    for (int i = 0; i < rounds; ++i) {
        bare.push_back(secondsOf(empty, {}));
        word.push_back(secondsOf(empty, {QStringLiteral("Word")}));
        whole.push_back(secondsOf(self, {QStringLiteral("--window")}));
    }
    for (auto* one : {&bare, &word, &whole}) {
        std::ranges::sort(*one);
        if (one->front() < 0) {
            fmt::print(stderr, "A window could not be started.\n");
            return 2;
        }
    }
    const auto ratioTo = [&](const std::vector<double>& other, const char* name) {
        fmt::print("start to first frame: {:.2f} x {} (medians of {}; best {:.2f} x)\n",
                   whole[whole.size() / 2] / other[other.size() / 2], name, rounds, whole.front() / other.front());
    };
    ratioTo(bare, "an empty Qt window");
    ratioTo(word, "a Qt window with one word");
    return 0;
}
