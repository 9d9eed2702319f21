#include "core/plan/pasting.h"

#include <set>

#include <gtest/gtest.h>

#include "core/plan/difference.h"
#include "core/plan/edits.h"
#include "tests/plan/random_plans.h"

namespace crosstick::plan {
namespace {

Uuid id(std::uint8_t number) {
    return Uuid{{number}};
}

Measure thing(std::uint8_t item, const char* kind, std::string number, std::string name) {
    Measure measure;
    measure.id = id(item);
    measure.kind = kind;
    measure.number = std::move(number);
    measure.name = std::move(name);
    measure.points = {{Metres(item * 10.0), Metres(0)}};
    return measure;
}

Plan laid(const std::vector<Measure>& measures) {
    Plan plan = withFilm(withFilm(Plan{}, id(100), "MOVE", {}), id(101), "LOOK", {});
    for (const Measure& measure : measures) {
        plan = withMeasure(plan, measure, id(100));
    }
    return plan;
}

TEST(Pasting, GivesNewIdentitiesFreeNumbersAndFreeNames) {
    const Plan plan =
        laid({thing(1, "checkpoint", "1", ""), thing(2, "checkpoint", "3", ""), thing(3, "phase-line", "", "BODKIN"),
              thing(4, "phase-line", "", "A"), thing(5, "text", "", "WAIT HERE")});
    IdSource ids(4);
    const Pasted done = pasted(plan, excerpt(plan, {id(1), id(2), id(3), id(4), id(5)}),
                               {id(101), Metres(100), Metres(-50), [&] { return ids.next(); }});
    ASSERT_EQ(done.items.size(), 5U);
    std::vector<std::string> called;
    for (const ItemId& item : done.items) {
        const MeasurePtr measure = done.plan.measure(item);
        called.push_back(measure->number + measure->name);
        EXPECT_TRUE(isShownOn(*done.plan.film(id(101)), item));
        EXPECT_FALSE(isShownOn(*done.plan.film(id(100)), item));
    }
    EXPECT_EQ(called, (std::vector<std::string>{"2", "4", "BODKIN 2", "B", "WAIT HERE"}));
    EXPECT_EQ(done.plan.measure(done.items[0])->points[0], (geodesy::PlanePoint{Metres(110), Metres(-50)}));
}

TEST(Pasting, ARouteComesWithItsPointsAndLeadsThroughTheNewOnes) {
    Plan plan = laid({});
    Route route;
    route.id = id(50);
    route.name = "FERN";
    route.vertices = {{Metres(10), Metres(0)}, {Metres(20), Metres(0)}};
    Stop first, last;
    first.measure = id(1);
    last.vertex = 1;
    last.measure = id(2);
    route.stops = {first, last};
    plan = withRoute(plan, route, {thing(1, "start-point", "1", ""), thing(2, "checkpoint", "1", "")}, id(100));
    IdSource ids(5);
    const Pasted done =
        pasted(plan, excerpt(plan, {id(50)}), {id(100), Metres(5), Metres(5), [&] { return ids.next(); }});
    ASSERT_EQ(done.items.size(), 3U);
    const RoutePtr made = done.plan.route(done.items[2]);
    ASSERT_TRUE(made);
    EXPECT_EQ(made->name, "FERN 2");
    EXPECT_EQ(made->stops[0].measure, done.items[0]);
    EXPECT_EQ(made->stops[1].measure, done.items[1]);
    EXPECT_EQ(made->vertices[1], done.plan.measure(done.items[1])->points[0]);
}

TEST(Pasting, KeepsItsLawsOnRandomPlans) {
    for (const std::uint64_t seed : {61U, 62U, 63U, 64U}) {
        SCOPED_TRACE(seed);
        testing::RandomPlans random(seed);
        const Plan plan = random.plan(60);
        const Plan what = random.plan(60);
        if (plan.films().empty()) {
            continue;
        }
        IdSource ids(seed + 1000);
        const FilmId film = plan.films().front()->id;
        const Pasted done = pasted(plan, what, {film, Metres(7), Metres(9), [&] { return ids.next(); }});
        EXPECT_EQ(done.items.size(), what.measures().size() + what.routes().size());
        const Difference change = difference(plan, done.plan);
        for (const auto& one : change.measures) {
            EXPECT_FALSE(one.before) << "what was there stays as it was";
        }
        std::set<std::pair<std::string, std::string>> numbers;
        for (const ItemId& item : done.items) {
            EXPECT_EQ(plan.measure(item), nullptr);
            const MeasurePtr measure = done.plan.measure(item);
            if (!measure || measure->number.empty()) {
                continue;
            }
            EXPECT_TRUE(numbers.insert({measure->kind, measure->number}).second);
            plan.measures().forEach([&](const MeasurePtr& old) {
                EXPECT_FALSE(old->kind == measure->kind && old->number == measure->number) << measure->number;
            });
        }
        for (const RoutePtr& route : done.plan.routes()) {
            for (const Stop& stop : route->stops) {
                EXPECT_TRUE(plan.route(route->id) || done.plan.measure(stop.measure));
            }
        }
    }
}

TEST(Pasting, AnExcerptHoldsWhatIsNamedAndNothingElse) {
    const Plan plan = laid({thing(1, "checkpoint", "1", ""), thing(2, "objective", "", "COBNUT")});
    const Plan part = excerpt(plan, {id(2)});
    EXPECT_EQ(part.measures().size(), 1U);
    EXPECT_TRUE(*part.measure(id(2)) == *plan.measure(id(2)));
    ASSERT_EQ(part.films().size(), 1U);
    EXPECT_EQ(part.films().front()->name, "MOVE");
}

}  // namespace
}  // namespace crosstick::plan
