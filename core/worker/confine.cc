#include "core/worker/confine.h"

#include <csignal>
#include <cstdlib>
#include <filesystem>
#include <new>

#include <sched.h>
#include <sys/prctl.h>
#include <sys/resource.h>
#include <unistd.h>

#include "core/units/number_text.h"

namespace crosstick::worker {
namespace {

void limit(__rlimit_resource what, std::int64_t most) {
    const auto value = static_cast<rlim_t>(most);
    const rlimit both{value, value};
    ::setrlimit(what, &both);
}

[[noreturn]] void outOfMemory() {
    ::_exit(static_cast<int>(Ending::OutOfMemory));
}

/// A folder of nobody: nothing beside the file can be met by a name without a path, nothing can be left behind.
void leaveForNowhere() {
    std::string name = (std::filesystem::temp_directory_path() / "crosstick-reader-XXXXXX").string();
    if (::mkdtemp(name.data()) == nullptr || ::chdir(name.c_str()) != 0) {
        return;
    }
    std::error_code ignored;
    std::filesystem::remove(name, ignored);
}

}  // namespace

bool isSanitized() {
#if defined(__SANITIZE_ADDRESS__)
    return true;
#elif defined(__has_feature)
#if __has_feature(address_sanitizer)
    return true;
#else
    return false;
#endif
#else
    return false;
#endif
}

void confineMyself(const Limits& limits) {
    ::prctl(PR_SET_PDEATHSIG, SIGKILL);
    ::prctl(PR_SET_NO_NEW_PRIVS, 1, 0, 0, 0);
    std::set_new_handler(outOfMemory);
    limit(RLIMIT_CORE, 0);
    limit(RLIMIT_FSIZE, limits.output);
    if (!isSanitized()) {
        limit(RLIMIT_DATA, limits.memory);
    }
    // Root needs no user namespace for it, and would lose in one what lets it read other people's files. Where the
    // kernel refuses, the readers that could ask a network are still not there.
    (void)::unshare(::geteuid() == 0 ? CLONE_NEWNET : CLONE_NEWUSER | CLONE_NEWNET);
    leaveForNowhere();
}

std::vector<std::string> argumentsOf(const Limits& limits) {
    return {std::to_string(limits.memory), std::to_string(limits.output)};
}

std::optional<Limits> limitsFrom(std::span<char* const> arguments) {
    if (arguments.size() != 3) {  // the program's own name is the first
        return std::nullopt;
    }
    const auto memory = parseWhole(arguments[1]);
    const auto output = parseWhole(arguments[2]);
    if (!memory || !output || *memory < 0 || *output < 0) {
        return std::nullopt;
    }
    Limits limits;
    limits.memory = *memory;
    limits.output = *output;
    return limits;
}

}  // namespace crosstick::worker
