#include "core/files/plan_file.h"

#include <fstream>
#include <sstream>

#include <gtest/gtest.h>
#include <sqlite3.h>

#include "tests/files/temporary_folder.h"
#include "tests/places.h"
#include "tests/plan/random_plans.h"

namespace crosstick::files {
namespace {

using crosstick::testing::TemporaryFolder;

constexpr Instant kNow{std::chrono::seconds(1805155200)};

std::string bytesOf(const std::filesystem::path& file) {
    std::ifstream in(file, std::ios::binary);
    std::ostringstream all;
    all << in.rdbuf();
    return all.str();
}

class PlanFileRoundTrip : public ::testing::TestWithParam<std::uint64_t> {};

TEST_P(PlanFileRoundTrip, GivesBackThePlanAfterEverySave) {
    SCOPED_TRACE(GetParam());
    const TemporaryFolder folder;
    plan::testing::RandomPlans random(GetParam());
    plan::Plan plan = random.plan(random.below(200));
    auto file = PlanFile::create(folder / "plan.gpkg", plan, kNow);
    ASSERT_TRUE(file);
    EXPECT_TRUE(file->plan() == plan);
    for (int n = 0; n < 8; ++n) {
        plan = random.edited(plan);
        ASSERT_TRUE(file->save(plan, kNow));
        const auto again = PlanFile::open(folder / "plan.gpkg", Access::ReadOnly);
        ASSERT_TRUE(again);
        EXPECT_TRUE(again->plan() == plan);
    }
}

INSTANTIATE_TEST_SUITE_P(Seeds, PlanFileRoundTrip, ::testing::Range<std::uint64_t>(300, 325));

TEST(PlanFile, TheSameSavesGiveTheSameBytes) {
    const TemporaryFolder folder;
    for (const char* name : {"one.gpkg", "two.gpkg"}) {
        plan::testing::RandomPlans random(77);
        plan::Plan plan = random.plan(60);
        auto file = PlanFile::create(folder / name, plan, kNow);
        ASSERT_TRUE(file);
        for (int n = 0; n < 5; ++n) {
            plan = random.edited(plan);
            ASSERT_TRUE(file->save(plan, kNow));
        }
    }
    EXPECT_EQ(bytesOf(folder / "one.gpkg"), bytesOf(folder / "two.gpkg"));
}

TEST(PlanFile, AnEmptyPlanWithoutAnIdentityComesBackToo) {
    const TemporaryFolder folder;
    ASSERT_TRUE(PlanFile::create(folder / "empty.gpkg", plan::Plan{}, kNow));
    const auto again = PlanFile::open(folder / "empty.gpkg", Access::ReadOnly);
    ASSERT_TRUE(again);
    EXPECT_TRUE(again->plan() == plan::Plan{});
}

TEST(PlanFile, SaveAsLeavesTheOldFileAndGoesOnInTheNew) {
    const TemporaryFolder folder;
    plan::testing::RandomPlans random(78);
    const plan::Plan first = random.plan(30);
    auto file = PlanFile::create(folder / "old.gpkg", first, kNow);
    ASSERT_TRUE(file);
    const plan::Plan second = random.edited(first);
    ASSERT_TRUE(file->saveAs(folder / "new.gpkg", second, kNow));
    EXPECT_EQ(file->file(), folder / "new.gpkg");
    EXPECT_TRUE(PlanFile::open(folder / "old.gpkg", Access::ReadOnly)->plan() == first);
    EXPECT_TRUE(PlanFile::open(folder / "new.gpkg", Access::ReadOnly)->plan() == second);
    const plan::Plan third = random.edited(second);
    ASSERT_TRUE(file->save(third, kNow));
    EXPECT_TRUE(PlanFile::open(folder / "new.gpkg", Access::ReadOnly)->plan() == third);
}

TEST(PlanFile, AVersionNobodyListsAnyMoreIsDropped) {
    const TemporaryFolder folder;
    plan::testing::RandomPlans random(79);
    plan::Plan plan = random.plan(3);
    auto file = PlanFile::create(folder / "plan.gpkg", plan, kNow);
    for (int n = 0; n < 20; ++n) {
        plan::Heading heading = plan.heading();
        heading.author = "author " + std::to_string(n);
        plan::PlanBuilder builder(plan);
        builder.heading(heading);
        plan = std::move(builder).build();
        ASSERT_TRUE(file->save(plan, kNow));
    }
    auto database = Database::open(folder / "plan.gpkg", Access::ReadOnly);
    EXPECT_EQ(database->wholeOf("SELECT count(*) FROM crosstick_version"),
              database->wholeOf("SELECT count(*) FROM crosstick_state_item"));
}

TEST(PlanFile, AnIssuedStateKeepsItsVersions) {
    const TemporaryFolder folder;
    plan::testing::RandomPlans random(80);
    const plan::Plan first = random.plan(3);
    { ASSERT_TRUE(PlanFile::create(folder / "plan.gpkg", first, kNow)); }
    {
        auto database = Database::open(folder / "plan.gpkg", Access::ReadWrite);
        database->run("INSERT INTO crosstick_state VALUES(2, 'order 1', '2027-03-13T13:00:00Z')");
        database->run("INSERT INTO crosstick_state_item SELECT 2, item, version, place FROM crosstick_state_item");
        ASSERT_TRUE(database->check());
    }
    auto file = PlanFile::open(folder / "plan.gpkg", Access::ReadWrite);
    plan::PlanBuilder builder(first);
    builder.removeMeasure(first.measures().chunks().front()->front()->id);
    ASSERT_TRUE(file->save(std::move(builder).build(), kNow));
    auto database = Database::open(folder / "plan.gpkg", Access::ReadOnly);
    EXPECT_EQ(database->wholeOf("SELECT count(*) FROM crosstick_state_item WHERE state=2 AND version NOT IN "
                                "(SELECT fid FROM crosstick_version)"),
              0);
}

// Schema 1 as this program's first version wrote it, unknown fields among them (tests/data/plan-schema-1.sql).
class OldPlan : public ::testing::Test {
  protected:
    TemporaryFolder folder_;
    std::filesystem::path file_ = folder_ / "old.gpkg";

    void SetUp() override {
        sqlite3* handle = nullptr;
        ASSERT_EQ(sqlite3_open(file_.c_str(), &handle), SQLITE_OK);
        const std::string sql = bytesOf(places::data() / "plan-schema-1.sql");
        ASSERT_FALSE(sql.empty());
        char* fault = nullptr;
        ASSERT_EQ(sqlite3_exec(handle, sql.c_str(), nullptr, nullptr, &fault), SQLITE_OK) << fault;
        sqlite3_close(handle);
    }
};

void expectOldContents(const plan::Plan& plan) {
    EXPECT_EQ(plan.heading().name, "OLD KETTLE");
    EXPECT_EQ(plan.heading().unknown.at("weather"), "\"fog\"");
    ASSERT_EQ(plan.measures().size(), 2U);
    const auto area = plan.measure(*parseUuid("00000000-0000-8000-8000-0000000000a1"));
    ASSERT_TRUE(area);
    EXPECT_EQ(area->kind, "assembly-area");
    EXPECT_EQ(area->name, "HASSOCK");
    EXPECT_EQ(area->state, plan::PlaceState::Assumed);
    EXPECT_EQ(area->whose, plan::Whose::Enemy);
    EXPECT_EQ(area->points.size(), 3U);
    EXPECT_EQ(area->why, "cover from sight");
    EXPECT_EQ(area->unknown.at("colour_of_gate"), "\"blue\"");
    EXPECT_EQ(plan.filmNamed("MOVE")->shows.size(), 2U);
}

TEST_F(OldPlan, IsReadByClimbingTheLadderInMemory) {
    const std::string before = bytesOf(file_);
    const auto opened = PlanFile::open(file_, Access::ReadOnly);
    ASSERT_TRUE(opened);
    expectOldContents(opened->plan());
    EXPECT_EQ(bytesOf(file_), before);
}

TEST_F(OldPlan, ClimbsInTheFileWithTheFirstSaveAndLosesNothing) {
    auto opened = PlanFile::open(file_, Access::ReadWrite);
    ASSERT_TRUE(opened);
    plan::Heading heading = opened->plan().heading();
    heading.marking = "EXERCISE";
    plan::PlanBuilder builder(opened->plan());
    builder.heading(heading);
    ASSERT_TRUE(opened->save(std::move(builder).build(), kNow));
    const auto again = PlanFile::open(file_, Access::ReadOnly);
    ASSERT_TRUE(again);
    expectOldContents(again->plan());
    EXPECT_EQ(again->plan().heading().marking, "EXERCISE");
}

}  // namespace
}  // namespace crosstick::files
