// Takes one order, whose kind says how it is to go wrong.
#include <csignal>
#include <cstdlib>
#include <filesystem>
#include <fstream>
#include <vector>

#include <sys/resource.h>
#include <unistd.h>

#include "core/worker/confine.h"
#include "core/worker/record.h"
#include "core/worker/serving.h"
#include "tests/worker/wicked.h"

namespace {

using crosstick::testing::Wickedness;
using crosstick::worker::Packer;
using crosstick::worker::Record;
using crosstick::worker::wireBytes;

void write(const std::vector<std::uint8_t>& bytes) {
    if (!crosstick::worker::say(bytes)) {
        ::_exit(2);
    }
}

void eatMemory() {
    std::vector<std::vector<char>> eaten;
    while (true) {
        eaten.emplace_back(std::size_t{16} << 20, 'x');
    }
}

/// What a worker can see: how many files lie in its folder, and whether a file of the program's is open in it.
Record whatISee() {
    std::int64_t beside = 0;
    std::error_code ignored;
    for (const auto& entry : std::filesystem::directory_iterator(".", ignored)) {
        beside += entry.path().empty() ? 0 : 1;
    }
    std::int64_t open = 0;
    for (int line = 3; line < 256; ++line) {
        open += ::lseek(line, 0, SEEK_CUR) >= 0 ? 1 : 0;
    }
    rlimit core{};
    ::getrlimit(RLIMIT_CORE, &core);
    std::ofstream left("left-behind");
    return Packer()
        .number(beside)
        .number(open)
        .number(static_cast<std::int64_t>(core.rlim_cur))
        .number(left.is_open() ? 1 : 0)
        .record(7);
}

}  // namespace

int main(int argc, char** argv) {
    const auto limits = crosstick::worker::limitsFrom({argv, static_cast<std::size_t>(argc)});
    const auto wish = crosstick::worker::awaitOrder();
    if (!limits || !wish) {
        return 2;
    }
    crosstick::worker::confineMyself(*limits);
    switch (static_cast<Wickedness>(wish->kind)) {
        case Wickedness::Echo:
            write(wireBytes({9, wish->body}));
            break;
        case Wickedness::Crash:
            ::raise(SIGSEGV);
            break;
        case Wickedness::Abort:
            std::abort();
        case Wickedness::Hang:
            while (true) {
                ::pause();
            }
        case Wickedness::TalkOn:
            while (true) {
                write(wireBytes({1, {}}));
                ::usleep(100000);
            }
        case Wickedness::CloseAndHang:
            ::close(0);
            ::close(1);
            while (true) {
                ::pause();
            }
        case Wickedness::EatMemory:
            eatMemory();
            break;
        case Wickedness::HalfARecord:
            write({200, 0, 0, 0, 1, 2, 3});
            break;
        case Wickedness::EndlessRecord:
            write({255, 255, 255, 255, 1});
            while (true) {
                ::pause();
            }
        case Wickedness::WriteMuch: {
            std::ofstream out(std::string(wish->body.begin(), wish->body.end()), std::ios::binary);
            const std::vector<char> much(std::size_t{1} << 20, 'x');
            while (out.write(much.data(), static_cast<std::streamsize>(much.size()))) {
            }
            break;
        }
        case Wickedness::SayWhatISee:
            write(wireBytes(whatISee()));
            break;
    }
    return 0;
}
