#include "core/drafting/along.h"

#include <gtest/gtest.h>

#include "core/plan/edits.h"
#include "tests/drafting/made_lines.h"

namespace crosstick::drafting {
namespace {

class Along : public ::testing::Test {
  protected:
    IdSource ids{7};
    plan::FilmId film = ids.next();
    plan::Plan plan = plan::withFilm(plan::Plan{}, film, "MOVE", {});
    plan::ItemId put(const char* kind, Line points) {
        plan::Measure measure;
        measure.id = ids.next();
        measure.kind = kind;
        measure.points = std::move(points);
        const plan::ItemId id = measure.id;
        plan = plan::withMeasure(plan, std::move(measure), film);
        return id;
    }
    [[nodiscard]] std::optional<DrawnStretch> between(geodesy::PlanePoint from, geodesy::PlanePoint to) const {
        return drawnBetween(plan, plan.films(), from, to, Metres(20));
    }
};

TEST_F(Along, ADrawnLineIsFollowedBothWays) {
    const auto line = put("phase-line", {at(0, 0), at(500, 0), at(500, 500), at(900, 500)});
    const auto found = between(at(100, 5), at(700, 495));
    ASSERT_TRUE(found);
    EXPECT_EQ(found->item, line);
    EXPECT_EQ(found->line, (Line{at(100, 0), at(500, 0), at(500, 500), at(700, 500)}));
    EXPECT_EQ(between(at(700, 495), at(100, 5))->line, (Line{at(700, 500), at(500, 500), at(500, 0), at(100, 0)}));
    EXPECT_FALSE(between(at(100, 5), at(700, 460)));
    EXPECT_FALSE(between(at(100, 5), at(100, 5)));
}

TEST_F(Along, RoundAnAreaTheShorterWay) {
    put("assembly-area", {at(0, 0), at(400, 0), at(400, 400), at(0, 400)});
    EXPECT_EQ(between(at(100, 3), at(-3, 200))->line, (Line{at(100, 0), at(0, 0), at(0, 200)}));
    EXPECT_EQ(between(at(300, 3), at(403, 200))->line, (Line{at(300, 0), at(400, 0), at(400, 200)}));
    EXPECT_EQ(between(at(0, 0), at(400, 200))->line, (Line{at(0, 0), at(400, 0), at(400, 200)}));
}

TEST_F(Along, TheNearestOfSeveralIsMeant) {
    put("phase-line", {at(0, 10), at(500, 10)});
    const auto near = put("phase-line", {at(0, 0), at(500, 0)});
    EXPECT_EQ(between(at(100, 2), at(400, 2))->item, near);
}

}  // namespace
}  // namespace crosstick::drafting
