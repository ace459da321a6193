// SPDX-License-Identifier: GPL-3.0-or-later
#include "document/ports.h"

#include <algorithm>

namespace tapward::document {

PipesAtPorts::PipesAtPorts(const Drawing& drawing)
{
    for (const Part& pipe : drawing.parts) {
        for (const PipeEnd& end : pipe.ends) {
            if (end.part != kNoPart) {
                m_seats.push_back({end.part, end.port, &pipe});
            }
        }
    }
    std::ranges::stable_sort(m_seats, {}, &Seat::part);
}

const Part* PipesAtPorts::operator()(PartId part, std::string_view port) const
{
    for (auto seat = std::ranges::lower_bound(m_seats, part, {}, &Seat::part);
         seat != m_seats.end() && seat->part == part; ++seat) {
        if (seat->port == port) {
            return seat->pipe;
        }
    }
    return nullptr;
}

}  // namespace tapward::document
