// SPDX-License-Identifier: GPL-3.0-or-later
#include "panels/time_bar.h"

#include <algorithm>
#include <cmath>
#include <QComboBox>
#include <QHBoxLayout>
#include <QHelpEvent>
#include <QLabel>
#include <QMouseEvent>
#include <QPainter>
#include <QStyle>
#include <QStyleOptionSlider>
#include <QToolButton>
#include <QToolTip>

#include "look/spacing.h"
#include "look/theme.h"
#include "panels/chart_data.h"
#include "panels/flow_layout.h"
#include "panels/icons.h"
#include "panels/quiet_combo.h"
#include "panels/say.h"

namespace tapward::app {

TimeSlider::TimeSlider(QWidget* parent) : QSlider(Qt::Horizontal, parent)
{
    setSingleStep(1);
    setPageStep(10);
    setFocusPolicy(Qt::StrongFocus);
    setMinimumWidth(96);
}

QSize TimeSlider::sizeHint() const
{
    QSize size = QSlider::sizeHint();
    size.rheight() = std::max(size.height(), 18) + 12;
    return size;
}

void TimeSlider::setMarks(std::vector<Mark> marks)
{
    m_marks = std::move(marks);
    update();
}

double TimeSlider::xOf(double t_s) const
{
    const int handle = style()->pixelMetric(QStyle::PM_SliderLength, nullptr, this);
    const double span = std::max(1, width() - handle);
    return handle / 2.0 + (maximum() > 0 ? t_s / maximum() : 0) * span;
}

void TimeSlider::paintEvent(QPaintEvent* event)
{
    QSlider::paintEvent(event);
    QPainter painter(this);
    painter.setRenderHint(QPainter::Antialiasing);
    const Theme theme = Theme::of(palette());
    const double bottom = height() - 1.0;
    for (const auto& mark : m_marks) {
        const double x = xOf(mark.t_s);
        // Shape by weight: a triangle for danger, a diamond for caution, a bar for the rest.
        painter.setPen(Qt::NoPen);
        if (mark.weight == study::Event::Weight::Danger) {
            painter.setBrush(theme.danger);
            painter.drawPolygon(QPolygonF{{x, bottom - 8}, {x - 5, bottom}, {x + 5, bottom}});
        } else if (mark.weight == study::Event::Weight::Caution) {
            painter.setBrush(theme.caution);
            painter.drawPolygon(QPolygonF{{x, bottom - 8}, {x - 4, bottom - 4}, {x, bottom}, {x + 4, bottom - 4}});
        } else {
            painter.setBrush(palette().color(QPalette::WindowText));
            painter.drawRect(QRectF(x - 0.75, bottom - 6, 1.5, 6));
        }
    }
}

bool TimeSlider::event(QEvent* event)
{
    if (event->type() != QEvent::ToolTip)
        return QSlider::event(event);
    const auto* help = static_cast<QHelpEvent*>(event);
    QStringList near;
    for (const auto& mark : m_marks)
        if (std::abs(xOf(mark.t_s) - help->pos().x()) <= 6)
            near << QStringLiteral("%1  %2").arg(sayClock(mark.t_s), mark.text);
    if (near.isEmpty())
        QToolTip::hideText();
    else
        QToolTip::showText(help->globalPos(), near.join(QLatin1Char('\n')), this);
    return true;
}

void TimeSlider::mousePressEvent(QMouseEvent* event)
{
    // A press beside the handle goes there at once instead of one page at a time.
    QStyleOptionSlider option;
    initStyleOption(&option);
    const QRect handle = style()->subControlRect(QStyle::CC_Slider, &option, QStyle::SC_SliderHandle, this);
    if (event->button() == Qt::LeftButton && !handle.contains(event->position().toPoint())) {
        const int length = style()->pixelMetric(QStyle::PM_SliderLength, nullptr, this);
        setValue(QStyle::sliderValueFromPosition(minimum(), maximum(), qRound(event->position().x()) - length / 2,
                                                 width() - length));
    }
    QSlider::mousePressEvent(event);
}

TimeBar::TimeBar(Session& session, QWidget* parent)
    : QWidget(parent), m_session(session), m_slider(new TimeSlider), m_readout(new QLabel), m_play(new QToolButton),
      m_back(new QToolButton), m_forward(new QToolButton), m_speed(new QuietCombo)
{
    setAccessibleName(tr("Time in the case"));
    m_slider->setAccessibleName(tr("Time"));
    const auto dress = [](QToolButton* button, const char* icon, const QString& text) {
        button->setIcon(look::icon(QString::fromLatin1(icon)));
        button->setToolTip(text);
        button->setAccessibleName(text);
        button->setAutoRaise(true);
    };
    dress(m_play, "play", tr("Play"));
    dress(m_back, "step-back", tr("Previous Event"));
    dress(m_forward, "step-forward", tr("Next Event"));
    auto* unseen = new QLabel(tr("Speed of play"), this);
    unseen->setBuddy(m_speed);
    unseen->hide();
    m_speed->setAccessibleName(unseen->text());
    m_speed->setToolTip(tr("Speed of play"));
    for (const int speed : {1, 2, 5, 10, 20})
        m_speed->addItem(tr("%1\u00D7").arg(speed), speed);
    m_speed->setCurrentIndex(2);
    static_cast<QComboBox*>(m_speed)->setMinimumContentsLength(3);
    m_readout->setMinimumWidth(
        fontMetrics().horizontalAdvance(QStringLiteral("00:00 of 00:00 \u00B7 0.00 gal pumped \u00B7 0.00 gpm")));

    auto* line = new FlowLayout(this);
    line->setContentsMargins(look::kNext, look::kNear, look::kNext, look::kNear);
    line->setSpacing(look::kNear);
    line->addWidget(m_back);
    line->addWidget(m_play);
    line->addWidget(m_forward);
    line->addWidget(m_slider);
    line->addWidget(m_speed);
    line->addWidget(m_readout);

    m_tick.setInterval(40);
    connect(&m_tick, &QTimer::timeout, this, &TimeBar::advance);
    connect(m_play, &QToolButton::clicked, this, &TimeBar::togglePlay);
    connect(m_back, &QToolButton::clicked, this, [this] { stepEvent(-1); });
    connect(m_forward, &QToolButton::clicked, this, [this] { stepEvent(1); });
    connect(m_slider, &QSlider::valueChanged, this, [this](int seconds) {
        if (!m_filling)
            m_session.setTime(seconds);
    });
    connect(&session, &Session::predictionChanged, this, &TimeBar::refresh);
    connect(&session, &Session::caseChanged, this, &TimeBar::refresh);
    connect(&session, &Session::viewChanged, this, &TimeBar::refresh);
    connect(&session, &Session::timeChanged, this, &TimeBar::refreshTime);
    refresh();
}

void TimeBar::refresh()
{
    const auto* result = m_session.currentCase();
    const bool answered = result && !result->noAnswer && !result->time_s.empty();
    m_filling = true;
    m_slider->setRange(0, answered ? static_cast<int>(std::floor(result->duration_s)) : 0);
    std::vector<TimeSlider::Mark> marks;
    if (answered)
        for (const auto& event : result->events)
            marks.push_back({event.t_s, sayMessage(event.what, m_session.units()), event.weight});
    m_slider->setMarks(std::move(marks));
    m_filling = false;
    for (QWidget* widget : std::initializer_list<QWidget*>{m_slider, m_play, m_back, m_forward, m_speed})
        widget->setEnabled(answered);
    if (!answered)
        m_tick.stop();
    refreshTime();
}

void TimeBar::refreshTime()
{
    m_filling = true;
    m_slider->setValue(static_cast<int>(std::floor(m_session.time() + 1e-9)));
    m_filling = false;
    m_readout->setText(readout());
    m_slider->setAccessibleDescription(readout());
}

QString TimeBar::readout() const
{
    const auto* result = m_session.currentCase();
    if (!result || result->noAnswer || result->time_s.empty())
        return m_session.isStale() ? tr("Recalculating\u2026") : tr("No run to show");
    QStringList parts{tr("%1 of %2").arg(sayClock(m_session.time()), sayClock(result->duration_s))};
    const std::size_t at = sampleAt(*result, m_session.time());
    const auto value = [&](const char* id) -> std::optional<double> {
        const auto* series = result->find(id);
        if (!series || at >= series->values.size() || !std::isfinite(series->values[at]))
            return std::nullopt;
        return series->values[at];
    };
    if (const auto pumped = value("pumped_volume"))
        parts << tr("%1 pumped").arg(sayMeasure(*pumped, Quantity::Volume, m_session.units()));
    if (const auto flow = value("loop_flow"))
        parts << sayMeasure(*flow, Quantity::Flow, m_session.units());
    return parts.join(QStringLiteral(" \u00B7 "));
}

void TimeBar::togglePlay()
{
    const auto* result = m_session.currentCase();
    if (m_tick.isActive() || !result) {
        m_tick.stop();
    } else {
        if (m_session.time() >= result->duration_s - 1e-6)
            m_session.setTime(0);
        // Where motion is unwelcome the picture moves in whole seconds instead of gliding.
        const bool still = !style()->styleHint(QStyle::SH_Widget_Animation_Duration, nullptr, this);
        m_tick.setInterval(still ? 1000 : 40);
        m_since.start();
        m_tick.start();
    }
    const bool plays = m_tick.isActive();
    m_play->setIcon(look::icon(plays ? QStringLiteral("pause") : QStringLiteral("play")));
    m_play->setToolTip(plays ? tr("Pause") : tr("Play"));
    m_play->setAccessibleName(m_play->toolTip());
}

void TimeBar::play()
{
    if (!isPlaying())
        togglePlay();
}

void TimeBar::advance()
{
    const double passed = static_cast<double>(m_since.restart()) / 1000.0;
    const auto* result = m_session.currentCase();
    const double next = m_session.time() + passed * m_speed->currentData().toInt();
    m_session.setTime(next);
    if (!result || next >= result->duration_s)
        togglePlay();
}

void TimeBar::stepEvent(int direction)
{
    const auto& marks = m_slider->marks();
    double found = -1;
    for (const auto& mark : marks) {
        if (direction > 0 && mark.t_s > m_session.time() + 1e-6 && (found < 0 || mark.t_s < found))
            found = mark.t_s;
        if (direction < 0 && mark.t_s < m_session.time() - 1e-6 && mark.t_s > found)
            found = mark.t_s;
    }
    if (found >= 0)
        m_session.setTime(found);
    else if (direction < 0)
        m_session.setTime(0);
}

}  // namespace tapward::app
