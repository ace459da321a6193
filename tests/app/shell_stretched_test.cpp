// SPDX-License-Identifier: GPL-3.0-or-later
// Every text half as long again, in 14 pt: nothing may be cut without a way to read it.
#include <QApplication>
#include <QComboBox>
#include <QDockWidget>
#include <QGroupBox>
#include <QHeaderView>
#include <QLabel>
#include <QLineEdit>
#include <QMenuBar>
#include <QPushButton>
#include <QSettings>
#include <QStyleOptionComboBox>
#include <QTabBar>
#include <QToolBar>
#include <QToolButton>
#include <set>

#include "panels/case_editor.h"
#include "panels/question_list.h"
#include "panels/safety_panel.h"
#include "panels_support.h"
#include "shell/help_window.h"
#include "shell/language.h"
#include "shell/main_window.h"
#include "shell/start_page.h"
#include "tools/editing_canvas.h"

using namespace tapward;
using namespace tapward::app;
using namespace tapward::app::test;

namespace {

constexpr int kSlack = 2;  // a pixel of rounding on each side

/// The stretched language and large letters while it lives.
struct Stretched {
    explicit Stretched(const QString& language) : m_font(QApplication::font())
    {
        speak(language);
        QFont font = m_font;
        font.setPointSizeF(14);
        QApplication::setFont(font);
    }
    ~Stretched()
    {
        QApplication::setFont(m_font);
        speak(QStringLiteral("en"));
    }

private:
    QFont m_font;
};

QString plainText(QString text) { return text.remove(QLatin1Char('&')); }

/// Why the widget's text cannot be read whole, or nothing.
QString cut(QWidget* widget)
{
    const auto tooWide = [&](const QString& text, int room) {
        const int need = widget->fontMetrics().horizontalAdvance(plainText(text));
        return need > room + kSlack ? QStringLiteral("%1 px for %2 px: %3").arg(room).arg(need).arg(text) : QString();
    };
    if (const auto* label = qobject_cast<QLabel*>(widget)) {
        if (label->text().isEmpty())
            return {};
        if (label->wordWrap()) {
            const int need = label->heightForWidth(label->width());
            return need > label->height() + kSlack
                       ? QStringLiteral("%1 px high for %2: %3").arg(label->height()).arg(need).arg(label->text())
                       : QString();
        }
        return label->minimumSizeHint().width() > label->width() + kSlack && label->toolTip().isEmpty()
                   ? QStringLiteral("%1 px for %2: %3")
                         .arg(label->width())
                         .arg(label->minimumSizeHint().width())
                         .arg(label->text())
                   : QString();
    }
    if (const auto* button = qobject_cast<QAbstractButton*>(widget)) {
        const auto* tool = qobject_cast<QToolButton*>(widget);
        if (button->text().isEmpty() || (tool && tool->toolButtonStyle() == Qt::ToolButtonIconOnly))
            return {};
        const QSize need = button->minimumSizeHint();
        return need.width() > button->width() + kSlack || need.height() > button->height() + kSlack
                   ? QStringLiteral("%1x%2 px for %3x%4: %5")
                         .arg(button->width())
                         .arg(button->height())
                         .arg(need.width())
                         .arg(need.height())
                         .arg(button->text())
                   : QString();
    }
    if (auto* box = qobject_cast<QComboBox*>(widget)) {
        QStyleOptionComboBox option;
        option.initFrom(box);
        option.editable = box->isEditable();
        const QRect field =
            box->style()->subControlRect(QStyle::CC_ComboBox, &option, QStyle::SC_ComboBoxEditField, box);
        const QString why = tooWide(box->currentText(), field.width());
        return box->toolTip().contains(box->currentText()) ? QString() : why;
    }
    if (const auto* tabs = qobject_cast<QTabBar*>(widget)) {
        for (int i = 0; i < tabs->count(); ++i)
            if (tabs->isTabVisible(i) && tabs->tabToolTip(i).isEmpty())
                if (const QString why = tooWide(tabs->tabText(i), tabs->tabRect(i).width()); !why.isEmpty())
                    return why;
        return {};
    }
    if (const auto* header = qobject_cast<QHeaderView*>(widget)) {
        if (header->orientation() != Qt::Horizontal || !header->model())
            return {};
        for (int i = 0; i < header->count(); ++i) {
            const QString text = header->model()->headerData(i, Qt::Horizontal).toString();
            const bool explained =
                !header->model()->headerData(i, Qt::Horizontal, Qt::ToolTipRole).toString().isEmpty();
            if (header->isSectionHidden(i) || text.isEmpty() || explained)
                continue;
            if (const QString why = tooWide(text, header->sectionSize(i)); !why.isEmpty())
                return why;
        }
        return {};
    }
    if (const auto* bar = qobject_cast<QMenuBar*>(widget)) {
        for (QAction* action : bar->actions())
            if (!bar->rect().contains(bar->actionGeometry(action)))
                return QStringLiteral("not in the bar: ") + action->text();
        return {};
    }
    if (const auto* dock = qobject_cast<QDockWidget*>(widget))
        return dock->isFloating() ? QString() : tooWide(dock->windowTitle(), dock->width());
    if (const auto* group = qobject_cast<QGroupBox*>(widget))
        return tooWide(group->title(), group->width());
    if (const auto* line = qobject_cast<QLineEdit*>(widget);
        line && line->text().isEmpty() && line->toolTip().isEmpty())
        return tooWide(line->placeholderText(), line->width());
    return {};
}

QStringList cutIn(const QWidget& root)
{
    QStringList all;
    for (auto* widget : root.findChildren<QWidget*>()) {
        if (!widget->isVisible() || widget->size().isEmpty())
            continue;
        const QWidget* pane = widget;
        while (pane && !qobject_cast<const QDockWidget*>(pane))
            pane = pane->parentWidget();
        if (pane && pane->visibleRegion().isEmpty())
            continue;  // behind another one's tab, where it has no size yet
        // A line inside an editable box is judged with its box.
        if (qobject_cast<QLineEdit*>(widget) && qobject_cast<QComboBox*>(widget->parentWidget()))
            continue;
        if (const QString why = cut(widget); !why.isEmpty())
            all << QString::fromLatin1(widget->metaObject()->className()) + QStringLiteral(" '") + widget->objectName()
                       + QStringLiteral("' in ")
                       + QString::fromLatin1(widget->parentWidget()->metaObject()->className()) + QStringLiteral(": ")
                       + why;
    }
    return all;
}

void settle()
{
    for (int i = 0; i < 5; ++i)
        QCoreApplication::processEvents();
}

}  // namespace

TEST_CASE("nothing in the window is cut in the stretched language or in Spanish at 14 pt", "[shell][language]")
{
    const auto language = GENERATE(QStringLiteral("pseudo"), QStringLiteral("es"));
    CAPTURE(language);
    const Stretched stretched(language);
    for (const char* key : {"panes", "geometry", "area"})
        QSettings().remove(QString::fromLatin1(key));
    MainWindow window;
    window.resize(1600, 1000);
    window.show();
    settle();
    QStringList wrong = cutIn(window);
    REQUIRE(window.openSample(samples().front().resource));
    REQUIRE(waitForAnswer(window.session()));
    settle();
    for (const QString& area : window.areaIds()) {
        window.showArea(area);
        for (auto* pane : window.findChildren<QDockWidget*>())
            if (!pane->isHidden()) {
                pane->raise();
                settle();
                for (const QString& why : cutIn(window))
                    if (const QString there = area + QStringLiteral(": ") + why; !wrong.contains(there))
                        wrong << there;
            }
    }
    window.showArea(QStringLiteral("loop"));
    window.showPane("details");
    // One part of every kind in the details, and none: the job.
    std::set<std::string> kinds;
    for (const auto& part : window.session().drawing().parts) {
        if (!kinds.insert(part.kind).second)
            continue;
        window.session().select({part.id});
        settle();
        for (const QString& why : cutIn(window))
            if (!wrong.contains(why))
                wrong << why;
    }
    for (const QString& why : wrong) {
        CAPTURE(why);
        CHECK(false);
    }
}

TEST_CASE("nothing in the case editor and the help is cut in the stretched language at 14 pt", "[shell][language]")
{
    const Stretched stretched(QStringLiteral("pseudo"));
    Session session;
    REQUIRE_FALSE(session.open(samplePath()));
    CaseEditor cases(session);
    cases.show();
    HelpWindow help;
    help.showFor(nullptr);
    settle();
    for (const QString& why : cutIn(cases) + cutIn(help)) {
        CAPTURE(why);
        CHECK(false);
    }
}

TEST_CASE("nothing in the safety pane and its answers is cut in the stretched language or in Spanish at 14 pt",
          "[shell][language]")
{
    const auto language = GENERATE(QStringLiteral("pseudo"), QStringLiteral("es"));
    CAPTURE(language);
    const Stretched stretched(language);
    Session session;
    StudyWorker studies(session);
    SafetyPanel panel(session, studies);
    panel.resize(1100, 480);
    panel.show();
    REQUIRE_FALSE(session.open(QStringLiteral(TAPWARD_SOURCE_DIR "/tests/study/trade_ranges.tapward")));
    panel.runStudies();
    REQUIRE(QTest::qWaitFor([&] { return panel.worker().answers().winter != nullptr; }, kPatience_ms));
    panel.worker().cancel();
    panel.worker().startFaults();
    REQUIRE(QTest::qWaitFor([&] { return !panel.worker().isRunning(); }, kPatience_ms));
    REQUIRE(waitForAnswer(session));
    REQUIRE(panel.titles().size() == 5);
    for (int tab = 0; tab < panel.titles().size(); ++tab) {
        panel.questions().setCurrentIndex(tab);
        settle();
        for (const QString& why : cutIn(panel)) {
            CAPTURE(tab, why);
            CHECK(false);
        }
    }
}

TEST_CASE("the measure of what is cut finds a label and a button that are too narrow", "[shell][language]")
{
    QWidget box;
    auto* label = new QLabel(QStringLiteral("a label with many words"), &box);
    auto* button = new QPushButton(QStringLiteral("a button with many words"), &box);
    label->setGeometry(0, 0, 40, 20);
    button->setGeometry(0, 30, 40, 40);
    box.show();
    CHECK(cutIn(box).size() == 2);
    label->resize(label->sizeHint());
    button->resize(button->sizeHint());
    CHECK(cutIn(box).isEmpty());
}
