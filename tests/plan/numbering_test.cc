#include "core/plan/numbering.h"

#include <algorithm>
#include <map>
#include <random>
#include <set>

#include <gtest/gtest.h>

#include "core/plan/edits.h"
#include "core/plan/route_edits.h"

namespace crosstick::plan {
namespace {

Uuid id(std::uint8_t number) {
    return Uuid{{number}};
}

Measure checkpoint(std::uint8_t item, std::string number) {
    Measure measure;
    measure.id = id(item);
    measure.kind = "checkpoint";
    measure.number = std::move(number);
    measure.points = {{Metres(item * 100.0), Metres(0)}};
    return measure;
}

/// A route through checkpoints of the plan, in their order.
Plan withWay(const Plan& plan, std::uint8_t item, Use use, const std::vector<std::uint8_t>& points) {
    Route route;
    route.id = id(item);
    route.name = std::string(1, static_cast<char>('A' + item % 26));
    route.use = use;
    for (const std::uint8_t point : points) {
        Stop stop;
        stop.vertex = route.vertices.size();
        stop.measure = id(point);
        route.vertices.push_back({Metres(point * 100.0), Metres(0)});
        route.stops.push_back(std::move(stop));
    }
    return withRoute(plan, std::move(route), {}, id(200));
}

Plan withPoints(const std::map<std::uint8_t, std::string>& numbers) {
    Plan plan = withFilm(Plan{}, id(200), "MOVE", {});
    for (const auto& [item, number] : numbers) {
        plan = withMeasure(plan, checkpoint(item, number), id(200));
    }
    return plan;
}

std::vector<std::string> numbersOf(const Plan& plan, const std::vector<std::uint8_t>& items) {
    std::vector<std::string> numbers;
    for (const std::uint8_t item : items) {
        numbers.push_back(plan.measure(id(item))->number);
    }
    return numbers;
}

using Numbers = std::vector<std::string>;

Plan givenOutNow(const Plan& plan) {
    return givenOut(plan, {Instant(std::chrono::seconds(1805155200)), "film MOVE", numbersOnPapers(plan)});
}

TEST(Numbering, RunsAlongThePrimaryRouteThenTheAlternates) {
    Plan plan = withPoints({{1, "7"}, {2, "1"}, {3, "3"}, {4, "2"}});
    plan = withWay(plan, 101, Use::Alternate, {1, 4, 3});
    plan = withWay(plan, 102, Use::Primary, {1, 2, 3});
    EXPECT_EQ(numbersOf(numberedAlong(plan, Inserted::NextFree), {1, 2, 3, 4}), (Numbers{"1", "2", "3", "4"}));
}

TEST(Numbering, PassesOverNumbersOfCheckpointsThatNoRoutePasses) {
    const Plan plan = withWay(withPoints({{1, "5"}, {2, "6"}, {3, "2"}}), 101, Use::Primary, {1, 2});
    EXPECT_EQ(numbersOf(numberedAlong(plan, Inserted::NextFree), {1, 2, 3}), (Numbers{"1", "3", "2"}));
}

TEST(Numbering, ACheckpointPutIntoARouteShiftsThoseBehindIt) {
    const Plan before = withWay(withPoints({{1, "1"}, {2, "2"}}), 101, Use::Primary, {1, 2});
    Plan after = withMeasure(before, checkpoint(3, nextNumber(before, "checkpoint")), id(200));
    after = withStop(withPointBefore(after, id(101), 1, {Metres(150), Metres(0)}), id(101), 1, id(3));
    EXPECT_EQ(numbersOf(after, {1, 3, 2}), (Numbers{"1", "3", "2"}));
    EXPECT_EQ(numbersOf(numbersFollow(before, after, Inserted::NextFree), {1, 3, 2}), (Numbers{"1", "2", "3"}));
    const Plan again = numbersFollow(after, without(after, id(1)), Inserted::NextFree);
    EXPECT_EQ(numbersOf(again, {3, 2}), (Numbers{"3", "2"})) << "these did not run along the route";
}

TEST(Numbering, ANumberThatSomebodyTypedIsMeant) {
    const Plan before = withWay(withPoints({{1, "1"}, {2, "2"}}), 101, Use::Primary, {1, 2});
    Plan typed = std::move(PlanBuilder(before).put(checkpoint(2, "9"))).build();
    EXPECT_TRUE(numbersFollow(before, typed, Inserted::NextFree) == typed);
    Plan after = withMeasure(typed, checkpoint(3, "3"), id(200));
    after = withStop(withPointBefore(after, id(101), 1, {Metres(150), Metres(0)}), id(101), 1, id(3));
    const Plan followed = numbersFollow(typed, after, Inserted::NextFree);
    EXPECT_EQ(numbersOf(followed, {1, 2, 3}), (Numbers{"1", "9", "2"})) << "only the new one is numbered";
}

TEST(Numbering, PapersGivenOutFreezeTheirNumbersAndAnInsertionTakesTheNextFreeOne) {
    const Plan before = givenOutNow(withWay(withPoints({{1, "1"}, {2, "2"}, {3, "3"}}), 101, Use::Primary, {1, 2, 3}));
    Plan after = withMeasure(before, checkpoint(4, nextNumber(before, "checkpoint")), id(200));
    after = withStop(withPointBefore(after, id(101), 1, {Metres(150), Metres(0)}), id(101), 1, id(4));
    EXPECT_EQ(numbersOf(numbersFollow(before, after, Inserted::NextFree), {1, 4, 2, 3}), (Numbers{"1", "4", "2", "3"}));
    EXPECT_EQ(numbersOf(numbersFollow(before, after, Inserted::Lettered), {1, 4, 2, 3}),
              (Numbers{"1", "1A", "2", "3"}));
    EXPECT_NE(issueOf(before, id(2)), nullptr);
    EXPECT_EQ(issueOf(after, id(4)), nullptr);
}

TEST(Numbering, BehindTheLastOneGivenOutNoLetterIsNeeded) {
    const Plan before = givenOutNow(withWay(withPoints({{1, "1"}, {2, "2"}}), 101, Use::Primary, {1, 2}));
    Plan after = withMeasure(before, checkpoint(3, "3"), id(200));
    after = withWay(after, 101, Use::Primary, {1, 2, 3});
    EXPECT_EQ(numbersOf(numbersFollow(before, after, Inserted::Lettered), {1, 2, 3}), (Numbers{"1", "2", "3"}));
}

TEST(Numbering, NumberingAnewTellsThePapersThatItKills) {
    Plan plan = givenOutNow(withWay(withPoints({{1, "1"}, {2, "4"}, {3, "3"}}), 101, Use::Primary, {1, 2, 3}));
    const Renumbering done = renumbered(plan);
    EXPECT_EQ(numbersOf(done.plan, {1, 2, 3}), (Numbers{"1", "2", "3"}));
    EXPECT_EQ(done.changed, 1U);
    ASSERT_EQ(done.killed.size(), 1U);
    EXPECT_EQ(done.killed.front().papers, "film MOVE");
    EXPECT_EQ(issueOf(done.plan, id(1)), nullptr) << "wrong papers freeze nothing";
    EXPECT_TRUE(renumbered(done.plan).killed.empty());
}

TEST(Numbering, KeepsItsLawsOnRandomWays) {
    const std::uint32_t seed = 5512;
    SCOPED_TRACE(seed);
    std::mt19937 chance(seed);
    for (int round = 0; round < 300; ++round) {
        std::map<std::uint8_t, std::string> numbers;
        for (std::uint8_t item = 1; item <= 12; ++item) {
            numbers[item] = std::to_string(chance() % 30 + 1) + (chance() % 6 == 0 ? "A" : "");
        }
        Plan plan = withPoints(numbers);
        std::vector<std::uint8_t> points{1, 2, 3, 4, 5, 6, 7, 8, 9};
        std::shuffle(points.begin(), points.end(), chance);
        plan = withWay(plan, 101, Use::Primary, {points.begin(), points.begin() + 4});
        plan = withWay(plan, 102, Use::Alternate, {points.begin() + 3, points.end()});
        const bool isFresh = chance() % 2 == 0;
        plan = isFresh ? plan : givenOutNow(plan);
        for (const Inserted inserted : {Inserted::NextFree, Inserted::Lettered}) {
            const Plan numbered = numberedAlong(plan, inserted);
            EXPECT_TRUE(numberedAlong(numbered, inserted) == numbered);
            std::multiset<std::string> moved;
            int last = 0;
            for (const ItemId& item : checkpointsAlong(numbered)) {
                const std::string& number = numbered.measure(item)->number;
                if (issueOf(plan, item) != nullptr) {
                    EXPECT_EQ(number, plan.measure(item)->number);
                } else {
                    EXPECT_EQ(holderOf(numbered, "checkpoint", number, item), nullptr) << number;
                }
                if (isFresh && last >= 0) {
                    EXPECT_GT(std::stoi(number), last);
                    last = std::stoi(number);
                }
            }
        }
    }
}

TEST(Numbering, CallsAMeasureAsItWasSaid) {
    const Plan plan = withPoints({{1, "1"}, {2, "2"}});
    const auto called = [&](const char* kind, const char* label) {
        return calledBy({measures::find(kind), label, {}}, plan);
    };
    EXPECT_EQ(called("checkpoint", ""), (Called{"3", ""}));
    EXPECT_EQ(called("checkpoint", "7"), (Called{"7", ""}));
    EXPECT_EQ(called("checkpoint", "2a"), (Called{"2A", ""}));
    EXPECT_EQ(called("target-reference-point", "3 church"), (Called{"3", "CHURCH"}));
    EXPECT_EQ(called("phase-line", "bodkin"), (Called{"", "BODKIN"}));
    EXPECT_EQ(called("phase-line", ""), (Called{"", "A"}));
    EXPECT_EQ(called("boundary", ""), (Called{"", ""}));
    EXPECT_EQ(called("text", "Meet here"), (Called{"", "Meet here"}));
    EXPECT_EQ(holderOf(plan, "checkpoint", "2")->id, id(2));
    EXPECT_EQ(holderOf(plan, "checkpoint", "2", id(2)), nullptr);
    EXPECT_EQ(holderOf(plan, "rally-point", "2"), nullptr);
}

}  // namespace
}  // namespace crosstick::plan
