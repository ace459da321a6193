// SPDX-License-Identifier: GPL-3.0-or-later
#include "document/json_text.h"

#include <algorithm>
#include <charconv>
#include <cmath>
#include <limits>
#include <unordered_set>
#include <vector>

#include <fmt/format.h>

#include "document/check.h"
#include "document/picture.h"

namespace tapward::document {
namespace {

// Base 64 takes four letters for three bytes.
constexpr std::size_t kMostPictureText = (kMostPictureBytes + 2) / 3 * 4;

/// Builds the tree from the parser's events, so that every limit holds before memory is spent.
class Builder {
public:
    Builder(std::string_view text, const Limits& limits) : m_text(text), m_limits(limits) {}

    bool null() { return put(nullptr); }
    bool boolean(bool value) { return put(value); }
    bool number_integer(std::int64_t value) { return put(value); }
    bool number_unsigned(std::uint64_t value) { return put(value); }
    bool number_float(double value, const std::string&)
    {
        if (!std::isfinite(value)) {
            return fail("A number is too large to be held.", "Check the number.");
        }
        return put(value);
    }
    bool string(std::string& value)
    {
        return fits(value, isPicture() ? kMostPictureText : m_limits.textBytes) && put(std::move(value));
    }
    bool binary(Json::binary_t&) { return fail("The file is not JSON text.", "Open another file."); }

    bool start_object(std::size_t) { return open(Json::object()); }
    bool end_object() { return close(); }
    bool start_array(std::size_t) { return open(Json::array()); }
    bool end_array() { return close(); }
    bool key(std::string& key)
    {
        if (!fits(key, m_limits.textBytes)) {
            return false;
        }
        Frame& frame = m_stack.back();
        if (!frame.keys.insert(key).second) {
            frame.key = key;
            return fail({"The key \"{0}\" stands twice in one object.", {key}}, "Keep one of the two.");
        }
        frame.key = std::move(key);
        return true;
    }

    bool parse_error(std::size_t position, const std::string&, const nlohmann::detail::exception& error)
    {
        constexpr int kNumberOverflow = 406;
        if (error.id == kNumberOverflow) {
            return fail("A number is too large to be held.", "Check the number.");
        }
        const std::size_t end = std::min(position, m_text.size());
        const std::string_view before = m_text.substr(0, end > 0 ? end - 1 : 0);
        const auto line = static_cast<std::int64_t>(std::count(before.begin(), before.end(), '\n') + 1);
        const std::size_t lineStart = before.rfind('\n');
        const auto column =
            static_cast<std::int64_t>(before.size() - (lineStart == before.npos ? 0 : lineStart + 1) + 1);
        return fail({"The text is not proper JSON at line {0}, column {1}.", {line, column}},
                    "The file may be cut off or changed by hand. Open a saved copy, or mend that line.");
    }

    Result<Json> finish(bool parsed)
    {
        if (m_problem) {
            return tl::unexpected(std::move(*m_problem));
        }
        if (!parsed) {
            return problem("The text is not proper JSON.", "Open a saved copy.");
        }
        return std::move(m_root);
    }

private:
    struct Frame {
        Json value;
        std::string key;                       ///< of the member being read
        std::unordered_set<std::string> keys;  ///< seen in this object
    };

    bool put(Json value)
    {
        if (m_stack.empty()) {
            m_root = std::move(value);
            return true;
        }
        Frame& frame = m_stack.back();
        if (frame.value.is_array()) {
            frame.value.get_ref<Json::array_t&>().push_back(std::move(value));
        } else {
            // Appended without the search of ordered_map: twins were found above.
            frame.value.get_ref<Json::object_t&>().emplace_back(std::move(frame.key), std::move(value));
            frame.key.clear();
        }
        return true;
    }

    bool open(Json value)
    {
        if (m_stack.size() >= static_cast<std::size_t>(std::max(m_limits.depth, 1))) {
            return fail({"The file nests deeper than {0} levels.", {static_cast<std::int64_t>(m_limits.depth)}},
                        "This is not a drawing made by Tapward.");
        }
        m_stack.push_back({std::move(value), {}, {}});
        return true;
    }

    bool close()
    {
        Json value = std::move(m_stack.back().value);
        m_stack.pop_back();
        return put(std::move(value));
    }

    /// The value of a field called "picture": the one text that may be long.
    bool isPicture() const
    {
        constexpr std::size_t kDepth = 5;  // document, parts, part, fields, the field
        return m_stack.size() == kDepth && m_stack[4].key == "value" && m_stack[3].key == "picture";
    }

    bool fits(const std::string& text, std::size_t most)
    {
        if (text.size() <= most) {
            return true;
        }
        return fail({"A text is {0} bytes long; {1} are allowed.",
                     {static_cast<std::int64_t>(text.size()), static_cast<std::int64_t>(most)}},
                    "Shorten it.");
    }

    bool fail(Message what, Message remedy)
    {
        std::string where;
        for (const Frame& frame : m_stack) {
            if (frame.value.is_array()) {
                where += fmt::format("/{}", frame.value.size());
            } else if (!frame.key.empty()) {
                where += fmt::format("/{}", pointerStep(frame.key));
            }
        }
        m_problem = Problem{std::move(what), std::move(remedy), std::move(where)};
        return false;
    }

    std::string_view m_text;
    const Limits& m_limits;
    std::vector<Frame> m_stack;
    Json m_root;
    std::optional<Problem> m_problem;
};

constexpr std::size_t kOneLine = 100;

void appendNumber(std::string& out, double value)
{
    if (!std::isfinite(value)) {
        out += "null";  // JSON has no other word; documents are checked to have none
        return;
    }
    char digits[32];
    const auto end = std::to_chars(std::begin(digits), std::end(digits), value).ptr;
    const std::string_view shortest(digits, static_cast<std::size_t>(end - digits));
    out += shortest;
    if (shortest.find_first_of(".e") == shortest.npos) {
        out += ".0";
    }
}

void appendScalar(std::string& out, const Json& json)
{
    if (json.is_number_float()) {
        appendNumber(out, json.get<double>());
    } else {
        out += json.dump(-1, ' ', false, Json::error_handler_t::replace);
    }
}

void appendKey(std::string& out, const std::string& key, std::string_view colon = ": ")
{
    out += Json(key).dump(-1, ' ', false, Json::error_handler_t::replace);
    out += colon;
}

void appendFlat(std::string& out, const Json& json, std::string_view comma = ", ", std::string_view colon = ": ")
{
    if (!json.is_structured()) {
        appendScalar(out, json);
        return;
    }
    const bool isObject = json.is_object();
    out += isObject ? '{' : '[';
    bool first = true;
    for (const auto& item : json.items()) {
        out += first ? std::string_view() : comma;
        first = false;
        if (isObject) {
            appendKey(out, item.key(), colon);
        }
        appendFlat(out, item.value(), comma, colon);
    }
    out += isObject ? '}' : ']';
}

/// Levels of nesting; counts no further than needed.
int depth(const Json& json, int enough)
{
    if (!json.is_structured() || enough == 0) {
        return json.is_structured() ? 1 : 0;
    }
    int deepest = 0;
    for (const auto& item : json) {
        deepest = std::max(deepest, depth(item, enough - 1));
    }
    return deepest + 1;
}

void appendPretty(std::string& out, const Json& json, std::size_t indent)
{
    if (!json.is_structured() || json.empty()) {
        appendFlat(out, json);
        return;
    }
    if (indent > 0 && json.size() <= kOneLine && depth(json, 2) <= 2) {
        std::string flat;
        appendFlat(flat, json);
        if (flat.size() <= kOneLine) {
            out += flat;
            return;
        }
    }
    const bool isObject = json.is_object();
    out += isObject ? "{" : "[";
    bool first = true;
    for (const auto& item : json.items()) {
        out += first ? "\n" : ",\n";
        first = false;
        out.append(indent + 2, ' ');
        if (isObject) {
            appendKey(out, item.key());
        }
        appendPretty(out, item.value(), indent + 2);
    }
    out += '\n';
    out.append(indent, ' ');
    out += isObject ? '}' : ']';
}

}  // namespace

Result<Json> parseJson(std::string_view text, const Limits& limits)
{
    if (text.size() > limits.bytes) {
        return problem({"The file is larger than {0} bytes.", {static_cast<std::int64_t>(limits.bytes)}},
                       "This is not a drawing made by Tapward.");
    }
    if (text.empty()) {
        return problem("The file is empty.", "Open a saved copy.");
    }
    if (!isUtf8(text)) {
        return problem("The file is not UTF-8 text.", "This is not a drawing made by Tapward, or it was damaged.");
    }
    Builder builder(text, limits);
    const bool parsed = Json::sax_parse(text.begin(), text.end(), &builder);
    return builder.finish(parsed);
}

std::string prettyJson(const Json& json)
{
    std::string out;
    appendPretty(out, json, 0);
    out += '\n';
    return out;
}

std::string compactJson(const Json& json)
{
    std::string out;
    appendFlat(out, json);
    return out;
}

std::string tightJson(const Json& json)
{
    std::string out;
    appendFlat(out, json, ",", ":");
    out += '\n';
    return out;
}

std::string fittingJson(const Json& json, std::size_t most)
{
    std::string pretty = prettyJson(json);
    return pretty.size() <= most ? pretty : tightJson(json);
}

void addUnknown(Json& object, const Unknown& unknown)
{
    struct Kept {
        Json::object_t* holder;
        std::ptrdiff_t depth;  ///< of the key
        std::string key;
        const std::string* text;
    };
    // Places are looked up among the known keys, all before any is added: a file may bring very many.
    std::vector<Kept> kept;
    for (const auto& [pointer, text] : unknown) {
        if (pointer.empty() || pointer[0] != '/') {
            continue;
        }
        Json* holder = &object;
        const std::size_t last = pointer.rfind('/');
        for (std::size_t at = 0; holder && at < last;) {
            const std::size_t next = pointer.find('/', at + 1);
            const std::string step = unescapedStep(std::string_view(pointer).substr(at + 1, next - at - 1));
            at = next;
            if (holder->is_object()) {
                const auto member = holder->find(step);
                holder = member == holder->end() ? nullptr : &*member;
            } else if (holder->is_array() && step.size() <= 6 && !step.empty()
                       && std::all_of(step.begin(), step.end(), [](char c) { return c >= '0' && c <= '9'; })
                       && std::stoul(step) < holder->size()) {
                holder = &(*holder)[std::stoul(step)];
            } else {
                holder = nullptr;
            }
        }
        const std::ptrdiff_t depth = std::count(pointer.begin(), pointer.end(), '/');
        std::string key = unescapedStep(pointer.substr(last + 1));
        if (holder && holder->is_object() && !holder->contains(key)) {
            kept.push_back({holder->get_ptr<Json::object_t*>(), depth, std::move(key), &text});
        }
    }
    // Deepest first: an object that grows may move what it holds, and its members' places with it.
    std::stable_sort(kept.begin(), kept.end(), [](const Kept& a, const Kept& b) { return a.depth > b.depth; });
    // What was kept was within the limits when it was read.
    Limits read;
    read.bytes = read.textBytes = std::numeric_limits<std::size_t>::max();
    for (Kept& one : kept) {
        if (auto value = parseJson(*one.text, read)) {
            one.holder->emplace_back(std::move(one.key), std::move(*value));
        }
    }
}

Json number(double value)
{
    constexpr double kExact = 9007199254740992.0;  // 2^53
    if (std::abs(value) < kExact && value == std::floor(value)) {
        return static_cast<std::int64_t>(value);
    }
    return value;
}

std::string pointerStep(std::string_view key)
{
    std::string escaped;
    for (const char c : key) {
        if (c == '~') {
            escaped += "~0";
        } else if (c == '/') {
            escaped += "~1";
        } else {
            escaped += c;
        }
    }
    return escaped;
}

std::string unescapedStep(std::string_view step)
{
    std::string key;
    key.reserve(step.size());
    for (std::size_t i = 0; i < step.size(); ++i) {
        const bool escaped = step[i] == '~' && i + 1 < step.size() && (step[i + 1] == '0' || step[i + 1] == '1');
        key += !escaped ? step[i] : step[++i] == '0' ? '~' : '/';
    }
    return key;
}

}  // namespace tapward::document
