#pragma once

#include <string>

namespace crosstick::testing {

struct Ran {
    int status = -1;
    std::string output;  ///< what it said on both streams
};

/// Runs a command line in a shell and waits for it.
[[nodiscard]] Ran runProgram(const std::string& command);

}  // namespace crosstick::testing
