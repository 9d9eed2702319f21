#pragma once

#include <cstdint>
#include <optional>
#include <string>
#include <string_view>

namespace crosstick {

/// Shortest text that reads back to the same double; decimal point whatever the locale; "-0" is written "0".
[[nodiscard]] std::string numberText(double value);
/// With exactly so many decimals, half away from zero as printf rounds; "-0.0" is written "0.0".
[[nodiscard]] std::string numberText(double value, int decimals);
/// The whole text must be one finite number (sign, digits, point, exponent); otherwise nothing.
[[nodiscard]] std::optional<double> parseNumber(std::string_view text);
[[nodiscard]] std::optional<std::int64_t> parseWhole(std::string_view text);

}  // namespace crosstick
