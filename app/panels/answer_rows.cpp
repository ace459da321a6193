// SPDX-License-Identifier: GPL-3.0-or-later
#include "panels/answer_rows.h"

#include <algorithm>
#include <cmath>
#include <QCoreApplication>
#include <QGridLayout>
#include <QLabel>
#include <QPainter>
#include <QVBoxLayout>

#include "look/spacing.h"
#include "look/theme.h"
#include "panels/figures.h"
#include "panels/icons.h"
#include "panels/margin_bar.h"

namespace tapward::app {

namespace {

constexpr std::size_t kHeadLines = 8;

QLabel* wrapped(const QString& text = {})
{
    auto* label = new QLabel(text);
    label->setWordWrap(true);
    return label;
}

QLabel* iconLabel(review::Severity severity, int side)
{
    auto* label = new QLabel;
    label->setPixmap(look::severityIcon(severity).pixmap(side, side));
    label->setAlignment(Qt::AlignTop);
    return label;
}

}  // namespace

/// A bar as wide as its share.
class ShareBar final : public QWidget {
public:
    ShareBar() { setFixedHeight(4); }
    void setShare(double share)
    {
        m_share = share;
        update();
    }

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
    double m_share = 0;
};

SentenceRow::SentenceRow(const QString& text, const QString& shape) : m_text(wrapped(text))
{
    auto* row = new QHBoxLayout(this);
    row->setContentsMargins(0, 0, 0, 0);
    row->setSpacing(look::kNext);
    if (shape == cautionShape())
        row->addWidget(iconLabel(review::Severity::Caution, fontMetrics().height()));
    row->addWidget(m_text, 1);
}

void SentenceRow::show(const QString& text) { m_text->setText(text); }

QString MarginRow::shape(const Margin& margin)
{
    return QStringLiteral("margin %1").arg(static_cast<int>(margin.weight));
}

MarginRow::MarginRow(const Margin& margin, const QString&)
    : m_word(wrapped(margin.word)), m_text(wrapped(margin.text)), m_bar(new MarginBar)
{
    auto* column = new QVBoxLayout(this);
    column->setContentsMargins(0, 0, 0, 0);
    column->setSpacing(look::kNext);
    auto* line = new QHBoxLayout;
    m_word->setFont(look::headFont(font()));
    line->addWidget(iconLabel(margin.weight, m_word->fontMetrics().height()));
    line->addWidget(m_word, 1);
    column->addLayout(line);
    column->addWidget(m_text);
    column->addWidget(m_bar);
}

void MarginRow::show(const Margin& margin)
{
    m_word->setText(margin.word);
    m_text->setText(margin.text);
    m_bar->setMargin(margin);
}

QString AnswerRow::shape(const Answer& answer)
{
    return QStringLiteral("answer %1 %2 %3 %4")
        .arg(answer.id)
        .arg(answer.has)
        .arg(answer.weight ? static_cast<int>(*answer.weight) : -1)
        .arg(answer.note.isEmpty());
}

AnswerRow::AnswerRow(const Answer& answer, const QString&) : m_label(wrapped()), m_value(new FigureLabel)
{
    auto* grid = new QGridLayout(this);
    grid->setContentsMargins(0, 0, 0, 0);
    grid->setVerticalSpacing(0);
    grid->setHorizontalSpacing(look::kNext);
    grid->setColumnStretch(1, 1);
    m_value->setStrong(answer.has);
    int column = 0;
    if (answer.weight) {
        grid->addWidget(iconLabel(*answer.weight, fontMetrics().height()), 0, 0);
        m_label->setFont(look::strongFont(font()));
        column = 1;
    }
    grid->addWidget(m_label, 0, column, 1, 2 - column);
    grid->addWidget(m_value, 0, 2);
    if (!answer.note.isEmpty()) {
        m_note = new QuietLabel;
        m_note->setWordWrap(true);
        m_note->setFont(look::noteFont(font()));
        grid->addWidget(m_note, 1, column, 1, 3 - column);
    }
    show(answer);
}

void AnswerRow::show(const Answer& answer)
{
    m_label->setText(answer.weight ? QCoreApplication::translate("tapward::app::AnswersPanel", "%1: %2")
                                         .arg(look::severityWord(*answer.weight), answer.label)
                                   : answer.label);
    m_value->show(answer.figure, answer.unit);
    if (m_note)
        m_note->setText(answer.note);
    setAccessibleName(QStringLiteral("%1: %2").arg(answer.label, answer.value));
    setAccessibleDescription(answer.note);
}

QString HeadRows::shape(const std::vector<HeadLine>& lines)
{
    return QStringLiteral("head %1 %2").arg(std::min(lines.size(), kHeadLines)).arg(lines.size() > kHeadLines);
}

HeadRows::HeadRows(const std::vector<HeadLine>& lines, const QString&)
{
    auto* grid = new QGridLayout(this);
    grid->setContentsMargins(0, look::kNear, 0, 0);
    grid->setVerticalSpacing(look::kNear);
    grid->setColumnStretch(0, 1);
    auto* title = wrapped(QCoreApplication::translate("tapward::app::AnswersPanel", "Where the pump's head goes"));
    title->setFont(look::strongFont(font()));
    grid->addWidget(title, 0, 0, 1, 3);
    int row = 1;
    for (std::size_t i = 0; i < std::min(lines.size(), kHeadLines); ++i, row += 2) {
        const Line line{wrapped(), new FigureLabel, new FigureLabel, new ShareBar};
        grid->addWidget(line.text, row, 0);
        grid->addWidget(line.loss, row, 1);
        grid->addWidget(line.share, row, 2);
        grid->addWidget(line.bar, row + 1, 0, 1, 3);
        m_lines.push_back(line);
    }
    if (lines.size() > kHeadLines) {
        m_rest = wrapped();
        grid->addWidget(m_rest, row, 0, 1, 3);
    }
    show(lines);
}

void HeadRows::show(const std::vector<HeadLine>& lines)
{
    double rest = 0;
    for (std::size_t i = 0; i < lines.size(); ++i) {
        if (i >= m_lines.size()) {
            rest += lines[i].share;
            continue;
        }
        m_lines[i].text->setText(lines[i].text);
        m_lines[i].loss->show(lines[i].figure, lines[i].unit);
        m_lines[i].share->show(QString::number(std::lround(lines[i].share * 100)), QStringLiteral("%"));
        m_lines[i].bar->setShare(lines[i].share);
    }
    if (m_rest)
        m_rest->setText(QCoreApplication::translate("tapward::app::AnswersPanel", "%1 smaller items, together %2 %")
                            .arg(static_cast<int>(lines.size() - m_lines.size()))
                            .arg(std::lround(rest * 100)));
}

}  // namespace tapward::app
