#include "core/sheets/geotiff.h"

#include <array>
#include <cmath>
#include <mutex>

#include <cpl_conv.h>
#include <cpl_error.h>
#include <gdal_frmts.h>
#include <gdal_priv.h>
#include <ogr_spatialref.h>

#include "core/geodesy/faults.h"
#include "core/sheets/faults.h"

namespace crosstick::sheets {
namespace {

constexpr int kLongestSide = 100000;
constexpr double kMostPixels = 4e9;
constexpr GIntBig kCacheBytes = GIntBig{128} << 20;
constexpr double kLargestBlock = 256.0 * (1 << 20);
constexpr int kSureMatch = 90;  // PROJ's per cent: same definition, at most another name

void registerOnce() {
    static std::once_flag once;
    std::call_once(once, [] {
        GDALRegister_GTiff();
        GDALSetCacheMax64(kCacheBytes);                              // GDAL's own default is 5 % of the machine
        CPLSetConfigOption("GDAL_PAM_ENABLED", "NO");                // never a file beside the user's
        CPLSetConfigOption("GDAL_DISABLE_READDIR_ON_OPEN", "TRUE");  // never a look at what lies beside it
    });
}

/// What GDAL must hold to read one pixel: a whole block, with all bands where they lie side by side.
double blockBytes(GDALDataset& dataset) {
    GDALRasterBand& band = *dataset.GetRasterBand(1);
    int columns = 0;
    int rows = 0;
    band.GetBlockSize(&columns, &rows);
    const char* order = dataset.GetMetadataItem("INTERLEAVE", "IMAGE_STRUCTURE");
    const int bands = order != nullptr && EQUAL(order, "PIXEL") ? dataset.GetRasterCount() : 1;
    return static_cast<double>(columns) * rows * bands * GDALGetDataTypeSizeBytes(band.GetRasterDataType());
}

/// The "EPSG:n" that PROJ finds for a definition without a number, where it is sure.
std::string identified(const OGRSpatialReference& reference) {
    int count = 0;
    int* confidences = nullptr;
    OGRSpatialReferenceH* matches = OSRFindMatches(
        OGRSpatialReference::ToHandle(const_cast<OGRSpatialReference*>(&reference)), nullptr, &count, &confidences);
    std::string found;
    if (count > 0 && confidences[0] >= kSureMatch && (count == 1 || confidences[1] < confidences[0])) {
        const OGRSpatialReference* best = OGRSpatialReference::FromHandle(matches[0]);
        const char* authority = best->GetAuthorityName(nullptr);
        const char* code = best->GetAuthorityCode(nullptr);
        if (authority != nullptr && code != nullptr && EQUAL(authority, "EPSG")) {
            found = std::string("EPSG:") + code;
        }
    }
    OSRFreeSRSArray(matches);
    CPLFree(confidences);
    return found;
}

void hearNothing(CPLErr /*kind*/, CPLErrorNum /*number*/, const char* /*words*/) {}

}  // namespace

void CloseDataset::operator()(GDALDataset* dataset) const {
    const QuietGdal quiet;  // a damaged file is complained of once more when it is closed
    GDALClose(GDALDataset::ToHandle(dataset));
}

QuietGdal::QuietGdal() {
    CPLPushErrorHandler(hearNothing);
    CPLErrorReset();
}
QuietGdal::~QuietGdal() {
    CPLPopErrorHandler();
}
std::string QuietGdal::lastWords(const std::filesystem::path& file) const {
    std::string words = CPLGetLastErrorMsg();
    if (words.empty() || words.find("not recognized") != std::string::npos) {
        return "its bytes are of another kind";
    }
    // The library begins with the file and its own function's name; the error names the file already.
    for (const std::string& start : {file.string() + ", ", file.string() + ": ", file.filename().string() + ": "}) {
        if (words.starts_with(start)) {
            words.erase(0, start.size());
        }
    }
    if (const auto colon = words.find(':'); words.starts_with("TIFF") && colon != std::string::npos) {
        words.erase(0, colon + 1);
        words.erase(0, words.find_first_not_of(' '));
    }
    while (words.ends_with('.')) {
        words.pop_back();
    }
    return words;
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
        return fail(kNotARaster, {{"file", file.string()}, {"why", quiet.lastWords(file)}});
    }
    const double columns = dataset->GetRasterXSize();
    const double rows = dataset->GetRasterYSize();
    if (columns > kLongestSide || rows > kLongestSide || columns * rows > kMostPixels) {
        return fail(kTooLarge, {{"file", file.string()}, {"columns", columns}, {"rows", rows}});
    }
    if (dataset->GetRasterCount() < 1) {
        return fail(kNotARaster, {{"file", file.string()}, {"why", std::string("it has no bands")}});
    }
    if (const double bytes = blockBytes(*dataset); bytes > kLargestBlock) {
        return fail(kBlockTooLarge, {{"file", file.string()}, {"megabytes", std::round(bytes / (1 << 20))}});
    }
    return dataset;
}

Error crsFault(const Error& fault, const std::filesystem::path& file, const std::string& crs) {
    if (fault.fault != geodesy::kCrsNotProjected) {
        return Error(fault).with("file", file.string());
    }
    return Error{kCrsGeographic, {{"file", file.string()}, {"crs", crs.substr(0, 60)}}};
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
    if (std::string number = identified(own); !number.empty()) {
        return number;
    }
    char* wkt = nullptr;
    const std::array<const char*, 2> options{"FORMAT=WKT2_2019", nullptr};
    own.exportToWkt(&wkt, options.data());
    std::string text = wkt == nullptr ? std::string{} : std::string(wkt);
    CPLFree(wkt);
    return text;
}

}  // namespace crosstick::sheets
