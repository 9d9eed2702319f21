#include "ui/work/runners.h"

namespace crosstick::work {

std::shared_ptr<Runners> Runners::of(std::size_t most) {
    return std::make_shared<Runners>(most);
}

/// Nobody is out any more, since who is holds this; but the last one back may be here himself.
Runners::~Runners() {
    for (auto& [id, thread] : threads_) {
        id == std::this_thread::get_id() ? thread.detach() : thread.join();
    }
}

void Runners::give(Load load) {
    std::vector<std::thread> returned;
    {
        const std::scoped_lock lock(mutex_);
        returned = takeReturned();
        waiting_.push_back(std::make_shared<const Load>(std::move(load)));
        send();
    }
    for (std::thread& thread : returned) {
        thread.join();
    }
}

/// Under the lock.
void Runners::send() {
    while (out_.size() < most_ && !waiting_.empty()) {
        std::thread thread([self = shared_from_this()] { self->run(); });
        const auto id = thread.get_id();
        out_.emplace(id, std::move(waiting_.front()));
        waiting_.pop_front();
        threads_.emplace(id, std::move(thread));
    }
}

/// Under the lock: the threads that have nothing to do any more, to be joined outside it.
std::vector<std::thread> Runners::takeReturned() {
    std::vector<std::thread> returned;
    for (auto each = threads_.begin(); each != threads_.end();) {
        if (out_.contains(each->first)) {
            ++each;
        } else {
            returned.push_back(std::move(each->second));
            each = threads_.erase(each);
        }
    }
    return returned;
}

void Runners::run() {
    std::unique_lock lock(mutex_);
    const auto self = std::this_thread::get_id();
    for (auto place = out_.find(self); place != out_.end(); place = out_.find(self)) {
        std::shared_ptr<const Load> load = place->second;
        lock.unlock();
        load->does();
        lock.lock();
        place = out_.find(self);
        if (place == out_.end() || place->second != load) {
            return;  // left behind
        }
        if (waiting_.empty()) {
            out_.erase(place);
            break;
        }
        place->second = std::move(waiting_.front());
        waiting_.pop_front();
    }
    back_.notify_all();
}

void Runners::leaveBehind() {
    const std::scoped_lock lock(mutex_);
    for (auto place = out_.begin(); place != out_.end();) {
        if (!place->second->isGivenUp()) {
            ++place;
            continue;
        }
        const auto thread = threads_.find(place->first);
        thread->second.detach();
        threads_.erase(thread);
        place = out_.erase(place);
        leftBehind_ = true;
    }
    send();
    back_.notify_all();
}

bool Runners::areBack(std::chrono::milliseconds patience) {
    std::vector<std::thread> returned;
    bool all = false;
    {
        std::unique_lock lock(mutex_);
        all = back_.wait_for(lock, patience, [this] { return out_.empty() && waiting_.empty(); });
        returned = takeReturned();
    }
    for (std::thread& thread : returned) {
        thread.join();
    }
    return all;
}

bool Runners::hasLeftBehind() {
    const std::scoped_lock lock(mutex_);
    return leftBehind_;
}

}  // namespace crosstick::work
