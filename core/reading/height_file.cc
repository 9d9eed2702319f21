#include "core/reading/height_file.h"

#include <limits>

#include <cpl_string.h>
#include <gdal_priv.h>

namespace crosstick::reading {

Result<HeightFile> HeightFile::create(const std::filesystem::path& out, int columns, int rows, const std::string& crs,
                                      std::array<double, 6> placement) {
    const sheets::QuietGdal quiet;
    CPLStringList options;
    options.SetNameValue("BIGTIFF", "IF_SAFER");
    GDALDriver* driver = GetGDALDriverManager()->GetDriverByName("GTiff");
    HeightFile file;
    file.file_.path = out;
    file.file_.dataset.reset(driver->Create(out.c_str(), columns, rows, 1, GDT_Float32, options.List()));
    if (!file.file_.dataset) {
        return tl::unexpected(file.file_.noRoom(quiet));
    }
    file.file_.dataset->SetGeoTransform(placement.data());
    file.file_.dataset->SetMetadataItem("CRS", crs.c_str(), sheets::kOwnDomain);
    file.file_.dataset->GetRasterBand(1)->SetNoDataValue(std::numeric_limits<double>::quiet_NaN());
    return file;
}

Result<void> HeightFile::addRows(std::vector<float>& heights, int count) {
    const sheets::QuietGdal quiet;
    const int columns = file_.dataset->GetRasterXSize();
    if (file_.dataset->GetRasterBand(1)->RasterIO(GF_Write, 0, row_, columns, count, heights.data(), columns, count,
                                                  GDT_Float32, 0, 0, nullptr) != CE_None) {
        return tl::unexpected(file_.noRoom(quiet));
    }
    row_ += count;
    return {};
}

}  // namespace crosstick::reading
