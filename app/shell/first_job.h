// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <optional>
#include <QFrame>
#include <set>
#include <string>
#include <vector>

#include "parts/values.h"

class QLabel;
class QPushButton;

namespace tapward::app {

class Session;

/// A first job step by step, above the drawing: what to do next on the reader's own drawing, ticked when the drawing
/// shows that it is done. It changes nothing itself, and can be closed at any time.
class FirstJob final : public QFrame {
    Q_OBJECT
public:
    explicit FirstJob(Session& session, QWidget* parent = nullptr);

    void begin();  ///< from the first step that is not done
    void carryOn(const FirstJob& before);  ///< where another one stands; closed when that is
    void sawArea(const QString& id);  ///< this part of the job is shown
    void sawPage();  ///< the customer's page was looked at, printed or exported
    int stepCount() const;
    int doneCount() const;
    QString stepTitle() const;  ///< of the step in hand; empty when all are done

Q_SIGNALS:
    void paneWanted(const QString& pane);  ///< where the step in hand is done

protected:
    void changeEvent(QEvent* event) override;

private:
    struct Step;
    static const std::vector<Step>& steps();
    bool isDone(const Step& step) const;
    void follow();
    void refresh();

    Session& m_session;
    QLabel *m_ticks, *m_title, *m_how;
    QPushButton *m_there, *m_skip;
    struct Seen {
        std::set<std::string> past;  ///< steps that were skipped, or seen to be done by what was looked at
        std::optional<parts::Entries> stopBefore;  ///< how a run ended when that step came up
    } m_seen;
    QString m_area;
    int m_at = 0;
};

}  // namespace tapward::app
