// Sheets that travel inside a plan.
#include "core/files/carried_files.h"

#include <fstream>
#include <random>
#include <sstream>

#include <gtest/gtest.h>
#include <sqlite3.h>

#include "core/files/faults.h"
#include "core/files/plan_file.h"
#include "core/units/sha256.h"
#include "tests/files/temporary_folder.h"
#include "tests/plan/random_plans.h"

namespace crosstick::files {
namespace {

namespace fs = std::filesystem;
using crosstick::testing::TemporaryFolder;

constexpr Instant kNow{std::chrono::seconds(1805155200)};

class Carried : public ::testing::Test {
  protected:
    TemporaryFolder folder;
    plan::testing::RandomPlans random{41};
    plan::Plan plan = random.plan(20);
    fs::path file = folder / "plan.gpkg";

    void SetUp() override { ASSERT_TRUE(PlanFile::create(file, plan, kNow)); }
    [[nodiscard]] std::string writeNoise(const char* name, std::size_t bytes) const {
        std::mt19937 chance(static_cast<unsigned>(bytes));
        std::string noise(bytes, ' ');
        for (char& byte : noise) {
            byte = static_cast<char>(chance());
        }
        std::ofstream(folder / name, std::ios::binary) << noise;
        return noise;
    }
    [[nodiscard]] static std::string bytesOf(const fs::path& path) {
        std::ifstream in(path, std::ios::binary);
        std::ostringstream all;
        all << in.rdbuf();
        return all.str();
    }
    void runSql(const char* sql) const {
        sqlite3* handle = nullptr;
        ASSERT_EQ(sqlite3_open(file.c_str(), &handle), SQLITE_OK);
        EXPECT_EQ(sqlite3_exec(handle, sql, nullptr, nullptr, nullptr), SQLITE_OK) << sqlite3_errmsg(handle);
        sqlite3_close(handle);
    }
};

TEST_F(Carried, ComesOutAsItWentInWhateverItsSize) {
    for (const std::size_t bytes : {std::size_t{0}, std::size_t{1}, std::size_t{1} << 20, (std::size_t{5} << 20) + 3}) {
        const std::string noise = writeNoise("sheet.tif", bytes);
        const auto carried = carry(file, "sheet.tif", folder / "sheet.tif");
        ASSERT_TRUE(carried.has_value());
        EXPECT_EQ(carried->bytes, static_cast<std::int64_t>(bytes));
        EXPECT_EQ(carried->sha256, hexText(sha256(noise)));
        ASSERT_TRUE(takeOut(file, "sheet.tif", folder / "out.tif"));
        EXPECT_TRUE(bytesOf(folder / "out.tif") == noise);
        EXPECT_EQ(carriedIn(file).value(), std::vector<CarriedFile>{*carried});
    }
}

TEST_F(Carried, ThePlanItselfStaysAsItWasAndGoesOnBeingSaved) {
    (void)writeNoise("sheet.tif", 3000000);
    auto open = PlanFile::open(file, Access::ReadWrite);
    ASSERT_TRUE(open);
    ASSERT_TRUE(carry(file, "sheet.tif", folder / "sheet.tif"));
    plan = random.edited(plan);
    ASSERT_TRUE(open->save(plan, kNow));
    ASSERT_TRUE(open->saveAs(folder / "other.gpkg", plan, kNow));
    EXPECT_TRUE(PlanFile::open(file, Access::ReadOnly)->plan() == plan);
    EXPECT_EQ(carriedIn(folder / "other.gpkg")->size(), 1U);  // a copy hands on what the plan carries
}

TEST_F(Carried, TakenOutOnlyWhereTheFileIsNotInItsPlace) {
    const std::string noise = writeNoise("sheet.tif", 70000);
    ASSERT_TRUE(carry(file, "sheet.tif", folder / "sheet.tif"));
    EXPECT_EQ(readableFile(file, folder.path(), "sheet.tif", folder / "cache"), folder / "sheet.tif");
    fs::remove(folder / "sheet.tif");
    const fs::path out = readableFile(file, folder.path(), "sheet.tif", folder / "cache");
    EXPECT_NE(out, folder / "sheet.tif");
    EXPECT_TRUE(bytesOf(out) == noise);
    const auto time = fs::last_write_time(out);
    EXPECT_EQ(readableFile(file, folder.path(), "sheet.tif", folder / "cache"), out);
    EXPECT_EQ(fs::last_write_time(out), time);  // once
    // A plan saved elsewhere names the same sheet by another path.
    EXPECT_EQ(readableFile(file, folder.path(), "/far/away/sheet.tif", folder / "cache"), out);
    EXPECT_EQ(readableFile(file, folder.path(), "other.tif", folder / "cache"), folder / "other.tif");
}

TEST_F(Carried, BytesThatAreNotWhatWasPutInAreRefused) {
    (void)writeNoise("sheet.tif", 3000000);
    ASSERT_TRUE(carry(file, "sheet.tif", folder / "sheet.tif"));
    runSql("UPDATE crosstick_carried_part SET bytes=zeroblob(1048576) WHERE part=1");
    const auto out = takeOut(file, "sheet.tif", folder / "out.tif");
    ASSERT_FALSE(out.has_value());
    EXPECT_EQ(out.error().fault, kDamagedPlan);
    EXPECT_FALSE(fs::exists(folder / "out.tif"));
    runSql("DELETE FROM crosstick_carried_part WHERE part=2");
    EXPECT_EQ(takeOut(file, "sheet.tif", folder / "out.tif").error().fault, kDamagedPlan);
}

// The checksum names the folder that a sheet is taken out into.
TEST_F(Carried, AChecksumThatLeadsElsewhereLeadsNowhere) {
    (void)writeNoise("sheet.tif", 1000);
    ASSERT_TRUE(carry(file, "sheet.tif", folder / "sheet.tif"));
    fs::remove(folder / "sheet.tif");
    runSql("UPDATE crosstick_carried SET sha256='../../elsewhere'");
    EXPECT_EQ(readableFile(file, folder.path(), "sheet.tif", folder / "a/b/cache"), folder / "sheet.tif");
    EXPECT_FALSE(fs::exists(folder / "a"));
}

TEST_F(Carried, GivenUpLeavesEverythingAsItWas) {
    const std::string noise = writeNoise("sheet.tif", 3000000);
    ASSERT_TRUE(carry(file, "sheet.tif", folder / "sheet.tif"));
    (void)writeNoise("other.tif", 4000000);
    const auto given = carry(file, "sheet.tif", folder / "other.tif", [](std::int64_t done, std::int64_t of) {
        EXPECT_EQ(of, 4000000);
        return done < 2000000;
    });
    ASSERT_FALSE(given.has_value());
    EXPECT_EQ(given.error().fault, kGivenUp);
    ASSERT_TRUE(takeOut(file, "sheet.tif", folder / "out.tif"));
    EXPECT_TRUE(bytesOf(folder / "out.tif") == noise);
}

TEST_F(Carried, NothingCarriedMakesThePlanSmallAgain) {
    const auto small = fs::file_size(file);
    (void)writeNoise("sheet.tif", 3000000);
    ASSERT_TRUE(carry(file, "sheet.tif", folder / "sheet.tif"));
    EXPECT_GT(fs::file_size(file), small + 3000000);
    ASSERT_TRUE(carryNothing(file));
    EXPECT_LE(fs::file_size(file), small + 8192);
    EXPECT_TRUE(carriedIn(file)->empty());
    EXPECT_TRUE(PlanFile::open(file, Access::ReadOnly)->plan() == plan);
    ASSERT_TRUE(carryNothing(file));  // twice does no harm
}

TEST_F(Carried, WhatIsMissingIsNamed) {
    EXPECT_EQ(carry(file, "sheet.tif", folder / "none.tif").error().fault, kFileMissing);
    EXPECT_EQ(takeOut(file, "sheet.tif", folder / "out.tif").error().fault, kNotCarried);
    EXPECT_TRUE(carriedIn(file)->empty());
    EXPECT_FALSE(carriedIn(folder / "none.gpkg").has_value());
}

}  // namespace
}  // namespace crosstick::files
