// SPDX-License-Identifier: GPL-3.0-or-later
// An empty Qt window that goes away after its first painted frame: what start_bench measures against.
#include <QApplication>
#include <QMainWindow>
#include <QTimer>

#include "first_frame.h"

int main(int argc, char** argv)
{
    QApplication app(argc, argv);
    QMainWindow window;
    window.resize(1360, 860);
    const tapward::bench::QuitAtFirstFrame quit(window);
    window.show();
    return QApplication::exec();
}
