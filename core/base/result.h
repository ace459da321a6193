// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <tl/expected.hpp>

#include "base/message.h"

namespace tapward {

/// Why something cannot be done, in the technician's words. Core throws nothing of its own.
struct Problem {
    Message what;       ///< the fault with its numbers
    Message remedy;     ///< the next thing to try
    std::string where;  ///< place in a file ("/parts/12/fields/length_m") or a part's tag; may be empty
};

/// A T or a Problem, with the member names of std::expected.
template <class T>
using Result = tl::expected<T, Problem>;

/// Return this where a Result is expected: `return problem({"Reading {0} ...", {i}}, {"Check ..."})`.
inline tl::unexpected<Problem> problem(Message what, Message remedy, std::string where = {})
{
    return tl::unexpected<Problem>(Problem{std::move(what), std::move(remedy), std::move(where)});
}

}  // namespace tapward
