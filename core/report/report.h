// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "review/finding.h"
#include "study/assessment.h"
#include "study/prediction.h"

namespace tapward::report {

/// One line of the bill of materials: what is added, identical items summed.
struct PartLine {
    Message item;
    double quantity = 0;
    bool metres = false;
    std::vector<std::string> tags;   ///< the parts it belongs to
    double unitPrice = 0;            ///< 0 = not known
    double price() const { return unitPrice * quantity; }
};
struct PartsList {
    std::vector<PartLine> lines;     ///< in tray order, then by item
    double partsTotal = 0;           ///< of the priced lines
    bool allPriced = false;
    double labour = 0;               ///< hours * rate
};
PartsList partsList(const document::Drawing& drawing);  ///< stage Added only
/// UTF-8, header line with units, RFC 4180 quoting, dot decimals; lengths in the chosen units.
std::string partsCsv(const document::Drawing& drawing, UnitSystem units);

/// The same list as aligned text with its sums.
std::string partsText(const document::Drawing& drawing, UnitSystem units);

/// An answer as a person reads it: "Loop flow", "0.48 gpm", note. Values stay typed for the window.
struct AnswerLine {
    std::string id;
    Text label;
    Measure value;        ///< meaningful when has
    bool has = false;
    Message reason;       ///< when not
    Message note;
    bool atLeast = false; ///< more is to be expected: the search is not done
    std::optional<review::Severity> heat = {};  ///< of an answer that is hot water: how much it matters at its place
};
/// The key answers of the page and of the predictions panel, from all cases together: loop flow against
/// activation flow with margin, purge volume, volume and time to target, suggested stop, hottest water with time to
/// burn, wait and wasted water before the loop. How hot it gets and where to stop is what `assessment` knows.
std::vector<AnswerLine> keyAnswers(const document::Drawing& drawing, const study::Prediction& prediction,
                                   const study::Assessment& assessment);

/// Everything on the customer's page except the picture: blocks of text in reading order.
struct PageContent {
    Message title;  ///< an argument where somebody gave one
    std::string subtitle;
    std::vector<std::pair<std::string, std::string>> titleBlock;  ///< label, text
    std::vector<AnswerLine> answers;
    std::vector<Message> cautions;
    PartsList parts;
    std::vector<std::string> footnotes;  ///< prediction, yardsticks, sample figures
};
PageContent page(const document::Drawing& drawing, const study::Prediction& prediction,
                 const study::Assessment& assessment, const std::vector<review::Finding>& findings);

/// Title and key answers as aligned text: the head of table().
std::string answersText(const document::Drawing& drawing, const study::Prediction& prediction,
                        const study::Assessment& assessment, UnitSystem units);

/// Results as aligned text, as CSV (series of one case), as the JSON of resources/schema.
std::string table(const document::Drawing& drawing, const study::Prediction& prediction,
                  const study::Assessment& assessment, UnitSystem units);
std::string seriesCsv(const study::CaseResult& result, UnitSystem units);
std::string predictionJson(const document::Drawing& drawing, const study::Prediction& prediction,
                           const std::string& fileName);
std::string findingsText(const document::Drawing& drawing, const std::vector<review::Finding>& findings,
                         UnitSystem units);
/// The winterizing sequence derived from the drawing, numbered; empty when there is nothing to winterize.
std::string winterText(const document::Drawing& drawing, UnitSystem units);
/// The standing cautions that no finding of this list says already, one a line.
std::string cautionsText(const document::Drawing& drawing, const study::Prediction& prediction,
                         const study::Assessment& assessment, const std::vector<review::Finding>& findings,
                         UnitSystem units);

}  // namespace tapward::report
