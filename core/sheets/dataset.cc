#include "core/sheets/dataset.h"

#include <array>
#include <mutex>

#include <cpl_conv.h>
#include <cpl_error.h>
#include <gdal_frmts.h>
#include <gdal_priv.h>

#include "core/sheets/faults.h"

namespace crosstick::sheets {
namespace {

constexpr GIntBig kCacheBytes = GIntBig{128} << 20;

void registerOnce() {
    static std::once_flag once;
    std::call_once(once, [] {
        GDALRegister_GTiff();
        GDALSetCacheMax64(kCacheBytes);  // GDAL's own default is 5 % of the machine
        CPLSetConfigOption("GDAL_PAM_ENABLED", "NO");
        CPLSetConfigOption("GDAL_DISABLE_READDIR_ON_OPEN", "EMPTY_DIR");  // never a look at what lies beside it
    });
}

constexpr std::size_t kEnough = 4000;

void hear(CPLErr /*kind*/, CPLErrorNum /*number*/, const char* words) {
    auto* said = static_cast<std::string*>(CPLGetErrorHandlerUserData());
    if (said->size() < kEnough) {
        *said += std::string(words) + '\n';
    }
}

}  // namespace

void CloseDataset::operator()(GDALDataset* dataset) const {
    const QuietGdal quiet;  // a damaged file is complained of once more when it is closed
    GDALClose(GDALDataset::ToHandle(dataset));
}

QuietGdal::QuietGdal() {
    CPLPushErrorHandlerEx(hear, &said_);
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
    while (words.ends_with('.') || words.ends_with('\n')) {
        words.pop_back();
    }
    return words;
}

Result<DatasetPtr> openOwn(const std::filesystem::path& file) {
    registerOnce();
    const QuietGdal quiet;
    const std::array<const char*, 2> drivers{"GTiff", nullptr};
    DatasetPtr dataset(GDALDataset::FromHandle(
        GDALOpenEx(file.c_str(), GDAL_OF_RASTER | GDAL_OF_READONLY, drivers.data(), nullptr, nullptr)));
    if (!dataset || dataset->GetRasterCount() < 1) {
        return fail(kDamaged, {{"file", file.string()}, {"why", quiet.lastWords(file)}});
    }
    return dataset;
}

}  // namespace crosstick::sheets
