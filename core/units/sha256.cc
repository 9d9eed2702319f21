#include "core/units/sha256.h"

#include <algorithm>
#include <bit>
#include <cstddef>
#include <utility>

#if defined(__x86_64__)
#include <cpuid.h>
#include <immintrin.h>
#endif

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
        const std::uint8_t* four = block + 4 * t;
        w[t] = (std::uint32_t{four[0]} << 24U) | (std::uint32_t{four[1]} << 16U) | (std::uint32_t{four[2]} << 8U) |
               four[3];
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

#if defined(__x86_64__)

bool hasOwnInstructions() {
    unsigned a = 0;
    unsigned b = 0;
    unsigned c = 0;
    unsigned d = 0;
    constexpr unsigned kSha = 1U << 29U;
    return __get_cpuid_count(7, 0, &a, &b, &c, &d) != 0 && (b & kSha) != 0;
}

/// The same for many blocks, by the processor's own instructions for it: four rounds a step, the state held as its
/// first and last pairs (A B E F, C D G H), and each four words of the schedule made from the sixteen before.
__attribute__((target("sha,sse4.1"))) void absorbByOwn(State& state, const std::uint8_t* block, std::size_t count) {
    const auto at = [](const auto* from) { return _mm_loadu_si128(reinterpret_cast<const __m128i*>(from)); };
    const __m128i bigEnd = _mm_set_epi64x(0x0c0d0e0f08090a0b, 0x0405060700010203);
    const __m128i upper = _mm_shuffle_epi32(at(state.data()), 0xb1);
    const __m128i lower = _mm_shuffle_epi32(at(state.data() + 4), 0x1b);
    __m128i abef = _mm_alignr_epi8(upper, lower, 8);
    __m128i cdgh = _mm_blend_epi16(lower, upper, 0xf0);
    for (; count > 0; --count, block += kBlock) {
        const __m128i abefBefore = abef;
        const __m128i cdghBefore = cdgh;
        __m128i w[4];  // an array of the library's loses what the type says of its place
        for (std::size_t n = 0; n < 4; ++n) {
            w[n] = _mm_shuffle_epi8(at(block + 16 * n), bigEnd);
        }
        for (std::size_t step = 0; step < 16; ++step) {
            __m128i& oldest = w[step % 4];
            const __m128i newest = w[(step + 3) % 4];
            const __m128i rounds = _mm_add_epi32(oldest, at(&kRound[4 * step]));
            cdgh = _mm_sha256rnds2_epu32(cdgh, abef, rounds);
            abef = _mm_sha256rnds2_epu32(abef, cdgh, _mm_shuffle_epi32(rounds, 0x0e));
            const __m128i sevenBefore = _mm_alignr_epi8(newest, w[(step + 2) % 4], 4);
            oldest = _mm_sha256msg2_epu32(_mm_add_epi32(_mm_sha256msg1_epu32(oldest, w[(step + 1) % 4]), sevenBefore),
                                          newest);
        }
        abef = _mm_add_epi32(abef, abefBefore);
        cdgh = _mm_add_epi32(cdgh, cdghBefore);
    }
    const __m128i feba = _mm_shuffle_epi32(abef, 0x1b);
    const __m128i dchg = _mm_shuffle_epi32(cdgh, 0xb1);
    _mm_storeu_si128(reinterpret_cast<__m128i*>(state.data()), _mm_blend_epi16(feba, dchg, 0xf0));
    _mm_storeu_si128(reinterpret_cast<__m128i*>(state.data() + 4), _mm_alignr_epi8(dchg, feba, 8));
}

#endif

/// Whole blocks where they lie; a few at once are not worth the asking.
void absorbAll(State& state, const std::uint8_t* blocks, std::size_t count) {
#if defined(__x86_64__)
    constexpr std::size_t kMany = 16;
    static const bool kOwn = hasOwnInstructions();
    if (count >= kMany && kOwn) {
        return absorbByOwn(state, blocks, count);
    }
#endif
    for (; count > 0; --count, blocks += kBlock) {
        absorb(state, blocks);
    }
}

}  // namespace

void Sha256Stream::add(std::span<const std::uint8_t> bytes) {
    total_ += bytes.size();
    if (held_ > 0) {
        const std::size_t more = std::min(kBlock - held_, bytes.size());
        std::copy_n(bytes.begin(), more, block_.begin() + static_cast<std::ptrdiff_t>(held_));
        held_ += more;
        bytes = bytes.subspan(more);
        if (held_ < kBlock) {
            return;
        }
        absorb(state_, block_.data());
    }
    const std::size_t whole = bytes.size() / kBlock;
    absorbAll(state_, bytes.data(), whole);
    const auto rest = bytes.subspan(whole * kBlock);
    std::copy(rest.begin(), rest.end(), block_.begin());
    held_ = rest.size();
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
