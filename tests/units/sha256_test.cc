#include "core/units/sha256.h"

#include <algorithm>
#include <random>
#include <utility>

#include <gtest/gtest.h>

namespace crosstick {
namespace {

// FIPS 180-4 and its example values.
TEST(Sha256, GivesThePublishedDigests) {
    EXPECT_EQ(hexText(sha256("")), "e3b0c44298fc1c149afbf4c8996fb92427ae41e4649b934ca495991b7852b855");
    EXPECT_EQ(hexText(sha256("abc")), "ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad");
    EXPECT_EQ(hexText(sha256("abcdbcdecdefdefgefghfghighijhijkijkljklmklmnlmnomnopnopq")),
              "248d6a61d20638b8e5c026930c3e6039a33ce45964ff2167f6ecedd419db06c1");
}

TEST(Sha256, GivesThePublishedDigestOfAMillionLetters) {
    EXPECT_EQ(hexText(sha256(std::string(1000000, 'a'))),
              "cdc76e5c9914fb9281a1c7e284d73e67f1809a48a497200e046d39ccc7112cd0");
}

/// Lengths about the block's: the padding spills into another block from 56 bytes on.
TEST(Sha256, DiffersForEveryLengthAboutABlock) {
    std::string before = hexText(sha256(std::string(52, 'x')));
    for (std::size_t length = 53; length < 132; ++length) {
        const std::string now = hexText(sha256(std::string(length, 'x')));
        EXPECT_NE(now, before) << length;
        before = now;
    }
    EXPECT_EQ(hexText(sha256(std::string(64, 'a'))),
              "ffe054fe7ae0cb6dc65c3af9b61d5209f439851db43d0ba5997337df154668eb");
}

// Whole blocks in great number go another way than few, and bytes wait where a block is not full.
TEST(Sha256, LawIsTheSameInPiecesAsInOne) {
    std::mt19937 chance(std::random_device{}());
    const auto seed = chance();
    SCOPED_TRACE(seed);
    chance.seed(seed);
    for (int n = 0; n < 100; ++n) {
        std::string bytes(1 + chance() % 6000, ' ');
        std::generate(bytes.begin(), bytes.end(), [&] { return static_cast<char>(chance()); });
        Sha256Stream stream;
        for (std::size_t at = 0; at < bytes.size();) {
            const std::size_t piece = std::min<std::size_t>(bytes.size() - at, chance() % 400);
            stream.add({reinterpret_cast<const std::uint8_t*>(&bytes[at]), piece});
            at += piece;
        }
        EXPECT_EQ(std::move(stream).finish(), sha256(bytes)) << bytes.size();
    }
}

}  // namespace
}  // namespace crosstick
