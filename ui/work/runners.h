#pragma once

#include <chrono>
#include <condition_variable>
#include <deque>
#include <functional>
#include <map>
#include <memory>
#include <mutex>
#include <thread>
#include <vector>

namespace crosstick::work {

/// Threads that do what they are given in the order given, so many at a time. One that does not come back from what was
/// given up is left behind: it holds its load and this queue, and nothing of who gave it. Any thread.
class Runners : public std::enable_shared_from_this<Runners> {
  public:
    struct Load {
        std::function<void()> does;
        std::function<bool()> isGivenUp;
    };
    [[nodiscard]] static std::shared_ptr<Runners> of(std::size_t most);
    explicit Runners(std::size_t most) : most_(most) {}
    Runners(const Runners&) = delete;
    Runners& operator=(const Runners&) = delete;
    ~Runners();

    void give(Load load);
    /// Who is out with something given up is waited for no more; another goes in his place.
    void leaveBehind();
    /// Have all come back? Waits so long for them.
    [[nodiscard]] bool areBack(std::chrono::milliseconds patience);
    [[nodiscard]] bool hasLeftBehind();

  private:
    std::mutex mutex_;
    std::condition_variable back_;
    std::size_t most_;
    std::deque<std::shared_ptr<const Load>> waiting_;
    std::map<std::thread::id, std::shared_ptr<const Load>> out_;
    std::map<std::thread::id, std::thread> threads_;  ///< of those that are out, and of those that are just back
    bool leftBehind_ = false;

    void run();
    void send();
    std::vector<std::thread> takeReturned();
};

}  // namespace crosstick::work
