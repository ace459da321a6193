// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <string>

#include "document/drawing.h"

// Drawings as large as one likes, that work: for tests of what large ones cost.
namespace tapward::test {

/// A coach with this many taps in a row, each teed off a hot and a cold line: seven parts a tap and four more.
/// Taps stand in rows of twenty. Its one case opens the first few of them.
class LargeCoach {
public:
    explicit LargeCoach(int taps, double pipe_m = 0.5) : m_pipe_m(pipe_m)
    {
        drawing.job.title = "A row of taps";
        const auto city = add("city_inlet", "C1", {0, 0});
        const auto first = add("tee", "T1", {6, 0});
        const auto heater = add("tankless_heater", "WH1", {12, 0});
        pipe(city, "outlet", first, "run_a");
        pipe(first, "branch", heater, "cold");
        document::PartId hot = heater, cold = first;
        std::string hotPort = "hot", coldPort = "run_b";
        for (int i = 0; i < taps; ++i) {
            const double x = 20.0 + 12 * (i % 20), y = 24.0 * (i / 20);
            const std::string n = std::to_string(i + 1);
            const auto tap = add("faucet", "F" + n, {x, y + 10});
            const auto hotTee = add("tee", "H" + n, {x - 3, y});
            const auto coldTee = add("tee", "K" + n, {x + 3, y + 3});
            pipe(hot, hotPort, hotTee, "run_a");
            pipe(cold, coldPort, coldTee, "run_a");
            pipe(hotTee, "branch", tap, "hot");
            pipe(coldTee, "branch", tap, "cold");
            hot = hotTee;
            cold = coldTee;
            hotPort = coldPort = "run_b";
        }
        document::Case draw;
        draw.name = "Morning";
        draw.duration_s = 120;
        for (const auto& part : drawing.parts) {
            if (part.kind == "faucet" && draw.actions.size() < 3) {
                draw.actions.push_back(open(part.id, 5.0 + 10.0 * static_cast<double>(draw.actions.size())));
            }
        }
        drawing.cases.push_back(draw);
    }

    static document::Action open(document::PartId tap, double at_s)
    {
        document::Action action;
        action.at_s = at_s;
        action.kind = document::ActionKind::OpenOutlet;
        action.part = tap;
        return action;
    }

    document::Drawing drawing;

private:
    document::PartId add(const char* kind, std::string tag, document::Point at)
    {
        document::Part part;
        part.id = drawing.nextId++;
        part.kind = kind;
        part.tag = std::move(tag);
        part.at = at;
        drawing.parts.push_back(part);
        return part.id;
    }
    void pipe(document::PartId from, std::string fromPort, document::PartId to, std::string toPort)
    {
        add("pipe_run", "L" + std::to_string(drawing.nextId), {});
        drawing.parts.back().ends = {document::PipeEnd{from, std::move(fromPort), {}},
                                     document::PipeEnd{to, std::move(toPort), {}}};
        drawing.parts.back().entries["length_m"] = {m_pipe_m, parts::Basis::Estimated};
    }

    double m_pipe_m;
};

}  // namespace tapward::test
