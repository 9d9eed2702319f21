// The reader in its own process: what it refuses, how it is watched, and that the user's folder stays as it was.
#include "core/sheets/foreign_reader.h"

#include <algorithm>
#include <atomic>
#include <random>
#include <thread>

#include <gtest/gtest.h>

#include "core/sheets/faults.h"
#include "core/sheets/raster.h"
#include "core/worker/faults.h"
#include "tests/places.h"
#include "tests/sheets/hostile_files.h"
#include "tests/sheets/made_sheets.h"
#include "tests/sheets/our_reader.h"

namespace crosstick::sheets {
namespace {

using testing::Folder;
using testing::makeSheet;
using testing::writeText;

ForeignReader readerWith(const std::filesystem::path& cache, std::int64_t most = SheetCache::kUsualSize) {
    return {places::foreignReader(), SheetCache(cache, most)};
}

void makeNoise(const std::filesystem::path& file, int columns, int rows, std::vector<std::string> options = {}) {
    makeSheet(file, {.columns = columns, .rows = rows, .options = std::move(options), .value = [](int c, int r, int) {
                         return static_cast<double>(
                             (static_cast<unsigned>(c) * 2654435761U + static_cast<unsigned>(r) * 40503U) >> 7U & 255U);
                     }});
}

TEST(ForeignReader, ACopyIsMadeOnceAndFoundFromThenOn) {
    const Folder folder;
    makeNoise(folder / "a.tif", 300, 200);
    const ForeignReader reader = readerWith(folder / "cache");
    EXPECT_FALSE(reader.hasSheet(folder / "a.tif"));
    int told = 0;
    Watch watch;
    watch.tell = [&](messages::Progress progress) { told += progress.of > 0 ? 1 : 0; };
    const auto first = reader.sheet(folder / "a.tif", watch);
    ASSERT_TRUE(first.has_value());
    EXPECT_GT(told, 0);
    told = 0;
    EXPECT_TRUE(reader.hasSheet(folder / "a.tif"));
    EXPECT_EQ(reader.sheet(folder / "a.tif", watch).value(), *first);
    EXPECT_EQ(told, 0);
}

TEST(ForeignReader, ShowsTheWholeAtAGlanceBeforeTheCopyIsThere) {
    const Folder folder;
    makeNoise(folder / "a.tif", 5000, 2500);
    const ForeignReader reader = readerWith(folder / "cache");
    std::vector<std::string> order;
    Watch watch;
    watch.show = [&](const Pixels& picture) {
        EXPECT_EQ(picture.columns, 2048);
        EXPECT_EQ(picture.rows, 1024);
        order.emplace_back("glance");
    };
    watch.tell = [&](messages::Progress) { order.emplace_back("progress"); };
    ASSERT_TRUE(reader.sheet(folder / "a.tif", watch).has_value());
    ASSERT_GE(order.size(), 2U);
    EXPECT_EQ(order.front(), "glance");
    EXPECT_EQ(std::count(order.begin(), order.end(), "glance"), 1);
}

TEST(ForeignReader, NothingAppearsBesideTheUsersFile) {
    const Folder folder;
    std::filesystem::create_directory(folder / "theirs");
    makeNoise(folder / "theirs/a.tif", 1500, 1200);
    makeSheet(folder / "theirs/m.tif", {.depth = testing::Depth::Float});
    const ForeignReader reader = readerWith(folder / "cache");
    ASSERT_TRUE(reader.sheet(folder / "theirs/a.tif").has_value());
    ASSERT_TRUE(reader.heights(folder / "theirs/m.tif", HeightUnit::Metre).has_value());
    std::size_t files = 0;
    for (const auto& entry : std::filesystem::directory_iterator(folder / "theirs")) {
        files += entry.exists() ? 1U : 0U;
    }
    EXPECT_EQ(files, 2U);
}

TEST(ForeignReader, StoppedItLeavesNothingBehind) {
    const Folder folder;
    makeNoise(folder / "a.tif", 6000, 6000);
    const ForeignReader reader = readerWith(folder / "cache");
    bool begun = false;
    Watch watch;
    watch.tell = [&](messages::Progress) { begun = true; };
    watch.isStopped = [&] { return begun; };
    const auto copy = reader.sheet(folder / "a.tif", watch);
    if (!copy) {  // it may have been quicker than the first look
        EXPECT_EQ(copy.error().fault, worker::kStopped);
        EXPECT_TRUE(std::filesystem::is_empty(folder / "cache"));
    }
}

TEST(ForeignReader, ACopyLargerThanTheCacheIsToldOf) {
    const Folder folder;
    makeNoise(folder / "a.tif", 3000, 3000);
    const ForeignReader reader = readerWith(folder / "cache", 100000);
    const auto copy = reader.sheet(folder / "a.tif");
    ASSERT_FALSE(copy.has_value());
    EXPECT_TRUE(copy.error().fault == kReader || copy.error().fault == kNoRoom) << copy.error().fault.name;
    EXPECT_TRUE(std::filesystem::is_empty(folder / "cache"));
}

TEST(ForeignReader, AReaderThatIsMissingIsToldOf) {
    const Folder folder;
    makeNoise(folder / "a.tif", 30, 20);
    const ForeignReader reader("/nowhere/crosstick-reader", SheetCache(folder / "cache"));
    EXPECT_EQ(reader.inspect(folder / "a.tif").error().fault, worker::kNoProgram);
}

TEST(ForeignReader, AbsurdSizesAreRefusedByTheirHead) {
    const Folder folder;
    writeText(folder / "wide.png", testing::pngOf(200000, 10));
    const auto report = testing::reader().inspect(folder / "wide.png");
    ASSERT_FALSE(report.has_value());
    EXPECT_EQ(report.error().fault, kTooLarge);
}

// The process that reads may be killed by anybody at any moment; whoever waits gets one fault or the whole copy.
TEST(ForeignReader, KilledAtAnyMomentItIsOneFault) {
    const Folder folder;
    makeNoise(folder / "a.tif", 4000, 4000);
    std::mt19937 chance(std::random_device{}());
    const auto seed = chance();
    SCOPED_TRACE(seed);
    chance.seed(seed);
    for (int n = 0; n < 12; ++n) {
        const ForeignReader reader = readerWith(folder / ("cache" + std::to_string(n)).c_str());
        std::atomic<bool> done = false;
        std::thread killer([&, wait = std::chrono::milliseconds(chance() % 400)] {
            std::this_thread::sleep_for(wait);
            if (!done) {
                // The only child of this process that is the reader.
                const std::string line = "pkill -KILL -P " + std::to_string(::getpid()) + " crosstick-read";
                EXPECT_GE(std::system(line.c_str()), 0);
            }
        });
        const auto copy = reader.sheet(folder / "a.tif");
        done = true;
        killer.join();
        if (copy) {
            EXPECT_TRUE(Raster::open(*copy).has_value());
        } else {
            EXPECT_EQ(copy.error().fault, kReader);
            EXPECT_TRUE(std::filesystem::is_empty(reader.cache().folder()));
        }
    }
}

}  // namespace
}  // namespace crosstick::sheets
