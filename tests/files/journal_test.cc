#include "core/files/journal.h"

#include <fstream>
#include <sstream>

#include <gtest/gtest.h>

#include "core/files/faults.h"
#include "tests/files/temporary_folder.h"
#include "tests/plan/random_plans.h"

namespace crosstick::files {
namespace {

using crosstick::testing::TemporaryFolder;

struct Work {
    std::vector<plan::Plan> states;
    std::filesystem::path journal;
    JournalBase base;
};

/// A session that made edits and died: its journal is left, its lock is gone.
Work sessionThatDied(const std::filesystem::path& folder, std::uint64_t seed, std::size_t edits) {
    plan::testing::RandomPlans random(seed);
    Work work{{random.plan(30)}, {}, {}};
    work.base = {"/home/leader/plan.gpkg", work.states.front().id(), 3};
    auto journal = Journal::begin(folder, work.base);
    while (work.states.size() <= edits) {
        work.states.push_back(random.edited(work.states.back()));
        EXPECT_TRUE(journal->add(work.states[work.states.size() - 2], work.states.back()));
    }
    work.journal = journal->file();
    return work;
}

std::string bytesOf(const std::filesystem::path& file) {
    std::ifstream in(file, std::ios::binary);
    std::ostringstream all;
    all << in.rdbuf();
    return all.str();
}

TEST(Journal, BringsBackEveryEditAfterACrash) {
    const TemporaryFolder folder;
    const Work work = sessionThatDied(folder.path(), 700, 25);
    const auto found = leftovers(folder.path());
    ASSERT_EQ(found.size(), 1U);
    EXPECT_EQ(found[0].edits, 25U);
    EXPECT_EQ(found[0].base, work.base);
    const auto recovered = replay(found[0].journal, work.states.front(), 3);
    ASSERT_TRUE(recovered);
    EXPECT_TRUE(recovered->plan == work.states.back());
    EXPECT_FALSE(recovered->torn);
}

TEST(Journal, ALivingSessionsJournalIsNotOffered) {
    const TemporaryFolder folder;
    plan::testing::RandomPlans random(701);
    const plan::Plan plan = random.plan(3);
    auto journal = Journal::begin(folder.path(), {"", plan.id(), 0});
    ASSERT_TRUE(journal);
    EXPECT_TRUE(leftovers(folder.path()).empty());
}

TEST(Journal, TwoSessionsOfOnePlanKeepTheirOwn) {
    const TemporaryFolder folder;
    plan::testing::RandomPlans random(702);
    const plan::Plan plan = random.plan(3);
    const auto first = Journal::begin(folder.path(), {"", plan.id(), 0});
    const auto second = Journal::begin(folder.path(), {"", plan.id(), 0});
    ASSERT_TRUE(first && second);
    EXPECT_NE(first->file(), second->file());
}

TEST(Journal, CutOffAtAnyByteItKeepsEveryWholeRecord) {
    const TemporaryFolder folder;
    const Work work = sessionThatDied(folder.path(), 703, 3);
    const std::string whole = bytesOf(work.journal);
    const auto all = replay(work.journal, work.states.front(), 3);
    ASSERT_EQ(all->edits, 3U);
    // The last record, byte by byte; cut just before its closing line end it still is whole.
    const std::size_t lastStart = whole.rfind('\n', whole.rfind('\n', whole.size() - 2) - 1) + 1;
    for (std::size_t size = lastStart; size < whole.size() - 1; ++size) {
        std::ofstream(work.journal, std::ios::binary | std::ios::trunc) << whole.substr(0, size);
        const auto recovered = replay(work.journal, work.states.front(), 3);
        ASSERT_TRUE(recovered) << size;
        EXPECT_EQ(recovered->edits, 2U) << size;
        EXPECT_EQ(recovered->torn, size > lastStart) << size;
        EXPECT_TRUE(recovered->plan == work.states[2]);
    }
}

TEST(Journal, AFlippedBitEndsTheReplayBeforeIt) {
    const TemporaryFolder folder;
    const Work work = sessionThatDied(folder.path(), 704, 3);
    std::string bytes = bytesOf(work.journal);
    bytes[bytes.size() - 20] ^= 1;
    std::ofstream(work.journal, std::ios::binary | std::ios::trunc) << bytes;
    const auto recovered = replay(work.journal, work.states.front(), 3);
    ASSERT_TRUE(recovered);
    EXPECT_TRUE(recovered->torn);
    EXPECT_TRUE(recovered->plan == work.states[2]);
}

TEST(Journal, OfAnEarlierStateOfTheFileIsToldNotReplayed) {
    const TemporaryFolder folder;
    const Work work = sessionThatDied(folder.path(), 705, 2);
    const auto recovered = replay(work.journal, work.states.front(), 4);
    ASSERT_FALSE(recovered);
    EXPECT_EQ(recovered.error().fault, kJournalOfOtherState);
}

/// A session that made two edits, began a save, and made one more while it ran.
Work sessionThatDiedSaving(const std::filesystem::path& folder) {
    plan::testing::RandomPlans random(707);
    Work work{{random.plan(30)}, {}, {}};
    work.base = {"/home/leader/plan.gpkg", work.states.front().id(), 3};
    auto journal = Journal::begin(folder, work.base);
    for (int n = 0; n < 3; ++n) {
        if (n == 1) {
            EXPECT_TRUE(journal->mark(4));  // a save that failed leaves its mark, too
        }
        if (n == 2) {
            EXPECT_TRUE(journal->mark(4));
        }
        work.states.push_back(random.edited(work.states.back()));
        EXPECT_TRUE(journal->add(work.states[work.states.size() - 2], work.states.back()));
    }
    work.journal = journal->file();
    return work;
}

TEST(Journal, AfterASaveThatCameToPassOnlyWhatFollowedItsMarkIsNewer) {
    const TemporaryFolder folder;
    const Work work = sessionThatDiedSaving(folder.path());
    const auto recovered = replay(work.journal, work.states[2], 4);
    ASSERT_TRUE(recovered);
    EXPECT_EQ(recovered->edits, 1U);
    EXPECT_TRUE(recovered->plan == work.states[3]);
}

TEST(Journal, AfterASaveThatDidNotComeToPassEverythingCounts) {
    const TemporaryFolder folder;
    const Work work = sessionThatDiedSaving(folder.path());
    const auto found = leftovers(folder.path());
    ASSERT_EQ(found.size(), 1U);
    EXPECT_EQ(found[0].edits, 3U) << "a mark is no edit";
    const auto recovered = replay(work.journal, work.states[0], 3);
    ASSERT_TRUE(recovered);
    EXPECT_EQ(recovered->edits, 3U);
    EXPECT_TRUE(recovered->plan == work.states[3]);
    EXPECT_FALSE(replay(work.journal, work.states[0], 5)) << "saved again by somebody else";
}

TEST(Journal, ASaveEmptiesItAndTiesItToTheNewState) {
    const TemporaryFolder folder;
    plan::testing::RandomPlans random(706);
    const plan::Plan first = random.plan(5);
    const plan::Plan second = random.edited(first);
    std::filesystem::path file;
    {
        auto journal = Journal::begin(folder.path(), {"p", first.id(), 1});
        ASSERT_TRUE(journal->add(first, second));
        ASSERT_TRUE(journal->restart({"p", first.id(), 2}));
        file = journal->file();
    }
    const auto found = leftovers(folder.path());
    ASSERT_EQ(found.size(), 1U);
    EXPECT_EQ(found[0].edits, 0U);
    EXPECT_EQ(found[0].base.saves, 2);
}

TEST(Journal, WhatIsNoJournalIsPassedOver) {
    const TemporaryFolder folder;
    std::ofstream(folder / "x.journal") << "something else";
    EXPECT_TRUE(leftovers(folder.path()).empty());
    EXPECT_EQ(replay(folder / "x.journal", plan::Plan{}, 0).error().fault, kJournalDamaged);
}

}  // namespace
}  // namespace crosstick::files
