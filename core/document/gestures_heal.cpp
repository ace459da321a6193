// SPDX-License-Identifier: GPL-3.0-or-later
// Taking parts away, and healing the pipe they were in.
#include <algorithm>
#include <string>
#include <utility>

#include "document/edit.h"
#include "document/gesture.h"
#include "document/rearrange.h"
#include "document/references.h"

namespace tapward::document {
namespace {

/// A pipe seen from one of its ends.
struct Hanging {
    PartId pipe;
    std::size_t end;
};

std::vector<Hanging> hangingOn(const Drawing& drawing, PartId part)
{
    std::vector<Hanging> hanging;
    for (const Part& pipe : drawing.parts) {
        for (std::size_t end = 0; end < 2; ++end) {
            if (pipe.ends[end].part == part) {
                hanging.push_back({pipe.id, end});
            }
        }
    }
    return hanging;
}

/// The length that decides which of two pipes lends its fields.
double measure(const Part& pipe)
{
    for (const parts::Field& field : kindOf(pipe).fields) {
        if (field.divides && field.quantity == Quantity::Length) {
            return values(pipe).number(field.key);
        }
    }
    return 0;
}

void turnRound(Part& pipe)
{
    std::swap(pipe.ends[0], pipe.ends[1]);
    std::reverse(pipe.bends.begin(), pipe.bends.end());
}

void addFields(const Part& first, const Part& second, Part& joined)
{
    const Part& longer = measure(second) > measure(first) ? second : first;
    joined.entries = longer.entries;
    for (const parts::Field& field : kindOf(first).fields) {
        if (!field.divides) {
            continue;
        }
        const parts::Values a = values(first);
        const parts::Values b = values(second);
        if (!a.isSet(field.key) && !b.isSet(field.key) && a.number(field.key) == 0 && b.number(field.key) == 0) {
            continue;
        }
        const double sum = std::min(a.number(field.key) + b.number(field.key), field.most);
        // A sum is known no better than its weaker part.
        joined.entries[std::string(field.key)] = {sum, std::max(a.basis(field.key), b.basis(field.key))};
    }
}

class Removal {
public:
    explicit Removal(const Drawing& drawing) : m_gesture(drawing) {}

    void remove(PartId id, PartId heir = kNoPart)
    {
        if (!m_gesture.now().find(id)) {
            return;  // went with another one
        }
        for (Step& step : releaseReferences(m_gesture.now(), id, heir)) {
            m_gesture.make(std::move(step));
        }
        m_gesture.make(RemovePart{id});
    }

    /// @param alsoGoing  pipes that are removed for themselves and so cannot be joined
    void removeSymbol(PartId id, bool heal, const std::vector<PartId>& alsoGoing)
    {
        std::vector<Hanging> hanging = hangingOn(m_gesture.now(), id);
        std::erase_if(hanging, [&](const Hanging& one) {
            const bool going = std::find(alsoGoing.begin(), alsoGoing.end(), one.pipe) != alsoGoing.end();
            if (going) {
                remove(one.pipe);
            }
            return going;
        });
        if (heal && hanging.size() == 2 && hanging[0].pipe != hanging[1].pipe) {
            join(hanging[0], hanging[1]);
        } else {
            for (const Hanging& one : hanging) {
                remove(one.pipe);
            }
        }
        remove(id);
    }

    /// @pre two pipes end on the part
    void free(PartId id, double dx, double dy)
    {
        const std::vector<Hanging> hanging = hangingOn(m_gesture.now(), id);
        join(hanging[0], hanging[1]);
        Part moved = *m_gesture.now().find(id);
        moved.at = {moved.at.x + dx, moved.at.y + dy};
        m_gesture.make(ChangePart{std::move(moved)});
    }

    Result<Edit> finish(Message title) { return m_gesture.finish(std::move(title)); }

private:
    /// Makes one pipe of two that hang on the same part. The one that comes first in flow keeps its name.
    void join(Hanging a, Hanging b)
    {
        if (a.end == 0 && b.end == 1) {
            std::swap(a, b);
        }
        const Part first = *m_gesture.now().find(a.pipe);
        Part second = *m_gesture.now().find(b.pipe);
        Part joined = first;
        if (a.end == 0) {
            turnRound(joined);  // both flow away from the part: the first one is turned
        }
        if (b.end == 1) {
            turnRound(second);
        }
        joined.ends[1] = second.ends[1];
        joined.bends.insert(joined.bends.end(), second.bends.begin(), second.bends.end());
        addFields(first, second, joined);
        for (const auto& [key, text] : second.unknown) {
            joined.unknown.emplace(key, text);
        }
        remove(b.pipe, a.pipe);
        m_gesture.make(ChangePart{std::move(joined)});
    }

    Gesture m_gesture;
};

}  // namespace

Result<Edit> removeParts(const Drawing& drawing, const std::vector<PartId>& ids, bool heal)
{
    std::vector<PartId> pipes;
    std::vector<PartId> symbols;
    for (const PartId id : ids) {
        if (const Part* part = drawing.find(id)) {
            (kindOf(*part).isPipe ? pipes : symbols).push_back(id);
        }
    }
    if (pipes.empty() && symbols.empty()) {
        return problem("Nothing is selected.", "Select a part first.");
    }
    Removal removal(drawing);
    for (const PartId id : symbols) {
        removal.removeSymbol(id, heal, pipes);
    }
    for (const PartId id : pipes) {
        removal.remove(id);
    }
    const Part* only = ids.size() == 1 ? drawing.find(ids.front()) : nullptr;
    return removal.finish(only ? Message{"Remove {0}", {only->tag}}
                               : Message{"Remove {0} parts", {static_cast<std::int64_t>(ids.size())}});
}

Result<Edit> takeOutOfPipe(const Drawing& drawing, PartId id, double dx, double dy)
{
    const Part* part = drawing.find(id);
    if (!part || kindOf(*part).isPipe) {
        return problem("Nothing is selected.", "Select a part first.");
    }
    const std::vector<Hanging> hanging = hangingOn(drawing, id);
    if (hanging.size() != 2 || hanging[0].pipe == hanging[1].pipe) {
        return problem({"{0} is not in the middle of one pipe.", {part->tag}},
                       "Only a part with exactly two pipes can be taken out.", part->tag);
    }
    Removal removal(drawing);
    removal.free(id, dx, dy);
    return removal.finish({"Take {0} out of its pipe", {part->tag}});
}

}  // namespace tapward::document
