// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <memory>
#include <QMainWindow>
#include <QString>
#include <vector>

class QDockWidget;

namespace tapward::app {

/// Stands a window's panes, for a work area that says how. Panes that are not named stay hidden.
class PaneStand {
public:
    /// Takes every pane out of the window first: a pane is not split off one that has tabs.
    explicit PaneStand(QMainWindow& window);

    /// Shows the pane at this side. @pre there is a pane of that name (all of these)
    PaneStand& at(Qt::DockWidgetArea side, const char* pane);
    PaneStand& below(const char* shown, const char* pane);
    PaneStand& beside(const char* shown, const char* pane);
    PaneStand& behind(const char* shown, const char* pane);  ///< a tab; what was shown stays in front
    PaneStand& wide(const char* shown, int pixels);
    PaneStand& high(const char* shown, int pixels);

    int letter() const;  ///< the width of one, in pixels
    int line() const;  ///< the height of one
    /// A small laptop at twice the size: the drawing and one pane are all there is room for, the rest are tabs.
    bool isCramped() const;
    bool isNarrow() const;  ///< large letters on a small laptop: no room for a pane on either side of the drawing
    bool isRoomy() const;  ///< for two panes with text beside one another
    QSize room() const { return m_window.size(); }

private:
    QDockWidget* pane(const char* name) const;

    QMainWindow& m_window;
};

/// One part of the job: its panes and how they stand until somebody moves them. The drawing, the case and the moment in
/// time are the same in every area. One more is a class in work_area.cpp and a line in workAreas().
class WorkArea {
public:
    virtual ~WorkArea() = default;
    virtual QString id() const = 0;  ///< in the settings; never changed
    virtual QString title() const = 0;
    virtual QString tip() const = 0;
    virtual void stand(PaneStand& panes) const = 0;
    virtual bool isForDrawing() const { return true; }  ///< else one only looks at the drawing
};

/// In the order of the job.
std::vector<std::unique_ptr<WorkArea>> workAreas();

}  // namespace tapward::app
