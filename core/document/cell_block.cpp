// SPDX-License-Identifier: GPL-3.0-or-later
#include "document/cell_block.h"

#include <algorithm>

#include "document/check.h"

namespace tapward::document {
namespace {

bool isBlank(char c) { return c == ' ' || c == '\t' || c == '\r'; }

std::string trimmed(std::string_view text)
{
    while (!text.empty() && isBlank(text.front())) {
        text.remove_prefix(1);
    }
    while (!text.empty() && isBlank(text.back())) {
        text.remove_suffix(1);
    }
    return std::string(text);
}

/// "0,7", "-12,25": a number with a decimal comma and nothing else.
bool isDecimalComma(std::string_view line)
{
    std::string text = trimmed(line);
    std::string_view rest = text;
    if (!rest.empty() && (rest.front() == '-' || rest.front() == '+')) {
        rest.remove_prefix(1);
    }
    const std::size_t comma = rest.find(',');
    const auto digits = [](std::string_view part) {
        return !part.empty() && part.find_first_not_of("0123456789") == part.npos;
    };
    return comma != rest.npos && digits(rest.substr(0, comma)) && digits(rest.substr(comma + 1));
}

char separatorOf(std::string_view text)
{
    bool quoted = false, tab = false, semicolon = false, comma = false, onlyDecimals = true;
    for (std::size_t from = 0; from < text.size();) {
        const std::size_t end = std::min(text.find('\n', from), text.size());
        const std::string_view line = text.substr(from, end - from);
        onlyDecimals = onlyDecimals && (trimmed(line).empty() || isDecimalComma(line));
        from = end + 1;
    }
    for (const char c : text) {
        quoted = c == '"' ? !quoted : quoted;
        if (!quoted) {
            tab = tab || c == '\t';
            semicolon = semicolon || c == ';';
            comma = comma || c == ',';
        }
    }
    if (tab) {
        return '\t';
    }
    if (semicolon) {
        return ';';
    }
    return comma && !onlyDecimals ? ',' : '\t';
}

/// The text without the apostrophes before it.
std::string_view bare(std::string_view text)
{
    return text.substr(std::min(text.find_first_not_of('\''), text.size()));
}

tl::unexpected<Problem> tooMuch(const char* what) { return problem(what, "Copy a smaller part of the sheet."); }

}  // namespace

bool readsAsFormula(std::string_view text)
{
    if (text.empty() || std::string_view("=+-@\t\r\n").find(text.front()) == text.npos) {
        return false;
    }
    const std::size_t digits = text.find_first_not_of("0123456789.,", 1);
    const std::string_view unit = text.substr(std::min(digits, text.size()));
    const bool number = (text.front() == '-' || text.front() == '+') && digits != 1 && text.size() > 1;
    return !number || unit.find_first_of("=+-*/^&|!()<>:;\"'@\t\r\n") != unit.npos;
}

Result<CellBlock> readCells(std::string_view text, const CellLimits& limits)
{
    if (text.size() > limits.bytes) {
        return tooMuch("The clipboard holds more text than a survey could have.");
    }
    if (!isUtf8(text)) {
        return problem("The clipboard's text is not UTF-8.", "Copy the cells again, as text.");
    }
    const char separator = separatorOf(text);
    CellBlock block;
    std::vector<std::string> row;
    std::string cell;
    bool inQuotes = false, wasQuoted = false;
    const auto endCell = [&] {
        std::string whole = wasQuoted ? cell : trimmed(cell);
        if (whole.starts_with('\'') && readsAsFormula(bare(whole))) {
            whole.erase(0, 1);
        }
        row.push_back(std::move(whole));
        cell.clear();
        wasQuoted = false;
    };
    for (std::size_t i = 0; i < text.size(); ++i) {
        const char c = text[i];
        if (inQuotes) {
            if (c != '"') {
                cell += c;
            } else if (i + 1 < text.size() && text[i + 1] == '"') {
                cell += c;
                ++i;
            } else {
                inQuotes = false;
            }
        } else if (c == '"' && !wasQuoted && trimmed(cell).empty()) {
            cell.clear();
            inQuotes = wasQuoted = true;
        } else if (c == separator) {
            endCell();
        } else if (c == '\n') {
            endCell();
            block.push_back(std::move(row));
            row.clear();
        } else if (!(c == '\r' && (i + 1 == text.size() || text[i + 1] == '\n'))) {
            cell += c;  // also what follows a closed quote: 1/2" is seldom meant as one
        }
        if (cell.size() > limits.cellBytes) {
            return tooMuch("A cell on the clipboard is too long.");
        }
        if (row.size() >= limits.columns || block.size() > limits.rows) {
            return tooMuch("The clipboard holds more cells than a survey could have.");
        }
    }
    if (inQuotes) {
        return problem("A quotation mark on the clipboard is never closed.",
                       "Copy whole cells; write inches as \"in\" when a cell begins with a quotation mark.");
    }
    if (!row.empty() || !cell.empty() || wasQuoted) {
        endCell();
        block.push_back(std::move(row));
    }
    while (!block.empty()
           && std::all_of(block.back().begin(), block.back().end(), [](const auto& one) { return one.empty(); })) {
        block.pop_back();
    }
    return block;
}

std::string writeCells(const CellBlock& block)
{
    // Without a tab anywhere a comma or semicolon would read as the separator.
    const bool oneColumn = std::all_of(block.begin(), block.end(), [](const auto& row) { return row.size() <= 1; });
    std::string out;
    for (const auto& row : block) {
        for (std::size_t i = 0; i < row.size(); ++i) {
            out += i > 0 ? "\t" : "";
            const std::string cell = readsAsFormula(bare(row[i])) ? '\'' + row[i] : row[i];
            const bool quotes = cell.find_first_of(oneColumn ? "\t\r\n\",;" : "\t\r\n\"") != cell.npos;
            if (!quotes) {
                out += cell;
                continue;
            }
            out += '"';
            for (const char c : cell) {
                out += c;
                if (c == '"') {
                    out += '"';
                }
            }
            out += '"';
        }
        out += '\n';
    }
    return out;
}

}  // namespace tapward::document
