// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <utility>
#include <vector>

#include "document/edit.h"
#include "document/written_size.h"

namespace tapward::document {

/// Why one step cannot be made. The length of the drawing is not looked at: for that the whole edit counts.
std::optional<Problem> stepRefusal(const Drawing& drawing, const Step& step);

/// Collects the steps of one gesture while keeping the drawing as it stands after them.
class Gesture {
public:
    explicit Gesture(const Drawing& drawing) : m_before(drawing), m_now(drawing) {}

    const Drawing& now() const { return m_now; }
    /// Nothing more is made after a step that cannot be.
    bool failed() const { return m_problem.has_value(); }

    void make(Step step)
    {
        if (!m_problem) {
            m_problem = stepRefusal(m_now, step);
            if (!m_problem) {
                apply(m_now, Edit{{}, {step}});
                m_steps.push_back(std::move(step));
            }
        }
    }

    /// The edit, or why a step of it cannot be made.
    Result<Edit> finish(Message title)
    {
        if (!m_problem && m_steps.empty()) {
            m_problem = refusal(m_before, Edit{});
        }
        if (!m_problem) {
            m_problem = lengthFlaw(m_before, m_now);
        }
        if (m_problem) {
            return tl::unexpected(*m_problem);
        }
        return Edit{std::move(title), std::move(m_steps)};
    }

private:
    const Drawing& m_before;
    Drawing m_now;
    std::vector<Step> m_steps;
    std::optional<Problem> m_problem;
};

}  // namespace tapward::document
