#pragma once

#include <string>
#include <vector>

#include <nlohmann/json.hpp>

#include "app/program.h"

namespace crosstick::app {

/// What a command line gives, through the door that the program itself uses. It is noon UTC on 25 November 2026.
struct Said {
    Exit exit;
    std::string out, err;

    /// Standard output as JSON, which must be one array and nothing else; null where it is not.
    [[nodiscard]] nlohmann::json json() const;
};

[[nodiscard]] Said said(std::vector<std::string> arguments, const std::string& standardInput = {});

}  // namespace crosstick::app
