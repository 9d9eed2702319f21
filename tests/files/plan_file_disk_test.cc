// What a failing disk, a folder without permissions and a broken-off save leave behind.
#include <fstream>

#include <gtest/gtest.h>
#include <sys/wait.h>
#include <unistd.h>

#include "core/files/faults.h"
#include "core/files/plan_file.h"
#include "tests/files/failing_disk.h"
#include "tests/files/temporary_folder.h"
#include "tests/plan/random_plans.h"

namespace crosstick::files {
namespace {

using crosstick::testing::FailingDisk;
using crosstick::testing::TemporaryFolder;
using crosstick::testing::Trouble;

constexpr Instant kNow{std::chrono::seconds(1805155200)};
constexpr int kMostCalls = 2000;

/// One plan on disk, and another that the tests try to save over it.
class PlanFileDisk : public ::testing::TestWithParam<Trouble> {
  protected:
    TemporaryFolder folder_;
    std::filesystem::path file_ = folder_ / "plan.gpkg";
    plan::testing::RandomPlans random_{20270313};
    plan::Plan before_ = random_.plan(25);
    plan::Plan after_ = random_.edited(before_);

    void makeFile() const {
        std::error_code ignored;
        std::filesystem::remove(file_, ignored);
        std::filesystem::remove(journal(), ignored);
        ASSERT_TRUE(PlanFile::create(file_, before_, kNow));
    }
    [[nodiscard]] std::filesystem::path journal() const { return file_.string() + "-journal"; }
    [[nodiscard]] std::size_t filesInFolder() const {
        return static_cast<std::size_t>(std::distance(std::filesystem::directory_iterator(folder_.path()), {}));
    }
    static void expectOneClearFault(const Error& error) {
        EXPECT_TRUE(error.fault == kIoError || error.fault == kDiskFull || error.fault == kCannotOpen)
            << error.fault.name;
        ASSERT_FALSE(error.arguments.empty());
        EXPECT_EQ(error.arguments.front().key, "file");
    }
    /// Tries one save on a disk whose n-th call fails; says whether that call came.
    bool saveWithTrouble(int nth, Trouble trouble) const {
        const FailingDisk disk(nth, trouble);
        auto opened = PlanFile::open(file_, Access::ReadWrite);
        EXPECT_TRUE(opened);
        const auto saved = opened->save(after_, kNow);
        if (!saved) {
            expectOneClearFault(saved.error());
            EXPECT_TRUE(opened->plan() == before_);
        }
        EXPECT_TRUE(disk.hasFailed() || saved) << "refused without trouble";
        return disk.hasFailed();
    }
};

TEST_P(PlanFileDisk, AtEveryCallThatFailsTheFileKeepsTheOldOrTheNewPlan) {
    int nth = 1;
    int old = 0;
    for (;; ++nth) {
        ASSERT_LT(nth, kMostCalls);
        makeFile();
        const bool troubled = saveWithTrouble(nth, GetParam());
        const auto read = PlanFile::open(file_, Access::ReadOnly);
        ASSERT_TRUE(read) << "call " << nth << ": " << read.error().fault.name;
        ASSERT_TRUE(read->plan() == before_ || read->plan() == after_) << "call " << nth;
        old += read->plan() == before_ ? 1 : 0;
        if (!troubled) {
            EXPECT_TRUE(read->plan() == after_);
            break;
        }
        auto again = PlanFile::open(file_, Access::ReadWrite);
        ASSERT_TRUE(again && again->save(after_, kNow)) << "call " << nth;
    }
    EXPECT_GT(old, 5);  // of a save's writes, syncs and the journal's delete
}

TEST_P(PlanFileDisk, AtEveryCallThatFailsANewFileIsWholeOrNotThere) {
    for (int nth = 1;; ++nth) {
        ASSERT_LT(nth, kMostCalls);
        bool troubled = false;
        {
            const FailingDisk disk(nth, GetParam());
            const auto created = PlanFile::create(file_, before_, kNow);
            troubled = disk.hasFailed();
            if (!created) {
                expectOneClearFault(created.error());
                EXPECT_EQ(filesInFolder(), 0U) << "call " << nth;
            }
        }
        if (std::filesystem::exists(file_)) {
            EXPECT_TRUE(PlanFile::open(file_, Access::ReadOnly)->plan() == before_) << "call " << nth;
        }
        if (!troubled) {
            EXPECT_TRUE(std::filesystem::exists(file_));
            break;
        }
        std::filesystem::remove(file_);
    }
}

TEST_P(PlanFileDisk, AtEveryCallThatFailsACopyIsWholeOrNotThere) {
    makeFile();
    const auto copy = folder_ / "copy.gpkg";
    for (int nth = 1;; ++nth) {
        ASSERT_LT(nth, kMostCalls);
        bool troubled = false;
        {
            const FailingDisk disk(nth, GetParam());
            auto opened = PlanFile::open(file_, Access::ReadWrite);
            ASSERT_TRUE(opened);
            const auto saved = opened->saveAs(copy, after_, kNow);
            troubled = disk.hasFailed();
            if (!saved) {
                expectOneClearFault(saved.error());
                EXPECT_EQ(filesInFolder(), 1U) << "call " << nth;
            }
        }
        EXPECT_TRUE(PlanFile::open(file_, Access::ReadOnly)->plan() == before_) << "call " << nth;
        if (std::filesystem::exists(copy)) {
            EXPECT_TRUE(PlanFile::open(copy, Access::ReadOnly)->plan() == after_) << "call " << nth;
        }
        if (!troubled) {
            EXPECT_TRUE(std::filesystem::exists(copy));
            break;
        }
        std::filesystem::remove(copy);
    }
}

INSTANTIATE_TEST_SUITE_P(Troubles, PlanFileDisk, ::testing::Values(Trouble::Once, Trouble::ForGood),
                         [](const auto& trouble) { return trouble.param == Trouble::Once ? "Once" : "ForGood"; });

using PlanFileFolder = PlanFileDisk;

/// Runs a claim as somebody who may not write everywhere: root becomes nobody, others stay who they are.
template <class Claim>
int asOrdinaryUser(Claim claim) {
    const pid_t child = ::fork();
    if (child == 0) {
        constexpr uid_t kNobody = 65534;
        if (::geteuid() == 0 && ::setresuid(kNobody, kNobody, kNobody) != 0) {
            ::_exit(100);
        }
        ::_exit(claim());
    }
    int status = 0;
    EXPECT_EQ(::waitpid(child, &status, 0), child);
    return WIFEXITED(status) ? WEXITSTATUS(status) : 101;
}

TEST_F(PlanFileFolder, AFolderThatMayOnlyBeReadIsReadAndNotWritten) {
    makeFile();
    namespace fs = std::filesystem;
    fs::permissions(file_, fs::perms::owner_read | fs::perms::group_read | fs::perms::others_read);
    fs::permissions(folder_.path(), fs::perms{0555});
    const int failed = asOrdinaryUser([&] {
        const auto read = PlanFile::open(file_, Access::ReadOnly);
        if (!read || read->plan() != before_) {
            return 1;
        }
        auto opened = PlanFile::open(file_, Access::ReadWrite);
        if (opened) {
            const auto saved = opened->save(after_, kNow);
            if (saved || (saved.error().fault != kReadOnly && saved.error().fault != kCannotOpen)) {
                return 2;
            }
        }
        const auto created = PlanFile::create(folder_ / "new.gpkg", before_, kNow);
        return !created && created.error().fault == kCannotOpen ? 0 : 3;
    });
    fs::permissions(folder_.path(), fs::perms::owner_all);
    EXPECT_EQ(failed, 0);
    EXPECT_TRUE(PlanFile::open(file_, Access::ReadOnly)->plan() == before_);
    EXPECT_EQ(filesInFolder(), 1U);
}

}  // namespace
}  // namespace crosstick::files
