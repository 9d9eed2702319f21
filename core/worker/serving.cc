#include "core/worker/serving.h"

#include <array>
#include <cerrno>

#include <unistd.h>

namespace crosstick::worker {

std::optional<Record> awaitOrder() {
    RecordStream stream;
    std::array<std::uint8_t, 4096> piece{};
    while (!stream.isGarbled()) {
        const ssize_t got = ::read(0, piece.data(), piece.size());
        if (got < 0 && errno == EINTR) {
            continue;
        }
        if (got <= 0) {
            return std::nullopt;
        }
        stream.add({piece.data(), static_cast<std::size_t>(got)});
        if (auto record = stream.next()) {
            return record;
        }
    }
    return std::nullopt;
}

bool say(std::span<const std::uint8_t> bytes) {
    while (!bytes.empty()) {
        const ssize_t done = ::write(1, bytes.data(), bytes.size());
        if (done < 0 && errno != EINTR) {
            return false;
        }
        bytes = bytes.subspan(done > 0 ? static_cast<std::size_t>(done) : 0);
    }
    return true;
}

}  // namespace crosstick::worker
