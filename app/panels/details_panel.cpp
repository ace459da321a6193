// SPDX-License-Identifier: GPL-3.0-or-later
#include "panels/details_panel.h"

#include <algorithm>
#include <map>
#include <QComboBox>
#include <QGridLayout>
#include <QKeyEvent>
#include <QLabel>
#include <QLineEdit>
#include <QPushButton>
#include <QScrollArea>
#include <QVBoxLayout>

#include "document/survey.h"
#include "look/spacing.h"
#include "panels/field_editor.h"
#include "panels/figures.h"
#include "panels/floor_plan_box.h"
#include "panels/job_form.h"
#include "panels/jug_dialog.h"
#include "panels/quiet_combo.h"
#include "panels/say.h"
#include "panels/value_edit.h"

namespace tapward::app {

using document::PartId;

namespace {

/// Whether a part has this field too, meaning the same: then several parts can be set together.
bool hasField(const document::Part& part, const parts::Field& field)
{
    const parts::Field* other = document::kindOf(part).field(field.key);
    return other && other->type == field.type && other->quantity == field.quantity
           && std::ranges::equal(other->choices, field.choices, {}, &parts::Choice::id, &parts::Choice::id)
           && other->refKinds == field.refKinds;
}

}  // namespace

DetailsPanel::DetailsPanel(Session& session, QWidget* parent)
    : QWidget(parent), m_session(session), m_scroll(new QScrollArea)
{
    auto* all = new QVBoxLayout(this);
    all->setContentsMargins(0, 0, 0, 0);
    m_scroll->setWidgetResizable(true);
    m_scroll->setFrameShape(QFrame::NoFrame);
    m_scroll->setFocusPolicy(Qt::NoFocus);
    m_scroll->setMinimumWidth(fontMetrics().averageCharWidth() * 44);
    all->addWidget(m_scroll);
    setAccessibleName(tr("Details"));
    connect(&session, &Session::selectionChanged, this, &DetailsPanel::rebuild);
    connect(&session, &Session::changed, this, &DetailsPanel::refresh);
    connect(&session, &Session::viewChanged, this, &DetailsPanel::refresh);
    connect(&session, &Session::fileChanged, this, [this] {
        if (m_shown != m_session.selection())
            rebuild();
    });
    rebuild();
}

void DetailsPanel::rebuild()
{
    m_shown = m_session.selection();
    std::erase_if(m_shown, [this](PartId id) { return !m_session.drawing().find(id); });
    m_fields.clear();
    m_job = nullptr;
    m_title = m_tagComplaint = m_heightUnit = nullptr;
    m_tag = nullptr;
    m_stage = nullptr;
    m_height = nullptr;
    m_plan = nullptr;

    auto* content = new QWidget;
    auto* column = new QVBoxLayout(content);
    column->setContentsMargins(look::kNext, look::kNext, look::kNext, look::kNext);
    m_title = new QLabel;
    m_title->setFont(look::strongFont(font()));
    m_title->setWordWrap(true);
    column->addWidget(m_title);
    if (m_shown.empty()) {
        m_job = new JobForm(m_session);
        column->addWidget(m_job);
    } else {
        column->addWidget(buildParts(m_shown));
    }
    column->addStretch();
    // The old widgets may be in the middle of a signal: they go when that is over.
    if (QWidget* old = m_scroll->takeWidget()) {
        old->hide();
        old->deleteLater();
    }
    m_scroll->setWidget(content);
    refresh();
}

QWidget* DetailsPanel::buildParts(const std::vector<PartId>& ids)
{
    auto* box = new QWidget;
    auto* grid = new QGridLayout(box);
    grid->setContentsMargins(0, 0, 0, 0);
    grid->setHorizontalSpacing(look::kNext);
    grid->setVerticalSpacing(look::kNear);
    grid->setColumnStretch(0, 2);
    grid->setColumnStretch(1, 1);
    grid->setColumnStretch(2, 2);

    const document::Part& first = *m_session.drawing().find(ids.front());
    const bool oneKind = std::all_of(ids.begin(), ids.end(),
                                     [&](PartId id) { return m_session.drawing().find(id)->kind == first.kind; });
    const auto addRow = [&](const QString& text, QWidget* widget) {
        const int row = grid->rowCount();
        auto* label = new QLabel(text);
        label->setWordWrap(true);
        label->setBuddy(widget);
        grid->addWidget(label, row, 0);
        grid->addWidget(widget, row, 1, 1, 3);
        widget->setAccessibleName(text);
    };
    if (ids.size() == 1) {
        m_tag = new QLineEdit;
        m_tag->setMaxLength(40);
        addRow(tr("Tag"), m_tag);
        connect(m_tag, &QLineEdit::editingFinished, this, &DetailsPanel::commitTag);
        m_tagComplaint = new QLabel;
        m_tagComplaint->setWordWrap(true);
        m_tagComplaint->hide();
        grid->addWidget(m_tagComplaint, grid->rowCount(), 0, 1, 4);
    }
    m_stage = new QuietCombo;
    for (const auto stage : {document::Stage::Existing, document::Stage::Added, document::Stage::Removed})
        m_stage->addItem(sayStage(stage), static_cast<int>(stage));
    m_stage->setPlaceholderText(tr("mixed"));
    addRow(tr("Stage"), m_stage);
    connect(m_stage, &QComboBox::activated, this, [this](int index) {
        m_session.perform(document::setStage(m_session.drawing(), m_shown,
                                             static_cast<document::Stage>(m_stage->itemData(index).toInt())));
        refresh();
    });
    const bool anyPipe = std::any_of(ids.begin(), ids.end(),
                                     [&](PartId id) { return document::kindOf(*m_session.drawing().find(id)).isPipe; });
    if (!anyPipe) {
        m_height = new ValueEdit(Quantity::Length, m_session.units());
        m_heightUnit = new QuietLabel;
        auto* pair = new QWidget;
        auto* line = new QHBoxLayout(pair);
        line->setContentsMargins(0, 0, 0, 0);
        line->addWidget(m_height, 1);
        line->addWidget(m_heightUnit);
        addRow(tr("Height above floor"), pair);
        m_height->setAccessibleName(tr("Height above floor"));
        pair->setFocusProxy(m_height);
        connect(m_height, &ValueEdit::committed, this, &DetailsPanel::commitHeight);
        connect(m_height, &ValueEdit::complaint, this, [this](const QString& text) { m_height->setToolTip(text); });
        m_height->setCheck(document::heightRefusal);
    }
    const parts::PartKind& kind = document::kindOf(first);
    for (const auto& field : kind.fields) {
        if (field.key == "picture")  // chosen as a file below, not typed
            continue;
        if (!std::ranges::all_of(ids, [&](PartId id) { return hasField(*m_session.drawing().find(id), field); }))
            continue;
        auto* editor = new FieldEditor(m_session, kind, field, *grid, box);
        editor->setParts(ids);
        m_fields.push_back(editor);
    }
    const auto addNote = [&](const QString& text) {
        auto* note = new QLabel(text);
        note->setWordWrap(true);
        grid->addWidget(note, grid->rowCount(), 0, 1, 4);
    };
    if (!oneKind) {
        addNote(tr("These parts are of different kinds: only what all of them have is shown."));
        return box;
    }
    if (ids.size() == 1 && kind.id == "floor_plan") {
        m_plan = new FloorPlanBox(m_session, ids.front());
        connect(m_plan, &FloorPlanBox::scaleRequested, this, &DetailsPanel::scaleRequested);
        grid->addWidget(m_plan, grid->rowCount(), 0, 1, 4);
    }
    if (ids.size() == 1 && document::takesJugFlow(kind)) {
        auto* jug = new QPushButton(tr("Flow by Jug and Stopwatch\u2026"));
        connect(jug, &QPushButton::clicked, this, [this, id = ids.front()] {
            auto* dialog = new JugDialog(m_session, id, window());
            dialog->setAttribute(Qt::WA_DeleteOnClose);
            dialog->open();
        });
        grid->addWidget(jug, grid->rowCount(), 0, 1, 4);
    }
    if (kind.materials) {
        auto* stock = new QPushButton(tr("Choose from Stock\u2026"));
        connect(stock, &QPushButton::clicked, this, &DetailsPanel::stockRequested);
        grid->addWidget(stock, grid->rowCount(), 0, 1, 4);
    }
    if (!kind.caution.empty())
        addNote(QStringLiteral("\u25C6 %1").arg(say(kind.caution)));
    return box;
}

void DetailsPanel::refresh()
{
    const auto& drawing = m_session.drawing();
    if (std::any_of(m_shown.begin(), m_shown.end(), [&](PartId id) { return !drawing.find(id); })) {
        rebuild();
        return;
    }
    if (m_job) {
        m_title->setText(tr("Job"));
        m_job->refresh();
        return;
    }
    if (m_shown.size() == 1) {
        const document::Part& part = *drawing.find(m_shown.front());
        m_title->setText(sayPart(part));
        if (!(m_tag->hasFocus() && m_tag->isModified()) && m_tag->text() != plain(part.tag))
            m_tag->setText(plain(part.tag));
    } else {
        std::map<QString, int> counts;
        for (const auto id : m_shown)
            ++counts[say(document::kindOf(*drawing.find(id)).title)];
        QStringList lines;
        for (const auto& [title, count] : counts)
            lines << tr("%1 \u00D7 %2").arg(count).arg(title);
        m_title->setText(lines.join(QStringLiteral(", ")));
    }
    bool sameStage = true, sameHeight = true;
    const document::Part& first = *drawing.find(m_shown.front());
    for (const auto id : m_shown) {
        sameStage = sameStage && drawing.find(id)->stage == first.stage;
        sameHeight = sameHeight && drawing.find(id)->height_m == first.height_m;
    }
    m_stage->setCurrentIndex(sameStage ? m_stage->findData(static_cast<int>(first.stage)) : -1);
    if (m_height) {
        m_height->setUnits(m_session.units());
        m_heightUnit->setText(unitSymbol(Quantity::Length, m_session.units()));
        if (sameHeight)
            m_height->setValue(first.height_m);
        else
            m_height->setMixed();
    }
    for (auto* field : m_fields)
        field->refresh();
    if (m_plan)
        m_plan->refresh();
}

void DetailsPanel::commitTag()
{
    if (!m_tag->isModified() || m_shown.size() != 1)
        return;
    document::Part part = *m_session.drawing().find(m_shown.front());
    const std::string wanted = m_tag->text().trimmed().toStdString();
    m_tag->setModified(false);
    m_tagComplaint->hide();
    if (wanted == part.tag) {
        m_tag->setText(plain(part.tag));
        return;
    }
    part.tag = wanted;
    const auto refused = m_session.perform(
        document::Edit{Message("Rename {0}", {m_session.drawing().find(part.id)->tag}), {document::ChangePart{part}}});
    if (refused && m_tagComplaint) {
        m_tagComplaint->setText(QStringLiteral("\u25B2 %1").arg(sayProblem(*refused, m_session.units())));
        m_tagComplaint->show();
    }
}

void DetailsPanel::commitHeight(double metres)
{
    document::Edit edit{Message("Set height"), {}};
    for (const auto id : m_shown) {
        document::Part part = *m_session.drawing().find(id);
        part.height_m = metres;
        edit.steps.push_back(document::ChangePart{std::move(part)});
    }
    if (const auto refused = m_session.perform(std::move(edit)))
        m_height->complain(*refused);
    refresh();
}

void DetailsPanel::focusFirstField()
{
    for (QWidget* next = m_scroll->widget()->nextInFocusChain(); next && m_scroll->widget()->isAncestorOf(next);
         next = next->nextInFocusChain())
        if (next != m_tag && next != m_stage && next->isEnabled() && (next->focusPolicy() & Qt::TabFocus)) {
            next->setFocus(Qt::ShortcutFocusReason);
            m_scroll->ensureWidgetVisible(next);
            return;
        }
}

void DetailsPanel::focusTag()
{
    if (m_tag) {
        m_tag->setFocus(Qt::ShortcutFocusReason);
        m_tag->selectAll();
    }
}

}  // namespace tapward::app
