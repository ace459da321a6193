// SPDX-License-Identifier: GPL-3.0-or-later
#include "document/written_size.h"

#include <algorithm>

#include "document/file.h"

namespace tapward::document {
namespace {

// Braces, keys, quotes, commas and the longest word of each enumeration, as file_write.cpp puts them; digits of the
// longest number.
constexpr std::size_t kNumber = 26;
constexpr std::size_t kId = 11;
constexpr std::size_t kPoint = 2 * kNumber + 4;
constexpr std::size_t kEntry = 40;
constexpr std::size_t kPart = 130 + kId + kPoint + kNumber;
constexpr std::size_t kPipe = 100 + 2 * (kPoint + kId);
constexpr std::size_t kMark = 80 + kId + kNumber;
constexpr std::size_t kAction = 110 + 3 * kNumber + kId;
constexpr std::size_t kCase = 180 + 6 * kNumber + kId;
constexpr std::size_t kDismissal = 40 + kId;
constexpr std::size_t kJob = 220 + 3 * kNumber;
constexpr std::size_t kTop = 120 + kId;

/// A text in quotes. A long one is a picture: base 64 needs no escaping.
std::size_t bytesOf(std::string_view text)
{
    std::size_t bytes = text.size() + 2;
    if (text.size() > kLimits.textBytes) {
        return bytes;
    }
    for (const char c : text) {
        bytes += c == '"' || c == '\\' ? 1 : static_cast<unsigned char>(c) < 0x20 || c == 0x7f ? 5 : 0;
    }
    return bytes;
}

std::size_t bytesOf(const Unknown& unknown)
{
    std::size_t bytes = 0;
    for (const auto& [pointer, text] : unknown) {
        bytes += bytesOf(pointer) + text.size() + 2;
    }
    return bytes;
}

std::size_t bytesOf(std::string_view key, const parts::Entry& entry)
{
    std::size_t bytes = key.size() + kEntry;
    if (const auto* text = std::get_if<std::string>(&entry.value)) {
        bytes += bytesOf(*text);
    } else if (const auto* curve = std::get_if<parts::Curve>(&entry.value)) {
        bytes += curve->size() * kPoint + 2;
    } else {
        bytes += kNumber;
    }
    return bytes;
}

std::size_t bytesOf(const Part& part)
{
    std::size_t bytes = kPart + bytesOf(part.kind) + bytesOf(part.tag) + bytesOf(part.unknown)
                        + (part.bends.size() + (part.label ? 1 : 0)) * kPoint;
    if (part.ends != std::array<PipeEnd, 2>{} || part.kind == "pipe_run") {
        bytes += kPipe + bytesOf(part.ends[0].port) + bytesOf(part.ends[1].port);
    }
    if (part.mark) {
        bytes += kMark + bytesOf(part.mark->variant) + bytesOf(part.mark->role) + bytesOf(part.mark->unknown);
    }
    for (const auto& [key, entry] : part.entries) {
        bytes += bytesOf(key, entry);
    }
    return bytes;
}

std::size_t bytesOf(const Job& job)
{
    std::size_t bytes = kJob + bytesOf(job.unknown);
    for (const std::string* text : {&job.title, &job.customer, &job.coach, &job.technician, &job.date, &job.revision,
                                    &job.notes, &job.currency}) {
        bytes += bytesOf(*text);
    }
    return bytes;
}

std::size_t bytesOf(const std::vector<Case>& cases)
{
    std::size_t bytes = 0;
    for (const Case& one : cases) {
        bytes += kCase + bytesOf(one.name) + bytesOf(one.unknown);
        for (const Action& action : one.actions) {
            bytes += kAction + bytesOf(action.fault) + bytesOf(action.unknown);
        }
    }
    return bytes;
}

std::size_t bytesOf(const std::vector<Dismissal>& dismissals)
{
    std::size_t bytes = 0;
    for (const Dismissal& one : dismissals) {
        bytes += kDismissal + bytesOf(one.rule) + bytesOf(one.reason) + bytesOf(one.unknown);
    }
    return bytes;
}

struct Change {
    std::size_t more = 0, less = 0;
};

Change changeOf(const Drawing&, const AddPart& step) { return {bytesOf(step.part), 0}; }

Change changeOf(const Drawing& drawing, const RemovePart& step) { return {0, bytesOf(*drawing.find(step.id))}; }

Change changeOf(const Drawing& drawing, const ChangePart& step)
{
    return {bytesOf(step.part), bytesOf(*drawing.find(step.part.id))};
}

Change changeOf(const Drawing& drawing, const SetField& step)
{
    const Part& part = *drawing.find(step.id);
    const auto held = part.entries.find(step.key);
    return {step.entry ? bytesOf(step.key, *step.entry) : 0,
            held != part.entries.end() ? bytesOf(step.key, held->second) : 0};
}

Change changeOf(const Drawing& drawing, const SetJob& step) { return {bytesOf(step.job), bytesOf(drawing.job)}; }

Change changeOf(const Drawing& drawing, const SetCases& step) { return {bytesOf(step.cases), bytesOf(drawing.cases)}; }

Change changeOf(const Drawing& drawing, const SetDismissals& step)
{
    return {bytesOf(step.dismissals), bytesOf(drawing.dismissals)};
}

}  // namespace

std::size_t mostBytes(const Drawing& drawing)
{
    std::size_t bytes =
        kTop + bytesOf(drawing.job) + bytesOf(drawing.cases) + bytesOf(drawing.dismissals) + bytesOf(drawing.unknown);
    for (const Part& part : drawing.parts) {
        bytes += bytesOf(part);
    }
    return bytes;
}

std::size_t mostBytes(const Drawing& drawing, const Step& step)
{
    const Change change = std::visit([&drawing](const auto& one) { return changeOf(drawing, one); }, step);
    return mostBytes(drawing) + change.more - change.less;
}

std::optional<Problem> lengthFlaw(const Drawing& before, const Drawing& after)
{
    if (mostBytes(after) <= kLimits.bytes) {
        return std::nullopt;
    }
    const std::size_t bytes = tightBytes(after);
    if (bytes <= kLimits.bytes || bytes <= tightBytes(before)) {
        return std::nullopt;
    }
    return Problem{{"The drawing would have {0} bytes as a file; {1} are allowed.",
                    {static_cast<std::int64_t>(bytes), static_cast<std::int64_t>(kLimits.bytes)}},
                   "Choose smaller pictures or shorter notes, or draw the rest in another drawing.",
                   {}};
}

}  // namespace tapward::document
