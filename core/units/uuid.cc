#include "core/units/uuid.h"

#include <algorithm>
#include <array>

#include "core/units/sha256.h"

namespace crosstick {
namespace {

/// Version in the high half of byte 6, variant in the high bits of byte 8 (RFC 9562, section 4).
void mark(Uuid& id, std::uint8_t version) {
    id.bytes[6] = static_cast<std::uint8_t>((id.bytes[6] & 0x0FU) | (static_cast<unsigned>(version) << 4U));
    id.bytes[8] = static_cast<std::uint8_t>((id.bytes[8] & 0x3FU) | 0x80U);
}

bool dashBefore(std::size_t byte) {
    return byte == 4 || byte == 6 || byte == 8 || byte == 10;
}

constexpr std::uint8_t kNoDigit = 16;

/// Every character's worth as a hex digit: a large plan lists its identities by the ten thousand.
constexpr auto kHexDigits = [] {
    std::array<std::uint8_t, 256> digits{};
    digits.fill(kNoDigit);
    for (std::uint8_t n = 0; n < 16; ++n) {
        digits[static_cast<std::uint8_t>("0123456789abcdef"[n])] = n;
        digits[static_cast<std::uint8_t>("0123456789ABCDEF"[n])] = n;
    }
    return digits;
}();

std::uint8_t hexDigit(char c) {
    return kHexDigits[static_cast<std::uint8_t>(c)];
}

/// SplitMix64 (Steele, Lea and Flood 2014): a full period over the 64-bit state.
std::uint64_t nextWord(std::uint64_t& state) {
    state += 0x9E3779B97F4A7C15U;
    std::uint64_t z = state;
    z = (z ^ (z >> 30U)) * 0xBF58476D1CE4E5B9U;
    z = (z ^ (z >> 27U)) * 0x94D049BB133111EBU;
    return z ^ (z >> 31U);
}

}  // namespace

std::string text(const Uuid& id) {
    const std::string digits = hexText(id.bytes);
    std::string out;
    for (std::size_t byte = 0; byte < id.bytes.size(); ++byte) {
        if (dashBefore(byte)) {
            out += '-';
        }
        out.append(digits, 2 * byte, 2);
    }
    return out;
}

std::optional<Uuid> parseUuid(std::string_view text) {
    if (text.size() != 36) {
        return std::nullopt;
    }
    Uuid id;
    std::size_t at = 0;
    for (std::size_t byte = 0; byte < id.bytes.size(); ++byte) {
        if (dashBefore(byte) && text[at++] != '-') {
            return std::nullopt;
        }
        const auto high = hexDigit(text[at]);
        const auto low = hexDigit(text[at + 1]);
        if (high == kNoDigit || low == kNoDigit) {
            return std::nullopt;
        }
        id.bytes[byte] = static_cast<std::uint8_t>(high * 16 + low);
        at += 2;
    }
    return id;
}

Uuid namedUuid(const Uuid& space, std::string_view name) {
    std::string message(space.bytes.begin(), space.bytes.end());
    message += name;
    const Sha256 digest = sha256(message);
    Uuid id;
    std::copy_n(digest.begin(), id.bytes.size(), id.bytes.begin());
    mark(id, 8);
    return id;
}

Uuid IdSource::next() {
    Uuid id;
    for (std::size_t half = 0; half < 2; ++half) {
        std::uint64_t word = nextWord(state_);
        for (std::size_t byte = 0; byte < 8; ++byte) {
            id.bytes[8 * half + byte] = static_cast<std::uint8_t>(word & 0xFFU);
            word >>= 8U;
        }
    }
    mark(id, 4);
    return id;
}

}  // namespace crosstick
