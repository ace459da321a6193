// SPDX-License-Identifier: GPL-3.0-or-later
#include "document/references.h"

#include <algorithm>
#include <charconv>
#include <string>

namespace tapward::document {
namespace {

/// Calls found(part, key) for each reference field that holds `id`.
template <class Found>
void eachReference(const Drawing& drawing, PartId id, Found found)
{
    const std::string wanted = std::to_string(id);
    for (const Part& part : drawing.parts) {
        const parts::PartKind* kind = part.entries.empty() ? nullptr : parts::find(part.kind);
        if (!kind) {
            continue;
        }
        for (const parts::Field& field : kind->fields) {
            if (field.type != parts::FieldType::PartRef) {
                continue;
            }
            const auto held = part.entries.find(field.key);
            const std::string* text =
                held == part.entries.end() ? nullptr : std::get_if<std::string>(&held->second.value);
            if (text && *text == wanted) {
                found(part, field);
            }
        }
    }
}

bool names(const Case& one, PartId id)
{
    return one.targetPart == id || std::any_of(one.actions.begin(), one.actions.end(), [id](const Action& action) {
               return action.part == id;
           });
}

}  // namespace

PartId namedPart(std::string_view entry)
{
    PartId id = kNoPart;
    const char* end = entry.data() + entry.size();
    const auto [stop, error] = std::from_chars(entry.data(), end, id);
    return error == std::errc{} && stop == end ? id : kNoPart;
}

bool refersTo(const Drawing& drawing, PartId id)
{
    bool found = false;
    eachReference(drawing, id, [&found](const Part& part, const parts::Field&) { found = found || part.id > 0; });
    return found
           || std::any_of(drawing.cases.begin(), drawing.cases.end(), [id](const Case& one) { return names(one, id); })
           || std::any_of(drawing.dismissals.begin(), drawing.dismissals.end(),
                          [id](const Dismissal& one) { return one.part == id; });
}

std::vector<Step> releaseReferences(const Drawing& drawing, PartId id, PartId heir)
{
    std::vector<Step> steps;
    eachReference(drawing, id, [&steps](const Part& part, const parts::Field& field) {
        steps.push_back(SetField{part.id, std::string(field.key), std::nullopt});
    });
    const bool inCases =
        std::any_of(drawing.cases.begin(), drawing.cases.end(), [id](const Case& one) { return names(one, id); });
    if (inCases) {
        std::vector<Case> cases = drawing.cases;
        for (Case& one : cases) {
            if (heir == kNoPart) {
                std::erase_if(one.actions, [id](const Action& action) { return action.part == id; });
            }
            for (Action& action : one.actions) {
                action.part = action.part == id ? heir : action.part;
            }
            one.targetPart = one.targetPart == id ? heir : one.targetPart;
        }
        steps.push_back(SetCases{std::move(cases)});
    }
    const bool dismissed = std::any_of(drawing.dismissals.begin(), drawing.dismissals.end(),
                                       [id](const Dismissal& one) { return one.part == id; });
    if (dismissed) {
        std::vector<Dismissal> dismissals = drawing.dismissals;
        if (heir == kNoPart) {
            std::erase_if(dismissals, [id](const Dismissal& one) { return one.part == id; });
        }
        for (Dismissal& one : dismissals) {
            one.part = one.part == id ? heir : one.part;
        }
        steps.push_back(SetDismissals{std::move(dismissals)});
    }
    return steps;
}

}  // namespace tapward::document
