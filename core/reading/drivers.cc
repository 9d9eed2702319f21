#include "core/reading/drivers.h"

#include <array>
#include <cerrno>
#include <cmath>

#include <cpl_conv.h>
#include <cpl_error.h>
#include <cpl_vsi_virtual.h>
#include <gdal_frmts.h>
#include <gdal_priv.h>

#include "core/sheets/faults.h"
#include "core/sheets/file_report.h"
#include "core/worker/faults.h"

namespace crosstick::reading {
namespace {

constexpr GIntBig kCacheBytes = GIntBig{192} << 20;  // a row of tiles of the widest sheet, read and written
constexpr double kLargestBlock = 256.0 * (1 << 20);
constexpr const char* kPdfDots = "300";  // to the inch: what sheets are scanned and printed with

/// A file system on which nothing is: stands where GDAL would ask a network or unpack an archive.
class Nowhere final : public VSIFilesystemHandler {
  public:
    VSIVirtualHandle* Open(const char* /*name*/, const char* /*access*/, bool /*setError*/,
                           CSLConstList /*options*/) override {
        errno = EACCES;
        return nullptr;
    }
    int Stat(const char* /*name*/, VSIStatBufL* /*into*/, int /*flags*/) override {
        errno = EACCES;
        return -1;
    }
};

void closeTheNetwork() {
    for (const char* prefix : {"/vsicurl/",
                               "/vsicurl_streaming/",
                               "/vsis3/",
                               "/vsis3_streaming/",
                               "/vsigs/",
                               "/vsigs_streaming/",
                               "/vsiaz/",
                               "/vsiaz_streaming/",
                               "/vsiadls/",
                               "/vsioss/",
                               "/vsioss_streaming/",
                               "/vsiswift/",
                               "/vsiswift_streaming/",
                               "/vsihdfs/",
                               "/vsiwebhdfs/",
                               "/vsizip/",
                               "/vsitar/",
                               "/vsigzip/",
                               "/vsicrypt/",
                               "/vsistdin/"}) {
        VSIFileManager::InstallHandler(prefix, new Nowhere);  // the manager keeps it
    }
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

}  // namespace

void prepareDrivers() {
    GDALRegister_GTiff();
    GDALRegister_PNG();
    GDALRegister_JPEG();
    GDALRegister_BMP();
    GDALRegister_WEBP();
    GDALRegister_PDF();
    GDALRegister_DTED();
    GDALRegister_SRTMHGT();
    GDALRegister_AAIGrid();
    closeTheNetwork();
    GDALSetCacheMax64(kCacheBytes);
    // A world file or .prj beside a picture is looked for by its name; the folder is not listed, which may be slow.
    CPLSetConfigOption("GDAL_DISABLE_READDIR_ON_OPEN", "TRUE");
    // Lines that are stored as they are go straight to where they are wanted, not through the block cache.
    CPLSetConfigOption("GTIFF_DIRECT_IO", "YES");
    CPLSetConfigOption("GDAL_PDF_DPI", kPdfDots);
    // A progressive JPEG is held whole while it is read; the library gives up at 500 MB unless told otherwise.
    CPLSetConfigOption("JPEGMEM", "1500M");
    CPLSetConfigOption("GDAL_ALLOW_LARGE_LIBJPEG_MEM_ALLOCATION", "YES");
}

bool isBroken(const sheets::QuietGdal& quiet) {
    // Stray bytes between the parts of a JPEG do no harm, and many cameras leave some.
    for (const char* words : {"Premature end of JPEG", "premature end of data segment", "bad Huffman code"}) {
        if (quiet.everything().find(words) != std::string::npos) {
            return true;
        }
    }
    return false;
}

Error damage(const sheets::QuietGdal& quiet, const std::filesystem::path& file) {
    if (CPLGetLastErrorNo() == CPLE_OutOfMemory) {
        return Error{worker::kTooMuchMemory, {{"file", file.string()}}};
    }
    return Error{sheets::kDamaged, {{"file", file.string()}, {"why", quiet.lastWords(file)}}};
}

Result<sheets::DatasetPtr> openForeign(const std::filesystem::path& file) {
    std::error_code ignored;
    if (!std::filesystem::is_regular_file(file, ignored)) {
        return fail(sheets::kFileMissing, {{"file", file.string()}});
    }
    const sheets::QuietGdal quiet;
    sheets::DatasetPtr dataset(GDALDataset::FromHandle(
        GDALOpenEx(file.c_str(), GDAL_OF_RASTER | GDAL_OF_READONLY, nullptr, nullptr, nullptr)));
    if (!dataset) {
        return fail(sheets::kNotARaster, {{"file", file.string()}, {"why", quiet.lastWords(file)}});
    }
    const double columns = dataset->GetRasterXSize();
    const double rows = dataset->GetRasterYSize();
    if (columns > sheets::kLongestSide || rows > sheets::kLongestSide || columns * rows > sheets::kMostPixels) {
        return fail(sheets::kTooLarge, {{"file", file.string()}, {"columns", columns}, {"rows", rows}});
    }
    if (dataset->GetRasterCount() < 1) {
        return fail(sheets::kNotARaster, {{"file", file.string()}, {"why", std::string("it has no bands")}});
    }
    if (const double bytes = blockBytes(*dataset); bytes > kLargestBlock) {
        return fail(sheets::kBlockTooLarge, {{"file", file.string()}, {"megabytes", std::round(bytes / (1 << 20))}});
    }
    return dataset;
}

}  // namespace crosstick::reading
