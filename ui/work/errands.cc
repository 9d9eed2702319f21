#include "ui/work/errands.h"

#include <algorithm>

#include <QCoreApplication>

namespace crosstick::work {

std::optional<int> Course::percent() const {
    const int of = of_;
    return of > 0 ? std::optional(std::clamp(100 * done_ / of, 0, 100)) : std::nullopt;
}

Errands::Errands(std::function<void()> before) : before_(std::move(before)) {
    files_.setMaxThreadCount(1);
    makings_.setMaxThreadCount(2);
}

Errands::~Errands() {
    for (const auto& errand : running_) {
        errand->course.stop();
    }
    files_.waitForDone();
    makings_.waitForDone();
}

void Errands::start(Lane lane, const QString& words, GivingUp givingUp, std::function<void(Course&)> make,
                    std::function<void()> take, std::function<void()> givenUp) {
    auto errand = std::make_shared<Errand>();
    errand->words = words;
    errand->givingUp = givingUp;
    errand->givenUp = std::move(givenUp);
    errand->since.start();
    running_.push_back(errand);
    QThreadPool& pool = lane == Lane::Files ? files_ : makings_;
    pool.start([this, errand, make = std::move(make), take = std::move(take)] {
        if (errand->givingUp == GivingUp::Refused || !errand->course.isStopped()) {
            if (before_) {
                before_();
            }
            make(errand->course);
        }
        // An answer that finds nobody any more is dropped with its receiver.
        QMetaObject::invokeMethod(this, [this, errand, take] {
            if (takeOff(errand)) {
                take();
            }
        });
    });
    Q_EMIT changed();
}

bool Errands::takeOff(const std::shared_ptr<Errand>& errand) {
    const auto at = std::find(running_.begin(), running_.end(), errand);
    if (at == running_.end()) {
        return false;
    }
    running_.erase(at);
    Q_EMIT changed();
    return true;
}

std::optional<Doing> Errands::doing() const {
    if (running_.empty()) {
        return std::nullopt;
    }
    const Errand& first = *running_.front();
    return Doing{first.words, first.course.percent(), static_cast<int>(first.since.elapsed() / 1000),
                 first.givingUp == GivingUp::Allowed};
}

void Errands::giveUp() {
    std::vector<std::shared_ptr<Errand>> gone;
    const auto kept = std::stable_partition(running_.begin(), running_.end(),
                                            [](const auto& errand) { return errand->givingUp == GivingUp::Refused; });
    gone.assign(kept, running_.end());
    running_.erase(kept, running_.end());
    for (const auto& errand : gone) {
        errand->course.stop();
        if (errand->givenUp) {
            errand->givenUp();
        }
    }
    Q_EMIT changed();
}

void Errands::finish() {
    for (const auto& errand : running_) {
        errand->givenUp = {};
    }
    giveUp();
    while (!running_.empty()) {  // an answer may send the next one off
        files_.waitForDone();
        makings_.waitForDone();
        QCoreApplication::sendPostedEvents(this, QEvent::MetaCall);
    }
}

}  // namespace crosstick::work
