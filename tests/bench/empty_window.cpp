// SPDX-License-Identifier: GPL-3.0-or-later
// An empty Qt window that goes away after its first painted frame: what start_bench measures against.
//   tapward_empty_window [WORD]    with one word in it, if given: the first word makes Qt read the system's fonts
#include <QApplication>
#include <QLabel>
#include <QMainWindow>

#include "shell/first_frame.h"

int main(int argc, char** argv)
{
    QApplication app(argc, argv);
    QMainWindow window;
    window.resize(1360, 860);
    if (argc > 1)
        window.setCentralWidget(new QLabel(QString::fromLocal8Bit(argv[1])));
    const tapward::app::QuitAtFirstFrame quit(window);
    window.show();
    return QApplication::exec();
}
