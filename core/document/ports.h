// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <string_view>
#include <vector>

#include "document/drawing.h"

namespace tapward::document {

/// Drawing::pipeAt() for whoever asks of many ports: the pipes are looked through once. Good while the drawing does
/// not change.
class PipesAtPorts {
public:
    explicit PipesAtPorts(const Drawing& drawing);
    const Part* operator()(PartId part, std::string_view port) const;

private:
    struct Seat {
        PartId part;
        std::string_view port;
        const Part* pipe;
    };
    std::vector<Seat> m_seats;  ///< by part
};

}  // namespace tapward::document
