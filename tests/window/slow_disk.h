#pragma once

#include <condition_variable>
#include <mutex>

namespace crosstick::window {

/// A disk that can be made to wait: while it is held no errand begins. Any thread.
class SlowDisk {
  public:
    void hold() {
        const std::scoped_lock lock(mutex_);
        held_ = true;
    }
    void letGo() {
        {
            const std::scoped_lock lock(mutex_);
            held_ = false;
        }
        freed_.notify_all();
    }
    /// What an errand does before it begins.
    void wait() {
        std::unique_lock lock(mutex_);
        ++waiting_;
        freed_.wait(lock, [this] { return !held_; });
        --waiting_;
    }
    [[nodiscard]] int waiting() {
        const std::scoped_lock lock(mutex_);
        return waiting_;
    }

  private:
    std::mutex mutex_;
    std::condition_variable freed_;
    bool held_ = false;
    int waiting_ = 0;
};

}  // namespace crosstick::window
