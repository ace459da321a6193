// SPDX-License-Identifier: GPL-3.0-or-later
#include "panels/answers_panel.h"

#include <cmath>
#include <QApplication>
#include <QClipboard>
#include <QContextMenuEvent>
#include <QGridLayout>
#include <QKeyEvent>
#include <QLabel>
#include <QMenu>
#include <QPainter>
#include <QScrollArea>
#include <QScrollBar>
#include <QVBoxLayout>

#include "look/theme.h"
#include "panels/icons.h"
#include "panels/margin_bar.h"
#include "panels/say.h"

namespace tapward::app {

namespace {

QLabel* wrapped(const QString& text)
{
    auto* label = new QLabel(text);
    label->setWordWrap(true);
    label->setTextFormat(Qt::PlainText);
    return label;
}

QLabel* iconLabel(review::Severity severity, int side)
{
    auto* label = new QLabel;
    label->setPixmap(look::severityIcon(severity).pixmap(side, side));
    label->setAlignment(Qt::AlignTop);
    return label;
}

/// A bar as wide as its share.
class ShareBar final : public QWidget {
public:
    explicit ShareBar(double share) : m_share(share) { setFixedHeight(4); }

protected:
    void paintEvent(QPaintEvent*) override
    {
        QPainter painter(this);
        painter.fillRect(rect(), palette().color(QPalette::Mid));
        painter.fillRect(QRectF(0, 0, width() * std::clamp(m_share, 0.0, 1.0), height()),
                         isEnabled() ? Theme::of(palette()).note
                                     : palette().color(QPalette::Disabled, QPalette::WindowText));
    }

private:
    double m_share;
};

}  // namespace

AnswersPanel::AnswersPanel(Session& session, QWidget* parent)
    : QWidget(parent), m_session(session), m_state(new QLabel), m_scroll(new QScrollArea)
{
    setAccessibleName(tr("Predictions"));
    setFocusPolicy(Qt::StrongFocus);
    auto* all = new QVBoxLayout(this);
    all->setContentsMargins(0, 0, 0, 0);
    all->setSpacing(0);
    m_state->setContentsMargins(10, 4, 10, 4);
    m_state->setWordWrap(true);
    all->addWidget(m_state);
    m_scroll->setWidgetResizable(true);
    m_scroll->setFrameShape(QFrame::NoFrame);
    m_scroll->setFocusPolicy(Qt::NoFocus);
    all->addWidget(m_scroll, 1);
    connect(&session, &Session::predictionChanged, this, &AnswersPanel::refresh);
    connect(&session, &Session::viewChanged, this, &AnswersPanel::fill);
    connect(&session, &Session::fileChanged, this, &AnswersPanel::refresh);
    fill();
    refresh();
}

bool AnswersPanel::looksStale() const { return m_content && !m_content->isEnabled(); }

void AnswersPanel::refresh()
{
    if (!m_session.isStale())
        fill();
    else if (!m_session.prediction())
        fill();  // another file was opened: the old answers go
    const bool stale = m_session.isStale();
    m_state->setVisible(stale || m_session.drawing().job.sampleFigures);
    m_state->setText(stale ? tr("Recalculating\u2026") : tr("Sample figures: an invented coach."));
    if (m_content)
        m_content->setEnabled(!stale);
}

void AnswersPanel::fill()
{
    m_answers = collectAnswers(m_session);
    const int scrolled = m_scroll->verticalScrollBar()->value();
    auto* content = new QWidget;
    auto* column = new QVBoxLayout(content);
    column->setContentsMargins(10, 6, 10, 10);
    column->setSpacing(9);

    if (m_answers.margin) {
        auto* line = new QHBoxLayout;
        auto* word = wrapped(m_answers.margin->word);
        QFont big = font();
        big.setBold(true);
        big.setPointSizeF(big.pointSizeF() * 1.25);
        word->setFont(big);
        line->addWidget(iconLabel(m_answers.margin->weight, word->fontMetrics().height()));
        line->addWidget(word, 1);
        column->addLayout(line);
        column->addWidget(wrapped(m_answers.margin->text));
        auto* bar = new MarginBar;
        bar->setMargin(m_answers.margin);
        column->addWidget(bar);
    } else if (!m_answers.noMargin.isEmpty()) {
        column->addWidget(wrapped(m_answers.noMargin));
    } else if (m_session.isStale()) {
        column->addWidget(wrapped(tr("The first answers are on their way.")));
    } else {
        column->addWidget(wrapped(m_session.prediction() && m_session.prediction()->loop.exists
                                      ? tr("This heater needs no least flow: it heats whether the loop runs or not.")
                                      : tr("Nothing to predict yet. Draw a heater, pipes and a tap.")));
    }
    for (const auto& answer : m_answers.lines)
        column->addWidget(answerRow(answer));
    if (!m_answers.head.empty())
        column->addWidget(headBudget());
    for (const auto& caution : m_answers.cautions) {
        auto* row = new QHBoxLayout;
        row->addWidget(iconLabel(review::Severity::Caution, fontMetrics().height()));
        row->addWidget(wrapped(caution), 1);
        column->addLayout(row);
    }
    column->addStretch();
    if (QWidget* old = m_scroll->takeWidget())
        old->deleteLater();
    m_content = content;
    m_content->setEnabled(!m_session.isStale());
    m_scroll->setWidget(content);
    m_scroll->verticalScrollBar()->setValue(scrolled);
    setAccessibleDescription(asText());
}

QWidget* AnswersPanel::answerRow(const Answer& answer)
{
    auto* box = new QWidget;
    auto* grid = new QGridLayout(box);
    grid->setContentsMargins(0, 0, 0, 0);
    grid->setVerticalSpacing(1);
    grid->setHorizontalSpacing(8);
    grid->setColumnStretch(1, 1);
    auto* label = wrapped(answer.label);
    auto* value = new QLabel(answer.value);
    value->setAlignment(Qt::AlignRight | Qt::AlignTop);
    if (answer.has) {
        QFont bold = font();
        bold.setBold(true);
        value->setFont(bold);
    }
    int column = 0;
    if (answer.weight) {
        grid->addWidget(iconLabel(*answer.weight, fontMetrics().height()), 0, 0);
        label->setText(tr("%1: %2").arg(look::severityWord(*answer.weight), answer.label));
        QFont bold = font();
        bold.setBold(true);
        label->setFont(bold);
        column = 1;
    }
    grid->addWidget(label, 0, column, 1, 2 - column);
    grid->addWidget(value, 0, 2);
    if (!answer.note.isEmpty()) {
        auto* note = wrapped(answer.note);
        QFont small = font();
        small.setPointSizeF(small.pointSizeF() * 0.92);
        note->setFont(small);
        QPalette quiet = note->palette();
        quiet.setColor(QPalette::Active, QPalette::WindowText, Theme::of(palette()).quietText);
        quiet.setColor(QPalette::Inactive, QPalette::WindowText, Theme::of(palette()).quietText);
        note->setPalette(quiet);
        grid->addWidget(note, 1, column, 1, 3 - column);
    }
    box->setAccessibleName(QStringLiteral("%1: %2").arg(answer.label, answer.value));
    box->setAccessibleDescription(answer.note);
    return box;
}

QWidget* AnswersPanel::headBudget()
{
    auto* box = new QWidget;
    auto* grid = new QGridLayout(box);
    grid->setContentsMargins(0, 4, 0, 0);
    grid->setVerticalSpacing(2);
    grid->setColumnStretch(0, 1);
    auto* title = wrapped(tr("Where the pump's head goes"));
    QFont bold = font();
    bold.setBold(true);
    title->setFont(bold);
    grid->addWidget(title, 0, 0, 1, 3);
    int row = 1;
    double rest = 0;
    constexpr int kShown = 8;
    int shown = 0;
    for (const auto& line : m_answers.head) {
        if (++shown > kShown) {
            rest += line.share;
            continue;
        }
        grid->addWidget(wrapped(line.text), row, 0);
        auto* loss = new QLabel(line.loss);
        loss->setAlignment(Qt::AlignRight | Qt::AlignVCenter);
        grid->addWidget(loss, row, 1);
        auto* share = new QLabel(tr("%1 %").arg(std::lround(line.share * 100)));
        share->setAlignment(Qt::AlignRight | Qt::AlignVCenter);
        grid->addWidget(share, row, 2);
        grid->addWidget(new ShareBar(line.share), row + 1, 0, 1, 3);
        row += 2;
    }
    if (rest > 0)
        grid->addWidget(wrapped(tr("%1 smaller items, together %2 %")
                                    .arg(static_cast<int>(m_answers.head.size()) - kShown)
                                    .arg(std::lround(rest * 100))),
                        row, 0, 1, 3);
    return box;
}

QString AnswersPanel::asText() const { return answersAsText(m_answers, m_session.isStale()); }

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
    if ((event->type() == QEvent::PaletteChange || event->type() == QEvent::FontChange) && m_content)
        QMetaObject::invokeMethod(this, [this] { fill(); }, Qt::QueuedConnection);
}

}  // namespace tapward::app
