// SPDX-License-Identifier: GPL-3.0-or-later
#include <algorithm>
#include <cmath>
#include <map>

#include "document/check.h"
#include "document/gesture.h"
#include "document/survey.h"
#include "document/survey_words.h"

namespace tapward::document {
namespace {

using Holds = SurveyColumn::Holds;

/// Works on copies of the parts, one cell after the other.
class Change {
public:
    Change(const Drawing& drawing, SurveySheet sheet, UnitSystem units, std::optional<parts::Basis> basis)
        : m_drawing(drawing), m_columns(surveyColumns(sheet)), m_rows(surveyRows(drawing, sheet)), m_units(units),
          m_basis(basis)
    {
    }

    void take(const SurveyCell& cell)
    {
        const Part* held = m_drawing.find(cell.part);
        if (!held || cell.column >= m_columns.size()
            || std::find(m_rows.begin(), m_rows.end(), cell.part) == m_rows.end()) {
            refuse(cell, {"This row is not in the drawing any more.", "Look at the table again.", {}});
            return;
        }
        const SurveyColumn& column = m_columns[cell.column];
        Part& part = m_parts.try_emplace(cell.part, *held).first->second;
        if (column.holds == Holds::Tag) {
            if (cell.typed != held->tag) {
                m_tags.push_back(cell);
            }
            return;
        }
        Part next = part;
        auto why = set(next, column, cell.typed);
        if (!why) {
            why = partFlaw(m_drawing, next);
        }
        if (why) {
            why->where = held->tag;
            refuse(cell, std::move(*why));
        } else if (!(next == part)) {
            part = std::move(next);
            ++m_result.cells;
            m_lastLabel = column.title;
            m_lastTag = held->tag;
        }
    }

    SurveyChange finish()
    {
        std::vector<Step> steps = tagSteps();
        for (auto& [id, part] : m_parts) {
            const Part& held = *m_drawing.find(id);
            const bool renamed = std::any_of(steps.begin(), steps.end(), [id = id](const Step& step) {
                const auto* change = std::get_if<ChangePart>(&step);
                return change && change->part.id == id;
            });
            if (!renamed && part.height_m != held.height_m) {
                steps.emplace_back(ChangePart{part});
            } else if (!renamed) {
                addFields(held, part, steps);
            }
        }
        if (steps.empty()) {
            return std::move(m_result);
        }
        Message title = m_result.cells == 1
                            ? Message("Set {0} of {1}", {m_lastLabel, m_lastTag})
                            : Message("Set {0} survey cells", {static_cast<std::int64_t>(m_result.cells)});
        Edit edit{std::move(title), std::move(steps)};
        // Each cell was held against the rules; this holds them all together.
        if (auto why = refusal(m_drawing, edit)) {
            m_result.refused.push_back({{kNoPart, 0, {}}, std::move(*why)});
            m_result.cells = 0;
            return std::move(m_result);
        }
        m_result.edit = std::move(edit);
        return std::move(m_result);
    }

private:
    void refuse(const SurveyCell& cell, Problem why) { m_result.refused.push_back({cell, std::move(why)}); }

    std::optional<Problem> set(Part& part, const SurveyColumn& column, const std::string& typed) const
    {
        const bool same = typed == surveyText(m_drawing, part, column, m_units);
        if (column.readOnly()) {
            if (same) {
                return std::nullopt;
            }
            return Problem{{"{0} is decided by the drawing.", {column.title}},
                           "Lay the pipe or place the part on the drawing.",
                           {}};
        }
        if (column.holds == Holds::Height) {
            return same ? std::nullopt : setHeight(part, typed);
        }
        const parts::PartKind& kind = kindOf(part);
        const parts::Field* field = kind.field(column.key);
        if (!field) {
            if (typed.empty()) {
                return std::nullopt;
            }
            return Problem{{"A part of the kind {0} has no such value.", {kind.title}}, "Leave this cell empty.", {}};
        }
        return column.holds == Holds::Basis ? setBasis(part, *field, typed, same) : setField(part, *field, typed, same);
    }

    std::optional<Problem> setHeight(Part& part, const std::string& typed) const
    {
        const auto height = parseMeasure(typed.empty() ? "0" : typed, Quantity::Length, m_units);
        if (!height) {
            return notUnderstood(height.error());
        }
        part.height_m = *height;
        return heightRefusal(*height);
    }

    static Problem notUnderstood(const UnitError& error)
    {
        return {error.what, "Type a number, with its unit if it is another than the column's.", {}};
    }

    std::optional<Problem> setBasis(Part& part, const parts::Field& field, const std::string& typed, bool same) const
    {
        if (same || typed.empty()) {
            return std::nullopt;
        }
        const auto basis = readBasis(typed);
        if (!basis) {
            return basis.error();
        }
        const double value = values(part).number(field.key);
        part.entries.insert_or_assign(std::string(field.key), parts::Entry{value, *basis});
        return std::nullopt;
    }

    std::optional<Problem> setField(Part& part, const parts::Field& field, const std::string& typed, bool same) const
    {
        const auto held = part.entries.find(field.key);
        if (same) {
            // Typed over with itself: the exact value stays, and a chosen basis is given to it.
            if (m_basis && surveyNumber(part, {Holds::Field, {}, field.key})) {
                const double value = values(part).number(field.key);
                part.entries.insert_or_assign(std::string(field.key), parts::Entry{value, *m_basis});
            }
            return std::nullopt;
        }
        if (typed.empty()) {
            if (held != part.entries.end()) {
                part.entries.erase(held);
            }
            return std::nullopt;
        }
        parts::Value value = typed;
        if (field.type == parts::FieldType::Number || field.type == parts::FieldType::Count) {
            const auto number = parseMeasure(typed, field.quantity, m_units);
            if (!number) {
                return notUnderstood(number.error());
            }
            value = *number;
        } else if (field.type == parts::FieldType::Choice) {
            auto choice = readChoice(field, typed, values(part).text(field.key));
            if (!choice) {
                return choice.error();
            }
            value = std::move(*choice);
        }
        if (auto why = parts::refusal(kindOf(part), field, value)) {
            return why;
        }
        const auto basis = m_basis.value_or(held == part.entries.end() ? parts::Basis::Estimated : held->second.basis);
        part.entries.insert_or_assign(std::string(field.key), parts::Entry{std::move(value), basis});
        return std::nullopt;
    }

    /// New tags in an order in which each is free when its turn comes.
    std::vector<Step> tagSteps()
    {
        std::vector<Step> steps;
        Drawing tried = m_drawing;
        bool moved = true;
        while (moved && !m_tags.empty()) {
            moved = false;
            for (auto cell = m_tags.begin(); cell != m_tags.end();) {
                Part part = m_parts.at(cell->part);
                part.tag = cell->typed;
                if (stepRefusal(tried, ChangePart{part})) {
                    ++cell;
                    continue;
                }
                apply(tried, Edit{{}, {ChangePart{part}}});
                m_parts.at(cell->part) = part;
                m_lastLabel = "Tag";
                m_lastTag = m_drawing.find(cell->part)->tag;
                steps.emplace_back(ChangePart{std::move(part)});
                ++m_result.cells;
                cell = m_tags.erase(cell);
                moved = true;
            }
        }
        for (const SurveyCell& cell : m_tags) {
            Part part = m_parts.at(cell.part);
            part.tag = cell.typed;
            auto why = stepRefusal(tried, ChangePart{std::move(part)});
            refuse(cell, why ? std::move(*why) : Problem{"The tag is not free.", "Give another tag.", {}});
        }
        return steps;
    }

    static void addFields(const Part& held, const Part& part, std::vector<Step>& steps)
    {
        for (const parts::Field& field : kindOf(part).fields) {
            const auto before = held.entries.find(field.key), after = part.entries.find(field.key);
            const bool had = before != held.entries.end(), has = after != part.entries.end();
            if (had != has || (has && !(before->second == after->second))) {
                steps.emplace_back(
                    SetField{part.id, std::string(field.key), has ? std::optional(after->second) : std::nullopt});
            }
        }
    }

    const Drawing& m_drawing;
    const std::vector<SurveyColumn>& m_columns;
    std::vector<PartId> m_rows;
    UnitSystem m_units;
    std::optional<parts::Basis> m_basis;
    std::map<PartId, Part> m_parts;
    std::vector<SurveyCell> m_tags;
    SurveyChange m_result;
    Text m_lastLabel;
    std::string m_lastTag;
};

}  // namespace

SurveyChange surveyChange(const Drawing& drawing, SurveySheet sheet, const std::vector<SurveyCell>& cells,
                          UnitSystem units, std::optional<parts::Basis> basis)
{
    const auto& columns = surveyColumns(sheet);
    const auto isBasis = [&columns](const SurveyCell& cell) {
        return cell.column < columns.size() && columns[cell.column].holds == Holds::Basis;
    };
    Change change(drawing, sheet, units, basis);
    for (const bool basisNow : {false, true}) {  // a basis after the value it belongs to
        for (const SurveyCell& cell : cells) {
            if (isBasis(cell) == basisNow) {
                change.take(cell);
            }
        }
    }
    return change.finish();
}

}  // namespace tapward::document
