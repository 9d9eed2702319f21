#pragma once

#include <array>
#include <compare>
#include <cstdint>
#include <functional>
#include <optional>
#include <string>
#include <string_view>

namespace crosstick {

/// An identity of 128 bits, written as 8-4-4-4-12 hex digits. All zero means "none".
struct Uuid {
    std::array<std::uint8_t, 16> bytes{};
    friend constexpr auto operator<=>(const Uuid&, const Uuid&) = default;  // NOLINT(modernize-use-nullptr): none here
    [[nodiscard]] bool isNone() const { return *this == Uuid{}; }
};

[[nodiscard]] std::string text(const Uuid& id);
[[nodiscard]] std::optional<Uuid> parseUuid(std::string_view text);
/// The same name in the same space always gives the same identity (so that a file imported twice meets itself). The
/// bits come from SHA-256 cut to 128 with the version-8 marks of RFC 9562.
[[nodiscard]] Uuid namedUuid(const Uuid& space, std::string_view name);

/// Where new identities come from; the seed is passed in, so that a test or the demo makes the same file twice.
class IdSource {
  public:
    explicit IdSource(std::uint64_t seed) : state_(seed) {}
    [[nodiscard]] Uuid next();

  private:
    std::uint64_t state_;
};

}  // namespace crosstick

namespace std {
template <>
struct hash<crosstick::Uuid> {
    std::size_t operator()(const crosstick::Uuid& id) const noexcept {
        std::size_t h = 0;
        for (auto byte : id.bytes) {
            h = h * 1099511628211U + byte;
        }
        return h;
    }
};
}  // namespace std
