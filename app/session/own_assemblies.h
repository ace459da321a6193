// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <optional>
#include <QString>
#include <vector>

#include "document/drawing.h"

namespace tapward::app {

/// One assembly a person has put by.
struct OwnAssembly {
    QString file;   ///< name inside the folder: "pump_set.tapward"
    QString title;  ///< as given
};

/// The assemblies a person keeps: drawings in the program's own format in one folder of their data directory
/// ($XDG_DATA_HOME/tapward/assemblies). Nothing outside that folder is ever read, written or deleted.
class OwnAssemblies {
public:
    static constexpr std::size_t kMostBytes = 1 << 20;
    static constexpr std::size_t kMostParts = 500;
    static constexpr int kMostFiles = 200;

    OwnAssemblies();                               ///< in the person's data directory
    explicit OwnAssemblies(QString folder) : m_folder(std::move(folder)) {}

    QString folder() const { return m_folder; }
    /// By title. Files that cannot be read, are too large or are no plain files are left out.
    std::vector<OwnAssembly> list() const;
    /// Keeps these parts and the pipes between them under a title; what has the same file name is not touched, the new
    /// one gets a number. @return the file's name
    Result<QString> keep(const QString& title, const document::Drawing& drawing,
                         const std::vector<document::PartId>& ids) const;
    /// The parts, read by the same checks as any drawing.
    Result<std::vector<document::Part>> parts(const QString& file) const;
    std::optional<Problem> remove(const QString& file) const;

private:
    std::optional<QString> pathOf(const QString& file) const;
    Result<document::Drawing> read(const QString& file) const;

    QString m_folder;
};

}  // namespace tapward::app
