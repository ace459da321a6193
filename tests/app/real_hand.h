// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QGuiApplication>
#include <QHash>
#include <QPoint>
#include <QProcess>
#include <QStringList>
#include <QTest>

#include "support/catch.h"

namespace tapward::app::test {

/// In a real window the X server's own mouse and keyboard do what a test asks for; without one Qt's events do.
inline bool handsAreReal() { return QGuiApplication::platformName() == QLatin1String("xcb"); }

/// One command to the X server; what it sent has been taken in when this returns.
inline void moveHands(const QStringList& command)
{
    QProcess process;
    process.start(QStringLiteral("xdotool"), command);
    REQUIRE(QTest::qWaitFor([&] { return process.state() == QProcess::NotRunning; }, 15000));
    REQUIRE(process.exitCode() == 0);
    QTest::qWait(20);
}

inline QStringList wayTo(const QPoint& at, double pause_s = 0.02)
{
    return {QStringLiteral("mousemove"), QString::number(at.x()), QString::number(at.y()), QStringLiteral("sleep"),
            QString::number(pause_s)};
}

inline void realClick(const QPoint& at, int times = 1)
{
    moveHands(wayTo(at)
              + QStringList{QStringLiteral("click"), QStringLiteral("--repeat"), QString::number(times),
                            QStringLiteral("--delay"), QStringLiteral("80"), QStringLiteral("1")});
}

/// As one command beside this program: while something is dragged out of a list the window is inside its own loop, and
/// nothing here could send the next move.
inline void realDrag(const QPoint& from, const QPoint& to, double pause_s = 0.02)
{
    QStringList command = wayTo(from, pause_s) + QStringList{QStringLiteral("mousedown"), QStringLiteral("1")};
    command += wayTo(from, pause_s);
    for (int step = 1; step <= 8; ++step)
        command += wayTo(from + (to - from) * step / 8, pause_s);
    moveHands(command + wayTo(to, pause_s) + QStringList{QStringLiteral("mouseup"), QStringLiteral("1")});
}

inline void realKey(Qt::Key key, Qt::KeyboardModifiers keys, int times = 1)
{
    static const QHash<int, const char*> kNames{
        {Qt::Key_Insert, "Insert"}, {Qt::Key_Return, "Return"}, {Qt::Key_Tab, "Tab"}, {Qt::Key_Escape, "Escape"},
        {Qt::Key_Left, "Left"},     {Qt::Key_Right, "Right"},   {Qt::Key_Up, "Up"},   {Qt::Key_Down, "Down"},
        {Qt::Key_Delete, "Delete"}, {Qt::Key_Home, "Home"},     {Qt::Key_End, "End"}};
    QString name;
    for (const auto& [modifier, word] :
         {std::pair{Qt::ControlModifier, "ctrl+"}, {Qt::ShiftModifier, "shift+"}, {Qt::AltModifier, "alt+"}})
        if (keys & modifier)
            name += QLatin1String(word);
    name += kNames.contains(key) ? QString::fromLatin1(kNames[key]) : QString(QChar(key)).toLower();
    QStringList command{QStringLiteral("key"), QStringLiteral("--clearmodifiers"), QStringLiteral("--delay"),
                        QStringLiteral("6")};
    for (int i = 0; i < times; ++i)
        command << name;
    moveHands(command);
}

inline void realWord(const QString& word)
{
    moveHands({QStringLiteral("type"), QStringLiteral("--delay"), QStringLiteral("15"), word});
}

}  // namespace tapward::app::test
