#include <algorithm>
#include <array>

#include <gdal_frmts.h>
#include <gdal_priv.h>
#include <ogr_spatialref.h>

#include "sample-data/sheet/canvas.h"
#include "sample-data/sheet/palette.h"
#include "sample-data/sheet/sheet.h"

namespace crosstick::demo {
namespace {

struct CloseGdal {
    void operator()(GDALDataset* dataset) const { GDALClose(GDALDataset::ToHandle(dataset)); }
};
using DatasetPtr = std::unique_ptr<GDALDataset, CloseGdal>;

DatasetPtr createTiff(const std::filesystem::path& file, int columns, int rows, GDALDataType type,
                      const char* const* options) {
    GDALRegister_GTiff();
    GDALDriver* driver = GetGDALDriverManager()->GetDriverByName("GTiff");
    DatasetPtr dataset(driver == nullptr
                           ? nullptr
                           : driver->Create(file.c_str(), columns, rows, 1, type, const_cast<char**>(options)));
    if (dataset) {
        OGRSpatialReference utm;
        utm.importFromEPSG(32625);
        dataset->SetSpatialRef(&utm);
    }
    return dataset;
}

void setFacts(GDALDataset& dataset) {
    struct Fact {
        const char *key, *value;
    };
    // Magnetic figures of the sheet's collar: G-M angle at its centre for the middle of March 2027.
    constexpr std::array kFacts{Fact{"SERIES", "ISL 25"},     Fact{"NAME", "ULMERAY SOUTH"},
                                Fact{"NUMBER", "2"},          Fact{"EDITION", "3"},
                                Fact{"SCALE", "25000"},       Fact{"DATUM", "WGS 84"},
                                Fact{"GM_ANGLE_DEG", "-11"},  Fact{"GM_DATE", "2027-03-13"},
                                Fact{"GM_YEARLY_DEG", "0.2"}, Fact{"ELEVATION", "elevation.tif"}};
    for (const Fact& fact : kFacts) {
        dataset.SetMetadataItem(fact.key, fact.value, "CROSSTICK");
    }
    dataset.SetMetadataItem("TIFFTAG_XRESOLUTION", "300");
    dataset.SetMetadataItem("TIFFTAG_YRESOLUTION", "300");
    dataset.SetMetadataItem("TIFFTAG_RESOLUTIONUNIT", "2");
}

tl::unexpected<Error> cannotWrite(const std::filesystem::path& file) {
    return fail(kCannotWrite, {{"file", file.string()}});
}

}  // namespace

Result<void> writeSheet(const QImage& picture, const std::filesystem::path& file) {
    const auto inks = sheetPalette();
    InkFinder finder(inks);
    constexpr std::array<const char*, 5> kOptions{"TILED=YES", "COMPRESS=DEFLATE", "ZLEVEL=6", "PHOTOMETRIC=PALETTE",
                                                  nullptr};
    DatasetPtr dataset = createTiff(file, picture.width(), picture.height(), GDT_Byte, kOptions.data());
    if (!dataset) {
        return cannotWrite(file);
    }
    constexpr double kPixel = SheetPaper::kMetresPerMm / SheetPaper::kDotsPerMm;
    std::array<double, 6> placement{SheetPaper::kCorner.east, kPixel, 0, SheetPaper::kCorner.north, 0, -kPixel};
    dataset->SetGeoTransform(placement.data());
    setFacts(*dataset);
    GDALColorTable table;
    for (std::size_t n = 0; n < inks.size(); ++n) {
        const GDALColorEntry entry{static_cast<short>(qRed(inks[n])), static_cast<short>(qGreen(inks[n])),
                                   static_cast<short>(qBlue(inks[n])), 255};
        table.SetColorEntry(static_cast<int>(n), &entry);
    }
    GDALRasterBand& band = *dataset->GetRasterBand(1);
    band.SetColorTable(&table);
    std::vector<std::uint8_t> row(static_cast<std::size_t>(picture.width()));
    for (int y = 0; y < picture.height(); ++y) {
        const auto* line = reinterpret_cast<const QRgb*>(picture.constScanLine(y));
        std::transform(line, line + picture.width(), row.begin(), [&](QRgb rgb) { return finder.inkFor(rgb); });
        if (band.RasterIO(GF_Write, 0, y, picture.width(), 1, row.data(), picture.width(), 1, GDT_Byte, 0, 0,
                          nullptr) != CE_None) {
            return cannotWrite(file);
        }
    }
    dataset->FlushCache();
    return {};
}

Result<void> writeElevation(const Field<float>& heights, const std::filesystem::path& file) {
    const Lattice& lattice = heights.lattice;
    constexpr std::array<const char*, 5> kOptions{"TILED=YES", "COMPRESS=DEFLATE", "PREDICTOR=3", "ZLEVEL=6", nullptr};
    DatasetPtr dataset = createTiff(file, lattice.columns, lattice.rows, GDT_Float32, kOptions.data());
    if (!dataset) {
        return cannotWrite(file);
    }
    const double half = lattice.cell / 2;
    std::array<double, 6> placement{
        lattice.first.east - half, lattice.cell, 0, lattice.first.north + half, 0, -lattice.cell};
    dataset->SetGeoTransform(placement.data());
    dataset->GetRasterBand(1)->SetUnitType("m");
    std::vector<float> values = heights.values;
    if (dataset->GetRasterBand(1)->RasterIO(GF_Write, 0, 0, lattice.columns, lattice.rows, values.data(),
                                            lattice.columns, lattice.rows, GDT_Float32, 0, 0, nullptr) != CE_None) {
        return cannotWrite(file);
    }
    dataset->FlushCache();
    return {};
}

}  // namespace crosstick::demo
