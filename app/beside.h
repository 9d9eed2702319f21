#pragma once

#include <filesystem>
#include <string>

namespace crosstick::app {

/// A file relative to a plan's folder where it lies under it, so that both can be moved together.
[[nodiscard]] std::string asSeenFrom(const std::filesystem::path& folder, const std::filesystem::path& file);

}  // namespace crosstick::app
