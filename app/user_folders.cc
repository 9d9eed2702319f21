#include "app/user_folders.h"

#include <cstdlib>
#include <string>

namespace crosstick::app {
namespace {

std::filesystem::path userFolder(const char* variable, const char* underHome) {
    const auto set = [](const char* name) {
        // Nobody sets variables once the program runs: NOLINTNEXTLINE(concurrency-mt-unsafe)
        const char* value = std::getenv(name);
        return std::string(value == nullptr ? "" : value);
    };
    const std::string given = set(variable);
    const std::string home = set("HOME");
    const auto base =
        given.empty() ? std::filesystem::path(home.empty() ? "." : home) / underHome : std::filesystem::path(given);
    return base / "crosstick";
}

}  // namespace

std::filesystem::path cacheFolder() {
    return userFolder("XDG_CACHE_HOME", ".cache");
}
std::filesystem::path dataFolder() {
    return userFolder("XDG_DATA_HOME", ".local/share");
}
std::filesystem::path stateFolder() {
    return userFolder("XDG_STATE_HOME", ".local/state");
}
std::filesystem::path configFolder() {
    return userFolder("XDG_CONFIG_HOME", ".config");
}

}  // namespace crosstick::app
