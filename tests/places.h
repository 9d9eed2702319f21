#pragma once

#include <filesystem>

/// Where this build keeps things. Compiled once for all tests: as macros on every command line these paths would keep
/// the compiler's cache from sharing a test between two folders.
namespace crosstick::places {

/// Faces, coefficients, the demo's lists and the manual, as the program finds them.
[[nodiscard]] std::filesystem::path share();
/// Files that tests compare with: tests/data.
[[nodiscard]] std::filesystem::path data();
/// The top folder of the sources.
[[nodiscard]] std::filesystem::path source();
/// The program `crosstick` of this build.
[[nodiscard]] std::filesystem::path program();
/// The program that reads foreign sheets.
[[nodiscard]] std::filesystem::path foreignReader();
/// The cache of sheets that all tests share.
[[nodiscard]] std::filesystem::path sheetCache();

}  // namespace crosstick::places
