// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QString>
#include <string>

#include "document/proposal.h"

namespace tapward::app {

/// "Return by the cold line", in the reader's language.
QString wayTitle(document::ReturnWay way);
/// "two circulators in parallel"
QString pumpsTitle(document::PumpSet pumps);
/// "Return by the cold line, two circulators in parallel"
QString variantTitle(const document::Variant& variant);
/// The name of its picture in resources/symbols.
std::string variantSymbol(const document::Variant& variant);

}  // namespace tapward::app
