// SPDX-License-Identifier: GPL-3.0-or-later
// What a frame of the drawing costs while one pans, zooms and drags, and how long the window is deaf when a
// prediction arrives. Frames are painted without a display; times vary with the machine, so every figure is
// given as a ratio to one 60 Hz frame (16 ms).
//   tapward_canvas_bench [scale, default 2] [parts...]

#include <algorithm>
#include <cmath>
#include <cstdlib>
#include <ctime>
#include <functional>
#include <QApplication>
#include <QMetaEnum>
#include <QMouseEvent>
#include <QStandardPaths>
#include <QTest>
#include <QWheelEvent>
#include <string>
#include <vector>

#include <fmt/format.h>

#include "document/file.h"
#include "shell/main_window.h"
#include "tools/editing_canvas.h"

using namespace tapward;
using namespace tapward::app;

namespace {

constexpr double kFrame_ms = 16.0;
constexpr double kEvent_ms = 8.0;

/// Time this thread has worked: what other programs take of the machine does not count.
double threadTime_ms()
{
    timespec now{};
    clock_gettime(CLOCK_THREAD_CPUTIME_ID, &now);
    return 1e3 * static_cast<double>(now.tv_sec) + 1e-6 * static_cast<double>(now.tv_nsec);
}

double millisecondsOf(const std::function<void()>& work)
{
    const double start = threadTime_ms();
    work();
    return threadTime_ms() - start;
}

void report(const char* what, std::vector<double> taken, double limit_ms)
{
    std::ranges::sort(taken);
    const auto at = [&](double share) { return taken[static_cast<std::size_t>(share * double(taken.size() - 1))]; };
    fmt::print("  {:<34} median {:.2f}, 95 of 100 under {:.2f}, worst {:.2f} of {:.0f} ms\n", what, at(0.5) / limit_ms,
               at(0.95) / limit_ms, taken.back() / limit_ms, limit_ms);
}

/// The sample coach again and again, in rows, until there are at least so many parts.
document::Drawing grown(const document::Drawing& coach, std::size_t parts)
{
    document::Drawing drawing = coach;
    for (int copy = 1; drawing.parts.size() < parts; ++copy) {
        const auto more = document::pasteParts(drawing, coach.parts, 130.0 * (copy % 3), 70.0 * (copy / 3));
        if (!more)
            break;
        document::apply(drawing, *more);
    }
    return drawing;
}

/// Remembers which event kept the window deaf for longest; frames apart, for they are painted between events.
class Application final : public QApplication {
public:
    using QApplication::QApplication;
    struct Longest {
        double ms = 0;
        std::string what;
    };
    bool notify(QObject* receiver, QEvent* event) override
    {
        // What an event sends on belongs to it; its receiver may be gone when it is over.
        const QEvent::Type type = event->type();
        const QByteArray name = m_depth == 0 ? nameOf(receiver) : QByteArray();
        ++m_depth;
        bool used = false;
        const double taken = millisecondsOf([&] { used = QApplication::notify(receiver, event); });
        if (--m_depth > 0)
            return used;
        const bool frame = type == QEvent::UpdateRequest || type == QEvent::Paint || type == QEvent::Expose;
        if (Longest& longest = frame ? frameTaken : eventTaken; taken > longest.ms)
            longest = {taken,
                       fmt::format("{} to {}", QMetaEnum::fromType<QEvent::Type>().valueToKey(type), name.constData())};
        return used;
    }
    void forget() { eventTaken = frameTaken = {}; }
    Longest eventTaken, frameTaken;

private:
    static QByteArray nameOf(const QObject* receiver)
    {
        QByteArray name = receiver->metaObject()->className();
        if (const QObject* parent = receiver->parent())
            name += QByteArray(" in ") + parent->metaObject()->className();
        return name.replace("tapward::app::", "");
    }
    int m_depth = 0;
};

void settle(Session& session)
{
    (void)QTest::qWaitFor([&] { return !session.isWorking(); }, 120000);
    QTest::qWait(200);
}

void frames(MainWindow& window, const document::Drawing& drawing, bool moment)
{
    auto& session = window.session();
    auto& canvas = window.canvas();
    session.setShowsMoment(false);
    session.startNew(drawing);
    settle(session);
    if (moment)
        session.setTime(20);
    canvas.fitDrawing();
    canvas.zoomAbout(QRectF(canvas.viewport()->rect()).center(), std::max(canvas.zoom(), 0.35));
    const QPoint middle = canvas.viewport()->rect().center();
    const auto paint = [&] { canvas.viewport()->repaint(); };
    const auto wheel = [&](int delta, Qt::KeyboardModifiers keys) {
        QWheelEvent event(middle, canvas.viewport()->mapToGlobal(middle), {}, {0, delta}, Qt::NoButton, keys,
                          Qt::NoScrollPhase, false);
        QApplication::sendEvent(canvas.viewport(), &event);
    };
    paint();
    fmt::print("{} parts, zoom {:.2f}{}\n", drawing.parts.size(), canvas.zoom(),
               moment ? ", coloured by temperature" : "");

    std::vector<double> taken;
    for (int i = 0; i < 60; ++i)
        taken.push_back(millisecondsOf([&] {
            wheel(i % 20 < 10 ? 40 : -40, i % 40 < 20 ? Qt::NoModifier : Qt::ShiftModifier);
            paint();
        }));
    report("pan", taken, kFrame_ms);
    taken.clear();
    for (int i = 0; i < 48; ++i)
        taken.push_back(millisecondsOf([&] {
            wheel(i % 16 < 8 ? 120 : -120, Qt::ControlModifier);
            paint();
        }));
    report("zoom", taken, kFrame_ms);
    taken.clear();

    // The part nearest to the middle is taken and carried about.
    const QPointF centre = canvas.mapToScene(middle);
    const SymbolShape* grabbed = nullptr;
    for (const auto& symbol : canvas.layoutShown().symbols)
        if (symbol.text.isEmpty() && symbol.kind->ports.size() >= 2
            && (!grabbed || QLineF(symbol.at, centre).length() < QLineF(grabbed->at, centre).length()))
            grabbed = &symbol;
    const QPoint from = canvas.mapFromScene(grabbed->at);
    const auto mouse = [&](QEvent::Type type, const QPoint& at) {
        QMouseEvent event(type, QPointF(at), QPointF(canvas.viewport()->mapToGlobal(at)),
                          type == QEvent::MouseMove ? Qt::NoButton : Qt::LeftButton,
                          type == QEvent::MouseButtonRelease ? Qt::NoButton : Qt::LeftButton, Qt::NoModifier);
        QApplication::sendEvent(canvas.viewport(), &event);
    };
    mouse(QEvent::MouseButtonPress, from);
    for (int i = 1; i <= 48; ++i)
        taken.push_back(millisecondsOf([&] {
            mouse(QEvent::MouseMove, from + QPoint(4 * i, 2 * (i % 24)));
            paint();
        }));
    report("drag a part", taken, kFrame_ms);
    const double drop = millisecondsOf([&] {
        mouse(QEvent::MouseButtonRelease, from + QPoint(200, 40));
        paint();
    });
    report("let go (one edit, whole window)", {drop}, kFrame_ms);
    // From there until every pane shows the new prediction.
    auto& app = *static_cast<Application*>(qApp);
    app.forget();
    settle(session);
    report("a prediction arrives", {app.eventTaken.ms}, kEvent_ms);
    fmt::print("    longest: {}\n", app.eventTaken.what);
    report("the frames of its arrival", {app.frameTaken.ms}, kFrame_ms);
}

}  // namespace

int main(int argc, char** argv)
{
    if (!qEnvironmentVariableIsSet("QT_QPA_PLATFORM"))
        qputenv("QT_QPA_PLATFORM", "offscreen");
    qputenv("QT_SCALE_FACTOR", argc > 1 ? argv[1] : "2");
    QStandardPaths::setTestModeEnabled(true);
    Application app(argc, argv);
    const auto coach = document::load(TAPWARD_SOURCE_DIR "/samples/long_hall_coach.tapward");
    if (!coach) {
        fmt::print(stderr, "The sample could not be read.\n");
        return 2;
    }
    MainWindow window;
    window.resize(1380, 860);
    window.show();
    window.newDrawing();
    (void)QTest::qWaitForWindowExposed(&window);
    fmt::print("window of 1380 x 860 at {} device pixels each\n", window.devicePixelRatioF());
    std::vector<std::size_t> sizes;
    for (int i = 2; i < argc; ++i)
        sizes.push_back(static_cast<std::size_t>(std::atoi(argv[i])));
    if (sizes.empty())
        sizes = {300, 1000};
    for (const auto parts : sizes)
        for (const bool moment : {false, true})
            frames(window, grown(*coach, parts), moment);
    window.session().undoStack().setClean();
    return 0;
}
