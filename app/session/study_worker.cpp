// SPDX-License-Identifier: GPL-3.0-or-later
#include "session/study_worker.h"

#include <algorithm>
#include <atomic>
#include <QMetaObject>
#include <tuple>
#include <utility>

namespace tapward::app {

namespace {

template <class T>
std::function<void(StudyAnswers&)> into(StudySlot<T> StudyAnswers::* place,
                                        const std::shared_ptr<const document::Drawing>& drawing, Result<T> answer)
{
    auto slot = std::make_shared<const StudyAnswer<T>>(StudyAnswer<T>{drawing, std::move(answer)});
    return [place, slot = std::move(slot)](StudyAnswers& answers) { answers.*place = slot; };
}

const char* const kFaults = QT_TRANSLATE_NOOP("tapward::app::StudyWorker", "Single faults");

Result<review::WinterPlan> winterOf(const document::Drawing& drawing)
{
    auto plan = review::winterPlan(drawing);
    if (plan.steps.empty())
        return problem("Nothing in this drawing holds water.",
                       "Draw at least a supply, a heater and a tap, joined by pipes.");
    return plan;
}

}  // namespace

const std::vector<StudyWorker::Study>& StudyWorker::studies()
{
    // Quick ones first, so that there is something to look at.
    static const std::vector<Study> all{
        {QT_TR_NOOP("Loop curve"),
         [](const Asked& asked, const std::stop_token&, const Progress&) {
             return Keep(into(&StudyAnswers::loop, asked.drawing, study::loopCurves(*asked.drawing)));
         }},
        {QT_TR_NOOP("12 V wiring"),
         [](const Asked& asked, const std::stop_token& stop, const Progress&) {
             study::WiringOptions options;
             options.stop = stop;
             return Keep(into(&StudyAnswers::wiring, asked.drawing, study::wiringStudy(*asked.drawing, options)));
         }},
        {QT_TR_NOOP("Fire map"),
         [](const Asked& asked, const std::stop_token& stop, const Progress&) {
             study::FireMapOptions options;
             options.stop = stop;
             return Keep(into(&StudyAnswers::fire, asked.drawing, study::fireMap(*asked.drawing, options)));
         }},
        {QT_TR_NOOP("Winterizing"),
         [](const Asked& asked, const std::stop_token&, const Progress&) {
             return Keep(into(&StudyAnswers::winter, asked.drawing, winterOf(*asked.drawing)));
         }},
        {QT_TR_NOOP("Repeated presses"),
         [](const Asked& asked, const std::stop_token& stop, const Progress& progress) {
             study::PressesOptions options = asked.questions.presses;
             options.stop = stop;
             options.progress = progress;
             return Keep(into(&StudyAnswers::presses, asked.drawing, study::studyPresses(*asked.drawing, options)));
         }},
        {QT_TR_NOOP("Suggested stop"),
         [](const Asked& asked, const std::stop_token& stop, const Progress& progress) {
             study::StopOptions options = asked.questions.stop;
             options.stop = stop;
             options.progress = [progress](int done, int count) { progress(count > 0 ? 1.0 * done / count : 0.0); };
             return Keep(into(&StudyAnswers::stop, asked.drawing, study::suggestStop(*asked.drawing, options)));
         }},
        {kFaults,
         [](const Asked& asked, const std::stop_token& stop, const Progress& progress) {
             study::FaultsOptions options = asked.questions.faults;
             options.stop = stop;
             options.progress = progress;
             return Keep(into(&StudyAnswers::faults, asked.drawing, study::studyFaults(*asked.drawing, options)));
         }},
        {QT_TR_NOOP("Protections needed"),
         [](const Asked& asked, const std::stop_token& stop, const Progress& progress) {
             study::PressesOptions options = asked.questions.presses;
             options.stop = stop;
             options.progress = progress;
             return Keep(into(&StudyAnswers::safe, asked.drawing, study::findSafeSet(*asked.drawing, options)));
         }},
    };
    return all;
}

StudyWorker::StudyWorker(Session& session, QObject* parent) : QObject(parent), m_session(session)
{
    connect(&session, &Session::changed, this, [this] {
        m_current.clear();
        Q_EMIT agesChanged();
    });
    connect(&session, &Session::fileChanged, this, &StudyWorker::forgetOther);
    constexpr int kSoon_ms = 100;
    m_soon.setSingleShot(true);
    m_soon.setInterval(kSoon_ms);
    connect(this, &StudyWorker::progressed, this, [this] { m_session.setStudying(doing()); });
    connect(&m_soon, &QTimer::timeout, this, &StudyWorker::start);
    connect(&session, &Session::predictionChanged, this, &StudyWorker::keepUp);
}

void StudyWorker::setByItself(bool on)
{
    m_byItself = on;
    keepUp();
}

/// Of the drawing as it stands there are answers, or they are on their way.
void StudyWorker::keepUp()
{
    if (!m_byItself)
        return;
    const bool underWay = m_running && m_drawing && isCurrent(m_drawing);
    if (m_running && !underWay)
        cancel();  // at once: the next prediction wants the processor
    m_calledOff = m_calledOff && m_drawing && isCurrent(m_drawing);
    if (m_session.isStale() || !m_session.prediction() || underWay || m_calledOff)
        return;
    const auto isKnown = [this](const auto& slot) { return slot && !isStale(slot); };
    const bool known =
        isKnown(m_answers.presses) && isKnown(m_answers.stop) && isKnown(m_answers.faults) && isKnown(m_answers.safe);
    if (!known && !m_soon.isActive())
        m_soon.start();
}

/// The session judges by what is known.
void StudyWorker::teach()
{
    const auto& [presses, stop] = std::tie(m_answers.presses, m_answers.stop);
    if (!presses || !stop || isStale(presses) || isStale(stop))
        return;
    Studied studied;
    studied.drawing = presses->drawing;
    if (presses->answer)
        studied.presses = {presses, &*presses->answer};
    else
        studied.noPresses = presses->answer.error().what;
    if (stop->answer)
        studied.stop = {stop, &*stop->answer};
    else
        studied.noStop = stop->answer.error().what;
    m_session.learn(std::move(studied));
}

StudyWorker::~StudyWorker() { m_thread.request_stop(); }

void StudyWorker::startFaults()
{
    const auto at = std::ranges::find(studies(), kFaults, &Study::title);
    begin(m_running ? std::nullopt : std::optional(static_cast<std::size_t>(at - studies().begin())));
}

void StudyWorker::begin(std::optional<std::size_t> only)
{
    m_soon.stop();
    m_calledOff = false;
    m_thread.request_stop();
    m_running = true;
    m_at = only.value_or(0);
    m_only = only;
    m_share = 0;
    const int generation = ++m_generation;
    m_drawing = std::make_shared<const document::Drawing>(m_session.drawing());
    // The new thread waits for the old one to let go, so that nobody here has to.
    m_thread = std::jthread([this, generation, only, asked = Asked{m_drawing, m_questions},
                             before = std::move(m_thread)](const std::stop_token& stop) mutable {
        before = {};
        run(stop, generation, asked, only);
    });
    Q_EMIT progressed();
}

void StudyWorker::callOff()
{
    m_calledOff = true;
    cancel();
}

void StudyWorker::cancel()
{
    if (!m_running)
        return;
    m_thread.request_stop();
    ++m_generation;
    m_running = false;
    Q_EMIT progressed();
    Q_EMIT answersChanged();
}

void StudyWorker::forgetOther()
{
    // Without a single undo step the drawing is the one that was opened: an answer about another drawing is
    // then about another file.
    if (m_session.undoStack().count() > 0)
        return;
    if (m_running && m_drawing && !sameForStudies(*m_drawing, m_session.drawing()))
        cancel();
    if (isStale(m_answers.loop) || isStale(m_answers.wiring) || isStale(m_answers.fire) || isStale(m_answers.winter)
        || isStale(m_answers.presses) || isStale(m_answers.faults) || isStale(m_answers.stop)
        || isStale(m_answers.safe))
        m_answers = {};
    Q_EMIT answersChanged();
}

void StudyWorker::tell(int generation, std::function<void()> news)
{
    QMetaObject::invokeMethod(
        this,
        [this, generation, news = std::move(news)] {
            if (generation == m_generation)
                news();
        },
        Qt::QueuedConnection);
}

void StudyWorker::run(const std::stop_token& stop, int generation, const Asked& asked, std::optional<std::size_t> only)
{
    const std::size_t first = only.value_or(0), end = only ? first + 1 : studies().size();
    for (std::size_t i = first; i < end && !stop.stop_requested(); ++i) {
        tell(generation, [this, i] {
            m_at = i;
            m_share = 0;
            m_since.start();
            Q_EMIT progressed();
        });
        const auto progress = [this, generation, last = std::make_shared<std::atomic<int>>(-1)](double share) {
            const int percent = std::clamp(static_cast<int>(share * 100), 0, 100);
            if (last->exchange(percent) == percent)
                return;
            tell(generation, [this, share] {
                m_share = std::max(m_share, share);
                Q_EMIT progressed();
            });
        };
        Keep keep = studies()[i].work(asked, stop, progress);
        if (stop.stop_requested())
            return;
        tell(generation, [this, keep = std::move(keep)] {
            const auto before = std::pair(m_answers.presses, m_answers.stop);
            keep(m_answers);
            Q_EMIT answersChanged();
            if (before != std::pair(m_answers.presses, m_answers.stop))
                teach();
        });
    }
    tell(generation, [this] {
        m_running = false;
        Q_EMIT progressed();
        Q_EMIT answersChanged();
    });
}

QString StudyWorker::doing() const
{
    if (!m_running)
        return {};
    const QString title = tr(studies()[m_at].title);
    const QString which = m_only ? title : tr("%1 of %2: %3").arg(m_at + 1).arg(studies().size()).arg(title);
    const auto left_s =
        m_since.isValid() ? study::secondsLeft(m_share, 1e-3 * static_cast<double>(m_since.elapsed())) : std::nullopt;
    constexpr double kWorthSaying_s = 5;
    if (!left_s || *left_s < kWorthSaying_s)
        return which;
    // Rounded: an estimate that counts seconds is not believed.
    const int shown_s = *left_s < 60 ? qRound(*left_s / 5) * 5 : qRound(*left_s / 60) * 60;
    return tr("%1, about %2 left")
        .arg(which, QString::fromStdString(show({1.0 * shown_s, Quantity::Time}, m_session.units())));
}

bool StudyWorker::isCurrent(const std::shared_ptr<const document::Drawing>& studied) const
{
    const auto [place, fresh] = m_current.try_emplace(studied, false);
    if (fresh)
        place->second = sameForStudies(*studied, m_session.drawing());
    return place->second;
}

}  // namespace tapward::app
