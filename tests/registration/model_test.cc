// The models against published and other programs' numbers, and their laws.
#include <cmath>

#include <gdal_alg.h>
#include <gtest/gtest.h>

#include "core/registration/least_squares.h"
#include "tests/registration/drawn_marks.h"

namespace crosstick::registration {
namespace {

using testing::allCrossings;

Mark mark(double x, double y, double easting, double northing) {
    return {{x, y}, {Metres(easting), Metres(northing)}};
}

// A conformal transformation of three control points: C. Ghilani, Adjustment Computations, ch. 18 (from memory; solved
// again apart from this program). There y runs up, here down.
TEST(Model, SimilarityGivesTheConformalExampleOfTheBook) {
    const std::vector marks{mark(121.622, 128.066, 1049422.40, 51089.20), mark(141.228, -187.718, 1049413.95, 49659.30),
                            mark(175.802, -135.728, 1049244.95, 49884.95)};
    const auto solved = solve(Kind::Similarity, marks);
    ASSERT_TRUE(solved.has_value());
    const PixelStep step = solved->model.stepAt({0, 0});
    EXPECT_NEAR(step.eastPerColumn, -4.51249, 5e-6);   // a
    EXPECT_NEAR(step.northPerColumn, -0.25371, 5e-6);  // b
    const auto shift = *solved->model.place({0, 0});
    EXPECT_NEAR(shift.easting.value(), 1050003.715, 1e-3);
    EXPECT_NEAR(shift.northing.value(), 50542.131, 1e-3);
    // Computed less given: A 0.004 -0.029, B 0.101 -0.077, C -0.105 0.106.
    const std::array<std::array<double, 2>, 3> left{{{0.004, -0.029}, {0.101, -0.077}, {-0.105, 0.106}}};
    for (std::size_t n = 0; n < 3; ++n) {
        const auto place = *solved->model.place(marks[n].at);
        EXPECT_NEAR((place.easting - marks[n].place.easting).value(), left[n][0], 5.1e-4);
        EXPECT_NEAR((place.northing - marks[n].place.northing).value(), left[n][1], 5.1e-4);
    }
    const std::vector others{mark(174.148, 120.262, 1049187.36, 51040.63), mark(513.520, 192.130, 1047637.71, 51278.83),
                             mark(754.444, 67.706, 1046582.11, 50656.24),
                             mark(972.788, -120.994, 1045644.71, 49749.34)};
    for (const Mark& other : others) {
        const auto place = *solved->model.place(other.at);
        EXPECT_NEAR((place.easting - other.place.easting).value(), 0, 0.006);
        EXPECT_NEAR((place.northing - other.place.northing).value(), 0, 0.006);
    }
}

// Four fiducials as in the same book; its printed numbers differ from the fourth figure on, these were solved apart.
TEST(Model, AffineGivesTheFourFiducials) {
    const std::vector marks{mark(0.764, -5.960, -113.000, 0.003), mark(5.062, -10.541, 0.001, 112.993),
                            mark(9.663, -6.243, 112.998, 0.003), mark(5.350, -1.654, 0.001, -112.999)};
    const auto solved = solve(Kind::Affine, marks);
    ASSERT_TRUE(solved.has_value());
    const auto first = *solved->model.place({1.746, -9.354});
    EXPECT_NEAR(first.easting.value(), -85.1987, 6e-5);
    EXPECT_NEAR(first.northing.value(), 85.4734, 6e-5);
    const auto second = *solved->model.place({5.329, -9.463});
    EXPECT_NEAR(second.easting.value(), 5.7906, 6e-5);
    EXPECT_NEAR(second.northing.value(), 85.3477, 6e-5);
}

/// The farthest of a model's places from those of GDAL's polynomial of an order for the same marks, in metres.
double farthestFromGdal(const Model& model, const std::vector<Mark>& marks, int order) {
    std::vector<GDAL_GCP> points(marks.size());
    GDALInitGCPs(static_cast<int>(points.size()), points.data());
    for (std::size_t n = 0; n < marks.size(); ++n) {
        points[n].dfGCPPixel = marks[n].at.x;
        points[n].dfGCPLine = marks[n].at.y;
        points[n].dfGCPX = marks[n].place.easting.value();
        points[n].dfGCPY = marks[n].place.northing.value();
    }
    void* transformer = GDALCreateGCPTransformer(static_cast<int>(points.size()), points.data(), order, FALSE);
    double farthest = 0;
    for (const PixelPoint at : {PixelPoint{0, 0}, {3800, 0}, {0, 4600}, {3800, 4600}, {1900, 2300}, {700, 4000}}) {
        double x = at.x;
        double y = at.y;
        double z = 0;
        int good = FALSE;
        EXPECT_TRUE(GDALGCPTransform(transformer, FALSE, 1, &x, &y, &z, &good) != 0 && good != 0);
        const auto place = *model.place(at);
        farthest = std::max(farthest, std::hypot(place.easting.value() - x, place.northing.value() - y));
    }
    GDALDestroyGCPTransformer(transformer);
    GDALDeinitGCPs(static_cast<int>(points.size()), points.data());
    return farthest;
}

TEST(Model, AgreesWithGdalOnTheSameMarks) {
    std::mt19937 random(7);
    const auto marks = testing::drawn(testing::bentTruth(), 30, 2, random);
    EXPECT_LT(farthestFromGdal(solve(Kind::Affine, marks)->model, marks, 1), 1e-5);
    EXPECT_LT(farthestFromGdal(solve(Kind::Quadratic, marks)->model, marks, 2), 1e-5);
    // GDAL has no similarity: where the marks lie in one, its first order is that.
    const auto similar = testing::drawn(testing::similarTruth(), 30, 0, random);
    EXPECT_LT(farthestFromGdal(solve(Kind::Similarity, similar)->model, similar, 1), 1e-5);
}

TEST(Model, EachGivesItsOwnKindExactly) {
    const std::array<std::pair<Kind, testing::Truth>, 3> kinds{{{Kind::Similarity, testing::similarTruth()},
                                                                {Kind::Affine, testing::stretchedTruth()},
                                                                {Kind::Projective, testing::aslantTruth()}}};
    for (const auto& [kind, truth] : kinds) {
        const auto marks = allCrossings(truth);
        const auto solved = solve(kind, marks);
        ASSERT_TRUE(solved.has_value());
        for (const Misfit& misfit : solved->misfits) {
            EXPECT_LT(std::hypot(misfit.pixels.x, misfit.pixels.y), 1e-7) << static_cast<int>(kind);
        }
    }
}

TEST(Model, PixelIsTheInverseOfPlace) {
    std::mt19937 random(11);
    std::uniform_real_distribution<double> x(0, 3800);
    std::uniform_real_distribution<double> y(0, 4600);
    const auto marks = testing::drawn(testing::bentTruth(), 30, 1, random);
    for (const Kind kind : kKinds) {
        const Model model = solve(kind, marks)->model;
        for (int n = 0; n < 200; ++n) {
            const PixelPoint at{x(random), y(random)};
            const auto back = model.pixel(*model.place(at));
            ASSERT_TRUE(back.has_value());
            EXPECT_NEAR(back->x, at.x, 1e-5);
            EXPECT_NEAR(back->y, at.y, 1e-5);
        }
    }
}

TEST(Model, LeavingOutSaysWhatAFitToTheOthersSays) {
    std::mt19937 random(5);
    const auto marks = testing::drawn(testing::aslantTruth(), 14, 0.7, random);
    for (const Kind kind : kKinds) {
        const auto all = solve(kind, marks);
        for (std::size_t n = 0; n < marks.size(); ++n) {
            auto others = marks;
            others.erase(others.begin() + static_cast<std::ptrdiff_t>(n));
            const auto solved = solve(kind, others);
            const Misfit misfit = misfitOf(solved->model, others, marks[n]);
            // Exact on the ground but for the projective model; pixels are those of two models a little apart.
            const double most = 0.04 * std::abs(misfit.pixels.x) + (kind == Kind::Projective ? 0.1 : 0.02);
            EXPECT_NEAR(all->misfits[n].ifLeftOut.x, misfit.pixels.x, most) << static_cast<int>(kind);
            // The gain by the squares of both fits; in pixels of one scale.
            EXPECT_NEAR(all->misfits[n].gain, all->squares - solved->squares, 0.1 * all->squares);
        }
    }
}

TEST(Model, SixNumbersTellSimilarityAndAffineAlone) {
    const auto marks = allCrossings(testing::stretchedTruth());
    EXPECT_FALSE(solve(Kind::Projective, marks)->model.placement().has_value());
    EXPECT_FALSE(solve(Kind::Quadratic, marks)->model.placement().has_value());
    const Model model = solve(Kind::Affine, marks)->model;
    const auto placement = *model.placement();
    const auto place = *model.place({100, 300});
    EXPECT_NEAR(placement.corner.easting.value() + 100 * placement.eastPerColumn + 300 * placement.eastPerRow,
                place.easting.value(), 1e-6);
    EXPECT_NEAR(placement.corner.northing.value() + 100 * placement.northPerColumn + 300 * placement.northPerRow,
                place.northing.value(), 1e-6);
}

}  // namespace
}  // namespace crosstick::registration
