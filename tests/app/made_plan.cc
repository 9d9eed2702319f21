#include "tests/app/made_plan.h"

#include <fstream>
#include <iterator>

#include <gdal_priv.h>
#include <gtest/gtest.h>
#include <ogrsf_frmts.h>

#include "core/files/plan_file.h"
#include "tests/app/asking.h"
#include "tests/film/printed_plan.h"

namespace crosstick::app {

MadeFiles::MadeFiles() {
    crosstick::testing::makeSheet(folder_ / "sheet.tif", {.columns = 100,
                                                          .rows = 100,
                                                          .bands = 3,
                                                          .placement = {650000, 100, 0, 5106000, 0, -100},
                                                          .options = {"PHOTOMETRIC=RGB"},
                                                          .value = [](int, int, int band) { return 60 * band; }});
}

std::string MadeFiles::printedPlan() const {
    const auto file = folder_ / "printed.gpkg";
    EXPECT_TRUE(files::PlanFile::create(file, film::printedPlan(), *parseIsoTime("2027-03-13T12:00:00Z")));
    return file.string();
}

std::string MadeFiles::emptyPlan() const {
    const Said answer = said({"new", *this / "empty.gpkg", "--sheet", sheet(), "--scale", "25000"});
    EXPECT_EQ(answer.exit, Exit::Done) << answer.err;
    return *this / "empty.gpkg";
}

void MadeFiles::write(const char* name, const std::string& text) const {
    crosstick::testing::writeText(folder_ / name, text);
}

void makeForeignGeoPackage(const std::string& file) {
    GDALAllRegister();
    GDALDriver* driver = GetGDALDriverManager()->GetDriverByName("GPKG");
    ASSERT_NE(driver, nullptr);
    GDALDataset* dataset = driver->Create(file.c_str(), 0, 0, 0, GDT_Unknown, nullptr);
    ASSERT_NE(dataset, nullptr);
    EXPECT_NE(dataset->CreateLayer("roads", nullptr, wkbLineString, nullptr), nullptr);
    GDALClose(dataset);
}

std::string contents(const std::filesystem::path& file) {
    std::ifstream in(file, std::ios::binary);
    return {std::istreambuf_iterator<char>(in), {}};
}

}  // namespace crosstick::app
