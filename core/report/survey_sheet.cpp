// SPDX-License-Identifier: GPL-3.0-or-later
#include "report/survey_sheet.h"

#include <algorithm>

#include "document/jug.h"
#include "document/survey.h"

namespace tapward::report {
namespace {

using document::SurveySheet;

constexpr std::size_t kEmptyRuns = 24, kEmptyParts = 14, kEmptyFlows = 6;
constexpr std::size_t kSpareRows = 4;  // what the drawing does not have yet

std::string unitOf(Quantity quantity, UnitSystem units) { return std::string(displayUnit(quantity, units).symbol); }

/// Rows with the tags of the drawing and `empty` cells after them, and some spare ones.
void addRows(BlankTable& table, std::vector<std::vector<Message>> filled, std::size_t emptyWithout)
{
    const std::size_t spare = filled.empty() ? emptyWithout : kSpareRows;
    for (auto& row : filled) {
        row.resize(table.columns.size());
        table.rows.push_back(std::move(row));
    }
    table.rows.insert(table.rows.end(), spare, std::vector<Message>(table.columns.size()));
}

BlankTable runs(const document::Drawing& drawing, UnitSystem units)
{
    BlankTable table{"Pipe runs",
                     {{"Tag", 1.1},
                      {"From", 2.4},
                      {"To", 2.4},
                      {"Tube (print line)", 2.2},
                      {"Real length", 1.6, unitOf(Quantity::Length, units)},
                      {"Elbows", 1.1},
                      {"Joints", 1.1},
                      {"Insulation", 1.4, unitOf(Quantity::Bore, units)},
                      {"Bay air", 1.2, unitOf(Quantity::Temperature, units)},
                      {"M / D / E", 1.3}},
                     {}};
    std::vector<std::vector<Message>> filled;
    for (const document::PartId id : document::surveyRows(drawing, SurveySheet::Runs)) {
        const document::Part& part = *drawing.find(id);
        std::vector<Message> row;
        for (const document::SurveyColumn& column : document::surveyColumns(SurveySheet::Runs)) {
            using Holds = document::SurveyColumn::Holds;
            if (column.holds == Holds::Tag) {
                row.emplace_back(part.tag);
            } else if (column.holds == Holds::From || column.holds == Holds::To) {
                row.push_back(surveyEnd(drawing, part.ends[column.holds == Holds::From ? 0 : 1]));
            }
        }
        filled.push_back(std::move(row));
    }
    addRows(table, std::move(filled), kEmptyRuns);
    return table;
}

BlankTable heights(const document::Drawing& drawing, UnitSystem units)
{
    BlankTable table{"Parts and heights",
                     {{"Tag", 1.1},
                      {"Part", 2.6},
                      {"Height above floor", 2, unitOf(Quantity::Length, units)},
                      {"Rating plate, printed figures", 5},
                      {"M / D / E", 1.3}},
                     {}};
    std::vector<std::vector<Message>> filled;
    for (const document::PartId id : document::surveyRows(drawing, SurveySheet::Heights)) {
        const document::Part& part = *drawing.find(id);
        const std::string name =
            document::values(part).kind().field("name") ? document::values(part).text("name") : std::string();
        filled.push_back({part.tag, name.empty() ? std::string(kindOf(part).title) : name});
    }
    addRows(table, std::move(filled), kEmptyParts);
    return table;
}

BlankTable flows(const document::Drawing& drawing, UnitSystem units)
{
    BlankTable table{"Flow by jug and stopwatch, outlet fully open",
                     {{"Tag", 1.1},
                      {"Outlet", 2.6},
                      {"Jug", 1.4, unitOf(Quantity::Volume, units)},
                      {"Try 1", 1.2, "s"},
                      {"Try 2", 1.2, "s"},
                      {"Try 3", 1.2, "s"},
                      {"Pressure", 1.5, unitOf(Quantity::Pressure, units)},
                      {"Wait until hot", 1.7, "s"}},
                     {}};
    std::vector<std::vector<Message>> filled;
    for (const document::Part& part : drawing.parts) {
        if (document::takesJugFlow(kindOf(part))) {
            const std::string name = document::values(part).text("name");
            filled.push_back({part.tag, name.empty() ? std::string(kindOf(part).title) : name});
        }
    }
    addRows(table, std::move(filled), kEmptyFlows);
    return table;
}

BlankTable supply(UnitSystem units)
{
    BlankTable table{"Heater, supply and battery",
                     {{"What", 4}, {"Unit", 1}, {"Found", 2}, {"M / D / E", 1.3}, {"Where it was read", 3}},
                     {}};
    const auto row = [&](const char* what, Quantity quantity) {
        table.rows.push_back({what, unitOf(quantity, units), {}, {}, {}});
    };
    row("Heater: outlet setting", Quantity::Temperature);
    row("Heater: flow at which it lights", Quantity::Flow);
    row("Heater: least and most heat", Quantity::Power);
    row("Storage heater: volume", Quantity::Volume);
    row("Cold supply temperature", Quantity::Temperature);
    row("City pressure behind the regulator", Quantity::Pressure);
    row("Demand pump: cut-in and cut-out", Quantity::Pressure);
    row("Battery at rest; at the pump's place with the pump on", Quantity::Voltage);
    row("Wire to the pump: one-way length, gauge (AWG)", Quantity::Length);
    table.rows.insert(table.rows.end(), 2, std::vector<Message>(table.columns.size()));
    return table;
}

}  // namespace

BlankSurvey blankSurvey(const document::Drawing& drawing, UnitSystem units)
{
    const document::Job& job = drawing.job;
    BlankSurvey sheet;
    sheet.title = job.title.empty() ? "Survey of the coach" : "Survey: " + job.title;
    sheet.header = {
        {"Customer", job.customer},         {"Coach", job.coach},          {"Surveyed by", {}}, {"Date", {}},
        {"Drawing revision", job.revision}, {"Water on: city or tank", {}}};
    sheet.measure = {
        "Real length of every run along the tube, from fitting to fitting, not the straight line.",
        "The tube's print line gives material and size; count elbows and joints, not bends of the tube.",
        "Height of each part above the coach floor: up is positive.",
        "Flow of each outlet with jug and stopwatch, three tries, with the pressure while it runs.",
        "M / D / E: write M when you measured it, D when it is from a data sheet or rating plate, E when estimated.",
    };
    sheet.cautions = {
        "Hot water can burn: let the heater cool, or keep hands out of the stream.",
        "Relieve pressure and cool the water before opening a joint.",
        "Gas appliance: read its plate and manual; open, alter or bypass nothing. Isolate the battery before touching "
        "12 V wiring.",
        "Makers' instructions, local codes and licensed trades come before this sheet.",
    };
    sheet.tables = {runs(drawing, units), heights(drawing, units), flows(drawing, units), supply(units)};
    if (job.sampleFigures) {
        sheet.footnotes.emplace_back("Sample figures: coach and people are invented.");
    }
    return sheet;
}

}  // namespace tapward::report
