// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QElapsedTimer>
#include <QSlider>
#include <QTimer>
#include <QWidget>

#include "session/session.h"

class QComboBox;
class QLabel;
class QToolButton;

namespace tapward::app {

/// The slider of the case's seconds, with a mark for every event. Arrows 1 s, Page 10 s, Home and End.
class TimeSlider final : public QSlider {
    Q_OBJECT
public:
    explicit TimeSlider(QWidget* parent = nullptr);
    struct Mark {
        double t_s;
        QString text;
        study::Event::Weight weight;
    };
    void setMarks(std::vector<Mark> marks);
    const std::vector<Mark>& marks() const { return m_marks; }
    QSize sizeHint() const override;

protected:
    void paintEvent(QPaintEvent* event) override;
    bool event(QEvent* event) override;
    void mousePressEvent(QMouseEvent* event) override;

private:
    double xOf(double t_s) const;
    std::vector<Mark> m_marks;
};

/// Under the drawing: play, step, slider, and what second and how many gallons it is.
class TimeBar final : public QWidget {
    Q_OBJECT
public:
    explicit TimeBar(Session& session, QWidget* parent = nullptr);
    TimeSlider& slider() { return *m_slider; }
    QString readout() const;
    void togglePlay();
    void play();  ///< on from where it stands; nothing when it plays already
    bool isPlaying() const { return m_tick.isActive(); }
    void stepEvent(int direction);  ///< to the next or previous event

private:
    void refresh();
    void refreshTime();
    void advance();

    Session& m_session;
    TimeSlider* m_slider;
    QLabel* m_readout;
    QToolButton *m_play, *m_back, *m_forward;
    QComboBox* m_speed;
    QTimer m_tick;
    QElapsedTimer m_since;
    bool m_filling = false;
};

}  // namespace tapward::app
