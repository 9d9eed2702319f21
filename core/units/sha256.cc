#include "core/units/sha256.h"

#include <bit>
#include <cstddef>
#include <utility>

namespace crosstick {
namespace {

constexpr std::size_t kBlock = 64;

/// FIPS 180-4, 4.2.2: the fractional parts of the cube roots of the first 64 primes.
constexpr std::array<std::uint32_t, 64> kRound{
    0x428a2f98, 0x71374491, 0xb5c0fbcf, 0xe9b5dba5, 0x3956c25b, 0x59f111f1, 0x923f82a4, 0xab1c5ed5,
    0xd807aa98, 0x12835b01, 0x243185be, 0x550c7dc3, 0x72be5d74, 0x80deb1fe, 0x9bdc06a7, 0xc19bf174,
    0xe49b69c1, 0xefbe4786, 0x0fc19dc6, 0x240ca1cc, 0x2de92c6f, 0x4a7484aa, 0x5cb0a9dc, 0x76f988da,
    0x983e5152, 0xa831c66d, 0xb00327c8, 0xbf597fc7, 0xc6e00bf3, 0xd5a79147, 0x06ca6351, 0x14292967,
    0x27b70a85, 0x2e1b2138, 0x4d2c6dfc, 0x53380d13, 0x650a7354, 0x766a0abb, 0x81c2c92e, 0x92722c85,
    0xa2bfe8a1, 0xa81a664b, 0xc24b8b70, 0xc76c51a3, 0xd192e819, 0xd6990624, 0xf40e3585, 0x106aa070,
    0x19a4c116, 0x1e376c08, 0x2748774c, 0x34b0bcb5, 0x391c0cb3, 0x4ed8aa4a, 0x5b9cca4f, 0x682e6ff3,
    0x748f82ee, 0x78a5636f, 0x84c87814, 0x8cc70208, 0x90befffa, 0xa4506ceb, 0xbef9a3f7, 0xc67178f2};

using State = std::array<std::uint32_t, 8>;

/// FIPS 180-4, 6.2.2, step 1: the message schedule of one block.
std::array<std::uint32_t, 64> schedule(const std::uint8_t* block) {
    std::array<std::uint32_t, 64> w{};
    for (std::size_t t = 0; t < 16; ++t) {
        for (std::size_t byte = 0; byte < 4; ++byte) {
            w[t] = (w[t] << 8U) | block[4 * t + byte];
        }
    }
    for (std::size_t t = 16; t < 64; ++t) {
        const std::uint32_t s0 = std::rotr(w[t - 15], 7) ^ std::rotr(w[t - 15], 18) ^ (w[t - 15] >> 3U);
        const std::uint32_t s1 = std::rotr(w[t - 2], 17) ^ std::rotr(w[t - 2], 19) ^ (w[t - 2] >> 10U);
        w[t] = s1 + w[t - 7] + s0 + w[t - 16];
    }
    return w;
}

void absorb(State& state, const std::uint8_t* block) {
    const auto w = schedule(block);
    auto [a, b, c, d, e, f, g, h] = state;
    for (std::size_t t = 0; t < 64; ++t) {
        const std::uint32_t s1 = std::rotr(e, 6) ^ std::rotr(e, 11) ^ std::rotr(e, 25);
        const std::uint32_t t1 = h + s1 + ((e & f) ^ (~e & g)) + kRound[t] + w[t];
        const std::uint32_t s0 = std::rotr(a, 2) ^ std::rotr(a, 13) ^ std::rotr(a, 22);
        const std::uint32_t t2 = s0 + ((a & b) ^ (a & c) ^ (b & c));
        h = g;
        g = f;
        f = e;
        e = d + t1;
        d = c;
        c = b;
        b = a;
        a = t1 + t2;
    }
    const State mixed{a, b, c, d, e, f, g, h};
    for (std::size_t i = 0; i < state.size(); ++i) {
        state[i] += mixed[i];
    }
}

}  // namespace

void Sha256Stream::add(std::span<const std::uint8_t> bytes) {
    total_ += bytes.size();
    for (const std::uint8_t byte : bytes) {
        block_[held_++] = byte;
        if (held_ == kBlock) {
            absorb(state_, block_.data());
            held_ = 0;
        }
    }
}

// FIPS 180-4, 5.1.1: a one bit, zeros, and the length in bits as the last eight bytes of a block.
Sha256 Sha256Stream::finish() && {
    const std::uint64_t bits = total_ * 8;
    const std::array<std::uint8_t, kBlock> padding{0x80};
    const std::size_t zeros = held_ < kBlock - 8 ? kBlock - 8 - held_ : 2 * kBlock - 8 - held_;
    add(std::span(padding).first(zeros));
    std::array<std::uint8_t, 8> length{};
    for (std::size_t i = 0; i < length.size(); ++i) {
        length[i] = static_cast<std::uint8_t>((bits >> (56 - 8 * i)) & 0xFFU);
    }
    add(length);
    Sha256 digest{};
    for (std::size_t i = 0; i < digest.size(); ++i) {
        digest[i] = static_cast<std::uint8_t>((state_[i / 4] >> (24 - 8 * (i % 4))) & 0xFFU);
    }
    return digest;
}

Sha256 sha256(std::string_view bytes) {
    Sha256Stream stream;
    stream.add({reinterpret_cast<const std::uint8_t*>(bytes.data()), bytes.size()});
    return std::move(stream).finish();  // NOLINT(performance-move-const-arg): finish() takes it away
}

std::string hexText(std::span<const std::uint8_t> bytes) {
    constexpr std::string_view kDigits = "0123456789abcdef";
    std::string out;
    out.reserve(2 * bytes.size());
    for (const std::uint8_t byte : bytes) {
        out += kDigits[byte >> 4U];
        out += kDigits[byte & 0x0FU];
    }
    return out;
}

}  // namespace crosstick
