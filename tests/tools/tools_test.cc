#include <algorithm>

#include <gtest/gtest.h>

#include "ui/tools/hand_tool.h"
#include "ui/tools/place_tool.h"
#include "ui/tools/route_tool.h"

namespace crosstick::tools {
namespace {

using Kind = Event::Kind;

geodesy::PlanePoint at(double east, double north) {
    return {Metres(east), Metres(north)};
}

/// Feeds events to a tool as the table does: commits become the plan, selections the selection.
class Hands : public ::testing::Test {
  protected:
    IdSource ids{4};
    plan::FilmId film = ids.next();
    plan::Plan plan = plan::withFilm(plan::Plan{}, film, "MOVE", {});
    std::optional<plan::Plan> draft;
    std::optional<plan::ItemId> selected;
    std::vector<std::string> captions;
    bool done = false;

    std::vector<Touched> lying;  ///< symbols and labels on the table, each within 30 m of its place

    [[nodiscard]] Ground ground() {
        Ground now{plan, film, plan.films(), selected, Metres(10), [this] { return ids.next(); }};
        now.touch = [all = lying](geodesy::PlanePoint place, const plan::ItemId& except) -> std::optional<Touched> {
            for (const Touched& one : all) {
                if (one.item != except && apart(one.at, place) < Metres(30)) {
                    return one;
                }
            }
            return std::nullopt;
        };
        now.onPaper = [](geodesy::PlanePoint place) {
            return drawing::Point{place.easting.value() / 25, -place.northing.value() / 25};
        };
        return now;
    }
    plan::ItemId placed(const char* kind, double east, double north) {
        PlaceTool tool(*measures::find(kind));
        click(tool, east, north);
        return *selected;
    }
    [[nodiscard]] const plan::Showing& showing(const plan::ItemId& item) {
        const auto& shows = plan.film(film)->shows;
        return *std::find_if(shows.begin(), shows.end(), [&](const plan::Showing& one) { return one.item == item; });
    }
    void tell(Tool& tool, Kind kind, geodesy::PlanePoint place = {}, bool held = false, bool second = false) {
        const Reply reply = tool.take({kind, place, held, second}, ground());
        if (reply.draft) {
            draft = reply.draft;
        }
        if (reply.draftGone || reply.commit) {
            draft.reset();
        }
        if (reply.commit) {
            plan = reply.commit->plan;
            captions.push_back(reply.commit->caption);
        }
        if (reply.select) {
            selected = *reply.select;
        }
        done = reply.done;
    }
    void click(Tool& tool, double east, double north, bool second = false) {
        tell(tool, Kind::Move, at(east, north), false, second);
        tell(tool, Kind::Press, at(east, north), true, second);
        tell(tool, Kind::Release, at(east, north), false, second);
    }
    void drag(Tool& tool, geodesy::PlanePoint from, geodesy::PlanePoint to, bool second = false) {
        tell(tool, Kind::Press, from, true, second);
        tell(tool, Kind::Move, to, true, second);
        tell(tool, Kind::Release, to, false, second);
    }
    plan::MeasurePtr only() {
        plan::MeasurePtr found;
        plan.measures().forEach([&](const plan::MeasurePtr& measure) { found = measure; });
        return found;
    }
};

TEST_F(Hands, APointIsPlacedByOneClickWithTheNextFreeNumber) {
    PlaceTool tool(*measures::find("checkpoint"));
    click(tool, 100, 200);
    click(tool, 300, 200);
    ASSERT_EQ(plan.measures().size(), 2U);
    EXPECT_EQ(plan.measure(*selected)->number, "2");
    EXPECT_EQ(plan.measure(*selected)->points.front(), at(300, 200));
    EXPECT_TRUE(plan::isShownOn(*plan.film(film), *selected));
    EXPECT_EQ(captions, (std::vector<std::string>{"draw checkpoint", "draw checkpoint"}));
    EXPECT_FALSE(done) << "the next one can be placed at once";
}

TEST_F(Hands, ALineEndsOnlyWhenItIsToldTo) {
    PlaceTool tool(*measures::find("phase-line"));
    click(tool, 0, 0);
    tell(tool, Kind::Finish);
    EXPECT_TRUE(plan.measures().isEmpty()) << "one point is no line";
    click(tool, 100, 0);
    click(tool, 200, 50);
    EXPECT_TRUE(plan.measures().isEmpty());
    tell(tool, Kind::Finish);
    ASSERT_EQ(plan.measures().size(), 1U);
    EXPECT_EQ(only()->points, (plan::Points{at(0, 0), at(100, 0), at(200, 50)}));
    EXPECT_TRUE(done);
}

TEST_F(Hands, ADoubleClickEndsALineAtThePointItPressed) {
    for (const char* kind : {"phase-line", "assembly-area"}) {
        PlaceTool tool(*measures::find(kind));
        click(tool, 0, 0);
        tell(tool, Kind::Again, at(0, 0), true);
        EXPECT_TRUE(tool.isBusy()) << "one point is no line";
        click(tool, 100, 0);
        click(tool, 200, 50);
        tell(tool, Kind::Again, at(201, 50), true);
        tell(tool, Kind::Release, at(201, 50));
        EXPECT_EQ(plan.measure(*selected)->points, (plan::Points{at(0, 0), at(100, 0), at(200, 50)})) << kind;
        EXPECT_FALSE(tool.isBusy());
    }
    RouteTool route(plan::Use::Primary);
    click(route, 0, 1000);
    tell(route, Kind::Again, at(0, 1000), true);
    EXPECT_TRUE(plan.routes().empty());
    click(route, 500, 1000);
    tell(route, Kind::Again, at(501, 1000), true);
    ASSERT_EQ(plan.routes().size(), 1U);
    EXPECT_EQ(plan.routes().front()->vertices, (plan::Points{at(0, 1000), at(500, 1000)}));
}

TEST_F(Hands, ADoubleClickPlacesOnePoint) {
    PlaceTool tool(*measures::find("checkpoint"));
    click(tool, 100, 200);
    tell(tool, Kind::Again, at(100, 200), true);
    EXPECT_EQ(plan.measures().size(), 1U);
}

TEST_F(Hands, BackspaceTakesTheLastPointAndEscapeTheWholeLine) {
    PlaceTool tool(*measures::find("phase-line"));
    click(tool, 0, 0);
    click(tool, 100, 0);
    tell(tool, Kind::TakeBack);
    click(tool, 50, 50);
    tell(tool, Kind::Finish);
    EXPECT_EQ(only()->points, (plan::Points{at(0, 0), at(50, 50)}));
    click(tool, 0, 0);
    tell(tool, Kind::Cancel);
    EXPECT_FALSE(tool.isBusy());
    EXPECT_FALSE(done) << "the first Escape wipes the line, the second lays the pen down";
    tell(tool, Kind::Cancel);
    EXPECT_TRUE(done);
    EXPECT_EQ(plan.measures().size(), 1U);
}

TEST_F(Hands, AnAreaOfTwoPointsIsNotAnArea) {
    PlaceTool tool(*measures::find("assembly-area"));
    click(tool, 0, 0);
    click(tool, 100, 0);
    tell(tool, Kind::Finish);
    EXPECT_TRUE(plan.measures().isEmpty());
    EXPECT_TRUE(tool.wet().closes);
}

TEST_F(Hands, ARouteMakesItsPointsAsItIsDrawn) {
    RouteTool tool(plan::Use::Primary);
    click(tool, 0, 0);
    click(tool, 500, 0);
    click(tool, 700, 100, true);
    click(tool, 900, 400);
    const auto preview = tool.preview(ground());
    ASSERT_TRUE(preview);
    const plan::MeasurePtr inHand = preview->plan.measure(preview->plan.route(preview->route)->stops.back().measure);
    EXPECT_EQ("CP " + inHand->number, tool.wet().what) << "the ledger and the tag name the same point";
    tell(tool, Kind::Finish);
    const plan::RoutePtr route = plan.route(*selected);
    ASSERT_TRUE(route);
    EXPECT_EQ(route->vertices.size(), 4U);
    ASSERT_EQ(route->stops.size(), 3U);
    EXPECT_EQ(plan.measure(route->stops[0].measure)->kind, "start-point");
    EXPECT_EQ(plan.measure(route->stops[1].measure)->kind, "checkpoint");
    EXPECT_EQ(route->stops[2].vertex, 3U) << "the bend has no point of its own";
    EXPECT_EQ(plan.measure(route->stops[2].measure)->kind, "release-point");
    EXPECT_EQ(captions.size(), 1U) << "one step of the history";
    EXPECT_TRUE(done);
}

TEST_F(Hands, ARouteUsesThePointThatStandsWhereItIsClicked) {
    PlaceTool points(*measures::find("checkpoint"));
    click(points, 500, 3);
    const plan::ItemId stands = *selected;
    RouteTool tool(plan::Use::Alternate);
    click(tool, 0, 0);
    click(tool, 504, 0);
    click(tool, 900, 0);
    tell(tool, Kind::Finish);
    const plan::RoutePtr route = plan.route(*selected);
    ASSERT_TRUE(route);
    EXPECT_EQ(route->use, plan::Use::Alternate);
    EXPECT_EQ(route->stops[1].measure, stands);
    EXPECT_EQ(route->vertices[1], at(500, 3)) << "the line goes to the point, not beside it";
}

TEST_F(Hands, DraggingAPointMovesItAndIsOneStep) {
    PlaceTool points(*measures::find("checkpoint"));
    click(points, 100, 100);
    HandTool hand;
    tell(hand, Kind::Press, at(103, 100), true);
    tell(hand, Kind::Move, at(150, 140), true);
    ASSERT_TRUE(draft);
    EXPECT_EQ(draft->measure(*selected)->points[0], at(147, 140)) << "the hand keeps its hold beside the point";
    tell(hand, Kind::Move, at(203, 180), true);
    tell(hand, Kind::Release, at(203, 180));
    EXPECT_FALSE(draft);
    EXPECT_EQ(only()->points[0], at(200, 180));
    EXPECT_EQ(captions.size(), 2U);
}

TEST_F(Hands, AClickWithoutADragChangesNothing) {
    PlaceTool points(*measures::find("checkpoint"));
    click(points, 100, 100);
    const plan::Plan before = plan;
    HandTool hand;
    drag(hand, at(100, 100), at(102, 101));
    EXPECT_TRUE(plan == before) << "less than the reach is a click";
    click(hand, 5000, 5000);
    EXPECT_FALSE(selected);
}

TEST_F(Hands, ALineIsChosenBeforeItCanBePushed) {
    PlaceTool pen(*measures::find("phase-line"));
    click(pen, 0, 0);
    click(pen, 1000, 0);
    tell(pen, Kind::Finish);
    selected.reset();
    const plan::Plan before = plan;
    HandTool hand;
    drag(hand, at(500, 2), at(500, 300));
    EXPECT_TRUE(plan == before);
    ASSERT_TRUE(selected);
    drag(hand, at(500, 2), at(510, 302));
    EXPECT_EQ(only()->points, (plan::Points{at(10, 300), at(1010, 300)}));
    drag(hand, at(10, 300), at(0, 0));
    EXPECT_EQ(only()->points, (plan::Points{at(0, 0), at(1010, 300)}));
    drag(hand, at(505, 150), at(500, 250), true);
    ASSERT_EQ(only()->points.size(), 3U) << "with Shift a new point goes into the line";
    EXPECT_EQ(only()->points[1], at(500, 250));
}

TEST_F(Hands, EscapeInTheMiddleOfADragPutsEverythingBack) {
    PlaceTool points(*measures::find("checkpoint"));
    click(points, 100, 100);
    const plan::Plan before = plan;
    HandTool hand;
    tell(hand, Kind::Press, at(100, 100), true);
    tell(hand, Kind::Move, at(400, 400), true);
    tell(hand, Kind::Cancel);
    tell(hand, Kind::Release, at(400, 400));
    EXPECT_TRUE(plan == before);
    EXPECT_FALSE(draft);
}

TEST_F(Hands, ShiftSetsASymbolAsideAndLeavesItsSpot) {
    PlaceTool points(*measures::find("checkpoint"));
    click(points, 100, 100);
    HandTool hand;
    drag(hand, at(100, 100), at(300, 300), true);
    EXPECT_EQ(only()->points[0], at(100, 100));
    ASSERT_TRUE(plan.film(film)->shows[0].symbolAt);
    EXPECT_EQ(*plan.film(film)->shows[0].symbolAt, at(300, 300));
}

TEST_F(Hands, ANudgeMovesWhatIsChosen) {
    PlaceTool points(*measures::find("checkpoint"));
    click(points, 100, 100);
    HandTool hand;
    tell(hand, Kind::Nudge, at(5, -5));
    EXPECT_EQ(only()->points[0], at(105, 95));
    selected.reset();
    const plan::Plan before = plan;
    tell(hand, Kind::Nudge, at(5, -5));
    EXPECT_TRUE(plan == before);
}

TEST_F(Hands, KeysGoFromPointToPointAndMoveOrTakeOutTheOneThatIsHeld) {
    RouteTool pen(plan::Use::Primary);
    click(pen, 0, 0);
    click(pen, 500, 0);
    click(pen, 1000, 0);
    tell(pen, Kind::Finish);
    const plan::ItemId route = plan.routes().front()->id;
    selected = route;
    HandTool hand;
    EXPECT_FALSE(hand.heldPoint(route));
    tell(hand, Kind::NextPoint);
    tell(hand, Kind::NextPoint);
    EXPECT_EQ(hand.heldPoint(route), 1U);
    tell(hand, Kind::Nudge, at(0, 25));
    EXPECT_EQ(plan.routes().front()->vertices[1], at(500, 25));
    EXPECT_EQ(plan.routes().front()->vertices[0], at(0, 0));
    tell(hand, Kind::LastPoint);
    tell(hand, Kind::LastPoint);
    EXPECT_EQ(hand.heldPoint(route), 2U) << "round the end";
    tell(hand, Kind::LastPoint);
    tell(hand, Kind::TakeBack);
    EXPECT_EQ(plan.routes().front()->vertices, (plan::Points{at(0, 0), at(1000, 0)}));
    tell(hand, Kind::Cancel);
    EXPECT_FALSE(hand.heldPoint(route));
    EXPECT_TRUE(selected.has_value()) << "the first Escape lets go of the point, the second of the route";
    tell(hand, Kind::Nudge, at(10, 0));
    EXPECT_EQ(plan.routes().front()->vertices[0], at(10, 0));
}

TEST_F(Hands, APointIsHitBeforeTheLineUnderIt) {
    RouteTool pen(plan::Use::Primary);
    click(pen, 0, 0);
    click(pen, 500, 0);
    click(pen, 1000, 0);
    tell(pen, Kind::Finish);
    const auto hit = hitAt(plan, plan.films(), std::nullopt, at(503, 2), Metres(10));
    ASSERT_TRUE(hit);
    EXPECT_TRUE(plan.measure(hit->item));
    const auto line = hitAt(plan, plan.films(), std::nullopt, at(250, 4), Metres(10));
    ASSERT_TRUE(line);
    EXPECT_TRUE(plan.route(line->item));
    EXPECT_EQ(line->before, 1U);
    EXPECT_FALSE(hitAt(plan, plan.films(), std::nullopt, at(250, 40), Metres(10)));
}

TEST_F(Hands, ASymbolThatStandsAsideIsTakenHoldOfByItself) {
    const plan::ItemId unit = placed("unit", 1000, 1000);
    lying = {{unit, film, Touched::What::Symbol, true, at(1300, 1200)}};
    HandTool hand;
    selected.reset();
    drag(hand, at(1310, 1205), at(1410, 1305));
    EXPECT_EQ(selected, unit);
    EXPECT_EQ(showing(unit).symbolAt, at(1400, 1300)) << "it moves as far as the hand";
    EXPECT_EQ(plan.measure(unit)->points.front(), at(1000, 1000)) << "the spot stays";
    EXPECT_EQ(captions.back(), "set a symbol aside");
}

TEST_F(Hands, ASymbolOnItsSpotMovesTheSpotAndWithTheSecondKeyStepsAside) {
    const plan::ItemId unit = placed("unit", 1000, 1000);
    lying = {{unit, film, Touched::What::Symbol, false, at(1000, 1000)}};
    HandTool hand;
    drag(hand, at(1020, 1015), at(1120, 1115));
    EXPECT_EQ(plan.measure(unit)->points.front(), at(1100, 1100));
    EXPECT_FALSE(showing(unit).symbolAt);
    lying = {{unit, film, Touched::What::Symbol, false, at(1100, 1100)}};
    drag(hand, at(1120, 1115), at(1320, 1315), true);
    EXPECT_EQ(showing(unit).symbolAt, at(1300, 1300));
    EXPECT_EQ(plan.measure(unit)->points.front(), at(1100, 1100));
}

TEST_F(Hands, AUnitLetGoOnAnotherJoinsItsRow) {
    const plan::ItemId first = placed("unit", 1000, 1000);
    const plan::ItemId second = placed("unit", 3000, 1000);
    lying = {{first, film, Touched::What::Symbol, false, at(1000, 1000)},
             {second, film, Touched::What::Symbol, true, at(3000, 1300)}};
    HandTool hand;
    drag(hand, at(3005, 1300), at(1005, 1000));
    EXPECT_EQ(showing(second).standsWith, first);
    EXPECT_FALSE(showing(second).symbolAt);
    EXPECT_EQ(plan.measure(second)->points.front(), at(1000, 1000)) << "one line leads to one spot";
}

TEST_F(Hands, AUnitOnItsSpotJoinsARowAsWell) {
    const plan::ItemId first = placed("unit", 1000, 1000);
    const plan::ItemId second = placed("unit", 3000, 1000);
    lying = {{first, film, Touched::What::Symbol, false, at(1000, 1000)},
             {second, film, Touched::What::Symbol, false, at(3000, 1000)}};
    HandTool hand;
    drag(hand, at(3000, 1000), at(1005, 1000));
    EXPECT_EQ(showing(second).standsWith, first);
}

TEST_F(Hands, NothingButAUnitJoinsARow) {
    const plan::ItemId first = placed("unit", 1000, 1000);
    const plan::ItemId point = placed("checkpoint", 3000, 1000);
    lying = {{first, film, Touched::What::Symbol, false, at(1000, 1000)},
             {point, film, Touched::What::Symbol, true, at(3000, 1300)}};
    HandTool hand;
    drag(hand, at(3005, 1300), at(1005, 1000));
    EXPECT_FALSE(showing(point).standsWith);
    EXPECT_EQ(showing(point).symbolAt, at(1000, 1000));
}

TEST_F(Hands, LettersOfWhatIsSelectedArePlacedByHand) {
    PlaceTool tool(*measures::find("phase-line"));
    click(tool, 0, 0);
    click(tool, 2000, 0);
    tell(tool, Kind::Finish);
    const plan::ItemId line = *selected;
    lying = {{line, film, Touched::What::Letters, false, at(500, 60)}};
    HandTool hand;
    selected.reset();
    drag(hand, at(505, 60), at(805, 360));
    EXPECT_EQ(selected, line);
    EXPECT_FALSE(showing(line).labelAt) << "the first press only selects";
    drag(hand, at(505, 60), at(805, 360));
    EXPECT_EQ(showing(line).labelAt, at(800, 360));
    EXPECT_EQ(captions.back(), "place a label");
}

TEST_F(Hands, FiguresAreALegsAndPlacedByHandForIt) {
    RouteTool tool(plan::Use::Primary);
    click(tool, 0, 0);
    click(tool, 2000, 0);
    tell(tool, Kind::Finish);
    const plan::ItemId route = plan.routes().front()->id;
    const auto& stops = plan.routes().front()->stops;
    const plan::LegPiece leg{stops.at(0).measure, stops.at(1).measure};
    lying = {{route, film, Touched::What::Figures, false, at(500, 60), leg}};
    HandTool hand;
    selected.reset();
    drag(hand, at(505, 60), at(805, 360));
    EXPECT_TRUE(showing(route).figures.empty()) << "the first press only selects";
    drag(hand, at(505, 60), at(805, 360));
    EXPECT_EQ(showing(route).figures, (std::vector<plan::FiguresAt>{{leg, at(800, 360)}}));
    EXPECT_FALSE(showing(route).labelAt);
    EXPECT_EQ(captions.back(), "place a label");
    lying.front().at = at(800, 360);
    drag(hand, at(800, 360), at(900, 460));
    EXPECT_EQ(showing(route).figures, (std::vector<plan::FiguresAt>{{leg, at(900, 460)}})) << "one place for a leg";
}

TEST_F(Hands, ARoutesNameIsPlacedByHandAndFiguresOfNoLegAreNot) {
    RouteTool tool(plan::Use::Primary);
    click(tool, 0, 0);
    click(tool, 2000, 0);
    tell(tool, Kind::Finish);
    const plan::ItemId route = plan.routes().front()->id;
    selected = route;
    lying = {{route, film, Touched::What::Figures, false, at(500, 60)}};
    HandTool hand;
    const std::size_t captioned = captions.size();
    drag(hand, at(505, 60), at(805, 360));
    EXPECT_EQ(captions.size(), captioned) << "what lies before the legs is no leg's";
    lying = {{route, film, Touched::What::Letters, false, at(500, 60)}};
    selected.reset();
    drag(hand, at(505, 60), at(805, 360));
    EXPECT_EQ(selected, route);
    EXPECT_FALSE(showing(route).labelAt) << "the first press only selects";
    const auto vertices = plan.route(route)->vertices;
    drag(hand, at(505, 60), at(805, 360));
    EXPECT_EQ(showing(route).labelAt, at(800, 360));
    EXPECT_EQ(plan.route(route)->vertices, vertices) << "the route stays where it is";
    EXPECT_EQ(captions.back(), "place a label");
}

TEST_F(Hands, ABlockLiesOnThePaperAndMovesInItsMillimetres) {
    const plan::ItemId block = placed("order-of-march", 1000, -500);
    EXPECT_EQ(plan.measure(block)->anchor, plan::Anchor::Paper);
    EXPECT_EQ(plan.measure(block)->points.front(), at(40, 20));
    lying = {{block, film, Touched::What::Symbol, false, at(1000, -500)}};
    HandTool hand;
    drag(hand, at(1010, -510), at(1260, -760));
    EXPECT_EQ(plan.measure(block)->points.front(), at(50, 30)) << "10 mm right, 10 mm down";
    tell(hand, Kind::Nudge, at(0, 7));
    EXPECT_EQ(plan.measure(block)->points.front(), at(50, 29.5)) << "up is less, on paper";
}

}  // namespace
}  // namespace crosstick::tools
