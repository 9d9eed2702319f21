#include "tests/files/run_program.h"

#include <array>
#include <cstdio>

#include <sys/wait.h>

namespace crosstick::testing {

Ran runProgram(const std::string& command) {
    Ran ran;
    FILE* pipe = ::popen((command + " 2>&1").c_str(), "r");
    if (pipe == nullptr) {
        return ran;
    }
    std::array<char, 4096> piece{};
    while (const std::size_t count = std::fread(piece.data(), 1, piece.size(), pipe)) {
        ran.output.append(piece.data(), count);
    }
    const int status = ::pclose(pipe);
    ran.status = WIFEXITED(status) ? WEXITSTATUS(status) : -1;
    return ran;
}

}  // namespace crosstick::testing
