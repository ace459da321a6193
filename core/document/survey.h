// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "base/message.h"
#include "document/edit.h"

// The drawing as a survey table: the same document, read and changed cell by cell.
namespace tapward::document {

/// Runs: one row a pipe. Heights: one row for everything else, with where it is and how high.
enum class SurveySheet { Runs, Heights };

struct SurveyColumn {
    enum class Holds { Tag, Kind, From, To, Height, Field, Basis };
    Holds holds;
    Text title;                  ///< "Length"; without the unit
    std::string_view key = {};   ///< Field: the field; Basis: the field it is the basis of
    Quantity quantity = Quantity::None;
    /// The drawing decides these: what a pipe joins, what a part is.
    bool readOnly() const { return holds == Holds::Kind || holds == Holds::From || holds == Holds::To; }
};
const std::vector<SurveyColumn>& surveyColumns(SurveySheet sheet);

/// The parts that have a row, in the drawing's order.
std::vector<PartId> surveyRows(const Drawing& drawing, SurveySheet sheet);

/// What a pipe's end is joined to: "F1 Hot". Tees have no tag on the drawing: they are told by what hangs on their
/// branch ("Tee to F1 Hot").
Message surveyEnd(const Drawing& drawing, const PipeEnd& end);

/// What stands in a cell, without the unit, fit to be typed over; rounded. Empty when the part has no such value.
std::string surveyText(const Drawing& drawing, const Part& part, const SurveyColumn& column, UnitSystem units);
/// The number behind it, for sorting.
std::optional<double> surveyNumber(const Part& part, const SurveyColumn& column);
/// What may be chosen in a cell, empty for free ones.
std::vector<std::string> surveyChoices(const Part& part, const SurveyColumn& column);

/// A text typed into, or pasted onto, a cell. An empty one takes the default back.
struct SurveyCell {
    PartId part;
    std::size_t column;
    std::string typed;
};
/// A cell whose text could not be taken.
struct SurveyRefusal {
    SurveyCell cell;
    Problem why;
};
struct SurveyChange {
    std::optional<Edit> edit;  ///< everything that can be taken, as one step; none when nothing changes
    std::size_t cells = 0;     ///< how many that are
    std::vector<SurveyRefusal> refused;
};

/// Reads typed cells in the reader's units (a number without a unit means the shown one; expressions and other
/// units as parseMeasure() reads them). A text equal to what the cell shows changes nothing, so a rounded display
/// is never written back. `basis` goes to the values typed; none keeps the basis each has, which for a default
/// is Estimated. A basis cell in the same block wins. Size alone ("1/2") keeps the material of the tube.
SurveyChange surveyChange(const Drawing& drawing, SurveySheet sheet, const std::vector<SurveyCell>& cells,
                          UnitSystem units, std::optional<parts::Basis> basis = {});

/// So many new pipes, loose at both ends, in a column below everything drawn: rows pasted beyond the table's end.
Result<Edit> looseRuns(const Drawing& drawing, std::size_t count, Stage stage);

/// Why a part cannot be that high above the coach floor.
std::optional<Problem> heightRefusal(double height_m);

}  // namespace tapward::document
