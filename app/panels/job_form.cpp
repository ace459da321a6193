// SPDX-License-Identifier: GPL-3.0-or-later
#include "panels/job_form.h"

#include <QCheckBox>
#include <QEvent>
#include <QFormLayout>
#include <QHBoxLayout>
#include <QKeyEvent>
#include <QLabel>
#include <QLineEdit>
#include <QPlainTextEdit>
#include <QVBoxLayout>

#include "look/spacing.h"
#include "panels/figures.h"
#include "panels/say.h"
#include "panels/value_edit.h"

namespace tapward::app {

using document::Job;

namespace {
/// The beginning of a long text is what one recognises.
void showText(QLineEdit* edit, const QString& text)
{
    edit->setText(text);
    edit->setCursorPosition(0);
    edit->setToolTip(text.size() > 24 ? text : QString());
}
}  // namespace

JobForm::JobForm(Session& session, QWidget* parent)
    : QWidget(parent), m_session(session), m_notes(new QPlainTextEdit), m_sample(new QCheckBox(tr("Sample figures")))
{
    auto* form = new QFormLayout(this);
    form->setContentsMargins(0, 0, 0, 0);
    form->setFieldGrowthPolicy(QFormLayout::ExpandingFieldsGrow);
    form->setRowWrapPolicy(QFormLayout::WrapLongRows);
    addText(tr("Title"), &Job::title);
    addText(tr("Customer"), &Job::customer);
    addText(tr("Coach"), &Job::coach);
    addText(tr("Technician"), &Job::technician);
    addText(tr("Date"), &Job::date);
    addText(tr("Revision"), &Job::revision);
    addText(tr("Currency"), &Job::currency);
    addNumber(tr("Labor hours"), Quantity::None, 1e4, &Job::hours);
    addNumber(tr("Hourly rate"), Quantity::Money, 1e5, &Job::hourlyRate);
    addNumber(tr("Altitude"), Quantity::Altitude, 5000, &Job::altitude_m);
    m_notes->setAccessibleName(tr("Notes"));
    m_notes->setTabChangesFocus(true);
    m_notes->setFixedHeight(m_notes->fontMetrics().height() * 5);
    m_notes->installEventFilter(this);
    form->addRow(tr("Notes"), m_notes);
    m_sample->setToolTip(tr("Marks every page and the window: this coach and its figures are invented"));
    form->addRow(m_sample);
    connect(m_sample, &QCheckBox::clicked, this,
            [this](bool on) { store([on](Job& job) { job.sampleFigures = on; }); });
    refresh();
}

QLineEdit* JobForm::addText(const QString& label, std::string Job::* member)
{
    auto* edit = new QLineEdit;
    edit->setAccessibleName(label);
    static_cast<QFormLayout*>(layout())->addRow(label, edit);
    connect(edit, &QLineEdit::editingFinished, this, [this, edit, member] {
        if (!edit->isModified())
            return;
        edit->setModified(false);
        const std::string text = edit->text().toStdString();
        store([&](Job& job) { job.*member = text; });
    });
    edit->installEventFilter(this);
    m_texts.push_back({edit, member});
    return edit;
}

ValueEdit* JobForm::addNumber(const QString& label, Quantity quantity, double most, double Job::* member)
{
    auto* edit = new ValueEdit(quantity, m_session.units());
    edit->setAccessibleName(label);
    auto* complaint = new QLabel;
    complaint->setWordWrap(true);
    complaint->hide();
    auto* unit = new QuietLabel;
    auto* box = new QWidget;
    auto* column = new QVBoxLayout(box);
    column->setContentsMargins(0, 0, 0, 0);
    auto* line = new QHBoxLayout;
    line->setSpacing(look::kNear);
    line->addWidget(edit, 1);
    line->addWidget(unit);
    column->addLayout(line);
    column->addWidget(complaint);
    static_cast<QFormLayout*>(layout())->addRow(label, box);
    edit->setCheck([most, quantity](double si) -> std::optional<Problem> {
        if (si >= 0 && si <= most)
            return std::nullopt;
        return Problem{Message("{0} is outside {1} to {2}.",
                               {Measure{si, quantity}, Measure{0, quantity}, Measure{most, quantity}}),
                       Message("Type a value in that range."),
                       {}};
    });
    connect(edit, &ValueEdit::committed, this,
            [this, member](double si) { store([&](Job& job) { job.*member = si; }); });
    connect(edit, &ValueEdit::complaint, this, [complaint](const QString& text) {
        complaint->setText(QStringLiteral("\u25B2 ") + text);
        complaint->setVisible(!text.isEmpty());
    });
    m_numbers.push_back({edit, unit, quantity, member});
    return edit;
}

void JobForm::refresh()
{
    const Job& job = m_session.drawing().job;
    for (const auto& row : m_texts)
        if (!(row.edit->hasFocus() && row.edit->isModified()) && row.edit->text() != plain(job.*row.member))
            showText(row.edit, plain(job.*row.member));
    for (const auto& row : m_numbers) {
        row.edit->setUnits(m_session.units());
        row.edit->setValue(job.*row.member);
        row.unit->setText(row.quantity == Quantity::Money ? plain(job.currency)
                          : row.member == &Job::hours     ? tr("h")
                                                          : unitSymbol(row.quantity, m_session.units()));
    }
    if (!(m_notes->hasFocus() && m_notes->document()->isModified()) && m_notes->toPlainText() != plain(job.notes)) {
        m_notes->setPlainText(plain(job.notes));
        m_notes->document()->setModified(false);
    }
    m_sample->setChecked(job.sampleFigures);
}

void JobForm::store(const std::function<void(Job&)>& change)
{
    Job job = m_session.drawing().job;
    change(job);
    if (job == m_session.drawing().job)
        return;
    m_session.perform(document::Edit{Message("Change job details"), {document::SetJob{std::move(job)}}});
    refresh();
}

void JobForm::storeNotes()
{
    if (!m_notes->document()->isModified())
        return;
    m_notes->document()->setModified(false);
    const std::string text = m_notes->toPlainText().toStdString();
    store([&](Job& job) { job.notes = text; });
}

bool JobForm::eventFilter(QObject* watched, QEvent* event)
{
    if (watched == m_notes && event->type() == QEvent::FocusOut)
        storeNotes();
    if (event->type() == QEvent::KeyPress && static_cast<QKeyEvent*>(event)->key() == Qt::Key_Escape) {
        for (const auto& row : m_texts)
            if (row.edit == watched && row.edit->isModified()) {
                row.edit->setText(plain(m_session.drawing().job.*row.member));
                row.edit->selectAll();
                return true;
            }
    }
    return QWidget::eventFilter(watched, event);
}

}  // namespace tapward::app
