// SPDX-License-Identifier: GPL-3.0-or-later
#include <string>

#include "review/rules/rules.h"
#include "review/seen.h"

namespace tapward::review::rule {

void deadEnd(const Seen& seen, Findings& findings)
{
    // Branches that lead nowhere: prune from the caps inward until something draws, feeds or goes round.
    const Pipes& pipes = seen.pipes;
    std::vector<std::size_t> left(pipes.height_m.size());
    std::vector<char> gone(pipes.pieces.size(), 0);
    for (std::size_t place = 0; place < left.size(); ++place) {
        left[place] = pipes.at[place].size();
    }
    std::vector<int> ends;
    for (std::size_t place = 0; place < left.size(); ++place) {
        if (left[place] == 1) {
            ends.push_back(static_cast<int>(place));
        }
    }
    constexpr double kStub_m3 = 5e-5;  // a fitting's worth; some 0.4 m of 1/2 in tube
    for (std::size_t i = 0; i < ends.size(); ++i) {
        double held_m3 = 0;
        std::string tags;
        document::PartId last = document::kNoPart;
        int place = ends[i];
        bool loose = false, piped = false;
        while (place != Pipes::kOutside && left[static_cast<std::size_t>(place)] == 1) {
            int next = -1;
            for (const int index : pipes.at[static_cast<std::size_t>(place)]) {
                next = gone[static_cast<std::size_t>(index)] ? next : index;
            }
            const Pipes::Piece& piece = pipes.pieces[static_cast<std::size_t>(next)];
            if (piece.other(place) == Pipes::kOutside) {
                break;  // a tap, drain or supply without a pipe
            }
            gone[static_cast<std::size_t>(next)] = 1;
            --left[static_cast<std::size_t>(place)];
            place = piece.other(place);
            --left[static_cast<std::size_t>(place)];
            held_m3 += piece.volume_m3;
            piped = piped || piece.isPipe;
            const auto& pipeEnds = piece.part->part->ends;
            loose =
                loose
                || (piece.isPipe && (pipeEnds[0].part == document::kNoPart || pipeEnds[1].part == document::kNoPart));
            if (piece.volume_m3 > 0) {
                tags += (tags.empty() ? "" : ", ") + piece.part->part->tag;
                last = piece.part->id;
            }
        }
        if (held_m3 <= kStub_m3 || loose || !piped) {
            continue;  // a loose end, or a part that has no pipe yet, is another rule's
        }
        Finding finding;
        finding.severity = Severity::Caution;
        finding.what = {"{0} leads nowhere and holds {1} that never moves.",
                        {tags, Measure{held_m3, Quantity::Volume}}};
        finding.why = "Standing water goes stale, favors bacteria and freezes first.";
        finding.remedy = "Take the dead end out back to its tee, or end it in a tap or a drain.";
        finding.source = kPractice;
        finding.part = last;
        findings.push_back(std::move(finding));
    }
}

}  // namespace tapward::review::rule
