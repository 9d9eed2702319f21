#include "ui/tools/neatline_tool.h"

#include <gtest/gtest.h>

#include "core/sheets/faults.h"

namespace crosstick::tools {
namespace {

using Kind = Event::Kind;

constexpr plan::SheetId kSheet{Uuid{{1}}};

geodesy::PlanePoint at(double east, double north) {
    return {Metres(east), Metres(north)};
}

/// A hand over a sheet of 1,000 by 800 pixels of 2 m whose upper left corner lies at 0, 0 of the plan's plane.
class MapsEdge : public ::testing::Test {
  protected:
    plan::Plan plan = [] {
        plan::Sheet sheet;
        sheet.id = kSheet;
        sheet.columns = 1000;
        sheet.rows = 800;
        plan::PlanBuilder builder{plan::Plan{}};
        builder.put(std::move(sheet));
        return std::move(builder).build();
    }();
    NeatlineTool tool{kSheet,
                      {[](geodesy::PlanePoint p) -> Result<plan::RasterSpot> {
                           return plan::RasterSpot{p.easting.value() / 2, -p.northing.value() / 2};
                       },
                       [](plan::RasterSpot s) -> Result<geodesy::PlanePoint> { return at(s.column * 2, -s.row * 2); }}};
    std::vector<std::string> captions;
    std::optional<Error> refused;
    bool done = false;

    void tell(Kind kind, geodesy::PlanePoint where, bool held = false, bool second = false) {
        const Ground ground{plan, {}, {}, {}, Metres(20), [] { return Uuid{}; }};
        const Reply reply = tool.take({kind, where, held, second}, ground);
        if (reply.commit) {
            plan = reply.commit->plan;
            captions.push_back(reply.commit->caption);
        }
        refused = reply.refused;
        done = reply.done;
    }
    void drag(geodesy::PlanePoint from, geodesy::PlanePoint to) {
        tell(Kind::Press, from, true);
        tell(Kind::Move, to, true);
        tell(Kind::Release, to);
    }
    [[nodiscard]] std::vector<plan::RasterSpot> now() const { return plan::outline(*plan.sheet(kSheet)); }
};

TEST_F(MapsEdge, ACornerGoesWithTheHand) {
    drag(at(5, -4), at(100, -60));
    EXPECT_EQ(now(), (std::vector<plan::RasterSpot>{{50, 30}, {1000, 0}, {1000, 800}, {0, 800}}));
    EXPECT_EQ(captions, std::vector<std::string>{"move a corner of the map's edge"});
}

TEST_F(MapsEdge, StaysInsideTheRaster) {
    drag(at(0, 0), at(-300, 200));
    EXPECT_TRUE(captions.empty());  // it is where it was
    drag(at(2000, 0), at(2500, -200));
    EXPECT_EQ(now()[1], (plan::RasterSpot{1000, 100}));
}

TEST_F(MapsEdge, TheSecondKeySetsACornerAndTakesOneOff) {
    tell(Kind::Press, at(1000, -10), true, true);
    ASSERT_EQ(now().size(), 5U);
    EXPECT_EQ(now()[1], (plan::RasterSpot{500, 5}));
    tell(Kind::Press, at(1000, -12), true, true);
    EXPECT_EQ(now(), (std::vector<plan::RasterSpot>{{0, 0}, {1000, 0}, {1000, 800}, {0, 800}}));
}

TEST_F(MapsEdge, WhatWouldCrossItselfIsRefusedAndStaysAsItWas) {
    const auto before = now();
    drag(at(0, 0), at(1800, -1500));
    ASSERT_FALSE(refused.has_value());  // a dart, whose edges do not cross
    plan = [&] {
        plan::Sheet sheet = *plan.sheet(kSheet);
        sheet.neatline.clear();
        plan::PlanBuilder builder(plan);
        builder.put(std::move(sheet));
        return std::move(builder).build();
    }();
    captions.clear();
    drag(at(0, 0), at(1990, -1900));
    ASSERT_TRUE(refused.has_value());
    EXPECT_EQ(refused->fault, sheets::kNeatlineCrosses);
    EXPECT_EQ(now(), before);
    EXPECT_TRUE(captions.empty());
}

TEST_F(MapsEdge, EscapeGivesUpTheDragAndThenTheTool) {
    const auto before = now();
    tell(Kind::Press, at(0, 0), true);
    tell(Kind::Move, at(200, -200), true);
    tell(Kind::Cancel, at(200, -200));
    EXPECT_FALSE(done);
    EXPECT_EQ(now(), before);
    tell(Kind::Cancel, at(200, -200));
    EXPECT_TRUE(done);
}

}  // namespace
}  // namespace crosstick::tools
