// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QString>
#include <QWidget>
#include <vector>

class QToolButton;
class QVBoxLayout;

namespace tapward::app {

/// A sample drawing that travels inside the program; opens as an untitled copy.
struct Sample {
    QString resource;       ///< ":/samples/..."
    QString title;          ///< as in the file
    QString shown() const;  ///< the title in the reader's language
};
const std::vector<Sample>& samples();
/// Layouts to begin with: existing plumbing of invented coaches, ":/templates/...".
const std::vector<Sample>& templates();

/// What the window shows while no drawing is open.
class StartPage final : public QWidget {
    Q_OBJECT
public:
    explicit StartPage(QWidget* parent = nullptr);
    void refresh();    ///< recent files may have changed
    void takeFocus();  ///< to the first way to begin

Q_SIGNALS:
    void newRequested();
    void firstJobRequested();
    void openRequested();
    void sampleRequested(const QString& resource);
    void fileRequested(const QString& path);

protected:
    void changeEvent(QEvent* event) override;
    bool eventFilter(QObject* watched, QEvent* event) override;
    void keyPressEvent(QKeyEvent* event) override;

private:
    QWidget* templateButtons();
    void paintTemplates();

    QVBoxLayout* m_recent;
    QWidget* m_tips;
    std::vector<QToolButton*> m_templates;
    bool m_pictures = false;  ///< painted, or about to be
};

}  // namespace tapward::app
