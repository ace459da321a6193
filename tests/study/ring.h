// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <string>

#include "document/drawing.h"

namespace tapward::test {

/// The shortest loop there is: WH1 - P1 - CV1 - back, joined by tube without length, plus battery, controller
/// and fuse where asked for. For checks against printed answers.
struct Ring {
    document::Drawing drawing;

    Ring()
    {
        const auto heater = add("tankless_heater", "WH1"), pump = add("circulator", "P1");
        const auto check = add("check_valve", "CV1");
        pipe(heater, "hot", pump, "inlet");
        pipe(pump, "outlet", check, "inlet");
        pipe(check, "outlet", heater, "cold");
        set("CV1", "flow_coefficient_m3s_sqrtPa", 2.4e-2);  // as good as none
    }
    document::PartId add(const std::string& kind, const std::string& tag)
    {
        document::Part part;
        part.id = drawing.nextId++;
        part.kind = kind;
        part.tag = tag;
        drawing.parts.push_back(part);
        return part.id;
    }
    document::PartId pipe(document::PartId from, const std::string& fromPort, document::PartId to,
                          const std::string& toPort)
    {
        const document::PartId id = add("pipe_run", "L" + std::to_string(drawing.nextId));
        document::Part& part = *drawing.find(id);
        part.ends[0] = {from, fromPort, {}};
        part.ends[1] = {to, toPort, {}};
        part.entries["length_m"] = {0.0, parts::Basis::Measured};
        return id;
    }
    void set(const std::string& tag, const std::string& key, parts::Value value,
             parts::Basis basis = parts::Basis::Measured)
    {
        for (document::Part& part : drawing.parts) {
            if (part.tag == tag) {
                part.entries[key] = {std::move(value), basis};
                return;
            }
        }
    }
};

}  // namespace tapward::test
