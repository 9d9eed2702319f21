#pragma once

#include <optional>

#include "core/worker/record.h"

/// The worker's end of the line: orders come on standard input, answers go on standard output.
namespace crosstick::worker {

/// Waits for the one order; nothing where the line closes before it is whole.
[[nodiscard]] std::optional<Record> awaitOrder();
/// Writes bytes whole; false where nobody listens any more.
[[nodiscard]] bool say(std::span<const std::uint8_t> bytes);
[[nodiscard]] inline bool say(const Record& record) {
    return say(wireBytes(record));
}

}  // namespace crosstick::worker
