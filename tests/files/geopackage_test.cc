#include <gtest/gtest.h>

#include "core/files/plan_file.h"
#include "tests/files/run_program.h"
#include "tests/files/temporary_folder.h"
#include "tests/plan/random_plans.h"

namespace crosstick::files {
namespace {

using crosstick::testing::runProgram;

constexpr Instant kNow{std::chrono::seconds(1805155200)};

class GeoPackage : public ::testing::Test {
  protected:
    crosstick::testing::TemporaryFolder folder_;
    std::filesystem::path file_ = folder_ / "plan.gpkg";
    plan::Plan plan_;

    void SetUp() override {
        plan::testing::RandomPlans random(600);
        plan::Plan plan = random.plan(50);
        plan::Film film;
        film.id = Uuid{{7}};
        film.name = "MOVE";
        std::string key;
        plan.measures().forEach([&](const plan::MeasurePtr& measure) {
            key = plan::orderBetween(key, "");
            film.shows.push_back({measure->id, key, {}, {}});
        });
        plan::PlanBuilder builder(plan);
        builder.put(film);
        plan = std::move(builder).build();
        auto file = PlanFile::create(file_, plan, kNow);
        ASSERT_TRUE(file);
        plan::PlanBuilder more(plan);
        more.put(random.measure());
        plan_ = std::move(more).build();
        ASSERT_TRUE(file->save(plan_, kNow));
    }
};

TEST_F(GeoPackage, IsValidByTheStandardsOwnChecks) {
    const auto ran = runProgram(
        "/usr/bin/python3 /usr/lib/python3/dist-packages/osgeo_utils/samples/validate_gpkg.py " + file_.string());
    EXPECT_EQ(ran.status, 0) << ran.output;
}

// Req 33 of OGC 12-128r18: every geometry names the plane that its table is registered with.
TEST_F(GeoPackage, IsValidAfterThePlanMovedToAnotherPlane) {
    auto file = PlanFile::open(file_, Access::ReadWrite);
    ASSERT_TRUE(file);
    plan::Heading heading = plan_.heading();
    heading.plane.number = heading.plane.number == 33 ? 34 : 33;
    plan::PlanBuilder moved(plan_);
    moved.heading(heading);
    ASSERT_TRUE(file->save(std::move(moved).build(), kNow));
    const auto ran = runProgram(
        "/usr/bin/python3 /usr/lib/python3/dist-packages/osgeo_utils/samples/validate_gpkg.py " + file_.string());
    EXPECT_EQ(ran.status, 0) << ran.output;
}

TEST_F(GeoPackage, IsListedWithoutAWarning) {
    const auto ran = runProgram("ogrinfo -ro " + file_.string());
    EXPECT_EQ(ran.status, 0);
    EXPECT_EQ(ran.output.find("Warning"), std::string::npos) << ran.output;
    EXPECT_EQ(ran.output.find("ERROR"), std::string::npos) << ran.output;
}

TEST_F(GeoPackage, EveryFilmIsALayerThatAnyReaderCanDraw) {
    const auto ran = runProgram("ogrinfo -ro -so " + file_.string() + " film_move_07000000");
    EXPECT_EQ(ran.status, 0) << ran.output;
    EXPECT_NE(ran.output.find("kind: String"), std::string::npos) << ran.output;
    EXPECT_EQ(ran.output.find("Feature Count: 0"), std::string::npos) << ran.output;
}

}  // namespace
}  // namespace crosstick::files
