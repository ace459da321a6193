// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QObject>
#include <vector>

#include "parts/part_kind.h"
#include "session/session.h"

class QCheckBox;
class QComboBox;
class QGridLayout;
class QLabel;
class QLineEdit;
class QToolButton;

namespace tapward::app {

class CurveEditor;
class ValueEdit;

/// One field of one kind, for one part or for several of that kind: label, editor, unit, basis, reset,
/// and a line for what is wrong. Lives in a grid of the details panel; takes two of its rows.
class FieldEditor final : public QObject {
    Q_OBJECT
public:
    FieldEditor(Session& session, const parts::PartKind& kind, const parts::Field& field, QGridLayout& grid,
                QWidget* parent);

    /// The parts whose field this is; reads their values.
    void setParts(const std::vector<document::PartId>& ids);
    /// Reads the values and units again; a half-typed value stays.
    void refresh();

private:
    void buildEditor(QWidget* parent);
    void refreshRefs();
    void store(const parts::Value& value);
    void storeBasis(parts::Basis basis);
    void reset();
    void perform(const Message& title, const std::function<std::optional<parts::Entry>(const parts::Values&)>& entry);
    void complain(const QString& text);
    std::optional<parts::Value> sharedValue() const;  ///< nullopt = mixed

    Session& m_session;
    const parts::PartKind& m_kind;
    const parts::Field& m_field;
    std::vector<document::PartId> m_ids;
    bool m_filling = false;

    QLabel *m_label, *m_unit = nullptr, *m_complaint;
    QWidget* m_editor = nullptr;
    ValueEdit* m_value = nullptr;
    QComboBox* m_choice = nullptr;  ///< Choice and PartRef
    QCheckBox* m_flag = nullptr;
    QLineEdit* m_text = nullptr;
    CurveEditor* m_curve = nullptr;
    QComboBox* m_basis = nullptr;
    QToolButton* m_reset;
};

}  // namespace tapward::app
