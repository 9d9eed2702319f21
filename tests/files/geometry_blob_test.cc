#include "core/files/geometry_blob.h"

#include <random>

#include <gtest/gtest.h>

namespace crosstick::files {
namespace {

Points somePoints(std::mt19937_64& chance, std::size_t count) {
    std::uniform_real_distribution<double> any(-1e7, 1e7);
    Points points;
    for (std::size_t n = 0; n < count; ++n) {
        points.push_back({Metres(any(chance)), Metres(any(chance))});
    }
    return points;
}

TEST(GeometryBlob, GivesBackEveryBitOfThePoints) {
    const std::uint64_t seed = 11;
    SCOPED_TRACE(seed);
    std::mt19937_64 chance(seed);
    for (const auto shape : {measures::Shape::Point, measures::Shape::Line, measures::Shape::Area}) {
        for (std::size_t count = 0; count < 40; ++count) {
            const Points points = somePoints(chance, count);
            EXPECT_EQ(*pointsFromBlob(geometryBlob(points, shape, 32625)), points);
        }
    }
}

// OGC 12-128r18 2.1.3 and OGC 06-103r4: magic, version, flags, SRS, byte order, type.
TEST(GeometryBlob, BeginsAsTheStandardSays) {
    const Blob point = geometryBlob({{Metres(1), Metres(2)}}, measures::Shape::Point, 32625);
    const Blob head{'G', 'P', 0, 1, 0x71, 0x7f, 0, 0, 1, 1, 0, 0, 0};
    ASSERT_EQ(point.size(), 29U);
    EXPECT_TRUE(std::equal(head.begin(), head.end(), point.begin()));
}

TEST(GeometryBlob, AnAreaIsARingThatEndsWhereItBegan) {
    const Blob area = geometryBlob({{Metres(0), Metres(0)}, {Metres(1), Metres(0)}, {Metres(1), Metres(1)}},
                                   measures::Shape::Area, 32625);
    EXPECT_EQ(area[9], 3);    // POLYGON
    EXPECT_EQ(area[17], 4U);  // points of its one ring
}

TEST(GeometryBlob, NothingCutOffOrTwistedIsTaken) {
    const std::uint64_t seed = 12;
    SCOPED_TRACE(seed);
    std::mt19937_64 chance(seed);
    const Blob whole = geometryBlob(somePoints(chance, 9), measures::Shape::Line, 32625);
    for (std::size_t size = 1; size < whole.size(); ++size) {
        EXPECT_FALSE(pointsFromBlob(std::span(whole).first(size))) << size;
    }
    Blob longer = whole;
    longer.push_back(0);
    EXPECT_FALSE(pointsFromBlob(longer));
    Blob boasting = whole;
    boasting[13] = boasting[14] = boasting[15] = boasting[16] = 0xff;  // four thousand million points
    EXPECT_FALSE(pointsFromBlob(boasting));
    Blob nowhere = whole;
    std::fill(nowhere.begin() + 17, nowhere.begin() + 25, std::uint8_t{0xff});  // not a number
    EXPECT_FALSE(pointsFromBlob(nowhere));
}

}  // namespace
}  // namespace crosstick::files
