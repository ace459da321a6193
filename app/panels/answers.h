// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <optional>
#include <QString>
#include <vector>

#include "review/finding.h"
#include "session/session.h"

namespace tapward::app {

/// One line of the predictions panel, ready to show and to copy.
struct Answer {
    QString id, label, value;
    QString figure, unit;    ///< the value in its two parts; `unit` may be empty
    QString note;            ///< basis, caveat, or the reason why there is no value
    bool has = false;
    std::optional<review::Severity> weight;  ///< danger style with triangle and word
};

/// Loop flow against the flow the heater needs: what the bar shows, also in words.
struct Margin {
    double flow_m3s = 0, activation_m3s = 0;
    QString word;            ///< "Lights", "Thin margin", "May not light", "Does not light"
    QString text;            ///< "0.48 gpm, 20 % over the 0.40 gpm the heater needs"
    review::Severity weight = review::Severity::Note;
};

/// Where the pump's head goes.
struct HeadLine {
    document::PartId part;
    QString text, loss;
    QString figure, unit;    ///< the loss in its two parts
    double share;
};

/// Everything the predictions panel says, from the session's last prediction.
struct Answers {
    std::optional<Margin> margin;
    QString noMargin;        ///< why there is none
    std::vector<Answer> lines;
    std::vector<HeadLine> head;
    std::vector<QString> cautions;
};

Answers collectAnswers(const Session& session);

/// The same as text for the clipboard and for readers without eyes.
QString answersAsText(const Answers& answers, bool stale);

/// "about 5 s to a burn (adult skin)", or why there is no figure. @param celsius  water at the skin
QString sayBurn(double celsius);

}  // namespace tapward::app
