// SPDX-License-Identifier: GPL-3.0-or-later
// Edits and saves without end, to be killed: kill_victim FILE STATE_FOLDER DELAY_ms
// Every edit counts one up in the job's notes. Tells on stdout "e <number> <ms>" after an edit and
// "s <number> <ms>" after a save.
#include <cstdio>
#include <QApplication>
#include <QElapsedTimer>
#include <QTimer>
#include <unistd.h>

#include "session/session.h"
#include "shell/autosave.h"

using namespace tapward;
using namespace tapward::app;

namespace {

void tell(char what, int number, qint64 ms)
{
    char line[64];
    const int length = std::snprintf(line, sizeof line, "%c %d %lld\n", what, number, static_cast<long long>(ms));
    if (::write(STDOUT_FILENO, line, static_cast<std::size_t>(length)) != length)
        std::_Exit(3);
}

}  // namespace

int main(int argc, char** argv)
{
    if (argc != 4)
        return 2;
    qputenv("QT_QPA_PLATFORM", "offscreen");
    QApplication application(argc, argv);
    const QString file = QString::fromLocal8Bit(argv[1]);
    Session session;
    Autosave autosave(session, QString::fromLocal8Bit(argv[2]));
    autosave.setDelay(QByteArray(argv[3]).toInt());
    if (session.open(file))
        return 2;
    QElapsedTimer clock;
    clock.start();
    int number = 0;
    QTimer edits;
    QObject::connect(&edits, &QTimer::timeout, [&] {
        document::Job job = session.drawing().job;
        job.notes = std::to_string(++number);
        if (session.perform({Message("count"), {document::SetJob{job}}}))
            std::_Exit(4);
        tell('e', number, clock.elapsed());
        if (number % 71 == 0) {
            if (session.save(file))
                std::_Exit(5);
            tell('s', number, clock.elapsed());
        }
    });
    edits.start(7);
    return QApplication::exec();
}
