// SPDX-License-Identifier: GPL-3.0-or-later
#include "panels/answers.h"

#include <algorithm>
#include <cmath>
#include <iterator>
#include <QCoreApplication>

#include "panels/icons.h"
#include "panels/safety_words.h"
#include "panels/say.h"
#include "report/report.h"
#include "review/margin.h"
#include "review/scald.h"

namespace tapward::app {

namespace {

QString tr(const char* text) { return QCoreApplication::translate("tapward::app", text); }

constexpr double kNearlyAlways = 0.95;  // of the samples: less is no promise that the heater lights

Margin marginOf(const study::LoopAnswer& loop, const study::StopStudy* samples, UnitSystem units)
{
    Margin margin;
    margin.flow_m3s = *loop.flow_m3s;
    margin.activation_m3s = *loop.activationFlow_m3s;
    const QString flow = sayMeasure(margin.flow_m3s, Quantity::Flow, units);
    const QString need = sayMeasure(margin.activation_m3s, Quantity::Flow, units);
    const double ratio = margin.flow_m3s / margin.activation_m3s;
    const QString percent = QString::number(std::lround(std::abs(ratio - 1) * 100));
    if (ratio < 1) {
        margin.word = tr("Does not light");
        margin.weight = review::Severity::Danger;
        margin.text = tr("%1 is %2 % under the %3 the heater needs to light.").arg(flow, percent, need);
    } else {
        const bool thin = ratio < review::kSafeMargin;
        const bool lostLow = loop.flowLowVolts_m3s && *loop.flowLowVolts_m3s < margin.activation_m3s;
        const bool often = !samples || samples->lights >= kNearlyAlways;
        margin.word = lostLow || !often ? tr("May not light") : thin ? tr("Thin margin") : tr("Lights");
        margin.weight = thin || lostLow || !often ? review::Severity::Caution : review::Severity::Note;
        margin.text = tr("%1 is %2 % over the %3 the heater needs to light.").arg(flow, percent, need);
        if (lostLow)
            margin.text += QLatin1Char(' ')
                           + tr("At %1 the loop moves %2: the heater does not light.")
                                 .arg(sayMeasure(study::kLowVolts, Quantity::Voltage, units),
                                      sayMeasure(*loop.flowLowVolts_m3s, Quantity::Flow, units));
        if (!often)
            margin.text += QLatin1Char(' ')
                           + tr("It lights in %1 of the samples of what is not known.")
                                 .arg(sayMeasure(samples->lights, Quantity::Percent, units));
    }
    return margin;
}

void setValue(Answer& answer, const Measure& value, UnitSystem units, bool atLeast = false)
{
    const Shown parts = shown(value, units);
    answer.figure = plain(parts.number);
    answer.unit = plain(parts.unit);
    answer.value = plain(show(value, units));
    if (atLeast) {
        answer.figure = tr("at least %1").arg(answer.figure);
        answer.value = tr("at least %1").arg(answer.value);
    }
}

void add(Answers& answers, const char* id, const QString& label, std::optional<double> si, Quantity quantity,
         const QString& note, UnitSystem units)
{
    if (!si)
        return;
    Answer answer;
    answer.id = QString::fromLatin1(id);
    answer.label = label;
    setValue(answer, {*si, quantity}, units);
    answer.note = note;
    answer.has = true;
    answers.lines.push_back(std::move(answer));
}

/// A line without an answer joins the one that lacks it for the same reason: a drawing just begun says each once.
void addOpen(std::vector<Answer>& open, Answer answer)
{
    const auto same = std::ranges::find(open, answer.note, &Answer::note);
    if (same == open.end()) {
        open.push_back(std::move(answer));
        return;
    }
    QString label = answer.label;
    label.replace(0, 1, label.left(1).toLower());
    same->label += QStringLiteral(", ") + label;
}

}  // namespace

QString sayBurn(double celsius)
{
    const auto seconds = review::wholeBurnSeconds(celsius);
    if (!seconds)
        return tr("Below the published burn times; that does not make it safe for everybody.");
    return tr("About %1 to a serious burn, adult skin; children and elders sooner.").arg(sayBurnTime(*seconds));
}

Answers collectAnswers(const Session& session)
{
    Answers answers;
    if (session.drawing().parts.empty()) {
        answers.noMargin = tr("Nothing is drawn yet. What it takes: a supply, a heater and a tap, joined by pipes.");
        return answers;
    }
    const UnitSystem units = session.units();
    const study::Prediction* prediction = session.prediction();
    if (!prediction) {
        const auto problem = session.predictionProblem();
        answers.noMargin = problem ? sayProblem(*problem, units) : QString();
        return answers;
    }
    static const study::Assessment nothing;
    const study::Assessment& assessment = session.assessment() ? *session.assessment() : nothing;
    const study::LoopAnswer& loop = prediction->loop;
    if (loop.flow_m3s && loop.activationFlow_m3s && *loop.activationFlow_m3s > 0)
        answers.margin = marginOf(loop, assessment.stop.get(), units);
    else
        answers.noMargin = sayMessage(loop.reason, units);

    std::vector<Answer> open;
    for (const auto& line : report::keyAnswers(session.drawing(), *prediction, assessment)) {
        if (answers.margin && (line.id == "loop_flow" || line.id == "flow_margin" || line.id == "activation_flow"))
            continue;  // the bar says it
        Answer answer;
        answer.id = plain(line.id);
        answer.label = say(line.label);
        answer.has = line.has;
        if (line.has) {
            setValue(answer, line.value, units, line.atLeast);
            answer.note = sayMessage(line.note, units);
        } else {
            answer.value = answer.figure = tr("No answer");
            answer.note = sayMessage(line.reason, units);
        }
        if (line.heat && *line.heat != review::Severity::Note)
            answer.weight = line.heat;
        if (line.heat && line.value.si > review::kColdLineLimit_C) {
            const QString burn = sayBurn(line.value.si);
            answer.note = answer.note.isEmpty() ? burn : burn + QLatin1Char(' ') + answer.note;
        }
        if (answer.has)
            answers.lines.push_back(std::move(answer));
        else
            addOpen(open, std::move(answer));
    }
    add(answers, "flow_low_volts", tr("Loop flow at 10.5 V"), loop.flowLowVolts_m3s, Quantity::Flow,
        loop.flowLowVolts_m3s && loop.activationFlow_m3s && *loop.flowLowVolts_m3s < *loop.activationFlow_m3s
            ? tr("Under the activation flow: a tired battery loses the heater.")
            : QString(),
        units);
    add(answers, "flow_high_volts", tr("Loop flow at 14.4 V"), loop.flowHighVolts_m3s, Quantity::Flow, {}, units);
    std::ranges::move(open, std::back_inserter(answers.lines));

    for (const auto& item : loop.headBudget) {
        const document::Part* part = session.drawing().find(item.part);
        const Measure loss{item.loss_Pa, Quantity::Pressure};
        const Shown parts = shown(loss, units);
        answers.head.push_back({item.part, part ? sayPart(*part) : QString(), plain(show(loss, units)),
                                plain(parts.number), plain(parts.unit), item.share});
    }
    for (const auto& message : session.cautions())
        answers.cautions.push_back(sayMessage(message, units));
    return answers;
}

QString answersAsText(const Answers& answers, bool stale)
{
    QStringList text;
    if (stale)
        text << tr("Recalculating. These are the last figures, before the newest change.");
    if (answers.margin)
        text << answers.margin->word + QStringLiteral(": ") + answers.margin->text;
    else if (!answers.noMargin.isEmpty())
        text << answers.noMargin;
    for (const auto& line : answers.lines) {
        QString row = QStringLiteral("%1: %2").arg(line.label, line.value);
        if (line.weight)
            row.prepend(look::severityWord(*line.weight) + QStringLiteral(". "));
        if (!line.note.isEmpty())
            row += QStringLiteral(". %1").arg(line.note);
        text << row;
    }
    if (!answers.head.empty()) {
        text << QString() << tr("Where the pump's head goes:");
        for (const auto& line : answers.head)
            text << QStringLiteral("%1: %2, %3 %").arg(line.text, line.loss).arg(std::lround(line.share * 100));
    }
    if (!answers.cautions.empty()) {
        text << QString();
        for (const auto& caution : answers.cautions)
            text << caution;
    }
    return text.join(QLatin1Char('\n'));
}

}  // namespace tapward::app
