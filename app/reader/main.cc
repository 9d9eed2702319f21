// The process that meets foreign files: takes one order on standard input, answers on standard output, and is gone.
// Started by the program, never by hand.
#include <array>
#include <cerrno>
#include <optional>

#include <unistd.h>

#include "core/reading/answering.h"
#include "core/reading/drivers.h"
#include "core/units/number_text.h"
#include "core/worker/confine.h"

namespace {

using crosstick::worker::Ending;
using crosstick::worker::Record;

std::optional<crosstick::worker::Limits> limitsFrom(int argc, char** argv) {
    if (argc != 3) {
        return std::nullopt;
    }
    const auto memory = crosstick::parseWhole(argv[1]);
    const auto output = crosstick::parseWhole(argv[2]);
    if (!memory || !output || *memory < 0 || *output < 0) {
        return std::nullopt;
    }
    crosstick::worker::Limits limits;
    limits.memory = *memory;
    limits.output = *output;
    return limits;
}

std::optional<Record> order() {
    crosstick::worker::RecordStream stream;
    std::array<std::uint8_t, 4096> piece{};
    while (true) {
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
}

/// Nobody listens any more where it cannot be said: then the work is for nobody.
void say(const Record& record) {
    const auto wire = crosstick::worker::wireBytes(record);
    std::size_t said = 0;
    while (said < wire.size()) {
        const ssize_t done = ::write(1, &wire[said], wire.size() - said);
        if (done < 0 && errno != EINTR) {
            ::_exit(static_cast<int>(Ending::Done));
        }
        said += done > 0 ? static_cast<std::size_t>(done) : 0;
    }
}

}  // namespace

int main(int argc, char** argv) {
    const auto limits = limitsFrom(argc, argv);
    if (!limits) {
        return static_cast<int>(Ending::WrongUse);
    }
    crosstick::worker::confineMyself(*limits);
    crosstick::reading::prepareDrivers();
    const auto wish = order();
    if (!wish) {
        return static_cast<int>(Ending::WrongUse);
    }
    crosstick::reading::answer(*wish, say);
    return static_cast<int>(Ending::Done);
}
