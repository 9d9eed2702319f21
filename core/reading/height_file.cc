#include "core/reading/height_file.h"

#include <limits>

#include <cpl_error.h>
#include <cpl_string.h>
#include <gdal_priv.h>

#include "core/sheets/faults.h"

namespace crosstick::reading {
namespace {

Error noRoom(const sheets::QuietGdal& quiet, const std::filesystem::path& out) {
    return Error{sheets::kNoRoom, {{"file", out.string()}, {"why", quiet.lastWords(out)}}};
}

}  // namespace

Result<HeightFile> HeightFile::create(const std::filesystem::path& out, int columns, int rows, const std::string& crs,
                                      std::array<double, 6> placement) {
    const sheets::QuietGdal quiet;
    CPLStringList options;
    options.SetNameValue("BIGTIFF", "IF_SAFER");
    GDALDriver* driver = GetGDALDriverManager()->GetDriverByName("GTiff");
    HeightFile file;
    file.out_ = out;
    file.dataset_.reset(driver->Create(out.c_str(), columns, rows, 1, GDT_Float32, options.List()));
    if (!file.dataset_) {
        return tl::unexpected(noRoom(quiet, out));
    }
    file.dataset_->SetGeoTransform(placement.data());
    file.dataset_->SetMetadataItem("CRS", crs.c_str(), sheets::kOwnDomain);
    file.dataset_->GetRasterBand(1)->SetNoDataValue(std::numeric_limits<double>::quiet_NaN());
    return file;
}

Result<void> HeightFile::addRows(std::vector<float>& heights, int count) {
    const sheets::QuietGdal quiet;
    const int columns = dataset_->GetRasterXSize();
    if (dataset_->GetRasterBand(1)->RasterIO(GF_Write, 0, row_, columns, count, heights.data(), columns, count,
                                             GDT_Float32, 0, 0, nullptr) != CE_None) {
        return tl::unexpected(noRoom(quiet, out_));
    }
    row_ += count;
    return {};
}

Result<void> HeightFile::finish() && {
    const sheets::QuietGdal quiet;
    dataset_->FlushCache(true);
    if (CPLGetLastErrorType() >= CE_Failure) {
        return tl::unexpected(noRoom(quiet, out_));
    }
    dataset_.reset();
    return {};
}

}  // namespace crosstick::reading
