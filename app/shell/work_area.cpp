// SPDX-License-Identifier: GPL-3.0-or-later
#include "shell/work_area.h"

#include <algorithm>
#include <QCoreApplication>
#include <QDockWidget>
#include <QFontMetrics>

namespace tapward::app {

PaneStand::PaneStand(QMainWindow& window) : m_window(window)
{
    for (auto* pane : window.findChildren<QDockWidget*>(QString(), Qt::FindDirectChildrenOnly)) {
        pane->setFloating(false);
        window.removeDockWidget(pane);
    }
}

QDockWidget* PaneStand::pane(const char* name) const
{
    return m_window.findChild<QDockWidget*>(QString::fromLatin1(name));
}

PaneStand& PaneStand::at(Qt::DockWidgetArea side, const char* name)
{
    m_window.addDockWidget(side, pane(name));
    pane(name)->setVisible(true);
    return *this;
}

PaneStand& PaneStand::below(const char* shown, const char* name)
{
    m_window.splitDockWidget(pane(shown), pane(name), Qt::Vertical);
    pane(name)->setVisible(true);
    return *this;
}

PaneStand& PaneStand::beside(const char* shown, const char* name)
{
    m_window.splitDockWidget(pane(shown), pane(name), Qt::Horizontal);
    pane(name)->setVisible(true);
    return *this;
}

PaneStand& PaneStand::behind(const char* shown, const char* name)
{
    m_window.tabifyDockWidget(pane(shown), pane(name));
    pane(name)->setVisible(true);
    pane(shown)->raise();
    return *this;
}

PaneStand& PaneStand::wide(const char* shown, int pixels)
{
    m_window.resizeDocks({pane(shown)}, {pixels}, Qt::Horizontal);
    return *this;
}

PaneStand& PaneStand::high(const char* shown, int pixels)
{
    m_window.resizeDocks({pane(shown)}, {pixels}, Qt::Vertical);
    return *this;
}

int PaneStand::letter() const { return m_window.fontMetrics().averageCharWidth(); }
bool PaneStand::isCramped() const { return m_window.height() < line() * 30 || m_window.width() < letter() * 130; }
bool PaneStand::isNarrow() const { return m_window.width() < letter() * 160; }
bool PaneStand::isRoomy() const { return m_window.width() >= letter() * 190; }
int PaneStand::line() const { return m_window.fontMetrics().height(); }

namespace {

class CoachArea final : public WorkArea {
public:
    QString id() const override { return QStringLiteral("coach"); }
    QString title() const override { return QCoreApplication::translate("WorkArea", "Coach"); }
    QString tip() const override
    {
        return QCoreApplication::translate("WorkArea", "The coach as it is: parts, pipes and their details");
    }
    void stand(PaneStand& panes) const override
    {
        panes.at(Qt::RightDockWidgetArea, "details");
        if (panes.isCramped() || panes.isNarrow()) {
            panes.behind("details", "tray").behind("details", "outline").wide("details", panes.letter() * 46);
            return;
        }
        panes.at(Qt::LeftDockWidgetArea, "tray").behind("tray", "outline");
        panes.wide("tray", panes.letter() * (panes.isRoomy() ? 29 : 36))
            .wide("details", panes.letter() * (panes.isRoomy() ? 46 : 60));
    }
};

class SurveyArea final : public WorkArea {
public:
    QString id() const override { return QStringLiteral("survey"); }
    QString title() const override { return QCoreApplication::translate("WorkArea", "Survey"); }
    QString tip() const override
    {
        return QCoreApplication::translate("WorkArea", "Lengths, tube and heights as a table beside the drawing");
    }
    void stand(PaneStand& panes) const override
    {
        panes.at(Qt::RightDockWidgetArea, "survey");
        panes.wide("survey", panes.room().width() * 11 / 20);
    }
};

class LoopArea final : public WorkArea {
public:
    QString id() const override { return QStringLiteral("loop"); }
    QString title() const override { return QCoreApplication::translate("WorkArea", "Loop"); }
    QString tip() const override
    {
        return QCoreApplication::translate("WorkArea", "The loop: what it does, beside the drawing as it changes");
    }
    void stand(PaneStand& panes) const override
    {
        panes.at(Qt::RightDockWidgetArea, "predictions").behind("predictions", "details");
        if (panes.isCramped()) {
            panes.behind("predictions", "warm-up").behind("predictions", "findings").behind("predictions", "tray");
            panes.wide("predictions", panes.letter() * 46);
            return;
        }
        if (panes.isNarrow()) {
            panes.behind("predictions", "tray").behind("predictions", "outline");
        } else {
            panes.at(Qt::LeftDockWidgetArea, "tray").behind("tray", "outline");
        }
        panes.at(Qt::BottomDockWidgetArea, "warm-up");
        const bool roomy = panes.isRoomy();
        if (roomy) {
            panes.beside("warm-up", "findings");
        } else {
            panes.behind("warm-up", "findings");
        }
        panes.wide("tray", panes.letter() * (roomy ? 29 : 36)).wide("predictions", panes.letter() * (roomy ? 46 : 60));
        if (roomy) {
            panes.wide("findings", panes.letter() * 62);
        }
        // The drawing first; the chart gets what a small window can spare.
        panes.high("warm-up",
                   std::clamp(panes.room().height() - panes.line() * 42, panes.line() * 12, panes.line() * 20));
    }
};

class SafetyArea final : public WorkArea {
public:
    QString id() const override { return QStringLiteral("safety"); }
    QString title() const override { return QCoreApplication::translate("WorkArea", "Safety"); }
    QString tip() const override
    {
        return QCoreApplication::translate("WorkArea", "What could hurt somebody, question by question");
    }
    bool isForDrawing() const override { return false; }
    void stand(PaneStand& panes) const override
    {
        panes.at(Qt::RightDockWidgetArea, "safety");
        if (panes.isCramped()) {
            panes.behind("safety", "findings").wide("safety", panes.room().width() * 3 / 5);
            return;
        }
        panes.at(Qt::BottomDockWidgetArea, "findings");
        panes.wide("safety", std::max(panes.room().width() * 3 / 5, panes.letter() * 100));
        panes.high("findings", panes.line() * 13);
    }
};

}  // namespace

std::vector<std::unique_ptr<WorkArea>> workAreas()
{
    std::vector<std::unique_ptr<WorkArea>> areas;
    areas.push_back(std::make_unique<CoachArea>());
    areas.push_back(std::make_unique<SurveyArea>());
    areas.push_back(std::make_unique<LoopArea>());
    areas.push_back(std::make_unique<SafetyArea>());
    return areas;
}

}  // namespace tapward::app
