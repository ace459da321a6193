// SPDX-License-Identifier: GPL-3.0-or-later
#include "review/rules/rules.h"
#include "review/seen.h"
#include "review/wire.h"
#include "study/wiring.h"

namespace tapward::review::rule {

void branchOverloaded(const Seen& seen, Findings& findings)
{
    const study::WiringNet wiring(seen.after);
    for (int i = 0; i < static_cast<int>(wiring.branches().size()); ++i) {
        const study::BranchAnswer branch = study::branchAnswer(wiring, i);
        if (branch.fuse == document::kNoPart || branch.spare_A >= 0) {
            continue;
        }
        const Measure carried{branch.steady_A + branch.other_A, Quantity::Current};
        const double socket_A = wiring.branches()[static_cast<std::size_t>(i)].socket_A;
        Finding finding;
        finding.severity = Severity::Caution;
        if (branch.socketExceeded) {
            finding.what = {"The socket behind {0} is rated {1}; its loads draw {2} together.",
                            {tagOf(seen, branch.fuse), Measure{socket_A, Quantity::Current}, carried}};
            finding.why = "A plug that carries more than it is rated for gets hot.";
            finding.remedy = "Wire the loop to a fused branch of its own instead of the socket.";
        } else {
            finding.what = {"{0} is rated {1}; its loads draw {2} together.",
                            {tagOf(seen, branch.fuse), Measure{branch.rating_A, Quantity::Current}, carried}};
            finding.why =
                "A fuse that carries what it is rated for without a break ages and blows in the middle of a run.";
            finding.remedy = {"Wire the loop to a branch of its own with a fuse of {0} or more, not above what its "
                              "wire may carry.",
                              {Measure{parts::kFuseOverLoad * branch.steady_A, Quantity::Current}}};
        }
        finding.source =
            "a quarter over the continuous load: general code practice, not checked; the code in force decides";
        finding.part = branch.fuse;
        findings.push_back(std::move(finding));
    }
}

}  // namespace tapward::review::rule
