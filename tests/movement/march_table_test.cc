#include "core/movement/march_table.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include "core/movement/faults.h"
#include "tests/movement/kettle_plan.h"
#include "tests/places.h"

namespace crosstick::movement {
namespace {

const geodesy::MagneticModel& model() {
    static const geodesy::MagneticModel opened = *geodesy::MagneticModel::open(places::share() / "magnetic");
    return opened;
}

MarchTable tableOf(const plan::Plan& plan, const char* name) {
    const auto figures = routeFigures(plan, *plan.routeNamed(name), &model(), nullptr);
    EXPECT_TRUE(figures);
    const auto table = marchTable(plan, *figures, plan.force().columnNamed(""));
    EXPECT_TRUE(table);
    return *table;
}

plan::Plan changed(const plan::Plan& plan, const std::function<void(plan::Heading&)>& change) {
    plan::Heading heading = plan.heading();
    change(heading);
    return std::move(plan::PlanBuilder(plan).heading(std::move(heading))).build();
}

/// A row of the hand check: place, ground metres, minutes, arrival of each element, the last man clear.
struct Row {
    const char* point;
    double ground, minutes;
    std::array<const char*, 6> arrive;
    const char* clear;
};

void expectRows(const MarchTable& table, TimeZone zone, const std::vector<Row>& rows) {
    ASSERT_EQ(table.points.size(), rows.size());
    const auto clock = [&](std::optional<Minutes> time) {
        const auto when = table.when(time);
        return when ? clockTime(*when, zone) : std::string("none");
    };
    for (std::size_t n = 0; n < rows.size(); ++n) {
        const MarchPoint& point = table.points[n];
        SCOPED_TRACE(rows[n].point);
        EXPECT_EQ(point.label, rows[n].point);
        EXPECT_NEAR(point.ground.value(), rows[n].ground, 0.051);
        EXPECT_NEAR(point.column.arrive->value(), rows[n].minutes, 0.01);
        ASSERT_EQ(point.elements.size(), 6U);
        for (std::size_t e = 0; e < 6; ++e) {
            EXPECT_EQ(clock(point.elements[e].arrive), rows[n].arrive[e]) << e;
        }
        EXPECT_EQ(clock(point.column.clear), rows[n].clear);
        EXPECT_NEAR(point.column.clear->value(), point.elements.back().clear->value(), 1e-9);
    }
}

// Exercise SLOW KETTLE, hand-checked: 40 people in single file, 5 m apart, 20 m between elements, 1.6 km/h.
TEST(MarchTable, OfRouteQuillIsAsCheckedByHand) {
    const plan::Plan plan = kettlePlan();
    expectRows(tableOf(plan, "QUILL"), plan.heading().zone,
               {{"SP 1", 0.0, 0.00, {"2100", "2103", "2104", "2106", "2109", "2110"}, "2112"},
                {"LD TRIVET", 299.1, 11.22, {"2111", "2114", "2115", "2118", "2120", "2121"}, "2123"},
                {"CP 1", 1080.1, 40.50, {"2141", "2143", "2144", "2147", "2149", "2151"}, "2152"},
                {"CP 2", 1734.1, 65.03, {"2205", "2208", "2209", "2211", "2214", "2215"}, "2217"},
                {"PL BODKIN", 1872.9, 70.23, {"2210", "2213", "2214", "2217", "2219", "2220"}, "2222"},
                {"CP 3", 2711.6, 101.69, {"2242", "2244", "2246", "2248", "2251", "2252"}, "2254"},
                {"CP 4", 3999.1, 149.96, {"2330", "2333", "2334", "2336", "2339", "2340"}, "2342"},
                {"PL LADLE", 4139.7, 155.24, {"2335", "2338", "2339", "2342", "2344", "2345"}, "2347"},
                {"CP 5", 4801.2, 180.04, {"0000", "0003", "0004", "0006", "0009", "0010"}, "0012"},
                {"RP 1", 5198.2, 194.93, {"0015", "0018", "0019", "0021", "0024", "0025"}, "0027"},
                {"ORP SORREL", 5608.6, 210.32, {"0030", "0033", "0034", "0037", "0039", "0040"}, "0042"}});
}

TEST(MarchTable, OfRouteMittenIsAsCheckedByHand) {
    const plan::Plan plan = kettlePlan();
    expectRows(tableOf(plan, "MITTEN"), plan.heading().zone,
               {{"SP 1", 0.0, 0.00, {"2100", "2103", "2104", "2106", "2109", "2110"}, "2112"},
                {"LD TRIVET", 299.1, 11.22, {"2111", "2114", "2115", "2118", "2120", "2121"}, "2123"},
                {"CP 1", 1080.1, 40.50, {"2141", "2143", "2144", "2147", "2149", "2151"}, "2152"},
                {"CP 6", 2338.9, 87.71, {"2228", "2230", "2232", "2234", "2237", "2238"}, "2240"},
                {"PL BODKIN", 3133.1, 117.49, {"2257", "2300", "2301", "2304", "2306", "2308"}, "2309"},
                {"CP 7", 3341.3, 125.30, {"2305", "2308", "2309", "2312", "2314", "2315"}, "2317"},
                {"CP 8", 4242.7, 159.10, {"2339", "2342", "2343", "2345", "2348", "2349"}, "2351"},
                {"PL LADLE", 4882.2, 183.08, {"0003", "0006", "0007", "0009", "0012", "0013"}, "0015"},
                {"CP 9", 5106.0, 191.47, {"0011", "0014", "0015", "0018", "0020", "0022"}, "0023"},
                {"RP 1", 5853.2, 219.49, {"0039", "0042", "0043", "0046", "0048", "0050"}, "0051"},
                {"ORP SORREL", 6263.6, 234.88, {"0055", "0057", "0059", "0101", "0104", "0105"}, "0107"}});
}

TEST(MarchTable, HasTheColumnsLengthAndPassTime) {
    const MarchTable table = tableOf(kettlePlan(), "QUILL");
    EXPECT_EQ(table.people, 40);
    EXPECT_NEAR(table.length.value(), 316.0, 1e-9);
    EXPECT_NEAR(table.passTime->value(), 11.85, 1e-9);
    // 9 people, 48.6 m at 1.6 km/h
    EXPECT_NEAR(table.elements.front().passTime->value(), 48.6 * 0.0375, 1e-9);
    EXPECT_EQ(table.elements[2].name, "WPN");
}

// Worked by hand: ORP closed not later than 140115O, latest start 2132:49.7 on QUILL and 2108:15.97 on MITTEN.
TEST(MarchTable, BackwardsFromClosingFindsTheLatestStart) {
    const plan::Plan plan = kettlePlan();
    const Instant closed = *parseDateTimeGroup("140115OMAR27");
    const auto latest = [&](const char* name) {
        return latestStart(closed, [&](Instant start) -> Result<std::optional<Minutes>> {
            plan::Route route = *plan.routeNamed(name);
            route.start = start;
            const auto figures = routeFigures(plan, route, &model(), nullptr);
            return marchTable(plan, *figures, plan.force().columnNamed(""))->closed();
        });
    };
    EXPECT_EQ(isoTime(latest("QUILL")->value(), plan.heading().zone), "2027-03-13T21:32:49-02:00");
    EXPECT_EQ(isoTime(latest("MITTEN")->value(), plan.heading().zone), "2027-03-13T21:08:15-02:00");
}

TEST(MarchTable, AStartThatCannotBeFoundSaysWhy) {
    const Instant closed = *parseDateTimeGroup("140115OMAR27");
    const auto endless = latestStart(closed, [](Instant) -> Result<std::optional<Minutes>> { return Minutes(1e6); });
    ASSERT_FALSE(endless);
    EXPECT_EQ(endless.error().fault, kTooLong);
    const auto unknown =
        latestStart(closed, [](Instant) -> Result<std::optional<Minutes>> { return std::optional<Minutes>{}; });
    ASSERT_TRUE(unknown);
    EXPECT_FALSE(*unknown);
    EXPECT_EQ(**latestStart(closed, [](Instant) -> Result<std::optional<Minutes>> { return Minutes(0); }), closed);
}

// Backwards by hand from 2100: rest 1 h, inspection 30 min, rehearsal 1 h 30, orders 1 h; known at 1300.
TEST(MarchTable, PreparationsEndWhereTheNextOnesBegin) {
    const plan::Plan plan = changed(kettlePlan(), [](plan::Heading& heading) {
        heading.preparations = {
            {"orders", Minutes(60)}, {"rehearsal", Minutes(90)}, {"inspection", Minutes(30)}, {"rest", Minutes(60)}};
    });
    const MarchTable table = tableOf(plan, "QUILL");
    std::vector<std::string> times;
    for (const PreparationTime& one : table.before) {
        times.push_back(one.name + ' ' + clockTime(one.from.value(), plan.heading().zone) + ' ' +
                        clockTime(one.until.value(), plan.heading().zone));
    }
    EXPECT_THAT(times, testing::ElementsAre("orders 1700 1800", "rehearsal 1800 1930", "inspection 1930 2000",
                                            "rest 2000 2100"));
    EXPECT_NEAR(timeBeforeOrders(table, *parseDateTimeGroup("131300OMAR27"))->value(), 240, 1e-9);
}

TEST(MarchTable, TellsTimesFromTheHHour) {
    const plan::Plan plan =
        changed(kettlePlan(), [](plan::Heading& heading) { heading.hHour = *parseDateTimeGroup("140515OMAR27"); });
    const MarchTable table = tableOf(plan, "QUILL");
    EXPECT_EQ(hHourText(*table.toHHour(Minutes(0))), "H-8:15");
    EXPECT_EQ(hHourText(*table.toHHour(table.points.back().column.clear)), "H-4:33");
    EXPECT_EQ(hHourText(Minutes(-0.4)), "H");
    EXPECT_EQ(hHourText(Minutes(30)), "H+0:30");
    EXPECT_FALSE(tableOf(kettlePlan(), "QUILL").toHHour(Minutes(0)));
}

// By hand: ten minutes at CP 3 hold the head 10 min on its way to CP 4; the last man, 316 m behind, is held as well.
TEST(MarchTable, AHaltHoldsTheWholeColumn) {
    plan::Plan plan = kettlePlan();
    plan::Route route = *plan.routeNamed("QUILL");
    route.stops[3].leg.halt = Minutes(10);
    plan = std::move(plan::PlanBuilder(plan).put(route)).build();
    const MarchTable table = tableOf(plan, "QUILL");
    const MarchPoint& there = table.points[5];
    EXPECT_EQ(there.label, "CP 3");
    EXPECT_EQ(there.halt->value(), 10);
    EXPECT_NEAR(there.column.arrive->value(), 101.69, 0.01);
    EXPECT_NEAR(there.column.clear->value(), 101.69 + 10 + 11.85, 0.01);
    EXPECT_NEAR(table.points[6].column.arrive->value(), 149.96 + 10, 0.01);
    EXPECT_NEAR(table.closed()->value(), 210.32 + 11.85 + 10, 0.01);
}

TEST(MarchTable, WithoutAColumnTellsTheHeadAlone) {
    plan::Plan plan = std::move(plan::PlanBuilder(kettlePlan()).force({})).build();
    const MarchTable table = tableOf(plan, "QUILL");
    EXPECT_TRUE(table.elements.empty());
    EXPECT_EQ(table.points.back().column.arrive, table.points.back().column.clear);
    EXPECT_NEAR(table.closed()->value(), 210.32, 0.01);
}

TEST(MarchTable, WithoutARateHasPlacesAndNoTimes) {
    const plan::Plan plan = changed(kettlePlan(), [](plan::Heading& heading) { heading.rate.reset(); });
    const MarchTable table = tableOf(plan, "QUILL");
    EXPECT_EQ(table.points.size(), 11U);
    EXPECT_FALSE(table.closed());
    EXPECT_FALSE(table.passTime);
    EXPECT_FALSE(table.points[3].elements[2].arrive);
}

}  // namespace
}  // namespace crosstick::movement
