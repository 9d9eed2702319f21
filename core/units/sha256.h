#pragma once

#include <array>
#include <cstdint>
#include <span>
#include <string>
#include <string_view>

namespace crosstick {

using Sha256 = std::array<std::uint8_t, 32>;

/// FIPS 180-4. Test values: FIPS 180-4 examples ("abc", the empty message).
[[nodiscard]] Sha256 sha256(std::string_view bytes);
[[nodiscard]] std::string hexText(std::span<const std::uint8_t> bytes);  ///< lower case

}  // namespace crosstick
