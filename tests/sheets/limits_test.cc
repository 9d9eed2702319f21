// What a file may use before it is refused, and what one may use whose head is sound: measured on the process that
// reads, as the kernel counts it.
#include <algorithm>
#include <array>
#include <chrono>
#include <string_view>

#include <gtest/gtest.h>
#include <sys/resource.h>
#include <sys/wait.h>
#include <unistd.h>

#include "core/sheets/faults.h"
#include "tests/places.h"
#include "tests/sheets/hostile_files.h"
#include "tests/sheets/made_sheets.h"
#include "tests/sheets/our_reader.h"

namespace crosstick::sheets {
namespace {

using testing::Folder;
using testing::HostileFile;

constexpr std::int64_t kRefusedIn = std::int64_t{1} << 30;
constexpr std::int64_t kSoundIn = std::int64_t{5} << 29;

/// What came of a file, and what the reader used for it.
struct Use {
    bool opens = false;          ///< a report was given
    bool shows = false;          ///< a first picture was given, or the copy was made
    std::int64_t peak = 0;       ///< bytes held at once, the largest of the processes that read it
    std::int64_t inspected = 0;  ///< milliseconds until the report, or the fault
    std::array<char, 48> fault{};
};

std::int64_t millisecondsSince(std::chrono::steady_clock::time_point start) {
    return std::chrono::duration_cast<std::chrono::milliseconds>(std::chrono::steady_clock::now() - start).count();
}

/// Looks at a file and takes its first picture, in a process of its own, which alone is asked what its readers used.
Use useOf(const std::filesystem::path& file, const std::filesystem::path& cache) {
    std::array<int, 2> line{};
    EXPECT_EQ(::pipe(line.data()), 0);
    const pid_t process = ::fork();
    if (process == 0) {
        Use use;
        const ForeignReader reader(places::foreignReader(), SheetCache(cache));
        const auto start = std::chrono::steady_clock::now();
        const auto report = reader.inspect(file);
        use.inspected = millisecondsSince(start);
        use.opens = report.has_value();
        std::string fault = report ? "" : std::string(report.error().fault.name);
        if (report) {
            Watch watch;  // a vast sheet that is sound takes its time: its first picture is enough
            watch.show = [&](const Pixels&) { use.shows = true; };
            watch.isStopped = [&] { return use.shows; };
            const auto copy = reader.sheet(file, watch);
            use.shows = use.shows || copy.has_value();
            fault = use.shows ? "" : std::string(copy.error().fault.name);
        }
        fault.copy(use.fault.data(), use.fault.size() - 1);
        rusage used{};
        ::getrusage(RUSAGE_CHILDREN, &used);
        use.peak = std::int64_t{used.ru_maxrss} * 1024;
        const auto wrote = ::write(line[1], &use, sizeof(use));
        ::_exit(wrote == sizeof(use) ? 0 : 1);
    }
    Use use;
    EXPECT_EQ(::close(line[1]), 0);
    EXPECT_EQ(::read(line[0], &use, sizeof(use)), static_cast<ssize_t>(sizeof(use))) << file;
    EXPECT_EQ(::close(line[0]), 0);
    EXPECT_EQ(::waitpid(process, nullptr, 0), process);
    return use;
}

/// Every file is refused within its limits, or is sound after all and stays within those of a sound one.
void expectBounded(const std::string& kind, const std::vector<HostileFile>& files, const std::filesystem::path& cache) {
    std::int64_t refused = 0;
    std::int64_t sound = 0;
    std::int64_t longest = 0;
    for (const HostileFile& file : files) {
        const Use use = useOf(file.path, cache);
        EXPECT_LE(use.peak, use.opens ? kSoundIn : kRefusedIn) << kind << ' ' << file.name;
        EXPECT_TRUE(use.shows || std::string_view(use.fault.data()).starts_with("sheets/")) << kind << ' ' << file.name;
        (use.opens ? sound : refused) = std::max(use.opens ? sound : refused, use.peak);
        longest = std::max(longest, use.inspected);
    }
    constexpr std::int64_t kMega = std::int64_t{1} << 20;
    ::testing::Test::RecordProperty(kind + " refused MB", std::to_string(refused / kMega));
    ::testing::Test::RecordProperty(kind + " sound MB", std::to_string(sound / kMega));
    ::testing::Test::RecordProperty(kind + " longest ms", std::to_string(longest));
}

class Limits : public ::testing::Test {
  protected:
    Folder folder;
    [[nodiscard]] std::filesystem::path cache() const { return folder / "cache"; }
};

TEST_F(Limits, AbsurdSizesAreRefusedWithinAGigabyte) {
    expectBounded("absurd", testing::absurdSizes(folder / "files"), cache());
}

TEST_F(Limits, BombsGoOffWithinTheirLimits) {
    expectBounded("bombs", testing::bombs(folder / "files"), cache());
}

TEST_F(Limits, LoopsEndWithinTheirLimits) {
    expectBounded("loops", testing::loops(folder / "files"), cache());
}

TEST_F(Limits, WrongNamesAreRefused) {
    const auto files = testing::wrongNames(folder / "files");
    expectBounded("names", files, cache());
    for (const HostileFile& file : files) {
        const bool isPicture = file.name == "picture.pdf";  // its bytes count, not its name
        EXPECT_EQ(useOf(file.path, cache()).opens, isPicture) << file.name;
    }
}

TEST_F(Limits, FilesCutAtEveryTenthStayWithinTheirLimits) {
    expectBounded("cut", testing::cutAtEveryTenth(folder / "files"), cache());
}

// The largest that is taken: 63,000 pixels a side. Sparse, so that the disk need not hold it; a sheet all the same.
TEST_F(Limits, TheLargestSoundSheetShowsItselfWithinItsLimits) {
    testing::makeSheet(folder / "largest.tif",
                       {.columns = 63000,
                        .rows = 63000,
                        .bands = 3,
                        .options = {"SPARSE_OK=TRUE", "BIGTIFF=YES", "COMPRESS=DEFLATE", "PHOTOMETRIC=RGB"}});
    const Use use = useOf(folder / "largest.tif", cache());
    EXPECT_TRUE(use.opens);
    EXPECT_TRUE(use.shows);
    EXPECT_LE(use.peak, kSoundIn);
    RecordProperty("largest MB", std::to_string(use.peak >> 20));
}

}  // namespace
}  // namespace crosstick::sheets
