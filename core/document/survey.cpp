// SPDX-License-Identifier: GPL-3.0-or-later
#include "document/survey.h"

#include "base/editable_number.h"
#include "document/names.h"
#include "document/survey_words.h"

namespace tapward::document {
namespace {

using Holds = SurveyColumn::Holds;

std::string choiceText(const parts::Field& field, const std::string& id)
{
    for (const parts::Choice& choice : field.choices) {
        if (choice.id == id) {
            return std::string(choice.title);
        }
    }
    return id;
}

}  // namespace

Message surveyEnd(const Drawing& drawing, const PipeEnd& end)
{
    const Part* part = drawing.find(end.part);
    if (!part) {
        return "\u2013";
    }
    const char* words = "{0} {1}";
    const PipeEnd* named = &end;
    if (part->kind == "tee") {
        const Part* branch = drawing.pipeAt(part->id, "branch");
        const PipeEnd* far = branch ? &branch->ends[branch->ends[0].part == part->id ? 1 : 0] : nullptr;
        const Part* there = far ? drawing.find(far->part) : nullptr;
        if (there && there->kind != "tee") {
            words = "Tee to {0} {1}";
            named = far;
            part = there;
        }
    }
    const parts::Port* port = kindOf(*part).port(named->port);
    return {words, {part->tag, port ? Argument(port->title) : Argument(named->port)}};
}

const std::vector<SurveyColumn>& surveyColumns(SurveySheet sheet)
{
    static const std::vector<SurveyColumn> runs{
        {Holds::Tag, "Tag"},
        {Holds::Field, "Name", "name"},
        {Holds::From, "From"},
        {Holds::To, "To"},
        {Holds::Field, "Tube", "tube"},
        {Holds::Field, "Real length", "length_m", Quantity::Length},
        {Holds::Basis, "Basis of length", "length_m"},
        {Holds::Field, "Elbows", "elbows"},
        {Holds::Field, "Couplings", "couplings"},
        {Holds::Field, "Fittings", "fittings"},
        {Holds::Field, "Bore, measured", "own_bore_m", Quantity::Bore},
        {Holds::Field, "Insulation", "insulation_m", Quantity::Bore},
        {Holds::Field, "Bay air", "bay_C", Quantity::Temperature},
    };
    static const std::vector<SurveyColumn> heights{
        {Holds::Tag, "Tag"},
        {Holds::Kind, "Part"},
        {Holds::Field, "Name", "name"},
        {Holds::Height, "Height above floor", {}, Quantity::Length},
        {Holds::Field, "Flow, fully open", "rated_flow_m3s", Quantity::Flow},
        {Holds::Field, "... at pressure", "rated_pressure_Pa", Quantity::Pressure},
        {Holds::Basis, "Basis of flow", "rated_flow_m3s"},
    };
    return sheet == SurveySheet::Runs ? runs : heights;
}

std::vector<PartId> surveyRows(const Drawing& drawing, SurveySheet sheet)
{
    std::vector<PartId> rows;
    for (const Part& part : drawing.parts) {
        const parts::PartKind& kind = kindOf(part);
        if (sheet == SurveySheet::Runs ? kind.isPipe : !kind.isPipe && !kind.ports.empty()) {
            rows.push_back(part.id);
        }
    }
    return rows;
}

std::string surveyText(const Drawing& drawing, const Part& part, const SurveyColumn& column, UnitSystem units)
{
    const parts::PartKind& kind = kindOf(part);
    switch (column.holds) {
    case Holds::Tag:
        return part.tag;
    case Holds::Kind:
        return std::string(kind.title);
    case Holds::From:
    case Holds::To:
        return render(surveyEnd(drawing, part.ends[column.holds == Holds::From ? 0 : 1]), units);
    case Holds::Height:
        return editableNumber({part.height_m, column.quantity}, units);
    case Holds::Basis:
        return kind.field(column.key) ? std::string(basisTitle(values(part).basis(column.key))) : std::string();
    case Holds::Field:
        break;
    }
    const parts::Field* field = kind.field(column.key);
    if (!field) {
        return {};
    }
    switch (field->type) {
    case parts::FieldType::Number:
    case parts::FieldType::Count: {
        const double number = values(part).number(field->key);
        return number == 0 && !field->unset.empty() ? std::string() : editableNumber({number, field->quantity}, units);
    }
    case parts::FieldType::Choice:
        return choiceText(*field, values(part).text(field->key));
    default:
        return values(part).text(field->key);
    }
}

std::optional<double> surveyNumber(const Part& part, const SurveyColumn& column)
{
    if (column.holds == Holds::Height) {
        return part.height_m;
    }
    const parts::Field* field = column.holds == Holds::Field ? kindOf(part).field(column.key) : nullptr;
    if (!field || (field->type != parts::FieldType::Number && field->type != parts::FieldType::Count)) {
        return std::nullopt;
    }
    return values(part).number(field->key);
}

std::vector<std::string> surveyChoices(const Part& part, const SurveyColumn& column)
{
    std::vector<std::string> titles;
    const parts::Field* field = kindOf(part).field(column.key);
    if (column.holds == Holds::Basis && field) {
        for (const auto& [basis, name] : kBases) {
            titles.emplace_back(basisTitle(basis));
        }
    } else if (column.holds == Holds::Field && field) {
        for (const parts::Choice& choice : field->choices) {
            titles.emplace_back(choice.title);
        }
    }
    return titles;
}

std::optional<Problem> heightRefusal(double height_m)
{
    if (height_m >= -5 && height_m <= 10) {
        return std::nullopt;
    }
    return Problem{{"{0} is no height inside a coach.", {Measure{height_m, Quantity::Length}}},
                   "Measure from the coach floor, up is positive.",
                   {}};
}

}  // namespace tapward::document
