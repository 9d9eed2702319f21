// What the reader says to an order, without a process round it.
#include "core/reading/answering.h"

#include <algorithm>

#include <gdal_priv.h>
#include <gtest/gtest.h>

#include "core/reading/drivers.h"
#include "core/sheets/elevation.h"
#include "core/sheets/faults.h"
#include "core/sheets/raster.h"
#include "core/worker/faults.h"
#include "tests/sheets/made_sheets.h"

namespace crosstick::reading {
namespace {

namespace messages = sheets::messages;
using testing::Folder;
using testing::makeSheet;

class Answering : public ::testing::Test {
  protected:
    static void SetUpTestSuite() { prepareDrivers(); }
    Folder folder;

    [[nodiscard]] std::vector<worker::Record> answered(messages::Task task, const std::filesystem::path& file,
                                                       const std::filesystem::path& out = {}, int picture = 0) const {
        messages::Order order;
        order.task = task;
        order.file = file;
        order.out = out;
        order.picture = picture;
        order.unit = sheets::HeightUnit::Metre;
        std::vector<worker::Record> said;
        answer(messages::pack(order), [&](const worker::Record& record) { said.push_back(record); });
        return said;
    }
    [[nodiscard]] static std::vector<int> kinds(const std::vector<worker::Record>& said) {
        std::vector<int> all;
        all.reserve(said.size());
        for (const worker::Record& record : said) {
            all.push_back(record.kind);
        }
        return all;
    }
    [[nodiscard]] static std::string_view faultIn(const std::vector<worker::Record>& said) {
        return said.size() == 1 && said[0].kind == messages::kFault ? messages::unpackFault(said[0]).fault.name
                                                                    : "no fault";
    }
};

TEST_F(Answering, InspectingGivesOneReportAndDone) {
    makeSheet(folder / "a.tif", {.columns = 70, .rows = 50, .options = {"COMPRESS=LZW"}});
    const auto said = answered(messages::Task::Inspect, folder / "a.tif");
    ASSERT_EQ(kinds(said), (std::vector<int>{messages::kReport, messages::kDone}));
    const auto report = sheets::unpackReport(said[0]);
    ASSERT_TRUE(report.has_value());
    EXPECT_EQ(report->driver, "GTiff");
    EXPECT_EQ(report->columns, 70);
    EXPECT_EQ(report->rows, 50);
    EXPECT_EQ(report->compression, "LZW");
    EXPECT_EQ(report->crs, "EPSG:32625");
    EXPECT_TRUE(report->isWhole);
    EXPECT_FALSE(report->isLossy);
    EXPECT_FALSE(report->heights.has_value());
}

TEST_F(Answering, CopyingASheetShowsItTellsHowFarItIsAndIsDone) {
    makeSheet(folder / "a.tif", {.columns = 900, .rows = 1300, .value = [](int, int row, int) { return row % 256; }});
    const auto said = answered(messages::Task::Pyramid, folder / "a.tif", folder / "copy.tif", 100);
    ASSERT_GE(said.size(), 5U);
    const auto order = kinds(said);
    EXPECT_EQ(order.front(), messages::kPicture);
    EXPECT_EQ(order.back(), messages::kDone);
    EXPECT_TRUE(std::all_of(order.begin() + 2, order.end() - 1, [](int kind) { return kind == messages::kProgress; }));
    const auto top = messages::unpackPicture(said[0]);
    ASSERT_TRUE(top.has_value());
    EXPECT_EQ(top->columns, 69);
    EXPECT_EQ(top->rows, 100);
    const auto foot = messages::unpackPicture(said[1]);  // it goes on where the first rows end, and to the last
    ASSERT_TRUE(foot.has_value());
    EXPECT_EQ(static_cast<std::size_t>(foot->first) * 69, top->rgb.size());
    EXPECT_EQ(top->rgb.size() + foot->rgb.size(), 69U * 100);
    const auto last = messages::unpackProgress(said[said.size() - 2]);
    EXPECT_EQ(last->done, last->of);
    const auto raster = sheets::Raster::open(folder / "copy.tif");
    ASSERT_TRUE(raster.has_value());
    EXPECT_EQ(raster->read({3, 515, 1, 1}, 1, 1)->rgb[0], 0xff030303U);
}

TEST_F(Answering, CopyingHeightsGivesAModelThatOpens) {
    makeSheet(folder / "m.tif", {.depth = testing::Depth::Float, .value = [](int, int, int) { return 12.5; }});
    const auto said = answered(messages::Task::Heights, folder / "m.tif", folder / "copy.tif");
    ASSERT_EQ(said.back().kind, messages::kDone);
    const auto heights = sheets::Elevation::open(folder / "copy.tif", "EPSG:32625");
    ASSERT_TRUE(heights.has_value());
    EXPECT_EQ((*heights)->heightAt({Metres(648200), Metres(5105950)}), Metres(12.5));
}

TEST_F(Answering, EachFaultIsSaidByItsName) {
    EXPECT_EQ(faultIn(answered(messages::Task::Inspect, folder / "none.tif")), sheets::kFileMissing.name);
    testing::writeText(folder / "text.tif", "PL TRIVET runs along the road.\n");
    EXPECT_EQ(faultIn(answered(messages::Task::Inspect, folder / "text.tif")), sheets::kNotARaster.name);
    makeSheet(folder / "picture.tif", {.bands = 3});
    EXPECT_EQ(faultIn(answered(messages::Task::Heights, folder / "picture.tif", folder / "copy.tif")),
              sheets::kNotHeights.name);
    makeSheet(folder / "nowhere.tif", {.depth = testing::Depth::Float, .crs = ""});
    EXPECT_EQ(faultIn(answered(messages::Task::Heights, folder / "nowhere.tif", folder / "copy.tif")),
              sheets::kNoCrs.name);
    makeSheet(folder / "m.tif", {.depth = testing::Depth::Float});
    EXPECT_EQ(faultIn(answered(messages::Task::Heights, folder / "m.tif", folder / "no/such/folder.tif")),
              sheets::kNoRoom.name);
    makeSheet(folder / "a.tif", {});
    EXPECT_EQ(faultIn(answered(messages::Task::Pyramid, folder / "a.tif", folder / "no/such/folder.tif")),
              sheets::kNoRoom.name);
}

TEST_F(Answering, AnOrderThatIsNoneIsGarbled) {
    std::vector<worker::Record> said;
    answer({messages::kOrder, {1, 2, 3}}, [&](const worker::Record& record) { said.push_back(record); });
    ASSERT_EQ(said.size(), 1U);
    EXPECT_EQ(messages::unpackFault(said[0]).fault, worker::kGarbled);
}

// No reader of archives or networks is there, whatever a name asks for.
TEST_F(Answering, NoNameReachesANetworkOrAnArchive) {
    for (const char* name :
         {"/vsicurl/http://127.0.0.1:1/a.tif", "/vsizip/a.zip/a.tif", "/vsis3/bucket/a.tif", "/vsigzip//tmp/a.gz"}) {
        EXPECT_EQ(faultIn(answered(messages::Task::Inspect, name)), sheets::kFileMissing.name) << name;
        VSIStatBufL ignored;
        EXPECT_NE(VSIStatL(name, &ignored), 0) << name;
    }
    EXPECT_EQ(GetGDALDriverManager()->GetDriverByName("VRT"), nullptr);
    EXPECT_EQ(GetGDALDriverManager()->GetDriverByName("WMS"), nullptr);
}

}  // namespace
}  // namespace crosstick::reading
