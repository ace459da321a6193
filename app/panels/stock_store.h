// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <functional>
#include <QString>

#include "document/stock.h"

namespace tapward::app {

/// The shop's stock file: in the user's data folder unless another place was chosen. Read anew for every change
/// and written whole, so two windows do not lose each other's items.
class StockStore {
public:
    QString path() const;
    void setPath(const QString& path);  ///< remembered; empty = the usual place
    static QString usualPath();

    /// A file that is not there is an empty list.
    Result<document::StockList> load() const { return read(path()); }
    static Result<document::StockList> read(const QString& path);
    static std::optional<Problem> write(const QString& path, const document::StockList& list);
    /// Reads, changes, writes. A file that cannot be read is never written over.
    std::optional<Problem> change(const std::function<std::optional<Problem>(document::StockList&)>& change);
};

}  // namespace tapward::app
