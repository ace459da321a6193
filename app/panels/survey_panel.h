// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QWidget>

#include "document/survey.h"

class QComboBox;
class QLabel;
class QLineEdit;
class QPushButton;
class QStackedWidget;
class QTabBar;

namespace tapward::app {

class Session;
class SurveyTable;

/// The survey of the coach as tables: runs, and heights of the parts. A line above to filter and to say where
/// typed values come from, a line below for what could not be taken.
class SurveyPanel final : public QWidget {
    Q_OBJECT
public:
    explicit SurveyPanel(Session& session, QWidget* parent = nullptr);

    SurveyTable& table(document::SurveySheet sheet);
    SurveyTable& shownTable();
    void showSheet(document::SurveySheet sheet);

private:
    void refreshComplaint(const QString& text);

    QTabBar* m_tabs;
    QStackedWidget* m_stack;
    SurveyTable *m_runs, *m_heights;
    QLineEdit* m_filter;
    QComboBox* m_basis;
    QLabel* m_complaint;
    QPushButton *m_show, *m_discard;
};

}  // namespace tapward::app
