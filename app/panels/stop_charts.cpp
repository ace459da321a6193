// SPDX-License-Identifier: GPL-3.0-or-later
// The two charts of the stop study.
#include <algorithm>
#include <cmath>
#include <QButtonGroup>
#include <QHBoxLayout>
#include <QLabel>
#include <QVBoxLayout>

#include "panels/choice_button.h"
#include "panels/safety_plot.h"
#include "panels/safety_table.h"
#include "panels/say.h"
#include "panels/stop_page.h"

namespace tapward::app {

StopBandsPage::StopBandsPage(Session& session, const StudyWorker& worker)
    : SafetyPage(session, worker), m_summary(new QLabel), m_byVolume(new ChoiceButton), m_byTime(new ChoiceButton),
      m_chart(nullptr)
{
    auto* beside = new QWidget;
    auto* line = new QHBoxLayout(beside);
    line->setContentsMargins(0, 0, 0, 0);
    auto* axis = new QButtonGroup(this);
    const auto choice = [&](QToolButton* button, const QString& text) {
        button->setText(text);
        button->setAccessibleName(text);
        button->setCheckable(true);
        button->setMinimumHeight(24);
        axis->addButton(button);
        line->addWidget(button, 0, Qt::AlignTop);
    };
    choice(m_byVolume, tr("By Volume"));
    choice(m_byTime, tr("By Time"));
    m_byVolume->setChecked(true);
    m_summary->setWordWrap(true);
    line->addWidget(m_summary, 1);
    m_chart = new ChartAndTable(tr("Warm-up over what is not known"), beside);
    auto* all = new QVBoxLayout(this);
    all->setContentsMargins(0, 0, 0, 0);
    all->addWidget(m_chart);
    connect(m_byVolume, &QToolButton::toggled, this, &StopBandsPage::refresh);
}

void StopBandsPage::refresh()
{
    if (!hasAnswer())
        return;
    const study::StopStudy& study = *m_worker.answers().stop->answer;
    const UnitSystem units = m_session.units();
    const bool byVolume = m_byVolume->isChecked();
    const study::Band& band = byVolume ? study.byVolume : study.byTime;
    const Quantity along = byVolume ? Quantity::Volume : Quantity::Time;
    const auto warm = [units](double celsius) { return toDisplay({celsius, Quantity::Temperature}, units); };
    PlotContent content;
    content.units = units;
    content.stale = isStale();
    content.bottom = along;
    content.left = Quantity::Temperature;
    content.bottomName = byVolume ? tr("Pumped") : tr("Since the press");
    content.leftName = tr("Water at the tap");
    const double limit = warm(study.limits.tap_C);
    double low = warm(study.target_C), high = limit;
    PlotContent::Line lines[3];
    QPolygonF back;
    PlotContent::Area between;
    std::vector<std::vector<SafetyCell>> rows;
    for (std::size_t i = 0; i < band.x.size(); ++i) {
        if (!std::isfinite(band.low[i]) || !std::isfinite(band.middle[i]) || !std::isfinite(band.high[i]))
            continue;
        const double x = toDisplay({band.x[i], along}, units);
        lines[0].points << QPointF(x, warm(band.high[i]));
        lines[1].points << QPointF(x, warm(band.middle[i]));
        lines[2].points << QPointF(x, warm(band.low[i]));
        between.outline << lines[0].points.back();
        back.prepend(lines[2].points.back());
        low = std::min(low, lines[2].points.back().y());
        high = std::max(high, lines[0].points.back().y());
        rows.push_back({SafetyCell::measure(band.x[i], along, units),
                        SafetyCell::measure(band.low[i], Quantity::Temperature, units),
                        SafetyCell::measure(band.middle[i], Quantity::Temperature, units),
                        SafetyCell::measure(band.high[i], Quantity::Temperature, units)});
    }
    m_chart->table().fill(
        {content.bottomName, tr("10 % are colder than"), tr("Half are colder than"), tr("90 % are colder than")}, rows);
    between.outline << back;
    between.style = 1;
    between.name = tr("8 of 10 samples");
    content.areas.push_back(std::move(between));
    const QString names[3] = {tr("9 of 10 are colder"), tr("middle"), tr("1 of 10 is colder")};
    const int styles[3] = {8, 0, 1};
    for (int i = 0; i < 3; ++i) {
        lines[i].name = names[i];
        lines[i].style = styles[i];
        lines[i].heavy = i == 1;
        content.lines.push_back(std::move(lines[i]));
    }
    content.toX = band.x.empty() ? 1 : toDisplay({band.x.back(), along}, units);
    content.fromY = std::floor(low / 10) * 10;
    content.toY = std::ceil((high + 2) / 10) * 10;
    content.levels.push_back({warm(study.target_C), false, tr("target"), false});
    content.levels.push_back(
        {limit, false, tr("limit %1").arg(sayMeasure(study.limits.tap_C, Quantity::Temperature, units)), true});
    QString summary = tr("Water at the tap while it warms up and nothing stops the run, over %1 samples of what is not "
                         "known.")
                          .arg(study.samples);
    if (const auto* best = study.best()) {
        const auto at = byVolume ? best->volume_m3 : best->time_s;
        if (at)
            content.levels.push_back({toDisplay({*at, along}, units), true, tr("suggested stop"), false});
        summary += QLatin1Char(' ') + tr("Suggested stop: %1.").arg(sayStop(*best, units));
    }
    m_summary->setText(summary);
    content.description = summary;
    m_chart->plot().show(std::move(content));
}

namespace {

ChartPage::Shown ranking(const study::StopStudy& study, UnitSystem units)
{
    PlotContent content;
    content.units = units;
    content.bottom = Quantity::None;
    content.bottomName =
        StopRankingPage::tr("Colder at the tap  \u2190  more of it makes the water  \u2192  warmer at the tap");
    content.fromX = -1;
    content.toX = 1;
    const auto count = study.influences.size();
    content.toY = static_cast<double>(count);
    content.rowNames.resize(count);
    std::vector<std::vector<SafetyCell>> rows;
    for (std::size_t i = 0; i < count; ++i) {
        const study::Influence& influence = study.influences[i];
        const std::size_t row = count - 1 - i;  // biggest on top
        content.rowNames[row] = say(influence.range.label);
        PlotContent::Area bar;
        const double y = static_cast<double>(row);
        bar.outline = {{0, y + 0.2}, {influence.coefficient, y + 0.2}, {influence.coefficient, y + 0.8}, {0, y + 0.8}};
        bar.style = influence.coefficient < 0 ? 1 : 0;
        bar.hatch = influence.coefficient < 0 ? Qt::BDiagPattern : Qt::SolidPattern;
        content.areas.push_back(std::move(bar));
        const auto end = [&](double value) {
            return sayMeasure(value,
                              influence.range.means == study::Range::Means::Factor ? Quantity::Percent
                                                                                   : influence.range.quantity,
                              units);
        };
        SafetyCell weight(QString::number(influence.coefficient, 'f', 2));
        weight.order = -std::abs(influence.coefficient);
        weight.number = true;
        rows.push_back({say(influence.range.label), weight,
                        influence.coefficient < 0 ? StopRankingPage::tr("colder at the tap")
                                                  : StopRankingPage::tr("warmer at the tap"),
                        StopRankingPage::tr("%1 to %2").arg(end(influence.range.least), end(influence.range.most)),
                        say(influence.range.source)});
    }
    QString summary = StopRankingPage::tr("Measure this first: %1.").arg(say(study.influences.front().range.label));
    summary +=
        QLatin1Char(' ')
        + StopRankingPage::tr("The longer the bar, the more the water at the tap depends on it when the run stops.");
    if (study.rankFit < 0.7)
        summary += QLatin1Char(' ')
                   + StopRankingPage::tr("The order is only a hint: it explains %1 of the differences.")
                         .arg(sayMeasure(study.rankFit, Quantity::Percent, units));
    return {summary,
            {StopRankingPage::tr("What is not known"), StopRankingPage::tr("How much it matters (0 to 1)"),
             StopRankingPage::tr("More of it makes"), StopRankingPage::tr("Range"),
             StopRankingPage::tr("Where the range comes from")},
            std::move(rows),
            std::move(content)};
}

}  // namespace

StopRankingPage::StopRankingPage(Session& session, const StudyWorker& worker)
    : ChartPage(session, worker, tr("What matters most"))
{
}

bool StopRankingPage::hasAnswer() const
{
    const auto& slot = m_worker.answers().stop;
    return slot && slot->answer && !slot->answer->influences.empty();
}

void StopRankingPage::refresh()
{
    if (!hasAnswer())
        return;
    showAnswer(m_worker.answers().stop, [this](const study::StopStudy& study, const document::Drawing&) {
        return ranking(study, m_session.units());
    });
}

}  // namespace tapward::app
