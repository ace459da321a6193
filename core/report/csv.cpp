// SPDX-License-Identifier: GPL-3.0-or-later
#include "report/csv.h"

#include "document/cell_block.h"

namespace tapward::report {

std::string csvField(std::string_view text)
{
    const bool formula = document::readsAsFormula(text);
    if (!formula && text.find_first_of(",;\t\"\r\n") == std::string_view::npos) {
        return std::string(text);
    }
    std::string out = formula ? "\"'" : "\"";
    for (const char c : text) {
        out += c;
        if (c == '"') {
            out += '"';
        }
    }
    return out + '"';
}

std::string csvRow(const std::vector<std::string>& fields)
{
    std::string out;
    for (std::size_t i = 0; i < fields.size(); ++i) {
        if (i > 0) {
            out += ',';
        }
        out += csvField(fields[i]);
    }
    out += "\r\n";
    return out;
}

}  // namespace tapward::report
