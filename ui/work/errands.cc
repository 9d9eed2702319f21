#include "ui/work/errands.h"

#include <algorithm>
#include <mutex>

#include <QCoreApplication>
#include <QTimer>

namespace crosstick::work {
namespace {

/// So long an errand that was given up is waited for: those that look whether they are stopped need less.
constexpr int kPatienceMs = 500;

}  // namespace

std::optional<int> Course::percent() const {
    const int of = of_;
    return of > 0 ? std::optional(std::clamp(100 * done_ / of, 0, 100)) : std::nullopt;
}

class Errands::Door {
  public:
    explicit Door(Errands* errands) : errands_(errands) {}
    /// Any thread. What finds nobody any more is dropped.
    void tell(std::function<void(Errands&)> what) {
        const std::scoped_lock lock(mutex_);
        if (errands_ != nullptr) {
            QMetaObject::invokeMethod(
                errands_, [errands = errands_, what = std::move(what)] { what(*errands); }, Qt::QueuedConnection);
        }
    }
    void close() {
        const std::scoped_lock lock(mutex_);
        errands_ = nullptr;
    }

  private:
    std::mutex mutex_;
    Errands* errands_;
};

Errands::Errands(std::function<void()> before)
    : before_(std::move(before)),
      door_(std::make_shared<Door>(this)),
      files_(Runners::of(1)),
      makings_(Runners::of(2)) {}

Errands::~Errands() {
    door_->close();
    for (const Errand& errand : running_) {
        errand.job->course.stop();
    }
    QElapsedTimer since;
    since.start();
    while (!areBack()) {
        if (since.elapsed() > kPatienceMs) {
            leaveBehind();
        }
    }
}

void Errands::start(Lane lane, const QString& words, GivingUp givingUp, std::function<void(Course&)> make,
                    std::function<void()> take, std::function<void()> givenUp) {
    const auto job = std::make_shared<Job>();
    job->givingUp = givingUp;
    job->make = std::move(make);
    job->course.meanwhile_ = [door = door_, job = std::weak_ptr(job)](std::function<void()> call) {
        door->tell([job, call = std::move(call)](const Errands& errands) {
            if (errands.isRunning(job.lock().get())) {
                call();
            }
        });
    };
    running_.push_back({words, job, {}, std::move(take), std::move(givenUp)});
    running_.back().since.start();
    const auto isGivenUp = [job] { return job->givingUp == GivingUp::Allowed && job->course.isStopped(); };
    const auto does = [job, isGivenUp, door = door_, before = before_] {
        if (before && !isGivenUp()) {
            before();
        }
        if (!isGivenUp()) {
            job->make(job->course);
        }
        job->make = {};  // what it holds goes here, not on the window's thread
        door->tell([job](Errands& errands) { errands.answered(job.get()); });
    };
    (lane == Lane::Files ? files_ : makings_)->give({does, isGivenUp});
    Q_EMIT changed();
}

bool Errands::isRunning(const Job* job) const {
    return std::any_of(running_.begin(), running_.end(), [&](const Errand& each) { return each.job.get() == job; });
}

void Errands::answered(const Job* job) {
    const auto at =
        std::find_if(running_.begin(), running_.end(), [&](const Errand& each) { return each.job.get() == job; });
    if (at == running_.end()) {
        return;  // given up
    }
    const auto take = std::move(at->take);
    running_.erase(at);
    Q_EMIT changed();
    take();
}

bool Errands::areBack() {
    constexpr std::chrono::milliseconds kStep{10};
    const bool files = files_->areBack(kStep);
    return makings_->areBack(kStep) && files;
}

void Errands::leaveBehind() {
    files_->leaveBehind();
    makings_->leaveBehind();
}

std::optional<Doing> Errands::doing() const {
    if (running_.empty()) {
        return std::nullopt;
    }
    const Errand& first = running_.front();
    return Doing{first.words, first.job->course.percent(), static_cast<int>(first.since.elapsed() / 1000),
                 first.job->givingUp == GivingUp::Allowed};
}

/// A lane whose thread does not come back from what was given up goes on with another one after a moment.
void Errands::giveUp() {
    const auto kept = std::stable_partition(running_.begin(), running_.end(), [](const Errand& errand) {
        return errand.job->givingUp == GivingUp::Refused;
    });
    const std::vector<Errand> gone(std::make_move_iterator(kept), std::make_move_iterator(running_.end()));
    running_.erase(kept, running_.end());
    for (const Errand& errand : gone) {
        errand.job->course.stop();
        if (errand.givenUp) {
            errand.givenUp();
        }
    }
    QTimer::singleShot(kPatienceMs, this, &Errands::leaveBehind);
    Q_EMIT changed();
}

void Errands::hear() {
    QCoreApplication::sendPostedEvents(this, QEvent::MetaCall);
}

Ending Errands::finish() {
    for (Errand& errand : running_) {
        errand.givenUp = {};
    }
    giveUp();
    QElapsedTimer since;
    since.start();
    while (!areBack() || !running_.empty()) {  // an answer may send the next one off
        hear();
        if (since.elapsed() > kPatienceMs) {
            leaveBehind();
        }
    }
    return files_->hasLeftBehind() || makings_->hasLeftBehind() ? Ending::LeftBehind : Ending::Whole;
}

}  // namespace crosstick::work
