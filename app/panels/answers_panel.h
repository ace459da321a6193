// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QWidget>

#include "panels/answers.h"
#include "session/session.h"

class QLabel;
class QScrollArea;
class QVBoxLayout;

namespace tapward::app {

class CatchUp;

/// The key answers beside the drawing. Greyed with "Recalculating" while the drawing is ahead of them.
class AnswersPanel final : public QWidget {
    Q_OBJECT
public:
    explicit AnswersPanel(Session& session, QWidget* parent = nullptr);
    QString asText() const;
    bool looksStale() const;  ///< greyed at the moment
    void copy() const;

protected:
    void contextMenuEvent(QContextMenuEvent* event) override;
    void keyPressEvent(QKeyEvent* event) override;
    void changeEvent(QEvent* event) override;

private:
    void refresh();
    void refreshState();
    void fill();
    void alignUnits();
    template <class Row, class Content>
    void put(std::size_t at, const Content& content, const QString& shape);

    Session& m_session;
    Answers m_answers;
    UnitSystem m_units = UnitSystem::Us;  ///< of m_answers
    QLabel* m_state;
    QScrollArea* m_scroll;
    QWidget* m_content;
    QVBoxLayout* m_column;
    struct Row {
        QString shape;
        QWidget* widget;
    };
    std::vector<Row> m_rows;
    bool m_newLook = false;  ///< colours or letters have changed since the rows were made
    CatchUp* m_catchUp;
};

}  // namespace tapward::app
