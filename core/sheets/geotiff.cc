#include "core/sheets/geotiff.h"

#include <array>
#include <mutex>

#include <cpl_conv.h>
#include <cpl_error.h>
#include <gdal_frmts.h>
#include <gdal_priv.h>
#include <ogr_spatialref.h>

#include "core/sheets/faults.h"

namespace crosstick::sheets {
namespace {

constexpr int kLongestSide = 100000;
constexpr double kMostPixels = 4e9;
constexpr GIntBig kCacheBytes = GIntBig{128} << 20;

void registerOnce() {
    static std::once_flag once;
    std::call_once(once, [] {
        GDALRegister_GTiff();
        GDALSetCacheMax64(kCacheBytes);                              // GDAL's own default is 5 % of the machine
        CPLSetConfigOption("GDAL_PAM_ENABLED", "NO");                // never a file beside the user's
        CPLSetConfigOption("GDAL_DISABLE_READDIR_ON_OPEN", "TRUE");  // never a look at what lies beside it
    });
}

void hearNothing(CPLErr /*kind*/, CPLErrorNum /*number*/, const char* /*words*/) {}

}  // namespace

void CloseDataset::operator()(GDALDataset* dataset) const {
    GDALClose(GDALDataset::ToHandle(dataset));
}

QuietGdal::QuietGdal() {
    CPLPushErrorHandler(hearNothing);
    CPLErrorReset();
}
QuietGdal::~QuietGdal() {
    CPLPopErrorHandler();
}
std::string QuietGdal::lastWords() const {
    return CPLGetLastErrorMsg();
}

Result<DatasetPtr> openGeoTiff(const std::filesystem::path& file) {
    registerOnce();
    std::error_code ignored;
    if (!std::filesystem::is_regular_file(file, ignored)) {
        return fail(kFileMissing, {{"file", file.string()}});
    }
    const QuietGdal quiet;
    const std::array<const char*, 2> drivers{"GTiff", nullptr};
    DatasetPtr dataset(GDALDataset::FromHandle(
        GDALOpenEx(file.c_str(), GDAL_OF_RASTER | GDAL_OF_READONLY, drivers.data(), nullptr, nullptr)));
    if (!dataset) {
        return fail(kNotARaster, {{"file", file.string()}, {"why", quiet.lastWords()}});
    }
    const double columns = dataset->GetRasterXSize();
    const double rows = dataset->GetRasterYSize();
    if (columns > kLongestSide || rows > kLongestSide || columns * rows > kMostPixels) {
        return fail(kTooLarge, {{"file", file.string()}, {"columns", columns}, {"rows", rows}});
    }
    if (dataset->GetRasterCount() < 1) {
        return fail(kBands, {{"file", file.string()}, {"count", std::int64_t{0}}});
    }
    return dataset;
}

std::string crsText(GDALDataset& dataset) {
    const OGRSpatialReference* reference = dataset.GetSpatialRef();
    if (reference == nullptr || reference->IsEmpty() || reference->IsLocal() != 0) {
        return {};
    }
    OGRSpatialReference own(*reference);
    if (own.IsCompound() != 0) {
        own.StripVertical();
    }
    const char* authority = own.GetAuthorityName(nullptr);
    const char* code = own.GetAuthorityCode(nullptr);
    if (authority != nullptr && code != nullptr) {
        return std::string(authority) + ":" + code;
    }
    char* wkt = nullptr;
    const std::array<const char*, 2> options{"FORMAT=WKT2_2019", nullptr};
    own.exportToWkt(&wkt, options.data());
    const std::string text = wkt == nullptr ? std::string{} : std::string(wkt);
    CPLFree(wkt);
    return text;
}

}  // namespace crosstick::sheets
