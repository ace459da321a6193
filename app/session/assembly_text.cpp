// SPDX-License-Identifier: GPL-3.0-or-later
#include "session/assembly_text.h"

#include <algorithm>
#include <QCoreApplication>

namespace tapward::app {

namespace {

QString translated(std::string_view english)
{
    return QCoreApplication::translate("core", std::string(english).c_str());
}

}  // namespace

QString wayTitle(document::ReturnWay way) { return translated(document::title(way)); }

QString pumpsTitle(document::PumpSet pumps) { return translated(document::title(pumps)); }

QString variantTitle(const document::Variant& variant)
{
    return QCoreApplication::translate("Assemblies", "%1, %2").arg(wayTitle(variant.way), pumpsTitle(variant.pumps));
}

std::string variantSymbol(const document::Variant& variant)
{
    std::string name = "loop_" + std::string(document::idOf(variant));
    std::ranges::replace(name, '.', '_');
    return name;
}

}  // namespace tapward::app
