// SPDX-License-Identifier: GPL-3.0-or-later
#include "review/fault_weight.h"

#include <algorithm>
#include <numeric>

namespace tapward::review {

bool worseThanSound(const study::FaultRow& row)
{
    constexpr double kHotterBy_K = 0.5;  // what the coarser cases of the study leave open
    return row.run && row.harm != study::Harm::Nobody && (!row.harmsSoundToo || row.change_K.value_or(0) > kHotterBy_K);
}

std::optional<Severity> faultSeverity(const study::FaultRow& row)
{
    if (!row.run) {
        return std::nullopt;
    }
    if (!worseThanSound(row)) {
        return Severity::Note;
    }
    return row.harm == study::Harm::User ? Severity::Danger : Severity::Caution;
}

std::vector<std::size_t> worstFirst(const study::FaultsStudy& study)
{
    std::vector<std::size_t> order(study.rows.size());
    std::iota(order.begin(), order.end(), std::size_t{0});
    const auto rank = [&](std::size_t i) {
        const auto severity = faultSeverity(study.rows[i]);
        return severity ? static_cast<int>(*severity) : -1;
    };
    std::stable_sort(order.begin(), order.end(), [&](std::size_t a, std::size_t b) {
        if (rank(a) != rank(b)) {
            return rank(a) > rank(b);
        }
        return study.rows[a].run && study.rows[a].change_K.value_or(-1e9) > study.rows[b].change_K.value_or(-1e9);
    });
    return order;
}

}  // namespace tapward::review
