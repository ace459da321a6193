// SPDX-License-Identifier: GPL-3.0-or-later
#include "study/ranges.h"

#include <algorithm>
#include <cmath>
#include <cstdint>
#include <numeric>
#include <random>

#include "document/references.h"

namespace tapward::study {
namespace {

using document::Part;
using document::PartId;
using parts::Basis;

constexpr const char* kPractice = "common practice, no published source";

/// What the basis of a field says about its error.
struct Width {
    double measured, sheet, estimated;
    double of(Basis basis) const
    {
        return basis == Basis::Measured ? measured : basis == Basis::DataSheet ? sheet : estimated;
    }
};

std::string basisName(Basis basis)
{
    return basis == Basis::Measured ? "measured" : basis == Basis::DataSheet ? "from a data sheet" : "estimated";
}

bool present(const Part& part) { return document::isPresent(part.stage, document::View::After); }

template <class Visit>
void eachOf(const document::Drawing& drawing, std::string_view kind, Visit visit)
{
    for (const Part& part : drawing.parts) {
        if (part.kind == kind && present(part)) {
            visit(part);
        }
    }
}

const Part* firstOf(const document::Drawing& drawing, std::string_view kind)
{
    const Part* found = nullptr;
    eachOf(drawing, kind, [&](const Part& part) { found = found ? found : &part; });
    return found;
}

/// Range of one number field: by its basis, or the trade's range where nobody filled it in.
Range ofField(const Part& part, const char* key, std::string id, Text label, Width width, double tradeLeast,
              double tradeMost, const char* trade)
{
    const parts::Values values = document::values(part);
    const parts::Field& field = *values.kind().field(key);
    Range range;
    range.id = std::move(id);
    range.label = label;
    range.means = Range::Means::Value;
    range.quantity = field.quantity;
    const double value = values.number(key);
    if (!values.isSet(key)) {
        range.least = std::min(value, tradeLeast);
        range.most = std::max(value, tradeMost);
        range.source = std::string("not filled in; trade figures: ") + trade;
    } else {
        const double off = width.of(values.basis(key));
        range.least = value * (1 - off);
        range.most = value * (1 + off);
        range.source = basisName(values.basis(key)) + "; width: " + kPractice;
    }
    range.least = std::clamp(range.least, field.least, field.most);
    range.most = std::clamp(range.most, field.least, field.most);
    return range;
}

void setNumber(Part& part, const char* key, double value)
{
    const parts::Field& field = *document::kindOf(part).field(key);
    const Basis basis = document::values(part).basis(key);
    part.entries[key] = {std::clamp(value, field.least, field.most), basis};
}

}  // namespace

LoopParts loopParts(const document::Drawing& drawing)
{
    LoopParts found;
    if (const Part* box = firstOf(drawing, "controller")) {
        const parts::Values values = document::values(*box);
        found.controller = box->id;
        found.stopSensor = document::namedPart(values.text("stop_sensor"));
        found.flowSensor = document::namedPart(values.text("flow_sensor"));
        for (PartId* id : {&found.stopSensor, &found.flowSensor}) {
            const Part* part = drawing.find(*id);
            *id = part && present(*part) ? *id : document::kNoPart;
        }
    }
    return found;
}

std::vector<Range> ranges(const document::Drawing& drawing, const document::Case& script)
{
    std::vector<Range> found;
    const LoopParts parts = loopParts(drawing);

    // Lengths are off together: the way a tube is thought to run is longer or shorter than it does run.
    constexpr Width kLength{0.03, 0.10, 0.20};
    double length_m = 0, off_m = 0;
    bool hidden = false;
    eachOf(drawing, "pipe_run", [&](const Part& pipe) {
        const parts::Values values = document::values(pipe);
        const double own = values.number("length_m");
        length_m += own;
        off_m += own * kLength.of(values.basis("length_m"));
        hidden =
            hidden || (pipe.stage == document::Stage::Existing && own > 1 && values.basis("elbows") != Basis::Measured);
    });
    if (length_m > 0) {
        const double off = off_m / length_m;
        found.push_back({"pipe_lengths", "Pipe lengths, of those drawn", Range::Means::Factor, Quantity::Percent,
                         1 - off, 1 + off,
                         std::string("measured 3 %, data sheet 10 %, estimated 20 %, by length; width: ") + kPractice});
    }
    if (hidden) {
        found.push_back({"hidden_fittings", "Hidden elbows along existing pipe", Range::Means::Shift, Quantity::None, 0,
                         1, std::string("not counted behind walls; width: ") + kPractice});
    }
    if (const Part* heater = firstOf(drawing, "tankless_heater")) {
        found.push_back(ofField(*heater, "activation_flow_m3s", "activation_flow", "Activation flow",
                                {0.03, 0.10, 0.20}, 0.4 * us::kGpm, 0.75 * us::kGpm,
                                "0.4..0.75 gpm, published data sheets"));
        found.push_back(ofField(*heater, "minimum_input_W", "minimum_fire", "Minimum fire (gas input)",
                                {0.05, 0.10, 0.25}, 13000 * us::kBtuPerHour, 20000 * us::kBtuPerHour,
                                "13,000..20,000 Btu/h, published for home units"));
    }
    if (const Part* battery = firstOf(drawing, "battery")) {
        Range volts = ofField(*battery, "voltage_V", "voltage", "Battery voltage", {0.02, 0.04, 0}, 11.5, 14.4,
                              "11.5 V low to 14.4 V on the charger, common practice");
        const parts::Values values = document::values(*battery);
        if (values.isSet("voltage_V") && values.basis("voltage_V") == Basis::Estimated) {
            volts.least = std::min(11.5, values.number("voltage_V"));
            volts.most = std::max(14.4, values.number("voltage_V"));
            volts.source = "estimated; trade figures: 11.5 V low to 14.4 V on the charger, common practice";
        }
        found.push_back(volts);
    }
    if (firstOf(drawing, "circulator")) {
        double off = 0;
        eachOf(drawing, "circulator", [&](const Part& pump) {
            off = std::max(off, Width{0.03, 0.07, 0.15}.of(document::values(pump).basis("curve")));
        });
        found.push_back({"pump_head", "Pump head, of the sheet's", Range::Means::Factor, Quantity::Percent, 1 - off,
                         1 + off, std::string("by the basis of the curve; width: ") + kPractice});
    }
    found.push_back({"ambient", "Air around the pipes, against the case", Range::Means::Shift,
                     Quantity::TemperatureDifference, -8, 8, std::string("a day's weather; width: ") + kPractice});
    found.push_back({"supply_temperature", "Supply and standing water, against the case", Range::Means::Shift,
                     Quantity::TemperatureDifference, -5, 5, std::string("the season's; width: ") + kPractice});
    if (const Part* sensor = drawing.find(parts.stopSensor)) {
        const bool clipped = document::values(*sensor).text("mounting") == "clipped";
        found.push_back(ofField(*sensor, "lag_s", "sensor_lag", "Lag of the stop sensor", {0.10, 0.25, 0.50},
                                clipped ? 10 : 1, clipped ? 40 : 5,
                                clipped ? "clipped on PEX 10..40 s, not checked" : "in water 1..5 s, not checked"));
    }
    if (const Part* sensor = drawing.find(parts.flowSensor)) {
        found.push_back(ofField(*sensor, "gain", "flow_sensor", "Flow sensor, reading against truth",
                                {0.02, 0.03, 0.10}, 0.9, 1.1, "1 % claimed, 10 % often met, not checked"));
    }
    if (script.start_C - 5 < 1) {  // water stays water
        for (Range& range : found) {
            if (range.id == "supply_temperature") {
                range.least = std::min(0.0, 1 - script.start_C);
            }
        }
    }
    return found;
}

Sample withValues(const document::Drawing& drawing, const document::Case& script, std::span<const Range> ranges,
                  std::span<const double> values)
{
    Sample sample{drawing, script, 0, 1};
    const LoopParts parts = loopParts(drawing);
    if (const Part* sensor = drawing.find(parts.stopSensor)) {
        sample.sensorLag_s = document::values(*sensor).number("lag_s");
    }
    if (const Part* sensor = drawing.find(parts.flowSensor)) {
        sample.sensorGain = document::values(*sensor).number("gain");
    }
    for (std::size_t r = 0; r < ranges.size(); ++r) {
        const std::string& id = ranges[r].id;
        const double value = values[r];
        for (Part& part : sample.drawing.parts) {
            const parts::Values own = document::values(part);
            if (part.kind == "pipe_run" && id == "pipe_lengths") {
                setNumber(part, "length_m", own.number("length_m") * value);
            } else if (part.kind == "pipe_run" && id == "hidden_fittings" && part.stage == document::Stage::Existing
                       && own.basis("elbows") != Basis::Measured) {
                // A count in the file; the model takes any number.
                setNumber(part, "elbows", own.number("elbows") + value * own.number("length_m") / 3);
            } else if (part.kind == "tankless_heater" && id == "activation_flow") {
                const double share = value / own.number("activation_flow_m3s");
                setNumber(part, "hold_flow_m3s", own.number("hold_flow_m3s") * share);
                setNumber(part, "activation_flow_m3s", value);
            } else if (part.kind == "tankless_heater" && id == "minimum_fire") {
                setNumber(part, "minimum_input_W", std::min(value, own.number("maximum_input_W")));
            } else if (part.kind == "battery" && id == "voltage") {
                setNumber(part, "voltage_V", value);
            } else if (part.kind == "circulator" && id == "pump_head") {
                parts::Curve curve = own.curve("curve");
                for (parts::CurvePoint& point : curve) {
                    point.y *= value;
                }
                part.entries["curve"] = {curve, own.basis("curve")};
            } else if (part.kind == "city_inlet" && id == "supply_temperature") {
                setNumber(part, "temperature_C", own.number("temperature_C") + value);
            } else if (part.id == parts.stopSensor && id == "sensor_lag") {
                sample.sensorLag_s = value;
                setNumber(part, "lag_s", value);
            } else if (part.id == parts.flowSensor && id == "flow_sensor") {
                sample.sensorGain = value;
                setNumber(part, "gain", value);
            } else if (id == "ambient" && document::kindOf(part).field("bay_C")) {
                setNumber(part, "bay_C", own.number("bay_C") + value);
            }
        }
        if (id == "ambient" && sample.script.ambient_C) {
            *sample.script.ambient_C += value;
        }
        if (id == "supply_temperature") {
            sample.script.start_C += value;
            if (sample.script.supply_C) {
                *sample.script.supply_C += value;
            }
        }
    }
    return sample;
}

std::vector<double> latinHypercube(std::span<const Range> ranges, int count, std::uint64_t seed)
{
    const std::size_t n = static_cast<std::size_t>(std::max(count, 0)), dimensions = ranges.size();
    std::vector<double> points(n * dimensions);
    std::mt19937_64 engine(seed);
    // Not the standard distributions: theirs differ between libraries.
    const auto unit = [&engine] { return static_cast<double>(engine() >> 11) * 0x1.0p-53; };
    std::vector<std::size_t> strip(n);
    for (std::size_t d = 0; d < dimensions; ++d) {
        std::iota(strip.begin(), strip.end(), std::size_t{0});
        for (std::size_t i = n; i > 1; --i) {
            std::swap(strip[i - 1], strip[std::min(i - 1, static_cast<std::size_t>(unit() * static_cast<double>(i)))]);
        }
        for (std::size_t i = 0; i < n; ++i) {
            const double share = (static_cast<double>(strip[i]) + unit()) / static_cast<double>(n);
            points[i * dimensions + d] = ranges[d].least + share * (ranges[d].most - ranges[d].least);
        }
    }
    return points;
}

}  // namespace tapward::study
