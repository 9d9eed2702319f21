#pragma once

#include <chrono>
#include <filesystem>
#include <functional>
#include <optional>
#include <string>
#include <vector>

#include "core/units/result.h"
#include "core/worker/confine.h"
#include "core/worker/record.h"

namespace crosstick::worker {

/// How whoever waits takes part: asked about ten times a second.
using IsStopped = std::function<bool()>;

/// A worker process and the line to it. Whatever it does, next() ends: with a record, with nothing once it is done, or
/// with one fault. Going away it is killed and nothing of it is left.
/// Thread: one thread at a time; the worker dies with the thread that started it.
class Child {
  public:
    /// Starts a program with argumentsOf(limits); it sees no file of ours that is open and little of the environment.
    /// Errors: worker/no-program.
    [[nodiscard]] static Result<Child> start(const std::filesystem::path& program, const Limits& limits);
    Child(Child&& other) noexcept;
    Child& operator=(Child&&) = delete;
    Child(const Child&) = delete;
    Child& operator=(const Child&) = delete;
    ~Child();

    /// A worker that died meanwhile is told of by next().
    void send(const Record& record);
    /// Errors: worker/crashed with its signal or code, worker/too-long after limits.silence without a record
    /// or limits.wall in all,
    /// worker/too-much-memory, worker/too-much-output, worker/garbled, worker/stopped.
    [[nodiscard]] Result<std::optional<Record>> next(const IsStopped& isStopped = {});
    [[nodiscard]] int process() const { return process_; }

  private:
    Child(int process, int line, const Limits& limits)
        : process_(process), line_(line), limits_(limits), wall_(std::chrono::steady_clock::now() + limits.wall) {}
    int process_, line_;
    Limits limits_;
    std::chrono::steady_clock::time_point wall_;
    RecordStream stream_;

    void kill();
    [[nodiscard]] Result<std::optional<Record>> ended();
};

}  // namespace crosstick::worker
