#pragma once

#include <chrono>
#include <cstdint>
#include <optional>
#include <span>
#include <string>
#include <vector>

namespace crosstick::worker {

/// What a worker may use before it is ended.
struct Limits {
    std::int64_t memory = std::int64_t{1} << 30;  ///< bytes of data
    std::int64_t output = std::int64_t{1} << 30;  ///< bytes of any one file that it writes
    std::chrono::seconds silence{5};              ///< without a record
    std::chrono::seconds wall{3600};              ///< from its start to its end
};

/// How a worker ends where it does not answer.
enum class Ending : int { Done = 0, WrongUse = 2, OutOfMemory = 3 };

/// In the worker, before it touches a foreign byte: takes on the limits of memory and output, leaves no core, works in
/// a folder that is empty and gone, dies with who started it, and gives up the network where the kernel lets it.
/// Memory is not limited under a sanitizer, which maps far more than it uses.
void confineMyself(const Limits& limits);

/// Limits that a worker takes on itself (memory and output) as its arguments, and back; nothing where they are none.
[[nodiscard]] std::vector<std::string> argumentsOf(const Limits& limits);
[[nodiscard]] std::optional<Limits> limitsFrom(std::span<char* const> arguments);
[[nodiscard]] bool isSanitized();

}  // namespace crosstick::worker
