// SPDX-License-Identifier: GPL-3.0-or-later
#include "panels/answers_panel.h"

#include <algorithm>
#include <QApplication>
#include <QClipboard>
#include <QContextMenuEvent>
#include <QKeyEvent>
#include <QLabel>
#include <QMenu>
#include <QScrollArea>
#include <QScrollBar>
#include <QVBoxLayout>

#include "look/spacing.h"
#include "panels/answer_rows.h"
#include "panels/catch_up.h"
#include "panels/figures.h"
#include "panels/icons.h"

namespace tapward::app {

AnswersPanel::AnswersPanel(Session& session, QWidget* parent)
    : QWidget(parent), m_session(session), m_state(new QLabel), m_scroll(new QScrollArea), m_content(new QWidget),
      m_column(new QVBoxLayout(m_content)), m_catchUp(new CatchUp(*this, [this] { refresh(); }))
{
    setAccessibleName(tr("Predictions"));
    setFocusPolicy(Qt::StrongFocus);
    auto* all = new QVBoxLayout(this);
    all->setContentsMargins(0, 0, 0, 0);
    all->setSpacing(0);
    m_state->setContentsMargins(look::kNext, look::kNear, look::kNext, look::kNear);
    m_state->setWordWrap(true);
    all->addWidget(m_state);
    m_column->setContentsMargins(look::kNext, look::kNext, look::kNext, look::kNext);
    m_column->setSpacing(look::kNext);
    m_column->addStretch();
    m_scroll->setWidgetResizable(true);
    m_scroll->setFrameShape(QFrame::NoFrame);
    m_scroll->setFocusPolicy(Qt::NoFocus);
    m_scroll->setWidget(m_content);
    all->addWidget(m_scroll, 1);
    for (const auto signal : {&Session::predictionChanged, &Session::viewChanged, &Session::fileChanged})
        connect(&session, signal, m_catchUp, &CatchUp::later);
    connect(&session, &Session::studyingChanged, this, &AnswersPanel::refreshState);
    refresh();
}

bool AnswersPanel::looksStale() const
{
    m_catchUp->now();
    return !m_content->isEnabled();
}

void AnswersPanel::refresh()
{
    // While new answers are on their way the old ones stay, greyed. Without any, another file was opened: they go.
    const bool stale = m_session.isStale();
    if (!stale || !m_session.prediction() || m_units != m_session.units() || m_newLook)
        fill();
    refreshState();
    m_content->setEnabled(!stale);
}

void AnswersPanel::refreshState()
{
    const auto* known = m_session.assessment();
    QStringList lines;
    if (m_session.isStale())
        lines << tr("Recalculating\u2026");
    else if (known && known->isAtLeast() && !m_session.studying().isEmpty())
        lines << tr("Still looking for the hottest water: %1").arg(m_session.studying());
    if (m_session.drawing().job.sampleFigures && !m_session.isStale())
        lines << tr("Sample figures: an invented coach.");
    m_state->setVisible(!lines.isEmpty());
    m_state->setText(lines.join(QLatin1Char('\n')));
}

template <class Row, class Content>
void AnswersPanel::put(std::size_t at, const Content& content, const QString& shape)
{
    const auto from = m_rows.begin() + static_cast<std::ptrdiff_t>(at);
    const auto same = std::find_if(from, m_rows.end(), [&](const auto& row) { return row.shape == shape; });
    if (same == m_rows.end()) {
        auto* row = new Row(content, shape);
        m_column->insertWidget(static_cast<int>(at), row);
        m_rows.insert(from, {shape, row});
    } else {
        std::for_each(from, same, [](const auto& row) { delete row.widget; });
        m_rows.erase(from, same);
    }
    static_cast<Row*>(m_rows[at].widget)->show(content);
}

void AnswersPanel::alignUnits()
{
    int widest = 0;
    for (const auto& row : m_rows)
        if (auto* answer = dynamic_cast<AnswerRow*>(row.widget))
            widest = std::max(widest, answer->value().widthOfUnit());
    for (const auto& row : m_rows)
        if (auto* answer = dynamic_cast<AnswerRow*>(row.widget))
            answer->value().setWidthOfUnit(widest);
}

void AnswersPanel::fill()
{
    m_answers = collectAnswers(m_session);
    m_units = m_session.units();
    std::size_t kept = 0;
    const auto cut = [&] {
        for (std::size_t i = kept; i < m_rows.size(); ++i)
            delete m_rows[i].widget;
        m_rows.resize(kept);
    };
    if (std::exchange(m_newLook, false))
        cut();
    const auto sentence = [&](const QString& text, const QString& shape) { put<SentenceRow>(kept++, text, shape); };
    const QString plainly = SentenceRow::plainShape(), caution = SentenceRow::cautionShape();
    if (m_answers.margin)
        put<MarginRow>(kept++, *m_answers.margin, MarginRow::shape(*m_answers.margin));
    else if (!m_answers.noMargin.isEmpty())
        sentence(m_answers.noMargin, plainly);
    else if (m_session.isStale())
        sentence(tr("The first answers are on their way."), plainly);
    else
        sentence(m_session.prediction() && m_session.prediction()->loop.exists
                     ? tr("This heater needs no least flow: it heats whether the loop runs or not.")
                     : tr("Nothing to predict yet. Draw a heater, pipes and a tap."),
                 plainly);
    for (const auto& answer : m_answers.lines)
        put<AnswerRow>(kept++, answer, AnswerRow::shape(answer));
    if (!m_answers.head.empty())
        put<HeadRows>(kept++, m_answers.head, HeadRows::shape(m_answers.head));
    for (const auto& text : m_answers.cautions)
        sentence(text, caution);
    cut();
    alignUnits();
    setAccessibleDescription(asText());
}

QString AnswersPanel::asText() const
{
    m_catchUp->now();
    return answersAsText(m_answers, m_session.isStale());
}

void AnswersPanel::copy() const { QApplication::clipboard()->setText(asText()); }

void AnswersPanel::contextMenuEvent(QContextMenuEvent* event)
{
    QMenu menu;
    menu.addAction(look::icon(QStringLiteral("copy")), tr("Copy Predictions as Text"), this, [this] { copy(); });
    menu.exec(event->globalPos());
}

void AnswersPanel::keyPressEvent(QKeyEvent* event)
{
    QScrollBar* bar = m_scroll->verticalScrollBar();
    if (event->matches(QKeySequence::Copy))
        copy();
    else if (event->key() == Qt::Key_Down)
        bar->setValue(bar->value() + bar->singleStep());
    else if (event->key() == Qt::Key_Up)
        bar->setValue(bar->value() - bar->singleStep());
    else if (event->key() == Qt::Key_PageDown)
        bar->setValue(bar->value() + bar->pageStep());
    else if (event->key() == Qt::Key_PageUp)
        bar->setValue(bar->value() - bar->pageStep());
    else
        QWidget::keyPressEvent(event);
}

void AnswersPanel::changeEvent(QEvent* event)
{
    QWidget::changeEvent(event);
    if (event->type() == QEvent::PaletteChange || event->type() == QEvent::FontChange) {
        m_newLook = true;
        m_catchUp->later();
    }
}

}  // namespace tapward::app
