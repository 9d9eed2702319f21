#include "core/worker/child.h"

#include <algorithm>
#include <array>
#include <cerrno>
#include <csignal>
#include <cstdlib>
#include <cstring>
#include <system_error>

#include <fcntl.h>
#include <poll.h>
#include <spawn.h>
#include <sys/socket.h>
#include <sys/wait.h>
#include <unistd.h>

#include "core/worker/faults.h"

namespace crosstick::worker {
namespace {

using Clock = std::chrono::steady_clock;
constexpr int kLookUp = 100;  // ms between two looks at whether it is to stop
constexpr std::size_t kPiece = std::size_t{1} << 18U;
constexpr int kLooks = 1000;  // at most a second in all
constexpr useconds_t kBetweenLooks = 1000;

/// What a worker needs of the environment: where PROJ and GDAL keep their data, and how a sanitizer behaves.
std::vector<std::string> environment() {
    std::vector<std::string> kept{"LC_ALL=C.UTF-8", "TZ=UTC"};
    for (const char* name : {"PROJ_LIB", "PROJ_DATA", "GDAL_DATA", "TMPDIR", "ASAN_OPTIONS", "UBSAN_OPTIONS",
                             "GCOV_PREFIX", "LD_LIBRARY_PATH"}) {
        // Nobody sets variables once the program runs: NOLINTNEXTLINE(concurrency-mt-unsafe)
        if (const char* value = std::getenv(name); value != nullptr) {
            kept.push_back(std::string(name) + '=' + value);
        }
    }
    // Leaks of a process that ends after one answer are none, and looking for them costs it a second.
    kept.emplace_back("LSAN_OPTIONS=detect_leaks=0");
    return kept;
}

std::vector<char*> pointers(std::vector<std::string>& words) {
    std::vector<char*> all;
    for (std::string& word : words) {
        all.push_back(word.data());
    }
    all.push_back(nullptr);
    return all;
}

/// The process, or why it cannot be started.
tl::expected<int, std::error_code> spawn(const std::filesystem::path& program, const Limits& limits, int line) {
    std::vector<std::string> words{program.string()};
    for (std::string& argument : argumentsOf(limits)) {
        words.push_back(std::move(argument));
    }
    std::vector<std::string> around = environment();
    posix_spawn_file_actions_t actions;
    ::posix_spawn_file_actions_init(&actions);
    ::posix_spawn_file_actions_adddup2(&actions, line, 0);
    ::posix_spawn_file_actions_adddup2(&actions, line, 1);
    ::posix_spawn_file_actions_addopen(&actions, 2, "/dev/null", O_WRONLY, 0);
    ::posix_spawn_file_actions_addclosefrom_np(&actions, 3);
    // A thread of the window may block signals; the worker starts with none blocked and none ignored.
    posix_spawnattr_t attributes;
    ::posix_spawnattr_init(&attributes);
    sigset_t none;
    sigset_t all;
    ::sigemptyset(&none);
    ::sigfillset(&all);
    ::posix_spawnattr_setsigmask(&attributes, &none);
    ::posix_spawnattr_setsigdefault(&attributes, &all);
    ::posix_spawnattr_setflags(&attributes, POSIX_SPAWN_SETSIGMASK | POSIX_SPAWN_SETSIGDEF);
    pid_t process = 0;
    const int code = ::posix_spawn(&process, program.c_str(), &actions, &attributes, pointers(words).data(),
                                   pointers(around).data());
    ::posix_spawn_file_actions_destroy(&actions);
    ::posix_spawnattr_destroy(&attributes);
    if (code != 0) {
        return tl::unexpected(std::error_code(code, std::generic_category()));
    }
    return process;
}

}  // namespace

Result<Child> Child::start(const std::filesystem::path& program, const Limits& limits) {
    std::array<int, 2> ends{};
    if (::socketpair(AF_UNIX, SOCK_STREAM | SOCK_CLOEXEC, 0, ends.data()) != 0) {
        return fail(kNoProgram, {{"program", program.string()}, {"why", std::generic_category().message(errno)}});
    }
    const auto process = spawn(program, limits, ends[1]);
    ::close(ends[1]);
    if (!process) {
        ::close(ends[0]);
        return fail(kNoProgram, {{"program", program.string()}, {"why", process.error().message()}});
    }
    return Child(*process, ends[0], limits);
}

Child::Child(Child&& other) noexcept
    : process_(std::exchange(other.process_, 0)),
      line_(std::exchange(other.line_, -1)),
      limits_(other.limits_),
      wall_(other.wall_),
      stream_(std::move(other.stream_)) {}

Child::~Child() {
    kill();
    if (line_ >= 0) {
        ::close(line_);
    }
}

// One that hangs inside the kernel, on a disk that does not answer, dies only when that ends: nobody waits for it.
void Child::kill() {
    if (process_ <= 0) {
        return;
    }
    ::kill(process_, SIGKILL);
    for (int look = 0; look < kLooks && ::waitpid(process_, nullptr, WNOHANG) == 0; ++look) {
        ::usleep(kBetweenLooks);
    }
    process_ = 0;
}

void Child::send(const Record& record) {
    const std::vector<std::uint8_t> wire = wireBytes(record);
    std::size_t sent = 0;
    while (sent < wire.size()) {
        const ssize_t done = ::send(line_, &wire[sent], wire.size() - sent, MSG_NOSIGNAL);
        if (done < 0 && errno != EINTR) {
            return;
        }
        sent += done > 0 ? static_cast<std::size_t>(done) : 0;
    }
}

Result<std::optional<Record>> Child::next(const IsStopped& isStopped) {
    const auto patience = std::min(wall_, Clock::now() + limits_.silence);
    std::vector<std::uint8_t> piece(kPiece);
    while (true) {
        auto record = stream_.next();
        if (record && Clock::now() < wall_) {
            return record;
        }
        if (stream_.isGarbled()) {
            kill();
            return fail(kGarbled);
        }
        if (isStopped && isStopped()) {
            kill();
            return fail(kStopped);
        }
        if (Clock::now() >= patience) {
            kill();
            return fail(kTooLong);
        }
        pollfd wait{line_, POLLIN, 0};
        if (::poll(&wait, 1, kLookUp) <= 0) {
            continue;
        }
        const ssize_t got = ::recv(line_, piece.data(), piece.size(), 0);
        if (got < 0 && errno == EINTR) {
            continue;
        }
        if (got <= 0) {
            return ended();
        }
        stream_.add({piece.data(), static_cast<std::size_t>(got)});
    }
}

// The line is closed. One that closed it and lives on is as good as dead.
Result<std::optional<Record>> Child::ended() {
    int status = 0;
    for (int look = 0; process_ > 0 && ::waitpid(process_, &status, WNOHANG) == 0; ++look) {
        if (look > kLooks / 50) {
            kill();
            return fail(kCrashed, {{"how", std::string("it went silent")}});
        }
        ::usleep(50 * kBetweenLooks);
    }
    process_ = 0;
    if (WIFSIGNALED(status)) {
        const int number = WTERMSIG(status);
        if (number == SIGXFSZ) {
            return fail(kTooMuchOutput);
        }
        const char* name = ::sigdescr_np(number);
        return fail(kCrashed, {{"how", name == nullptr ? "signal " + std::to_string(number) : std::string(name)}});
    }
    const int code = WEXITSTATUS(status);
    if (code == static_cast<int>(Ending::OutOfMemory)) {
        return fail(kTooMuchMemory);
    }
    if (code != static_cast<int>(Ending::Done)) {
        return fail(kCrashed, {{"how", "code " + std::to_string(code)}});
    }
    if (stream_.isInside()) {
        return fail(kGarbled);
    }
    return std::optional<Record>{};
}

}  // namespace crosstick::worker
