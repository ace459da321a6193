// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "base/message.h"
#include "document/edit.h"
#include "study/assessment.h"
#include "study/prediction.h"

namespace tapward::review {

enum class Severity { Note, Caution, Danger };

/// Something that runs but that a careful technician would want to know.
struct Finding {
    std::string rule;      ///< "flow_margin_thin"; stable, one rule = one function
    Severity severity = Severity::Note;
    Message what;          ///< with its numbers
    Message why;
    Message remedy;
    std::string source;    ///< published source or "common practice, no published source"
    document::PartId part = document::kNoPart;  ///< to jump to
    std::string caseName;  ///< the case that shows it, may be empty
    std::optional<document::Case> script = {};  ///< what shows it, where that is no case of the drawing
    std::optional<document::Edit> fix = {};  ///< quick fix, one undo step, where one is safe
    bool dismissed = false;
    std::string dismissReason;
};

struct Seen;  // review/seen.h: drawing, prediction, and the coach as it will be

/// One rule: looks at what is seen, adds what it finds. A rule writes only findings with its own id.
struct Rule {
    std::string id;
    void (*look)(const Seen&, std::vector<Finding>&);
};
/// All rules in the order in which findings of one severity are listed.
const std::vector<Rule>& rules();

/// All findings, danger first, then by rule order and part id. Dismissed ones are kept, marked. How hot it gets is
/// what `assessment` knows of it.
std::vector<Finding> review(const document::Drawing& drawing, const study::Prediction& prediction,
                            const study::Assessment& assessment);

/// The standing cautions that apply to these results (trade cautions; cannot be dismissed).
std::vector<Message> cautions(const document::Drawing& drawing, const study::Prediction& prediction,
                              const study::Assessment& assessment);
/// Those that no open finding says already: what is printed beside the findings, each thing once. A finding
/// that was set aside brings its caution back.
std::vector<Message> cautionsBeside(const std::vector<Finding>& findings, const document::Drawing& drawing,
                                    const study::Prediction& prediction, const study::Assessment& assessment);

}  // namespace tapward::review
