// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QWidget>
#include <vector>

#include "session/session.h"

class QCheckBox;
class QLineEdit;
class QLabel;
class QPlainTextEdit;

namespace tapward::app {

class ValueEdit;

/// Title block and job data: what the details panel shows when nothing is selected.
class JobForm final : public QWidget {
    Q_OBJECT
public:
    explicit JobForm(Session& session, QWidget* parent = nullptr);
    void refresh();

protected:
    bool eventFilter(QObject* watched, QEvent* event) override;

private:
    QLineEdit* addText(const QString& label, std::string document::Job::* member);
    ValueEdit* addNumber(const QString& label, Quantity quantity, double most, double document::Job::* member);
    void store(const std::function<void(document::Job&)>& change);
    void storeNotes();

    struct TextRow {
        QLineEdit* edit;
        std::string document::Job::* member;
    };
    struct NumberRow {
        ValueEdit* edit;
        QLabel* unit;
        Quantity quantity;
        double document::Job::* member;
    };

    Session& m_session;
    std::vector<TextRow> m_texts;
    std::vector<NumberRow> m_numbers;
    QPlainTextEdit* m_notes;
    QCheckBox* m_sample;
};

}  // namespace tapward::app
