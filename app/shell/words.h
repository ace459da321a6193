// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <algorithm>
#include <map>
#include <QEvent>
#include <QLabel>
#include <QString>

namespace tapward::app {

/// Sentences that wrap and stay as they are, as wide as there is room. A plain label breaks its text into lines for one
/// width again and again, and for several more to find the width it would like best.
class Words final : public QLabel {
public:
    explicit Words(const QString& text) : QLabel(text) { setWordWrap(true); }

    QSize minimumSizeHint() const override
    {
        qsizetype longest = 0;
        for (const auto word : QStringView(text()).split(QLatin1Char(' ')))
            longest = std::max(longest, word.size());
        return {static_cast<int>(longest + 1) * fontMetrics().averageCharWidth(), fontMetrics().height()};
    }
    QSize sizeHint() const override { return minimumSizeHint(); }
    int heightForWidth(int width) const override
    {
        const auto [known, fresh] = m_heights.try_emplace(width, 0);
        if (fresh)
            known->second = QLabel::heightForWidth(width);
        return known->second;
    }

protected:
    void changeEvent(QEvent* event) override
    {
        m_heights.clear();  // letters, style or language
        QLabel::changeEvent(event);
    }

private:
    mutable std::map<int, int> m_heights;
};

}  // namespace tapward::app
