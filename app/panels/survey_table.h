// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QSortFilterProxyModel>
#include <QTableView>

#include "panels/survey_model.h"

namespace tapward::app {

/// A survey sheet to work in like in a spreadsheet: type over, Enter down, Tab across, F2 edits, Delete takes
/// the default back, cells are copied to and pasted from a spreadsheet. Selected rows and selected parts of the
/// drawing are the same.
class SurveyTable final : public QTableView {
    Q_OBJECT
public:
    SurveyTable(Session& session, document::SurveySheet sheet, QWidget* parent = nullptr);

    SurveyModel& survey() { return *m_model; }
    void filter(const QString& text);
    void copy() const;
    void paste();
    void clearCells();
    void showRefused();  ///< goes to the first text that was not taken

protected:
    void keyPressEvent(QKeyEvent* event) override;
    void closeEditor(QWidget* editor, QAbstractItemDelegate::EndEditHint hint) override;
    void showEvent(QShowEvent* event) override;

private:
    void step(int rows, int columns);
    void tellSession();
    void followSession();
    void pasteBlock(const std::vector<std::vector<std::string>>& block);

    Session& m_session;
    SurveyModel* m_model;
    QSortFilterProxyModel* m_order;
    bool m_following = false;
};

}  // namespace tapward::app
