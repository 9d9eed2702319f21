#pragma once

#include <string>
#include <string_view>
#include <vector>

namespace crosstick::geodesy {

/// A written place made plain: upper case, blanks of every kind one ' ' each and none at the ends, the typographers'
/// minus signs '-', control characters '?'. UTF-8 stays UTF-8.
[[nodiscard]] std::string plainText(std::string_view text);
/// The same without its blanks.
[[nodiscard]] std::string packed(std::string_view plain);
/// Parted at blanks and commas.
[[nodiscard]] std::vector<std::string> wordsOf(std::string_view plain);
/// What an error repeats of a text: at most 60 bytes, on one line.
[[nodiscard]] std::string quoted(std::string_view text);
void replaceAll(std::string& text, std::string_view what, std::string_view by);

}  // namespace crosstick::geodesy
