#include "core/worker/record.h"

#include <limits>
#include <random>

#include <gtest/gtest.h>

namespace crosstick::worker {
namespace {

TEST(Record, NumbersTextsAndBytesComeBackAsTheyWent) {
    Packer packer;
    packer.number(-7).real(0.1).text("PL TRIVET").number(std::numeric_limits<std::int64_t>::min()).text("");
    const Record record = packer.record(3);
    EXPECT_EQ(record.kind, 3);
    Unpacker unpacker(record.body);
    EXPECT_EQ(unpacker.number(), -7);
    EXPECT_EQ(unpacker.real(), 0.1);
    EXPECT_EQ(unpacker.text(), "PL TRIVET");
    EXPECT_EQ(unpacker.number(), std::numeric_limits<std::int64_t>::min());
    EXPECT_EQ(unpacker.text(), "");
    EXPECT_TRUE(unpacker.isSound());
    EXPECT_TRUE(unpacker.isAtEnd());
}

// By hand: length 2 in four bytes, kind 5, the two bytes.
TEST(Record, OnTheWireItsLengthGoesFirst) {
    const std::vector<std::uint8_t> wire{2, 0, 0, 0, 5, 8, 9};
    EXPECT_EQ(wireBytes({5, {8, 9}}), wire);
}

TEST(Record, WhatIsNotThereIsUnsoundAndEmpty) {
    const std::vector<std::uint8_t> few{1, 2, 3};
    Unpacker unpacker(few);
    EXPECT_EQ(unpacker.number(), 0);
    EXPECT_FALSE(unpacker.isSound());
    EXPECT_EQ(unpacker.text(), "");
    EXPECT_EQ(unpacker.real(), 0);
}

TEST(Record, ANumberOutsideItsRangeOrNoNumberIsUnsound) {
    for (const double wrong : {std::numeric_limits<double>::quiet_NaN(), std::numeric_limits<double>::infinity()}) {
        const Record record = Packer().real(wrong).record(1);
        Unpacker unpacker(record.body);
        EXPECT_EQ(unpacker.real(), 0);
        EXPECT_FALSE(unpacker.isSound());
    }
    const Record record = Packer().number(11).record(1);
    Unpacker unpacker(record.body);
    EXPECT_EQ(unpacker.number(0, 10), 0);
    EXPECT_FALSE(unpacker.isSound());
}

TEST(Record, ATextLongerThanAllowedIsUnsound) {
    const Record record = Packer().text("0123456789").record(1);
    Unpacker unpacker(record.body);
    EXPECT_EQ(unpacker.text(9), "");
    EXPECT_FALSE(unpacker.isSound());
}

// Whatever the pieces, the same records: a line gives bytes as it likes.
TEST(RecordStream, PiecesOfAnyLengthGiveTheSameRecords) {
    std::mt19937 chance(std::random_device{}());
    const auto seed = chance();
    SCOPED_TRACE(seed);
    chance.seed(seed);
    std::vector<Record> sent;
    std::vector<std::uint8_t> wire;
    for (int n = 0; n < 200; ++n) {
        Record record{static_cast<std::uint8_t>(n), std::vector<std::uint8_t>(chance() % 300)};
        for (std::uint8_t& byte : record.body) {
            byte = static_cast<std::uint8_t>(chance());
        }
        const auto bytes = wireBytes(record);
        wire.insert(wire.end(), bytes.begin(), bytes.end());
        sent.push_back(std::move(record));
    }
    RecordStream stream;
    std::vector<Record> got;
    for (std::size_t at = 0; at < wire.size();) {
        const std::size_t length = std::min<std::size_t>(1 + chance() % 97, wire.size() - at);
        stream.add({&wire[at], length});
        at += length;
        while (auto record = stream.next()) {
            got.push_back(std::move(*record));
        }
    }
    EXPECT_EQ(got, sent);
    EXPECT_FALSE(stream.isInside());
    EXPECT_FALSE(stream.isGarbled());
}

TEST(RecordStream, ALengthBeyondReasonIsGarbledAndCostsNoMemory) {
    RecordStream stream;
    const std::vector<std::uint8_t> wire{255, 255, 255, 255, 1};
    stream.add(wire);
    EXPECT_FALSE(stream.next().has_value());
    EXPECT_TRUE(stream.isGarbled());
}

TEST(RecordStream, KnowsThatItEndsInsideARecord) {
    RecordStream stream;
    const std::vector<std::uint8_t> wire{4, 0, 0, 0, 1, 2};
    stream.add(wire);
    EXPECT_FALSE(stream.next().has_value());
    EXPECT_TRUE(stream.isInside());
}

}  // namespace
}  // namespace crosstick::worker
