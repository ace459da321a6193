// SPDX-License-Identifier: GPL-3.0-or-later
#include "review/fault_weight.h"

#include "support/catch.h"

using namespace tapward;
using review::Severity;

namespace {

study::FaultRow row(study::Harm harm, bool soundToo, double change_K, bool run = true)
{
    study::FaultRow made;
    made.run = run;
    made.harm = harm;
    made.harmsSoundToo = soundToo;
    made.change_K = change_K;
    return made;
}

}  // namespace

TEST_CASE("a fault weighs what it adds to the sound coach", "[review][faults]")
{
    using enum study::Harm;
    CHECK(review::faultSeverity(row(User, false, 12)) == Severity::Danger);
    CHECK(review::faultSeverity(row(User, true, 12)) == Severity::Danger);   // burns already, now worse
    CHECK(review::faultSeverity(row(User, true, 0.2)) == Severity::Note);    // as without it
    CHECK(review::faultSeverity(row(Drinking, false, 3)) == Severity::Caution);
    CHECK(review::faultSeverity(row(Nobody, false, 3)) == Severity::Note);
    CHECK_FALSE(review::faultSeverity(row(User, false, 12, false)));
}

TEST_CASE("faults are listed worst first, those not run last, equal ones as the study has them", "[review][faults]")
{
    using enum study::Harm;
    study::FaultsStudy study;
    study.rows = {row(Nobody, false, 0, false), row(Nobody, false, 1), row(Drinking, false, 9),
                  row(User, false, 2),          row(User, true, 20),   row(Nobody, false, 1)};
    CHECK(review::worstFirst(study) == std::vector<std::size_t>{4, 3, 2, 1, 5, 0});
}
