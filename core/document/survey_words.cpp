// SPDX-License-Identifier: GPL-3.0-or-later
#include "document/survey_words.h"

#include <algorithm>
#include <vector>

#include "document/names.h"

namespace tapward::document {
namespace {

/// Lower case words; inch signs and the word "in" are no words: every size is in inches.
std::vector<std::string> wordsOf(std::string_view text)
{
    std::vector<std::string> words;
    std::string word;
    const auto end = [&] {
        if (!word.empty() && word != "in" && word != "inch") {
            words.push_back(word);
        }
        word.clear();
    };
    for (const char c : text) {
        if (c == ' ' || c == '\t' || c == ',' || c == '(' || c == ')' || c == '"' || c == '_') {
            end();
        } else {
            word += c >= 'A' && c <= 'Z' ? static_cast<char>(c - 'A' + 'a') : c;
        }
    }
    end();
    return words;
}

bool isWord(std::string_view text) { return !text.empty() && text.front() >= 'a' && text.front() <= 'z'; }

/// Every word typed is one of the title's, or begins one when it is made of letters.
bool fits(const std::vector<std::string>& typed, const std::vector<std::string>& title)
{
    return !typed.empty() && std::all_of(typed.begin(), typed.end(), [&title](const std::string& word) {
        return std::any_of(title.begin(), title.end(), [&word](const std::string& other) {
            return other == word || (isWord(word) && other.starts_with(word));
        });
    });
}

std::size_t sameStart(std::string_view a, std::string_view b)
{
    return static_cast<std::size_t>(std::mismatch(a.begin(), a.end(), b.begin(), b.end()).first - a.begin());
}

std::string listed(const std::vector<const parts::Choice*>& choices)
{
    constexpr std::size_t kMost = 6;
    std::string text;
    for (std::size_t i = 0; i < std::min(choices.size(), kMost); ++i) {
        text += text.empty() ? "" : ", ";
        text += choices[i]->title;
    }
    return choices.size() > kMost ? text + ", ..." : text;
}

}  // namespace

std::string_view basisTitle(parts::Basis basis)
{
    switch (basis) {
    case parts::Basis::Measured:
        return "Measured";
    case parts::Basis::DataSheet:
        return "Data sheet";
    case parts::Basis::Estimated:
        return "Estimated";
    }
    return {};
}

Result<parts::Basis> readBasis(std::string_view typed)
{
    const auto words = wordsOf(typed);
    for (const auto& [basis, name] : kBases) {
        if (fits(words, wordsOf(basisTitle(basis)))) {
            return basis;
        }
    }
    return problem({"\"{0}\" is no basis.", {std::string(typed)}}, "Write Measured, Data sheet or Estimated.");
}

Result<std::string> readChoice(const parts::Field& field, std::string_view typed, std::string_view now)
{
    const auto words = wordsOf(typed);
    std::vector<const parts::Choice*> fitting, all;
    std::string_view nowTitle;
    for (const parts::Choice& choice : field.choices) {
        const auto title = wordsOf(choice.title);
        if (choice.id == typed || title == words) {
            return std::string(choice.id);
        }
        if (fits(words, title)) {
            fitting.push_back(&choice);
        }
        if (choice.id == now) {
            nowTitle = choice.title;
        }
        all.push_back(&choice);
    }
    if (fitting.empty()) {
        return problem({"\"{0}\" is none of the choices for {1}.", {std::string(typed), field.label}},
                       {"Choose one of: {0}.", {listed(all)}});
    }
    if (fitting.size() == 1) {
        return std::string(fitting.front()->id);
    }
    std::size_t best = 0, count = 0;
    const parts::Choice* nearest = nullptr;
    for (const parts::Choice* choice : fitting) {
        const std::size_t same = sameStart(choice->title, nowTitle);
        if (same > best) {
            best = same;
            nearest = choice;
            count = 0;
        }
        count += same == best ? 1 : 0;
    }
    constexpr std::size_t kMaterialLetters = 3;
    if (nearest && best >= kMaterialLetters && count == 1) {
        return std::string(nearest->id);
    }
    return problem({"\"{0}\" could be several things.", {std::string(typed)}},
                   {"Write more of it: {0}.", {listed(fitting)}});
}

}  // namespace tapward::document
