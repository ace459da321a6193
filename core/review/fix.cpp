// SPDX-License-Identifier: GPL-3.0-or-later
#include "review/fix.h"

#include <iterator>

namespace tapward::review {
namespace {

using document::Drawing;
using document::Edit;
using document::PartId;

std::optional<Edit> ifAllowed(const Drawing& drawing, Edit edit)
{
    return document::refusal(drawing, edit) ? std::nullopt : std::optional(std::move(edit));
}

}  // namespace

std::optional<Edit> setValue(const Drawing& drawing, PartId id, const std::string& key, parts::Value value,
                             Message title)
{
    const document::Part* part = drawing.find(id);
    if (!part || !document::kindOf(*part).field(key)) {
        return std::nullopt;
    }
    const auto held = part->entries.find(key);
    const parts::Basis basis = held == part->entries.end() ? parts::Basis::Estimated : held->second.basis;
    return ifAllowed(drawing, {std::move(title), {document::SetField{id, key, parts::Entry{std::move(value), basis}}}});
}

std::optional<Edit> turnAround(const Drawing& drawing, PartId id, Message title)
{
    const document::Part* part = drawing.find(id);
    if (!part || !document::kindOf(*part).goesInLine()) {
        return std::nullopt;
    }
    const auto& [first, second] = document::kindOf(*part).inLine;
    const document::Part* before = drawing.pipeAt(id, first);
    const document::Part* behind = drawing.pipeAt(id, second);
    if (!before || !behind || before == behind) {
        return std::nullopt;
    }
    const auto moved = [id](document::Part pipe, std::string_view from, std::string_view to) {
        for (document::PipeEnd& end : pipe.ends) {
            if (end.part == id && end.port == from) {
                end = to.empty() ? document::PipeEnd{} : document::PipeEnd{id, std::string(to), {}};
            }
        }
        return document::ChangePart{std::move(pipe)};
    };
    document::Part turned = *part;
    turned.turn = (turned.turn + 2) % 4;  // so that the ports stay where the pipes come in
    // A port holds one pipe: the first is taken off while the second moves over.
    return ifAllowed(drawing, {std::move(title),
                               {document::ChangePart{std::move(turned)}, moved(*before, first, {}),
                                moved(*behind, second, first), moved(*before, first, second)}});
}

std::optional<Edit> putInto(const Drawing& drawing, PartId pipe, const std::string& kind, bool reversed, Message title)
{
    const document::Part* line = drawing.find(pipe);
    if (!line || !document::kindOf(*line).isPipe) {
        return std::nullopt;
    }
    const std::vector<document::Point> corners = document::route(drawing, *line);
    if (corners.size() < 2) {
        return std::nullopt;
    }
    const std::size_t middle = (corners.size() - 1) / 2;
    const document::Point at{(corners[middle].x + corners[middle + 1].x) / 2,
                             (corners[middle].y + corners[middle + 1].y) / 2};
    auto edit = document::splitPipe(drawing, pipe, kind, at, 0.5, document::Stage::Added);
    if (!edit || document::refusal(drawing, *edit)) {
        return std::nullopt;
    }
    edit->title = title;
    if (!reversed) {
        return std::move(*edit);
    }
    Drawing trial = drawing;
    document::apply(trial, *edit);
    PartId made = document::kNoPart;
    for (const document::Part& part : trial.parts) {
        made = part.kind == kind && !drawing.find(part.id) ? part.id : made;
    }
    auto turn = turnAround(trial, made, std::move(title));
    if (!turn) {
        return std::nullopt;
    }
    edit->steps.insert(edit->steps.end(), std::make_move_iterator(turn->steps.begin()),
                       std::make_move_iterator(turn->steps.end()));
    return ifAllowed(drawing, std::move(*edit));
}

}  // namespace tapward::review
