// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <functional>
#include <QDialog>

#include "session/session.h"

class QComboBox;
class QFormLayout;
class QLabel;
class QLineEdit;
class QListWidget;
class QPushButton;

namespace tapward::app {

class CaseActions;
class ValueEdit;

/// The cases of the drawing, edited beside it. Not modal; every change is one undo step.
class CaseEditor final : public QDialog {
    Q_OBJECT
public:
    explicit CaseEditor(Session& session, QWidget* parent = nullptr);

    void chooseCase(int index);
    void addCase();
    void removeCase();
    void addAction();

private:
    struct NumberRow {
        ValueEdit* edit;
        QLabel* unit;
        Quantity quantity;
        std::function<std::optional<double>(const document::Case&)> get;
    };
    void buildForm(QFormLayout* form);
    NumberRow& addNumber(QFormLayout* form, const QString& label, Quantity quantity, double least, double most,
                         bool mayBeEmpty, std::function<std::optional<double>(const document::Case&)> get,
                         std::function<void(document::Case&, std::optional<double>)> set);
    void refresh();
    const document::Case* shown() const;
    bool change(const Message& title, const std::function<void(document::Case&)>& change);
    void changeAction(int row, const std::function<void(document::Action&)>& change);
    bool store(const Message& title, std::vector<document::Case> cases);

    Session& m_session;
    int m_index = 0;
    bool m_filling = false;
    QListWidget* m_list;
    QLineEdit* m_name;
    QComboBox *m_view, *m_target;
    std::vector<NumberRow> m_numbers;
    CaseActions* m_actions;
    QLabel* m_complaint;
    QPushButton *m_remove, *m_removeAction, *m_addAction;
    QWidget* m_form;
};

}  // namespace tapward::app
