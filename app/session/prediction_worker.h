// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <condition_variable>
#include <mutex>
#include <optional>
#include <stop_token>
#include <thread>

#include "session/session.h"

namespace tapward::app {

/// What is to be predicted: its own copy, so that the drawing can go on changing.
struct Session::Job {
    std::uint64_t generation;
    document::Drawing drawing;
    std::string caseName;  ///< gets a snapshot
    std::shared_ptr<const study::Prediction> known;  ///< set: only the snapshot or the judgement is missing
    std::shared_ptr<const Studied> studied;  ///< of this drawing, as far as studies can tell; null before there is any
    bool judge = true;  ///< assessment, findings and cautions are asked for
    std::optional<document::Case> played;  ///< is run too, with a snapshot
};

struct Session::Answer {
    std::uint64_t generation = 0;
    std::shared_ptr<const study::Prediction> prediction;
    std::optional<Problem> problem;
    std::shared_ptr<const study::CaseResult> played;
    std::shared_ptr<const study::Assessment> assessment;
    std::optional<std::vector<review::Finding>> findings;  ///< nothing = as before, assessment and cautions too
    std::vector<Message> cautions;
};

/// One background thread that always works on the newest job: a new one stops the one in flight.
struct Session::Worker {
    explicit Worker(Session& session);
    ~Worker();
    void start(Job job);

private:
    void run(const std::stop_token& quit);
    std::optional<Answer> work(Job job, const std::stop_token& stop) const;

    Session& m_session;
    std::mutex m_mutex;
    std::condition_variable_any m_wake;
    std::optional<Job> m_next;
    std::stop_source m_current;
    std::jthread m_thread;  // last: starts when the rest is there
};

}  // namespace tapward::app
