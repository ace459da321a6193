// SPDX-License-Identifier: GPL-3.0-or-later
#include "report/csv.h"

namespace tapward::report {

std::string csvField(std::string_view text)
{
    if (text.find_first_of(",\"\r\n") == std::string_view::npos) {
        return std::string(text);
    }
    std::string out = "\"";
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
        out += (i ? "," : "") + csvField(fields[i]);
    }
    return out + "\r\n";
}

}  // namespace tapward::report
