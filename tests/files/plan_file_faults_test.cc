#include <csignal>
#include <fstream>

#include <gtest/gtest.h>
#include <sqlite3.h>
#include <sys/resource.h>
#include <sys/stat.h>
#include <sys/wait.h>
#include <unistd.h>

#include "core/files/faults.h"
#include "core/files/plan_file.h"
#include "tests/files/temporary_folder.h"
#include "tests/plan/random_plans.h"

namespace crosstick::files {
namespace {

using crosstick::testing::TemporaryFolder;

constexpr Instant kNow{std::chrono::seconds(1805155200)};

class PlanFileFaults : public ::testing::Test {
  protected:
    TemporaryFolder folder_;
    std::filesystem::path file_ = folder_ / "plan.gpkg";
    plan::testing::RandomPlans random_{500};
    plan::Plan plan_ = random_.plan(40);

    void make() { ASSERT_TRUE(PlanFile::create(file_, plan_, kNow)); }
    void write(const std::string& bytes) const { std::ofstream(file_, std::ios::binary) << bytes; }
    /// Changes the file as another program would.
    void change(const char* sql) const {
        sqlite3* handle = nullptr;
        ASSERT_EQ(sqlite3_open(file_.c_str(), &handle), SQLITE_OK);
        char* fault = nullptr;
        ASSERT_EQ(sqlite3_exec(handle, sql, nullptr, nullptr, &fault), SQLITE_OK) << fault;
        sqlite3_close(handle);
    }
    [[nodiscard]] FaultId openFault(Access access = Access::ReadOnly) const {
        const auto opened = PlanFile::open(file_, access);
        return opened ? FaultId{"opened"} : opened.error().fault;
    }
};

TEST_F(PlanFileFaults, AMissingFileIsNamed) {
    const auto opened = PlanFile::open(file_, Access::ReadOnly);
    ASSERT_FALSE(opened);
    EXPECT_EQ(opened.error().fault, kFileMissing);
    EXPECT_EQ(std::get<std::string>(opened.error().arguments.front().value), file_.string());
}

TEST_F(PlanFileFaults, ATextFileIsNoPlan) {
    write("this is not a database, however it is named, and it is longer than a header");
    EXPECT_EQ(openFault(), kNotAPlan);
}

TEST_F(PlanFileFaults, AnEmptyFileIsNoPlan) {
    write("");
    EXPECT_EQ(openFault(), kNoPlanInside);
}

TEST_F(PlanFileFaults, AnotherDatabaseIsNoPlan) {
    change("CREATE TABLE sheep(name TEXT)");
    EXPECT_EQ(openFault(), kNoPlanInside);
}

TEST_F(PlanFileFaults, ANewerPlanIsRefusedWithBothVersions) {
    make();
    change("UPDATE crosstick_plan SET value='7' WHERE key='schema'");
    const auto opened = PlanFile::open(file_, Access::ReadOnly);
    ASSERT_FALSE(opened);
    EXPECT_EQ(opened.error().fault, kNewerPlan);
    EXPECT_EQ(std::get<std::int64_t>(opened.error().arguments[1].value), 7);
}

TEST_F(PlanFileFaults, ATruncatedPlanIsRefusedAtEveryLength) {
    make();
    const auto whole = std::filesystem::file_size(file_);
    for (std::uintmax_t left = whole - 1; left > 4096; left -= std::min<std::uintmax_t>(left - 1, 9973)) {
        std::filesystem::resize_file(file_, left);
        const FaultId fault = openFault();
        EXPECT_TRUE(fault == kDamagedPlan || fault == kNotAPlan || fault == kNoPlanInside || fault == kBadField)
            << left << " bytes: " << fault.name;
    }
}

TEST_F(PlanFileFaults, DamagedBodiesAndGeometriesAreToldApartFromCrashes) {
    make();
    change("UPDATE crosstick_version SET geom=x'4750' WHERE what=6");
    EXPECT_EQ(openFault(), kDamagedPlan);
}

TEST_F(PlanFileFaults, ABodyThatIsNoJsonIsDamaged) {
    make();
    change("UPDATE crosstick_version SET body='{\"a\":' WHERE what=0");
    EXPECT_EQ(openFault(), kDamagedPlan);
}

TEST_F(PlanFileFaults, AViewInTheTablesPlaceDoesNotRun) {
    make();
    change("ALTER TABLE crosstick_version RENAME TO real_one; CREATE VIEW crosstick_version AS SELECT * FROM real_one");
    EXPECT_EQ(openFault(), kNoPlanInside);
}

TEST_F(PlanFileFaults, ATriggerInTheFileDoesNotRun) {
    make();
    change("CREATE TRIGGER bad AFTER UPDATE ON crosstick_plan BEGIN DELETE FROM crosstick_version; END");
    auto opened = PlanFile::open(file_, Access::ReadWrite);
    ASSERT_TRUE(opened);
    const plan::Plan next = random_.edited(plan_);
    ASSERT_TRUE(opened->save(next, kNow));
    EXPECT_TRUE(PlanFile::open(file_, Access::ReadOnly)->plan() == next);
}

TEST_F(PlanFileFaults, CreateNeverOverwrites) {
    write("somebody's file");
    const auto created = PlanFile::create(file_, plan_, kNow);
    ASSERT_FALSE(created);
    EXPECT_EQ(created.error().fault, kFileExists);
    EXPECT_EQ(std::filesystem::file_size(file_), 15U);
}

TEST_F(PlanFileFaults, AFolderThatIsNotThereIsNamed) {
    const auto created = PlanFile::create(folder_.path() / "nowhere" / "plan.gpkg", plan_, kNow);
    ASSERT_FALSE(created);
    EXPECT_EQ(created.error().fault, kFolderMissing);
}

TEST_F(PlanFileFaults, WhoeverSavesSecondIsToldAndTheFirstOnesWorkStays) {
    make();
    auto first = PlanFile::open(file_, Access::ReadWrite);
    auto second = PlanFile::open(file_, Access::ReadWrite);
    ASSERT_TRUE(first && second);
    plan::PlanBuilder mine(plan_);
    mine.put(random_.measure());
    const plan::Plan firstPlan = std::move(mine).build();
    ASSERT_TRUE(first->save(firstPlan, kNow));
    plan::PlanBuilder theirs(plan_);
    theirs.put(random_.measure());
    const plan::Plan secondPlan = std::move(theirs).build();
    const auto saved = second->save(secondPlan, kNow);
    ASSERT_FALSE(saved);
    EXPECT_EQ(saved.error().fault, kChangedMeanwhile);
    EXPECT_TRUE(PlanFile::open(file_, Access::ReadOnly)->plan() == firstPlan);
    ASSERT_TRUE(second->saveAs(folder_ / "mine.gpkg", secondPlan, kNow));
    EXPECT_TRUE(PlanFile::open(folder_ / "mine.gpkg", Access::ReadOnly)->plan() == secondPlan);
}

TEST_F(PlanFileFaults, AFileReplacedUnderneathIsNotWrittenInto) {
    make();
    auto opened = PlanFile::open(file_, Access::ReadWrite);
    std::filesystem::rename(file_, folder_ / "moved.gpkg");
    { ASSERT_TRUE(PlanFile::create(file_, random_.plan(2), kNow)); }
    const auto saved = opened->save(random_.edited(plan_), kNow);
    ASSERT_FALSE(saved);
    EXPECT_EQ(saved.error().fault, kReplacedMeanwhile);
}

TEST_F(PlanFileFaults, ALockHeldByAnotherIsToldNotWaitedForForEver) {
    make();
    auto opened = PlanFile::open(file_, Access::ReadWrite);
    sqlite3* other = nullptr;
    ASSERT_EQ(sqlite3_open(file_.c_str(), &other), SQLITE_OK);
    ASSERT_EQ(sqlite3_exec(other, "BEGIN IMMEDIATE", nullptr, nullptr, nullptr), SQLITE_OK);
    const auto saved = opened->save(random_.edited(plan_), kNow);
    ASSERT_FALSE(saved);
    EXPECT_EQ(saved.error().fault, kLockedNow);
    sqlite3_exec(other, "ROLLBACK", nullptr, nullptr, nullptr);
    sqlite3_close(other);
    EXPECT_TRUE(opened->save(random_.edited(plan_), kNow));
}

TEST_F(PlanFileFaults, AFileInWalModeIsReadAndComesBackToOneFile) {
    make();
    change("PRAGMA journal_mode=WAL; UPDATE crosstick_plan SET value=value WHERE key='schema'");
    auto opened = PlanFile::open(file_, Access::ReadWrite);
    ASSERT_TRUE(opened);
    EXPECT_TRUE(opened->plan() == plan_);
    ASSERT_TRUE(opened->save(random_.edited(plan_), kNow));
    EXPECT_FALSE(std::filesystem::exists(file_.string() + "-wal"));
}

// Root may write anything, so the read-only file is tried through a read-only opening.
TEST_F(PlanFileFaults, WhatWasOpenedForReadingIsNotWritten) {
    make();
    auto opened = PlanFile::open(file_, Access::ReadOnly);
    const auto saved = opened->save(random_.edited(plan_), kNow);
    ASSERT_FALSE(saved);
    EXPECT_EQ(saved.error().fault, kReadOnly);
    EXPECT_TRUE(PlanFile::open(file_, Access::ReadOnly)->plan() == plan_);
}

// A full disk, made by a limit on the size of files in a child process.
TEST_F(PlanFileFaults, AFullDiskLeavesTheOldPlanWhole) {
    make();
    const pid_t child = ::fork();
    if (child == 0) {
        std::signal(SIGXFSZ, SIG_IGN);
        auto opened = PlanFile::open(file_, Access::ReadWrite);
        const auto size = std::filesystem::file_size(file_);
        const rlimit limit{size + 8192, size + 8192};
        ::setrlimit(RLIMIT_FSIZE, &limit);
        const auto saved = opened->save(random_.plan(3000), kNow);
        const bool told = !saved && (saved.error().fault == kDiskFull || saved.error().fault == kIoError);
        ::_exit(told ? 0 : 1);
    }
    int status = 0;
    ASSERT_EQ(::waitpid(child, &status, 0), child);
    EXPECT_EQ(WEXITSTATUS(status), 0);
    const auto again = PlanFile::open(file_, Access::ReadWrite);
    ASSERT_TRUE(again);
    EXPECT_TRUE(again->plan() == plan_);
}

}  // namespace
}  // namespace crosstick::files
