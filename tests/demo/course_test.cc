#include "sample-data/sheet/course.h"

#include <cmath>
#include <random>

#include <gtest/gtest.h>

#include "core/drawing/steps.h"

namespace crosstick::demo {
namespace {

constexpr unsigned kSeed = 20270314;

QPainterPath anyLine(std::mt19937& chance) {
    std::uniform_real_distribution<double> place(0, 400);
    std::uniform_int_distribution<int> count(2, 12);
    QPainterPath path(QPointF(place(chance), place(chance)));
    for (int n = count(chance); n > 1; --n) {
        path.lineTo(place(chance), place(chance));
    }
    return path;
}

/// Qt's own walk along the whole path is the slow oracle.
TEST(Course, FindsTheSamePlacesAsAWalkAlongThePath) {
    SCOPED_TRACE(kSeed);
    std::mt19937 chance(kSeed);
    std::uniform_real_distribution<double> share(0, 1);
    for (int round = 0; round < 300; ++round) {
        const QPainterPath path = anyLine(chance);
        const Course course(path);
        ASSERT_NEAR(course.length(), path.length(), 1e-6);
        const double t = share(chance);
        const Along place = course.at(t * course.length());
        const QPointF walked = path.pointAtPercent(t);
        EXPECT_NEAR(place.at.x(), walked.x(), 1e-4);
        EXPECT_NEAR(place.at.y(), walked.y(), 1e-4);
        EXPECT_NEAR(std::remainder(place.angle + path.angleAtPercent(t), 360.0), 0, 1e-4);
    }
}

TEST(Course, StaysAtItsEndsBeyondThem) {
    const Course course({{0, 0}, {3, 0}, {3, 4}});
    EXPECT_EQ(course.at(-1).at, QPointF(0, 0));
    EXPECT_EQ(course.at(99).at, QPointF(3, 4));
    EXPECT_EQ(course.at(5).at, QPointF(3, 2));
    EXPECT_NEAR(course.at(5).angle, 90, 1e-12);  // down the paper, clockwise from the right
}

TEST(Course, IsTheSumOfItsPieces) {
    SCOPED_TRACE(kSeed);
    std::mt19937 chance(kSeed);
    std::uniform_real_distribution<double> share(0.01, 0.99);
    for (int round = 0; round < 100; ++round) {
        const Course course(anyLine(chance));
        const double cut = share(chance) * course.length();
        EXPECT_NEAR(course.piece(0, cut).length() + course.piece(cut, course.length()).length(), course.length(), 1e-6);
    }
    EXPECT_TRUE(Course({{0, 0}, {3, 0}}).piece(2, 2).isEmpty());
}

TEST(Course, IsNearestWhereNoStepAlongItIsNearer) {
    SCOPED_TRACE(kSeed);
    std::mt19937 chance(kSeed);
    std::uniform_real_distribution<double> place(0, 400);
    for (int round = 0; round < 100; ++round) {
        const Course course(anyLine(chance));
        const QPointF spot(place(chance), place(chance));
        const Course::Nearest nearest = course.nearest(spot);
        const auto away = [&](double d) {
            const QPointF apart = course.at(d).at - spot;
            return std::hypot(apart.x(), apart.y());
        };
        EXPECT_NEAR(away(nearest.distance), nearest.away, 1e-6);
        for (const double d : drawing::steps(0, course.length(), course.length() / 200)) {
            EXPECT_GE(away(d), nearest.away - 1e-9);
        }
    }
}

TEST(EvenSteps, CountTheLastWhereItIsMet) {
    EXPECT_EQ(drawing::steps(10, 450, 10).size(), 45U);
    EXPECT_EQ(drawing::steps(0.05, 0.95, 0.05).size(), 19U);  // in binary 0.05 has no end
    EXPECT_EQ(drawing::steps(0, 1, 0.4), (std::vector<double>{0, 0.4, 0.8}));
    EXPECT_TRUE(drawing::steps(5, 4, 1).empty());
}

TEST(Course, WithoutLengthHasADirectionAllTheSame) {
    EXPECT_EQ(Course(std::vector<QPointF>{}).length(), 0);
    EXPECT_EQ(Course(std::vector{QPointF(2, 5)}).at(1).at, QPointF(2, 5));
    EXPECT_EQ(Course({{2, 5}, {2, 5}}).at(1).angle, 0);
}

}  // namespace
}  // namespace crosstick::demo
