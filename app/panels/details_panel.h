// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <memory>
#include <QWidget>
#include <vector>

#include "session/session.h"

class QComboBox;
class QLabel;
class QLineEdit;
class QScrollArea;

namespace tapward::app {

class FieldEditor;
class FloorPlanBox;
class JobForm;
class ValueEdit;

/// The properties of what is selected: of one part, of several, or of the job when nothing is.
class DetailsPanel final : public QWidget {
    Q_OBJECT
public:
    explicit DetailsPanel(Session& session, QWidget* parent = nullptr);
    /// Puts the keyboard into the first field (Alt+Return), or into the tag (F2).
    void focusFirstField();
    void focusTag();

Q_SIGNALS:
    void scaleRequested(tapward::document::PartId plan);
    void stockRequested();

private:
    void rebuild();
    void refresh();
    QWidget* buildParts(const std::vector<document::PartId>& ids);
    void commitTag();
    void commitHeight(double metres);

    Session& m_session;
    std::vector<document::PartId> m_shown;  ///< the selection the widgets were built for
    QScrollArea* m_scroll;
    JobForm* m_job = nullptr;
    QLabel* m_title = nullptr;
    QLabel* m_tagComplaint = nullptr;
    QLabel* m_heightUnit = nullptr;
    QLineEdit* m_tag = nullptr;
    QComboBox* m_stage = nullptr;
    FloorPlanBox* m_plan = nullptr;
    ValueEdit* m_height = nullptr;
    std::vector<FieldEditor*> m_fields;
};

}  // namespace tapward::app
