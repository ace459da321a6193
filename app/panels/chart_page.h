// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QStringList>
#include <vector>

#include "panels/safety_page.h"
#include "panels/safety_plot.h"
#include "panels/safety_table.h"

class QLabel;

namespace tapward::app {

/// A page of the safety pane that is one summary over one chart with its table.
class ChartPage : public SafetyPage {
    Q_OBJECT
public:
    struct Shown {
        QString summary;  ///< also what the chart is for a reader of the screen
        QStringList heads;
        std::vector<std::vector<SafetyCell>> rows;
        PlotContent picture;
    };

    ChartAndTable& chart() { return *m_chart; }

protected:
    ChartPage(Session& session, const StudyWorker& worker, const QString& name);

    /// @param slot  one of StudyAnswers
    /// @param tell  Shown of the answer and the drawing it is of; not called while there is none
    template <typename Slot, typename Tell>
    void showAnswer(const Slot& slot, const Tell& tell)
    {
        m_chart->plot().setVisible(slot && slot->answer);
        if (slot && slot->answer)
            show(tell(*slot->answer, *slot->drawing));
        else if (slot)
            showProblem(slot->answer.error());
    }

private:
    void show(Shown shown);
    void showProblem(const Problem& problem);

    QLabel* m_summary;
    ChartAndTable* m_chart;
};

}  // namespace tapward::app
