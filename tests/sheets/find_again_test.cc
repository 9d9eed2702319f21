#include "core/sheets/find_again.h"

#include <gtest/gtest.h>

#include "core/units/sha256.h"
#include "tests/sheets/made_sheets.h"

namespace crosstick::sheets {
namespace {

namespace fs = std::filesystem;
using testing::Folder;
using testing::writeText;

plan::Sheet sheetOf(const std::string& bytes) {
    plan::Sheet sheet;
    sheet.path = "gone.tif";
    sheet.bytes = static_cast<std::int64_t>(bytes.size());
    sheet.sha256 = hexText(sha256(bytes));
    return sheet;
}

TEST(FindAgain, FindsItByItsBytesWhateverItsName) {
    const Folder folder;
    fs::create_directories(folder / "plans");
    fs::create_directories(folder / "maps/north");
    writeText(folder / "plans/same size.tif", "not these bytes");
    writeText(folder / "maps/north/renamed.dat", "but these bytes");
    const plan::Sheet sheet = sheetOf("but these bytes");
    EXPECT_EQ(findAgain(sheet, {folder / "plans"}), fs::path());
    EXPECT_EQ(findAgain(sheet, {folder / "plans", folder / "maps"}), folder / "maps/north/renamed.dat");
    EXPECT_EQ(findAgain(sheet, {folder / "no such folder"}), fs::path());
}

TEST(FindAgain, LooksNeitherTooDeepNorBehindLinksNorWhereItIsHidden) {
    const Folder folder;
    fs::create_directories(folder / "a/b/c/d/e");
    fs::create_directories(folder / "a/.hidden");
    writeText(folder / "a/b/c/d/e/x", "bytes");
    writeText(folder / "a/.hidden/x", "bytes");
    fs::create_directories(folder / "elsewhere");
    writeText(folder / "elsewhere/x", "bytes");
    fs::create_directory_symlink(folder / "elsewhere", folder / "a/link");
    fs::create_directory_symlink(folder / "a", folder / "a/loop");
    EXPECT_EQ(findAgain(sheetOf("bytes"), {folder / "a"}), fs::path());
    writeText(folder / "a/b/c/d/x", "bytes");
    EXPECT_EQ(findAgain(sheetOf("bytes"), {folder / "a"}), folder / "a/b/c/d/x");
}

TEST(FindAgain, WhoeverWaitsCanStopIt) {
    const Folder folder;
    writeText(folder / "x", "bytes");
    EXPECT_EQ(findAgain(sheetOf("bytes"), {folder / "."}, [] { return true; }), fs::path());
}

}  // namespace
}  // namespace crosstick::sheets
