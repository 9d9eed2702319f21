// Marks, what they lead to, and the fit to both.
#include "core/registration/found_fit.h"

#include <cmath>

#include <gtest/gtest.h>

#include "tests/registration/drawn_sheet.h"

namespace crosstick::registration {
namespace {

using testing::drawnSheet;
using testing::DrawnSheet;

/// The farthest that a fit has an inner crossing from its true place, in pixels.
double farthest(const Model& model, const DrawnSheet& sheet) {
    double most = 0;
    for (const Mark& mark : sheet.inner) {
        const auto at = model.pixel(mark.place);
        most = std::max(most, at ? std::hypot(at->x - mark.at.x, at->y - mark.at.y) : 1e6);
    }
    return most;
}

TEST(FoundFit, ThreeRoughMarksBecomeAFitThatIsGoodEverywhere) {
    const DrawnSheet sheet =
        drawnSheet({.denominator = 50000, .dotsPerInch = 200, .blur = 2, .noise = 4, .turn = 1, .aslant = 0.05});
    std::vector<Mark> marks{sheet.near(0.3, 0.3), sheet.near(0.5, 0.3), sheet.near(0.3, 0.45)};
    marks[0].at.x += 1.2;  // as a hand clicks
    marks[1].at.y -= 1;
    const auto fit = fitWithCrossings(sheet.picture(), marks);
    ASSERT_TRUE(fit.has_value());
    EXPECT_EQ(fit->fit.model.kind(), Kind::Projective);
    EXPECT_LT(farthest(fit->fit.model, sheet), 0.5);
    EXPECT_GT(farthest(fitMarks(marks)->model, sheet), 5) << "the three alone know nothing of the slant";
    EXPECT_GT(fit->fit.residuals.size(), marks.size() + 50);
    EXPECT_NEAR(fit->fit.residuals[0].size(), 1.2, 0.3) << "the marks come first";
}

TEST(FoundFit, AMarkOnTheWrongLineLeadsNobodyAstray) {
    const DrawnSheet sheet = drawnSheet({.denominator = 50000});
    std::vector<Mark> marks{sheet.near(0.2, 0.2), sheet.near(0.8, 0.2), sheet.near(0.2, 0.8),
                            sheet.near(0.8, 0.8), sheet.near(0.5, 0.5), sheet.near(0.5, 0.2)};
    marks[4].place.easting += Metres(1000);
    const auto fit = fitWithCrossings(sheet.picture(), marks);
    ASSERT_TRUE(fit.has_value());
    EXPECT_TRUE(fit->fit.residuals[4].isBlunder);
    EXPECT_LT(farthest(fit->fit.model, sheet), 0.5);
}

TEST(FoundFit, WithoutAGridItIsTheFitOfTheMarks) {
    const DrawnSheet sheet = drawnSheet({.denominator = 50000, .grid = testing::GridLines::None});
    const std::vector<Mark> marks{sheet.near(0.2, 0.2), sheet.near(0.8, 0.2), sheet.near(0.2, 0.8),
                                  sheet.near(0.8, 0.8)};
    const auto fit = fitWithCrossings(sheet.picture(), marks);
    ASSERT_TRUE(fit.has_value());
    EXPECT_TRUE(fit->crossings.empty());
    EXPECT_EQ(fit->fit.residuals.size(), 4U);
}

}  // namespace
}  // namespace crosstick::registration
