// The reader in its own process: what it refuses, how it is watched, and that the user's folder stays as it was.
#include "core/sheets/foreign_reader.h"

#include <algorithm>
#include <atomic>
#include <fstream>
#include <random>
#include <thread>

#include <gdal_priv.h>
#include <gtest/gtest.h>
#include <zlib.h>

#include "core/sheets/faults.h"
#include "core/sheets/raster.h"
#include "core/worker/faults.h"
#include "tests/sheets/made_sheets.h"
#include "tests/sheets/our_reader.h"

namespace crosstick::sheets {
namespace {

using testing::Folder;
using testing::makeSheet;
using testing::writeText;

ForeignReader readerWith(const std::filesystem::path& cache, std::int64_t most = SheetCache::kUsualSize) {
    return {CROSSTICK_READER, SheetCache(cache, most)};
}

void makeNoise(const std::filesystem::path& file, int columns, int rows, std::vector<std::string> options = {}) {
    makeSheet(file, {.columns = columns, .rows = rows, .options = std::move(options), .value = [](int c, int r, int) {
                         return static_cast<double>(
                             (static_cast<unsigned>(c) * 2654435761U + static_cast<unsigned>(r) * 40503U) >> 7U & 255U);
                     }});
}

std::string bigEndian(std::uint32_t number) {
    std::string bytes;
    for (const unsigned shift : {24U, 16U, 8U, 0U}) {
        bytes += static_cast<char>((number >> shift) & 255U);
    }
    return bytes;
}

std::string chunk(const std::string& kind, const std::string& body) {
    const std::string named = kind + body;
    const auto sum = ::crc32(0, reinterpret_cast<const Bytef*>(named.data()), static_cast<uInt>(named.size()));
    return bigEndian(static_cast<std::uint32_t>(body.size())) + named + bigEndian(static_cast<std::uint32_t>(sum));
}

/// A grey PNG of some size whose pixels are none.
std::string pngOf(std::uint32_t columns, std::uint32_t rows) {
    const std::string head = bigEndian(columns) + bigEndian(rows) + std::string("\x08\x00\x00\x00\x00", 5);
    return "\x89PNG\r\n\x1a\n" + chunk("IHDR", head) + chunk("IDAT", "") + chunk("IEND", "");
}

std::string faultOf(const std::filesystem::path& file) {
    const auto report = testing::reader().inspect(file);
    if (!report) {
        return std::string(report.error().fault.name);
    }
    const auto copy = testing::reader().sheet(file);
    return copy ? "none" : std::string(copy.error().fault.name);
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
    makeSheet(folder / "sparse.tif",
              {.columns = 200000, .rows = 200000, .options = {"SPARSE_OK=TRUE", "TILED=YES", "BIGTIFF=YES"}});
    EXPECT_EQ(faultOf(folder / "sparse.tif"), kTooLarge.name);
    writeText(folder / "vast.png", pngOf(2000000000, 2000000000));
    EXPECT_NE(faultOf(folder / "vast.png"), "none");
    writeText(folder / "wide.png", pngOf(200000, 10));
    EXPECT_EQ(faultOf(folder / "wide.png"), kTooLarge.name);
}

// Compressed text that unpacks to 1 GB stands in front of the pixels.
TEST(ForeignReader, ABombInAPictureIsOneLine) {
    const Folder folder;
    std::string bomb(std::size_t{256} << 20, '\0');
    std::vector<Bytef> packed(::compressBound(bomb.size()));
    uLongf length = packed.size();
    ASSERT_EQ(::compress2(packed.data(), &length, reinterpret_cast<const Bytef*>(bomb.data()), bomb.size(), 9), Z_OK);
    const std::string text =
        std::string("Comment\0\0", 9) + std::string(reinterpret_cast<const char*>(packed.data()), length);
    std::string png =
        "\x89PNG\r\n\x1a\n" + chunk("IHDR", bigEndian(4) + bigEndian(4) + std::string("\x08\x00\x00\x00\x00", 5));
    for (int n = 0; n < 8; ++n) {
        png += chunk("zTXt", text);
    }
    writeText(folder / "bomb.png", png + chunk("IDAT", "") + chunk("IEND", ""));
    EXPECT_NE(faultOf(folder / "bomb.png"), "none");
}

// Directories of a TIFF may point at each other; each entry of this one says that it is the next.
TEST(ForeignReader, DirectoriesThatChaseEachOtherEnd) {
    const Folder folder;
    makeNoise(folder / "a.tif", 40, 30);
    std::ifstream in(folder / "a.tif", std::ios::binary);
    std::string bytes{std::istreambuf_iterator<char>(in), {}};
    const auto number = [&](std::size_t at, std::size_t length) {
        std::size_t value = 0;
        for (std::size_t n = 0; n < length; ++n) {
            value |= static_cast<std::size_t>(static_cast<unsigned char>(bytes[at + n])) << (8 * n);
        }
        return value;
    };
    const std::size_t first = number(4, 4);
    const std::size_t next = first + 2 + 12 * number(first, 2);
    for (std::size_t n = 0; n < 4; ++n) {
        bytes[next + n] = bytes[4 + n];
    }
    writeText(folder / "loop.tif", bytes);
    const std::string fault = faultOf(folder / "loop.tif");
    EXPECT_TRUE(fault == "none" || fault.starts_with("sheets/")) << fault;
}

TEST(ForeignReader, EveryTenthOfEveryKindOfFileIsAPictureOrOneLine) {
    const Folder folder;
    makeNoise(folder / "source.tif", 500, 400, {"COMPRESS=LZW"});
    GDALAllRegister();
    GDALDataset* source = GDALDataset::FromHandle(GDALOpen((folder / "source.tif").c_str(), GA_ReadOnly));
    for (const auto& [name, driver] :
         {std::pair{"a.png", "PNG"}, {"a.jpg", "JPEG"}, {"a.bmp", "BMP"}, {"a.pdf", "PDF"}, {"a.tif", "GTiff"}}) {
        GDALDriver* writer = GetGDALDriverManager()->GetDriverByName(driver);
        GDALClose(GDALDataset::ToHandle(
            writer->CreateCopy((folder / name).c_str(), source, FALSE, nullptr, nullptr, nullptr)));
        EXPECT_EQ(faultOf(folder / name), "none") << name;
        const auto whole = std::filesystem::file_size(folder / name);
        for (std::uintmax_t tenth = 0; tenth < 10; ++tenth) {
            std::filesystem::resize_file(folder / name, whole / 10 * (9 - tenth));
            const std::string fault = faultOf(folder / name);
            EXPECT_TRUE(fault == "none" || fault.starts_with("sheets/")) << name << " " << tenth << ": " << fault;
        }
    }
    GDALClose(GDALDataset::ToHandle(source));
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
