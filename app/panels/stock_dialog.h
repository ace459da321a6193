// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QDialog>

#include "panels/stock_store.h"

class QCheckBox;
class QLabel;
class QLineEdit;
class QPushButton;
class QTableWidget;
class QTableWidgetItem;

namespace tapward::app {

class Session;

/// The shop's stock list beside the drawing: choose an item for the selected parts, keep a part as an item,
/// correct names, ratings and prices, hand the list on.
class StockDialog final : public QDialog {
    Q_OBJECT
public:
    explicit StockDialog(Session& session, QWidget* parent = nullptr);

    QTableWidget& table() { return *m_table; }
    void choose();                         ///< the current item for the selected parts
    void keep(const QString& name);        ///< the selected part as an item
    void removeItem();
    void importFrom(const QString& path);
    void exportTo(const QString& path);
    void reload();

private:
    void refreshButtons();
    void edited(QTableWidgetItem* cell);
    const document::StockItem* current() const;
    const document::Part* selectedPart() const;
    bool act(const std::function<std::optional<Problem>(document::StockList&)>& change);
    void complain(const std::optional<Problem>& problem);
    void askImport();
    void askExport();
    void askFile();

    Session& m_session;
    StockStore m_store;
    document::StockList m_list;
    std::vector<std::size_t> m_shown;  ///< items in the rows
    bool m_filling = false;
    QLineEdit* m_name;
    QCheckBox* m_fitting;
    QTableWidget* m_table;
    QLabel *m_place, *m_complaint;
    QPushButton *m_choose, *m_keep, *m_remove;
};

}  // namespace tapward::app
