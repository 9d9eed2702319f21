#pragma once

#include <array>
#include <cstdint>
#include <span>
#include <string>
#include <string_view>

namespace crosstick {

using Sha256 = std::array<std::uint8_t, 32>;

/// SHA-256 of bytes that come in pieces (FIPS 180-4). One thread at a time.
class Sha256Stream {
  public:
    void add(std::span<const std::uint8_t> bytes);
    [[nodiscard]] Sha256 finish() &&;

  private:
    std::array<std::uint32_t, 8> state_{0x6a09e667U, 0xbb67ae85U, 0x3c6ef372U, 0xa54ff53aU,
                                        0x510e527fU, 0x9b05688cU, 0x1f83d9abU, 0x5be0cd19U};
    std::array<std::uint8_t, 64> block_{};
    std::size_t held_ = 0;
    std::uint64_t total_ = 0;
};

/// FIPS 180-4. Test values: FIPS 180-4 examples ("abc", the empty message).
[[nodiscard]] Sha256 sha256(std::string_view bytes);
[[nodiscard]] std::string hexText(std::span<const std::uint8_t> bytes);  ///< lower case

}  // namespace crosstick
