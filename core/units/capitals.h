#pragma once

#include <string>
#include <string_view>

namespace crosstick {

/// UTF-8 words in capitals, as they are written on films: Latin letters with and without marks, and Cyrillic ones. A
/// sharp s becomes SS, a dotless i an I; what has no capital there stays as it is, damaged bytes too.
[[nodiscard]] std::string inCapitals(std::string_view words);

}  // namespace crosstick
