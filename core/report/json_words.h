// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <cmath>
#include <optional>

#include <nlohmann/json.hpp>

#include "document/drawing.h"
#include "study/safe_set.h"

// How numbers, words and parts stand in every JSON answer; private to this room.
namespace tapward::report {

using Json = nlohmann::ordered_json;

/// null for none and for what is not finite.
inline Json number(const std::optional<double>& value)
{
    return value && std::isfinite(*value) ? Json(*value) : Json(nullptr);
}

inline Json words(const Message& message)
{
    return message.empty() ? Json(nullptr) : Json(render(message, UnitSystem::Metric));
}

inline Json tagJson(const document::Drawing& drawing, document::PartId id)
{
    const document::Part* part = drawing.find(id);
    return part ? Json(part->tag) : Json(nullptr);
}

const char* placeId(study::HeatPlace place);  ///< "outlet_hot"
Json changeJson(const document::Drawing& drawing, const study::SafeChange& change);

}  // namespace tapward::report
