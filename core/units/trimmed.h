#pragma once

#include <cstddef>
#include <string_view>

namespace crosstick {

/// What was typed, without the blanks, tabs and line ends before and behind it. A view into the same letters.
[[nodiscard]] constexpr std::string_view trimmed(std::string_view text) {
    constexpr std::string_view kBlanks = " \t\r\n\v\f";
    const std::size_t first = text.find_first_not_of(kBlanks);
    return first == std::string_view::npos ? std::string_view{}
                                           : text.substr(first, text.find_last_not_of(kBlanks) - first + 1);
}

}  // namespace crosstick
