// SPDX-License-Identifier: GPL-3.0-or-later
#include "panels/say.h"

#include <cmath>
#include <QCoreApplication>

#include "base/editable_number.h"
#include "session/message_text.h"

namespace tapward::app {

namespace {
QString tr(const char* text) { return QCoreApplication::translate("tapward::app", text); }
}  // namespace

QString plain(std::string_view text) { return QString::fromUtf8(text.data(), static_cast<qsizetype>(text.size())); }

QString say(std::string_view english) { return coreText(english); }

QString sayMessage(const Message& message, UnitSystem units)
{
    return message.empty() ? QString() : messageText(message, units);
}

QString sayProblem(const Problem& problem, UnitSystem units) { return problemText(problem, units); }

QString sayMeasure(double si, Quantity quantity, UnitSystem units)
{
    return QString::fromStdString(show(Measure{si, quantity}, units));
}

QString unitSymbol(Quantity quantity, UnitSystem units) { return plain(displayUnit(quantity, units).symbol); }

QString quantityName(Quantity quantity)
{
    switch (quantity) {
    case Quantity::None:
        return tr("Value");
    case Quantity::Percent:
        return tr("Share");
    case Quantity::Length:
        return tr("Length");
    case Quantity::Bore:
        return tr("Bore");
    case Quantity::Volume:
        return tr("Volume");
    case Quantity::Flow:
        return tr("Flow");
    case Quantity::Pressure:
        return tr("Pressure");
    case Quantity::Head:
        return tr("Head");
    case Quantity::Temperature:
        return tr("Temperature");
    case Quantity::TemperatureDifference:
        return tr("Temperature difference");
    case Quantity::Power:
        return tr("Heat");
    case Quantity::ElectricPower:
        return tr("Electric power");
    case Quantity::Energy:
        return tr("Heat energy");
    case Quantity::ElectricEnergy:
        return tr("Electric energy");
    case Quantity::Time:
        return tr("Time");
    case Quantity::Mass:
        return tr("Mass");
    case Quantity::Voltage:
        return tr("Voltage");
    case Quantity::Current:
        return tr("Current");
    case Quantity::Resistance:
        return tr("Resistance");
    case Quantity::Charge:
        return tr("Charge");
    case Quantity::FlowCoefficient:
        return tr("Flow coefficient");
    case Quantity::Conductivity:
        return tr("Conductivity");
    case Quantity::Speed:
        return tr("Speed");
    case Quantity::Money:
        return tr("Price");
    case Quantity::Altitude:
        return tr("Altitude");
    }
    return {};
}

QString quantityHead(const QString& name, Quantity quantity, UnitSystem units)
{
    const QString unit = unitSymbol(quantity, units);
    return unit.isEmpty() ? name : QStringLiteral("%1 (%2)").arg(name, unit);
}

QString editableNumber(double si, Quantity quantity, UnitSystem units)
{
    return QString::fromStdString(tapward::editableNumber({si, quantity}, units));
}

QString sayClock(double seconds)
{
    const int whole = static_cast<int>(std::floor(std::max(0.0, seconds) + 1e-9));
    const QLatin1Char zero('0');
    if (whole >= 3600)
        return QStringLiteral("%1:%2:%3")
            .arg(whole / 3600)
            .arg(whole / 60 % 60, 2, 10, zero)
            .arg(whole % 60, 2, 10, zero);
    return QStringLiteral("%1:%2").arg(whole / 60).arg(whole % 60, 2, 10, zero);
}

QString sayBasis(parts::Basis basis)
{
    switch (basis) {
    case parts::Basis::Measured:
        return tr("Measured");
    case parts::Basis::DataSheet:
        return tr("Data sheet");
    case parts::Basis::Estimated:
        return tr("Estimated");
    }
    return {};
}

QString sayStage(document::Stage stage)
{
    switch (stage) {
    case document::Stage::Existing:
        return tr("Existing");
    case document::Stage::Added:
        return tr("Added");
    case document::Stage::Removed:
        return tr("Removed");
    }
    return {};
}

QString sayView(document::View view)
{
    switch (view) {
    case document::View::Before:
        return tr("Before");
    case document::View::After:
        return tr("After");
    case document::View::Both:
        return tr("Both");
    }
    return {};
}

QString sayPart(const document::Part& part)
{
    const parts::PartKind* kind = parts::find(part.kind);
    return tr("%1, %2").arg(plain(part.tag), kind ? say(kind->title) : plain(part.kind));
}

QString sayWhere(const document::Part& part)
{
    const parts::PartKind* kind = parts::find(part.kind);
    const std::string name = kind && kind->field("name") ? document::values(part).text("name") : std::string();
    return name.empty() ? sayPart(part) : tr("%1, %2").arg(plain(part.tag), plain(name));
}

QString sayTag(const document::Drawing& drawing, document::PartId id)
{
    const document::Part* part = drawing.find(id);
    return part ? plain(part->tag) : QString();
}

}  // namespace tapward::app
