// SPDX-License-Identifier: GPL-3.0-or-later
#include <algorithm>
#include <map>
#include <QAbstractButton>
#include <QAction>
#include <QComboBox>
#include <QDockWidget>
#include <QLabel>
#include <QMenuBar>
#include <QMessageBox>
#include <QTimer>
#include <set>

#include "panels/answers_panel.h"
#include "panels/findings_panel.h"
#include "panels_support.h"
#include "shell/main_window.h"
#include "shell/start_page.h"
#include "tools/editing_canvas.h"

using namespace tapward;
using namespace tapward::app;
using namespace tapward::app::test;

TEST_CASE("a sample opens from the start page as an untitled copy, solved", "[shell]")
{
    REQUIRE_FALSE(samples().empty());
    MainWindow window;
    window.show();
    CHECK_FALSE(window.hasDrawing());
    REQUIRE(window.openSample(samples().front().resource));
    CHECK(window.session().path().isEmpty());
    CHECK_FALSE(window.session().isModified());
    REQUIRE(waitForAnswer(window.session()));
    CHECK(window.windowTitle().contains(QStringLiteral("Untitled")));
    CHECK(window.session().drawing().job.sampleFigures);
}

TEST_CASE("the first frame has the whole start page", "[shell]")
{
    MainWindow window;
    class Watch final : public QObject {
    public:
        int frames = 0;
        QList<QAbstractButton*> seen;

    protected:
        bool eventFilter(QObject* watched, QEvent* event) override
        {
            if (event->type() == QEvent::Paint && frames++ == 0)
                for (auto* button : static_cast<QWidget*>(watched)->findChildren<QAbstractButton*>())
                    if (!button->visibleRegion().isEmpty() && !button->text().isEmpty())
                        seen << button;
            return false;
        }
    } watch;
    window.installEventFilter(&watch);
    window.resize(1360, 860);
    window.show();
    REQUIRE(QTest::qWaitFor([&] { return watch.frames > 0; }));
    // The templates, the samples, a new drawing, a drawing from a file.
    CHECK(watch.seen.size() >= static_cast<int>(templates().size() + samples().size() + 2));
    CHECK(window.menuBar()->isVisible());
}

TEST_CASE("the panes come by themselves after the first frame, and earlier when they are asked for", "[shell]")
{
    MainWindow shown;
    CHECK(shown.findChildren<QDockWidget*>().isEmpty());
    shown.show();
    CHECK(QTest::qWaitFor([&] { return !shown.findChildren<QDockWidget*>().isEmpty(); }));
    CHECK_FALSE(shown.hasDrawing());
    MainWindow asked;
    asked.canvas();
    CHECK_FALSE(asked.findChildren<QDockWidget*>().isEmpty());
}

TEST_CASE("no shortcut of the menus is given twice and the platform's own are there", "[shell]")
{
    MainWindow window;
    window.furnish();
    std::map<QString, int> keys;
    std::set<const QAction*> seen;
    const std::function<void(const QMenu*)> walk = [&](const QMenu* menu) {
        for (QAction* action : menu->actions()) {
            if (action->menu())
                walk(action->menu());
            else if (seen.insert(action).second)
                for (const auto& key : action->shortcuts())
                    ++keys[key.toString(QKeySequence::PortableText)];
        }
    };
    for (QAction* top : window.menuBar()->actions())
        walk(top->menu());
    for (const auto& [key, count] : keys) {
        CAPTURE(key);
        CHECK(count == 1);
        CHECK_FALSE(key.contains(QStringLiteral("Meta")));
        CHECK_FALSE(key.startsWith(QStringLiteral("Alt+F")));
    }
    for (const char* key :
         {"Ctrl+N", "Ctrl+O",       "Ctrl+S", "Ctrl+Shift+S", "Ctrl+W",     "Ctrl+Q", "Ctrl+P",       "Ctrl+Shift+P",
          "Ctrl+Z", "Ctrl+Shift+Z", "Ctrl+Y", "Ctrl+X",       "Ctrl+C",     "Ctrl+V", "Ctrl+Shift+V", "Ctrl+D",
          "Ctrl+A", "Ctrl+Shift+A", "Ctrl+F", "Ctrl+G",       "Alt+Return", "Ctrl++", "Ctrl+-",       "Ctrl+0",
          "Ctrl+1", "F1",           "F9",     "F8",           "Shift+F8",   "F2",     "Del",          "Ctrl+?"}) {
        CAPTURE(key);
        CHECK(keys.contains(QString::fromLatin1(key)));
    }
}

TEST_CASE("every control of the window that takes the keyboard has a name", "[shell]")
{
    MainWindow window;
    window.resize(1400, 900);
    window.show();
    REQUIRE(window.openSample(samples().front().resource));
    REQUIRE(waitForAnswer(window.session()));
    std::map<QString, int> names;
    for (auto* widget : window.findChildren<QWidget*>()) {
        if (!widget->isVisible() || !(widget->focusPolicy() & Qt::TabFocus) || widget->inherits("QTabBar")
            || widget->inherits("QMenuBar") || widget->focusProxy()
            || widget->objectName().startsWith(QLatin1String("qt_")))
            continue;
        QString name = spokenName(widget);
        if (const auto* parent = qobject_cast<const QComboBox*>(widget->parentWidget()); parent && name.isEmpty())
            name = parent->accessibleName();  // the line inside an editable box
        CAPTURE(widget->metaObject()->className(), widget->objectName(), widget->toolTip());
        CHECK_FALSE(name.isEmpty());
        if (!qobject_cast<const QComboBox*>(widget->parentWidget()))
            ++names[name];
    }
    for (const auto& [name, count] : names) {
        CAPTURE(name);
        CHECK(count == 1);
    }
}

TEST_CASE("closing with unsaved changes asks, and staying keeps them", "[shell]")
{
    MainWindow window;
    window.show();
    window.newDrawing();
    REQUIRE_FALSE(window.session().perform(
        document::placePart(window.session().drawing(), "circulator", {0, 0}, document::Stage::Added)));
    const auto answer = [&](const QString& button) {
        QTimer::singleShot(0, &window, [button] {
            auto* box = qobject_cast<QMessageBox*>(QApplication::activeModalWidget());
            CHECK(box);
            if (!box)
                return;
            for (auto* one : box->buttons()) {
                CHECK_FALSE(one->text().isEmpty());
                CHECK(one->text().remove(QLatin1Char('&')) != QStringLiteral("OK"));
            }
            for (auto* one : box->buttons())
                if (one->text().remove(QLatin1Char('&')) == button)
                    return one->click();
            FAIL_CHECK("no such button");
            box->reject();
        });
    };
    answer(QStringLiteral("Keep Editing"));
    CHECK_FALSE(window.close());
    CHECK(window.session().isModified());
    window.autosave().saveNow();
    CHECK(QFile::exists(window.autosave().file()));
    answer(QStringLiteral("Discard Changes"));
    CHECK(window.close());
    CHECK_FALSE(QFile::exists(window.autosave().file()));
}

TEST_CASE("F8 walks to the next finding and the status bar counts them", "[shell]")
{
    MainWindow window;
    window.show();
    REQUIRE(QTest::qWaitForWindowExposed(&window));
    REQUIRE(window.openSample(samples().front().resource));
    REQUIRE(waitForAnswer(window.session()));
    REQUIRE(window.findings().openCount() > 0);
    QTest::keyClick(&window, Qt::Key_F8);
    const int first = window.findings().current();
    CHECK(first >= 0);
    QTest::keyClick(&window, Qt::Key_F8);
    if (window.findings().openCount() > 1)
        CHECK(window.findings().current() != first);
    CHECK(window.findings().summary() != QStringLiteral("No findings"));
}

TEST_CASE("letters of 14 points are not cut in the predictions", "[shell]")
{
    const QFont usual = QApplication::font();
    QFont big = usual;
    big.setPointSizeF(14);
    QApplication::setFont(big);
    {
        MainWindow window;
        window.resize(1400, 900);
        window.show();
        REQUIRE(window.openSample(samples().front().resource));
        REQUIRE(waitForAnswer(window.session()));
        // The pane and its rows' heights come in turns of the event loop, which a busy machine takes longer for.
        QList<QLabel*> labels;
        const auto atRest = [&] {
            labels = window.answers().findChildren<QLabel*>();
            labels.removeIf([](const QLabel* label) { return !label->isVisible() || label->text().isEmpty(); });
            return labels.size() > 20 && std::all_of(labels.begin(), labels.end(), [](const QLabel* label) {
                       return label->height() >= label->fontMetrics().height();
                   });
        };
        CHECK(QTest::qWaitFor(atRest));
        for (const auto* label : std::as_const(labels)) {
            CAPTURE(label->text(), label->width(), label->height());
            CHECK(label->width() >= (label->wordWrap() ? label->minimumSizeHint().width() : label->sizeHint().width()));
            if (label->wordWrap())
                CHECK(label->height() >= label->heightForWidth(label->width()));
        }
    }
    QApplication::setFont(usual);
}
