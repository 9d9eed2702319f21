#include "core/sheets/sheet_cache.h"

#include <fstream>

#include <gtest/gtest.h>

#include "core/sheets/faults.h"
#include "tests/sheets/made_sheets.h"

namespace crosstick::sheets {
namespace {

namespace fs = std::filesystem;
using testing::Folder;
using testing::writeText;

fs::path add(const SheetCache& cache, const std::string& name, std::size_t bytes) {
    const auto place = cache.place(name);
    EXPECT_TRUE(place.has_value());
    writeText(*place, std::string(bytes, 'x'));
    const auto taken = cache.take(*place, name);
    EXPECT_TRUE(taken.has_value());
    return *taken;
}

void makeOlder(const fs::path& file, int hours) {
    fs::last_write_time(file, fs::last_write_time(file) - std::chrono::hours(hours));
}

TEST(SheetCache, FindsWhatItTookAndNothingElse) {
    const Folder folder;
    const SheetCache cache(folder / "cache");
    EXPECT_EQ(cache.find("one"), fs::path());
    const fs::path copy = add(cache, "one", 100);
    EXPECT_EQ(cache.find("one"), copy);
    EXPECT_EQ(cache.find("two"), fs::path());
    EXPECT_EQ(cache.bytes(), 100);
}

TEST(SheetCache, TheLongestUnusedGoesFirstAndTheNewestStays) {
    const Folder folder;
    const SheetCache cache(folder / "cache", 250);
    makeOlder(add(cache, "first", 100), 3);
    makeOlder(add(cache, "second", 100), 2);
    EXPECT_NE(cache.find("first"), fs::path());  // used just now, so the second is the longest unused
    add(cache, "third", 100);
    EXPECT_NE(cache.find("first"), fs::path());
    EXPECT_EQ(cache.find("second"), fs::path());
    EXPECT_NE(cache.find("third"), fs::path());
    add(cache, "larger than the cache", 900);
    EXPECT_NE(cache.find("larger than the cache"), fs::path());
    EXPECT_EQ(cache.find("first"), fs::path());
}

TEST(SheetCache, WhatLiesInItsFoldersCountsAndGoesToo) {
    const Folder folder;
    const SheetCache cache(folder / "cache", 250);
    fs::create_directories(folder / "cache/carried/0123");
    writeText(folder / "cache/carried/0123/sheet.tif", std::string(200, 'x'));
    makeOlder(folder / "cache/carried/0123/sheet.tif", 2);
    EXPECT_EQ(cache.bytes(), 200);
    add(cache, "new", 100);
    EXPECT_FALSE(fs::exists(folder / "cache/carried/0123/sheet.tif"));
}

TEST(SheetCache, AnUnfinishedCopyIsNeverFoundAndForgottenAfterADay) {
    const Folder folder;
    const SheetCache cache(folder / "cache");
    const auto left = cache.place("one");
    ASSERT_TRUE(left.has_value());
    writeText(*left, "half");
    EXPECT_EQ(cache.find("one"), fs::path());
    EXPECT_TRUE(cache.place("two").has_value());
    EXPECT_TRUE(fs::exists(*left));
    makeOlder(*left, 25);
    EXPECT_TRUE(cache.place("three").has_value());
    EXPECT_FALSE(fs::exists(*left));
}

TEST(SheetCache, TwoWhoMakeTheSameDoNotMeet) {
    const Folder folder;
    const SheetCache cache(folder / "cache");
    EXPECT_NE(cache.place("one").value(), cache.place("one").value());
}

TEST(SheetCache, TheNameChangesWithTheFile) {
    const Folder folder;
    const auto name = [&] { return SheetCache::nameFor(folder / "a", "pyramid").value(); };
    writeText(folder / "a", std::string(300000, 'a'));
    const std::string first = name();
    EXPECT_EQ(name(), first);
    EXPECT_NE(SheetCache::nameFor(folder / "a", "heights").value(), first);
    const auto time = fs::last_write_time(folder / "a");
    fs::last_write_time(folder / "a", time - std::chrono::seconds(1));
    EXPECT_NE(name(), first);
    // Same size and time, other last byte.
    writeText(folder / "a", std::string(299999, 'a') + 'b');
    fs::last_write_time(folder / "a", time);
    EXPECT_NE(name(), first);
}

TEST(SheetCache, AFileThatIsNotThereHasNoName) {
    const Folder folder;
    EXPECT_EQ(SheetCache::nameFor(folder / "none", "pyramid").error().fault, kFileMissing);
    EXPECT_EQ(SheetCache::nameFor(folder / ".", "pyramid").error().fault, kFileMissing);
}

TEST(SheetCache, AFolderThatCannotBeMadeIsToldOf) {
    const Folder folder;
    writeText(folder / "file", "in the way");
    const SheetCache cache(folder / "file");
    const auto place = cache.place("one");
    ASSERT_FALSE(place.has_value());
    EXPECT_EQ(place.error().fault, kNoRoom);
}

}  // namespace
}  // namespace crosstick::sheets
