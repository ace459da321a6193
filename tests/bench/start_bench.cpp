// SPDX-License-Identifier: GPL-3.0-or-later
// From starting the program to its first painted frame, as a ratio to an empty Qt window: a window nobody sees and,
// where there is a display, one that somebody does.
//   tapward_start_bench [rounds]
#include <algorithm>
#include <chrono>
#include <cstdlib>
#include <QCoreApplication>
#include <QProcess>
#include <QTemporaryDir>
#include <vector>

#include <fmt/format.h>

namespace {

/// Seconds from starting the program to its first frame, or a negative number when it failed.
double secondsOf(const QString& program, const QStringList& arguments)
{
    const auto start = std::chrono::steady_clock::now().time_since_epoch();
    QProcess process;
    process.setProcessChannelMode(QProcess::ForwardedErrorChannel);
    process.start(program, arguments);
    if (!process.waitForFinished() || process.exitStatus() != QProcess::NormalExit || process.exitCode() != 0)
        return -1;
    const std::chrono::nanoseconds frame(process.readAllStandardOutput().trimmed().toLongLong());
    return std::chrono::duration<double>(frame - start).count();
}

/// False if a window could not be started.
bool compare(const char* where, int rounds)
{
    const QString folder = QCoreApplication::applicationDirPath();
    const QString empty = folder + QStringLiteral("/tapward_empty_window");
    std::vector<double> bare, word, whole;
    for (int i = 0; i < rounds; ++i) {
        bare.push_back(secondsOf(empty, {}));
        word.push_back(secondsOf(empty, {QStringLiteral("Word")}));
        whole.push_back(
            secondsOf(folder + QStringLiteral("/tapward"),
                      {QStringLiteral("--first-frame"), QStringLiteral("--size"), QStringLiteral("1360x860")}));
    }
    for (auto* one : {&bare, &word, &whole}) {
        std::ranges::sort(*one);
        if (one->front() <= 0)
            return false;
    }
    const auto ratioTo = [&](const std::vector<double>& other, const char* name) {
        fmt::print("start to first frame, {}: {:.2f} x {} (medians of {}; best {:.2f} x)\n", where,
                   whole[whole.size() / 2] / other[other.size() / 2], name, rounds, whole.front() / other.front());
    };
    ratioTo(bare, "an empty Qt window");
    ratioTo(word, "a Qt window with one word");
    return true;
}

}  // namespace

int main(int argc, char** argv)
{
    const QCoreApplication app(argc, argv);
    const int rounds = argc > 1 ? std::max(3, std::atoi(argv[1])) : 11;
    const QTemporaryDir home;  // as for a new user, whoever runs this
    for (const char* name : {"XDG_CONFIG_HOME", "XDG_STATE_HOME", "XDG_DATA_HOME"})
        qputenv(name, home.path().toUtf8());
    bool started = true;
    if (qEnvironmentVariableIsSet("DISPLAY")) {
        qputenv("QT_QPA_PLATFORM", "xcb");
        started = compare("on a display", rounds);
    }
    qputenv("QT_QPA_PLATFORM", "offscreen");
    started = started && compare("without a display", rounds);
    if (!started)
        fmt::print(stderr, "A window could not be started.\n");
    return started ? 0 : 2;
}
