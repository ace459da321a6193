// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QWidget>

#include "base/result.h"
#include "document/drawing.h"

class QLabel;
class QPushButton;

namespace tapward::app {

class Session;

/// A picture file as it goes into a drawing: turned as the camera says, without what else the file carries, made
/// smaller until it keeps the bounds of document/picture.h. PNG where that is small enough, else JPEG.
Result<QByteArray> planPictureFrom(const QString& path);

/// What one does with a floor plan, in the details panel: choose its picture, scale it, read lengths off it.
class FloorPlanBox final : public QWidget {
    Q_OBJECT
public:
    FloorPlanBox(Session& session, document::PartId plan, QWidget* parent = nullptr);
    void refresh();
    void takePicture(const QString& path);

Q_SIGNALS:
    void scaleRequested(tapward::document::PartId plan);

private:
    void choose();
    void complain(const std::optional<Problem>& problem);

    Session& m_session;
    document::PartId m_plan;
    QLabel *m_state, *m_complaint;
    QPushButton *m_scale, *m_lengths;
};

/// Asks for the real length between two points of a plan and scales it. False when given up.
bool askPlanScale(Session& session, document::PartId plan, document::Point a, document::Point b, QWidget* parent);

}  // namespace tapward::app
