// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QString>
#include <QWidget>
#include <vector>

class QVBoxLayout;

namespace tapward::app {

/// A sample drawing that travels inside the program; opens as an untitled copy.
struct Sample {
    QString resource;  ///< ":/samples/..."
    QString title;
};
std::vector<Sample> samples();

/// What the window shows while no drawing is open.
class StartPage final : public QWidget {
    Q_OBJECT
public:
    explicit StartPage(QWidget* parent = nullptr);
    void refresh();  ///< recent files may have changed

Q_SIGNALS:
    void newRequested();
    void openRequested();
    void sampleRequested(const QString& resource);
    void fileRequested(const QString& path);

private:
    QVBoxLayout* m_recent;
};

}  // namespace tapward::app
