// SPDX-License-Identifier: GPL-3.0-or-later
#include "session/prediction_worker.h"

#include <algorithm>
#include <QMetaObject>
#include <utility>

namespace tapward::app {

namespace {

study::Options optionsFor(const std::stop_token& stop)
{
    study::Options options;
    options.stop = stop;
    return options;
}

}  // namespace

Session::Worker::Worker(Session& session)
    : m_session(session), m_thread([this](const std::stop_token& quit) { run(quit); })
{
}

Session::Worker::~Worker()
{
    m_thread.request_stop();
    {
        const std::lock_guard lock(m_mutex);
        m_current.request_stop();
    }
    m_thread.join();
}

void Session::Worker::start(Job job)
{
    {
        const std::lock_guard lock(m_mutex);
        m_next = std::move(job);
        m_current.request_stop();
    }
    m_wake.notify_one();
}

void Session::Worker::run(const std::stop_token& quit)
{
    while (true) {
        std::optional<Job> job;
        std::stop_token stop;
        {
            std::unique_lock lock(m_mutex);
            if (!m_wake.wait(lock, quit, [this] { return m_next.has_value(); }))
                return;
            job = std::exchange(m_next, std::nullopt);
            m_current = std::stop_source();
            if (quit.stop_requested())
                return;
            stop = m_current.get_token();
        }
        auto answer = work(std::move(*job), stop);
        if (!answer || stop.stop_requested())
            continue;
        QMetaObject::invokeMethod(
            &m_session, [session = &m_session, a = std::move(*answer)]() mutable { session->receive(std::move(a)); },
            Qt::QueuedConnection);
    }
}

std::optional<Session::Answer> Session::Worker::work(Job job, const std::stop_token& stop) const
{
    Answer answer;
    answer.generation = job.generation;
    study::Prediction prediction;
    if (job.known) {
        prediction = *job.known;
    } else {
        auto options = optionsFor(stop);
        options.snapshots = job.drawing.findCase(job.caseName) != nullptr;
        options.snapshotCase = job.caseName;
        auto all = study::predict(job.drawing, options);
        if (stop.stop_requested())
            return std::nullopt;
        if (all)
            prediction = std::move(*all);
        else
            answer.problem = std::move(all.error());
    }
    if (job.judge) {
        const auto& studied = job.studied;
        answer.assessment = std::make_shared<const study::Assessment>(
            studied ? study::assess(job.drawing, prediction, studied->presses, studied->noPresses, studied->stop,
                                    studied->noStop)
                    : study::assess(job.drawing, prediction));
        // What the drawing itself shows is worth saying even when nothing can be predicted.
        answer.findings = review::review(job.drawing, prediction, *answer.assessment);
        if (answer.problem)
            return answer;
        answer.cautions = review::cautions(job.drawing, prediction, *answer.assessment);
    }
    if (job.played) {
        document::Drawing alone = job.drawing;
        alone.cases = {*job.played};
        auto options = optionsFor(stop);
        options.snapshots = true;
        auto one = study::predict(alone, options);
        if (stop.stop_requested())
            return std::nullopt;
        if (one && !one->cases.empty())
            answer.played = std::make_shared<const study::CaseResult>(std::move(one->cases.front()));
    }
    if (job.known && (job.judge || job.played)) {
        answer.prediction = job.known;
        return answer;
    }
    // Only another case was chosen: its snapshot is all that is missing.
    if (job.known && job.drawing.findCase(job.caseName) != nullptr) {
        auto options = optionsFor(stop);
        options.onlyCase = job.caseName;
        options.snapshots = true;
        auto one = study::predict(job.drawing, options);
        if (stop.stop_requested())
            return std::nullopt;
        const auto place = std::ranges::find(prediction.cases, job.caseName, &study::CaseResult::name);
        if (one && !one->cases.empty() && place != prediction.cases.end())
            *place = std::move(one->cases.front());
    }
    answer.prediction = std::make_shared<const study::Prediction>(std::move(prediction));
    return answer;
}

}  // namespace tapward::app
