// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QWidget>
#include <set>
#include <string>

#include "session/session.h"

class QCheckBox;
class QLabel;
class QStackedWidget;
class QTableView;
class QToolButton;
class QTreeWidget;

namespace tapward::app {

class CatchUp;
class ChartView;
class SeriesTable;

/// The warm-up of the chosen case: chart with a crosshair, the values under it, and the same as a table.
class WarmUpChart final : public QWidget {
    Q_OBJECT
public:
    explicit WarmUpChart(Session& session, QWidget* parent = nullptr);

    /// The case as CSV, from the same figures as the lines.
    QByteArray csv() const;
    /// The readout of one line at the crosshair ("107.2 °F"); empty when it has no value there.
    QString readout(const std::string& seriesId) const;
    ChartView& view();

Q_SIGNALS:
    void exportRequested();  ///< the person wants the CSV in a file

protected:
    void changeEvent(QEvent* event) override;
    void resizeEvent(QResizeEvent* event) override;

private:
    void refresh();
    QString valueOf(const std::string& seriesId) const;
    void refreshReadout();
    void copyTable();

    Session& m_session;
    ChartView* m_view;
    QTreeWidget* m_lines;
    QLabel *m_at, *m_state;
    QToolButton *m_byTime, *m_byVolume, *m_asTable, *m_export;
    QCheckBox* m_fire;
    QStackedWidget* m_stack;
    QTableView* m_table;
    SeriesTable* m_model;
    std::set<std::string> m_hidden;
    bool m_filling = false;
    CatchUp* m_catchUp;
};

}  // namespace tapward::app
