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
    /// Whoever waits by now waits on, as in a read that hangs; who comes later does not.
    void letOthersPass() {
        const std::scoped_lock lock(mutex_);
        held_ = false;
    }
    void letGo() {
        {
            const std::scoped_lock lock(mutex_);
            held_ = false;
            ++freed_;
        }
        wake_.notify_all();
    }
    /// What an errand does before it begins.
    void wait() {
        std::unique_lock lock(mutex_);
        if (!held_) {
            return;
        }
        ++waiting_;
        wake_.wait(lock, [this, before = freed_] { return freed_ != before; });
        --waiting_;
    }
    [[nodiscard]] int waiting() {
        const std::scoped_lock lock(mutex_);
        return waiting_;
    }

  private:
    std::mutex mutex_;
    std::condition_variable wake_;
    bool held_ = false;
    int freed_ = 0;
    int waiting_ = 0;
};

}  // namespace crosstick::window
