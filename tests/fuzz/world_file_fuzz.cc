// A world file beside a picture: its numbers place it, or it has no place; never anything else.
#include <cmath>
#include <cstdlib>
#include <filesystem>
#include <fstream>
#include <string>

#include <gdal_priv.h>
#include <unistd.h>

#include "core/reading/drivers.h"
#include "core/reading/inspection.h"

namespace {

/// A folder with one small picture in it.
const std::filesystem::path& folder() {
    static const std::filesystem::path kFolder = [] {
        crosstick::reading::prepareDrivers();
        auto made = std::filesystem::temp_directory_path() / ("crosstick-world-" + std::to_string(::getpid()));
        std::filesystem::create_directories(made);
        GDALDriver* driver = GetGDALDriverManager()->GetDriverByName("BMP");
        GDALDataset* picture = driver->Create((made / "a.bmp").c_str(), 4, 4, 1, GDT_Byte, nullptr);
        picture->GetRasterBand(1)->Fill(7);  // else its rows are missing in the file
        GDALClose(GDALDataset::ToHandle(picture));
        return made;
    }();
    return kFolder;
}

}  // namespace

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
    std::ofstream(folder() / "a.wld", std::ios::binary)
        .write(reinterpret_cast<const char*>(data), static_cast<std::streamsize>(size));
    const auto report = crosstick::reading::inspect(folder() / "a.bmp");
    if (!report) {
        std::abort();  // the picture is sound, whatever lies beside it
    }
    for (const double number : report->placement.value_or(std::array<double, 6>{})) {
        if (!std::isfinite(number)) {
            std::abort();
        }
    }
    return 0;
}
