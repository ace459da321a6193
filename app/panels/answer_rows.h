// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QWidget>
#include <vector>

#include "panels/answers.h"

class QLabel;

namespace tapward::app {

class FigureLabel;
class MarginBar;
class ShareBar;

// The rows of the predictions panel. A row is made for one shape of content (`shape`) and then shows any content of
// that shape: what has not changed is not laid out again.

/// A sentence, with the mark of a caution before it or without.
class SentenceRow final : public QWidget {
public:
    SentenceRow(const QString& text, const QString& shape);
    void show(const QString& text);
    static QString plainShape() { return QStringLiteral("sentence"); }
    static QString cautionShape() { return QStringLiteral("caution"); }

private:
    QLabel* m_text;
};

/// Whether the loop lights the heater: a big word, the figures, the bar.
class MarginRow final : public QWidget {
public:
    MarginRow(const Margin& margin, const QString& shape);
    void show(const Margin& margin);
    static QString shape(const Margin& margin);

private:
    QLabel *m_word, *m_text;
    MarginBar* m_bar;
};

/// One answer: label, value, note.
class AnswerRow final : public QWidget {
public:
    AnswerRow(const Answer& answer, const QString& shape);
    void show(const Answer& answer);
    static QString shape(const Answer& answer);
    FigureLabel& value() { return *m_value; }

private:
    QLabel *m_label, *m_note = nullptr;
    FigureLabel* m_value;
};

/// Where the pump's head goes: the largest shares, and the rest in one line.
class HeadRows final : public QWidget {
public:
    HeadRows(const std::vector<HeadLine>& lines, const QString& shape);
    void show(const std::vector<HeadLine>& lines);
    static QString shape(const std::vector<HeadLine>& lines);

private:
    struct Line {
        QLabel* text;
        FigureLabel *loss, *share;
        ShareBar* bar;
    };
    std::vector<Line> m_lines;
    QLabel* m_rest = nullptr;
};

}  // namespace tapward::app
