#include <filesystem>
#include <iostream>
#include <random>

#include <CLI/CLI.hpp>
#include <unistd.h>

#include "app/program.h"

namespace {

/// bin/../share/crosstick, in the build tree and when installed.
std::filesystem::path shareFolder() {
    std::error_code ignored;
    const auto self = std::filesystem::read_symlink("/proc/self/exe", ignored);
    return self.parent_path().parent_path() / "share" / "crosstick";
}

}  // namespace

int main(int argc, char** argv) {
    using namespace crosstick;
    const auto now = std::chrono::floor<std::chrono::seconds>(std::chrono::system_clock::now());
    std::random_device chance;
    const app::Surroundings surroundings{std::cin,      std::cout, std::cerr,
                                         shareFolder(), now,       (std::uint64_t{chance()} << 32) | chance()};
    return static_cast<int>(app::run({argv + 1, argv + argc}, surroundings));
}
