#pragma once

#include <filesystem>
#include <string>

#include "tests/sheets/made_sheets.h"

namespace crosstick::app {

/// A folder with a small green sheet of 10 by 10 km (sheet.tif, EPSG:32625, 1:25,000) and, on demand, plans on it.
class MadeFiles {
  public:
    MadeFiles();

    [[nodiscard]] std::string operator/(const char* name) const { return (folder_ / name).string(); }
    [[nodiscard]] std::string sheet() const { return *this / "sheet.tif"; }
    /// Exercise SLOW KETTLE as it is printed, with films HIGHER, MOVE and LOOK: printed.gpkg.
    [[nodiscard]] std::string printedPlan() const;
    /// A plan without anything drawn, made by the command new: empty.gpkg.
    [[nodiscard]] std::string emptyPlan() const;
    void write(const char* name, const std::string& text) const;

  private:
    crosstick::testing::Folder folder_;
};

/// A GeoPackage with one layer of roads, written by GDAL.
void makeForeignGeoPackage(const std::string& file);
[[nodiscard]] std::string contents(const std::filesystem::path& file);

}  // namespace crosstick::app
