#pragma once

#include <filesystem>

namespace crosstick::app {

/// Folders of the user's by the XDG base directory rules (freedesktop.org), ours inside each.
[[nodiscard]] std::filesystem::path cacheFolder();   ///< what can be made again
[[nodiscard]] std::filesystem::path dataFolder();    ///< the demo
[[nodiscard]] std::filesystem::path stateFolder();   ///< journals
[[nodiscard]] std::filesystem::path configFolder();  ///< the window's own choices

}  // namespace crosstick::app
