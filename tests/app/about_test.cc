// The command about.
#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include "asking.h"
#include "tests/places.h"

namespace crosstick::app {
namespace {

using testing::HasSubstr;

TEST(AboutCommand, NamesEveryLibraryWithAVersion) {
    const Said answer = said({"about", "--json"});
    ASSERT_EQ(answer.exit, Exit::Done) << answer.err;
    ASSERT_EQ(answer.json().size(), 1U);
    const auto about = answer.json()[0];
    std::set<std::string> names;
    for (const auto& library : about.at("libraries")) {
        names.insert(library.at("name").get<std::string>());
        EXPECT_THAT(library.at("version").get<std::string>(), testing::MatchesRegex("[0-9]+\\.[0-9]+.*"))
            << library.at("name");
    }
    EXPECT_THAT(
        names, testing::IsSupersetOf({"Qt", "GDAL", "PROJ", "GEOS", "GeographicLib", "ERFA", "SQLite", "qpdf", "fmt"}));
    EXPECT_THAT(about.at("crosstick").get<std::string>(), testing::MatchesRegex("[0-9]+\\.[0-9]+\\.[0-9]+"));
    EXPECT_EQ(about.at("magnetic_model"), "WMM2025");
    EXPECT_THAT(about.at("proj_database").get<std::string>(), HasSubstr("proj.db"));
    EXPECT_THAT(about.at("epsg_version").get<std::string>(), HasSubstr("v"));
    EXPECT_TRUE(about.at("grids").is_array());
    EXPECT_EQ(about.at("sheet_copies"), places::sheetCache().string());
    EXPECT_LE(about.at("sheet_copies_bytes").get<double>(), about.at("sheet_copies_most_bytes").get<double>());
    EXPECT_THAT(about.at("faces").get<std::vector<std::string>>(), testing::Contains("B612-Regular"));
}

TEST(AboutCommand, SaysTheSameToPeople) {
    const Said answer = said({"about"});
    EXPECT_EQ(answer.exit, Exit::Done);
    for (const char* told :
         {"Crosstick 0.", "GeographicLib", "WMM2025", "PROJ database", "Transformation grids", "B612"}) {
        EXPECT_THAT(answer.out, HasSubstr(told));
    }
}

}  // namespace
}  // namespace crosstick::app
