#include "ui/tools/trace_tool.h"

#include <gtest/gtest.h>

namespace crosstick::tools {
namespace {

using Kind = Event::Kind;

geodesy::PlanePoint at(double east, double north) {
    return {Metres(east), Metres(north)};
}

Uuid id(std::uint8_t number) {
    return Uuid{{number}};
}

/// The printed grid lies 1000 m east of the plan's plane.
GridWays ways() {
    return {[](geodesy::PlanePoint p) -> Result<geodesy::PlanePoint> {
                return geodesy::PlanePoint{p.easting + Metres(1000), p.northing};
            },
            [](geodesy::PlanePoint p) -> Result<geodesy::PlanePoint> {
                return geodesy::PlanePoint{p.easting - Metres(1000), p.northing};
            }};
}

struct Corners {
    geodesy::PlanePoint from, to;
};

TEST(BoxTool, TellsBothCornersOnTheGridDraggedOrClicked) {
    const plan::Plan plan;
    for (const bool dragged : {true, false}) {
        std::optional<Corners> told;
        BoxTool tool(
            ways(), "drag a box", [](auto, auto) { return std::string("a box"); },
            [&told](geodesy::PlanePoint from, geodesy::PlanePoint to) {
                told = Corners{from, to};
            });
        const auto tell = [&](Kind kind, geodesy::PlanePoint where, bool held) {
            const Ground ground{plan, {}, {}, {}, Metres(20), [] { return Uuid{}; }};
            return tool.take({kind, where, held, false}, ground);
        };
        EXPECT_EQ(tool.hint(), "drag a box");
        (void)tell(Kind::Press, at(10, 20), true);
        EXPECT_TRUE(tool.isBusy());
        if (dragged) {
            (void)tell(Kind::Move, at(300, 400), true);
        } else {
            EXPECT_FALSE(tell(Kind::Release, at(12, 21), false).done) << "a click: the other corner follows";
            (void)tell(Kind::Move, at(300, 400), false);
        }
        EXPECT_EQ(tool.wet().line, (plan::Points{at(10, 20), at(10, 400), at(300, 400), at(300, 20)}));
        EXPECT_EQ(tool.wet().what, "a box");
        EXPECT_TRUE(tell(dragged ? Kind::Release : Kind::Press, at(300, 400), false).done);
        ASSERT_TRUE(told);
        EXPECT_EQ(told->from, at(1010, 20));
        EXPECT_EQ(told->to, at(1300, 400));
    }
}

TEST(BoxTool, EscapeGivesUpTheCornerThenTheTool) {
    const plan::Plan plan;
    const Ground ground{plan, {}, {}, {}, Metres(20), [] { return Uuid{}; }};
    BoxTool tool(
        ways(), "", [](auto, auto) { return std::string(); }, [](auto, auto) { FAIL(); });
    (void)tool.take({Kind::Press, at(0, 0), true, false}, ground);
    EXPECT_FALSE(tool.take({Kind::Again, at(0, 0), true, false}, ground).done);
    EXPECT_FALSE(tool.take({Kind::Cancel, at(0, 0), false, false}, ground).done);
    EXPECT_FALSE(tool.isBusy());
    EXPECT_TRUE(tool.take({Kind::Cancel, at(0, 0), false, false}, ground).done);
}

/// Film 100 of higher's with phase line 1 from 0 to 2000 east and checkpoint 2; film 101 of ours is worked on.
class Tracing : public ::testing::Test {
  protected:
    plan::Plan plan = [] {
        plan::Plan made = plan::withFilm(plan::withFilm({}, id(100), "HIGHER", {}), id(101), "MOVE", {});
        plan::Measure line;
        line.id = id(1);
        line.kind = "phase-line";
        line.name = "CHALK";
        line.points = {at(0, 0), at(1000, 0), at(2000, 0)};
        plan::Measure point;
        point.id = id(2);
        point.kind = "checkpoint";
        point.number = "4";
        point.points = {at(500, 800)};
        return plan::withMeasure(plan::withMeasure(made, line, id(100)), point, id(100));
    }();
    std::optional<Corners> box;
    std::uint8_t fresh = 200;
    std::optional<plan::ItemId> selected;
    std::string caption;
    TraceTool tool{ways(), [](const plan::Measure&) { return std::string("v1"); },
                   [this](geodesy::PlanePoint from, geodesy::PlanePoint to) {
                       box = Corners{from, to};
                   }};

    bool tell(Kind kind, geodesy::PlanePoint where, bool held = false) {
        const Ground ground{plan, id(101), plan.films(), {}, Metres(20), [this] { return id(fresh++); }};
        const Reply reply = tool.take({kind, where, held, false}, ground);
        if (reply.commit) {
            plan = reply.commit->plan;
            caption = reply.commit->caption;
        }
        selected = reply.select ? *reply.select : std::nullopt;
        return reply.done;
    }
    void drag(geodesy::PlanePoint from, geodesy::PlanePoint to) {
        tell(Kind::Press, from, true);
        tell(Kind::Move, to, true);
        tell(Kind::Release, to);
    }
    [[nodiscard]] plan::MeasurePtr copy() const { return selected ? plan.measure(*selected) : nullptr; }
};

TEST_F(Tracing, AClickTracesAllOfAThing) {
    drag(at(500, 805), at(500, 805));
    ASSERT_TRUE(copy());
    EXPECT_EQ(copy()->points, plan::Points{at(500, 800)});
    EXPECT_EQ(copy()->tracedFrom->film, "HIGHER");
    EXPECT_EQ(caption, "trace CP 4");
    EXPECT_TRUE(plan::isShownOn(*plan.film(id(101)), copy()->id));
}

TEST_F(Tracing, DraggedAlongALineItTracesTheStretchInTheLinesDirection) {
    tell(Kind::Press, at(1400, 5), true);
    tell(Kind::Move, at(300, -60), true);
    EXPECT_EQ(tool.wet().line, (plan::Points{at(300, 0), at(1000, 0), at(1400, 0)}));
    tell(Kind::Release, at(300, -60));
    ASSERT_TRUE(copy());
    EXPECT_EQ(copy()->points, (plan::Points{at(300, 0), at(1000, 0), at(1400, 0)}));
    EXPECT_TRUE(plan::sourceOf(*copy())->isPart);
}

TEST_F(Tracing, BesideThingsItDrawsABoxAndTellsIt) {
    tell(Kind::Press, at(300, 500), true);
    tell(Kind::Move, at(700, 900), true);
    EXPECT_TRUE(tell(Kind::Release, at(700, 900)));
    ASSERT_TRUE(box);
    EXPECT_EQ(box->from, at(1300, 500));
    EXPECT_EQ(box->to, at(1700, 900));
    box.reset();
    drag(at(300, 500), at(305, 500));
    EXPECT_FALSE(box) << "a click beside everything";
}

TEST_F(Tracing, WhatTheWorkingFilmShowsItselfIsNotTraced) {
    drag(at(500, 805), at(500, 805));
    const auto before = plan.measures().size();
    plan = plan::notShownOn(plan, id(2), id(100));
    drag(at(500, 805), at(500, 805));
    EXPECT_EQ(plan.measures().size(), before);
}

}  // namespace
}  // namespace crosstick::tools
