// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <functional>
#include <QDialog>

class QLabel;
class QPrinter;
class QPrintPreviewWidget;
class QToolButton;

namespace tapward::app {

/// What would be printed, sheet by sheet, and the way to the printer.
class PagePreview final : public QDialog {
    Q_OBJECT
public:
    /// @param paint  everything onto the printer; `printer` outlives the dialog
    PagePreview(QPrinter& printer, std::function<void(QPrinter&)> paint, const QString& title, QWidget* parent);

private:
    void turn(int by);
    void refresh();
    void print();

    QPrinter& m_printer;
    QPrintPreviewWidget* m_sheets;
    QToolButton *m_back, *m_on;
    QLabel* m_which;
};

}  // namespace tapward::app
