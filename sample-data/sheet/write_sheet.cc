#include <algorithm>
#include <array>
#include <numeric>

#include <gdal_frmts.h>
#include <gdal_priv.h>
#include <ogr_spatialref.h>

#include "sample-data/sheet/canvas.h"
#include "sample-data/sheet/sheet.h"

namespace crosstick::demo {
namespace {

constexpr std::size_t kInks = 256;
constexpr std::size_t kCells = 32 * 32 * 32;  // five bits a colour

std::size_t cellOf(QRgb rgb) {
    return (static_cast<std::size_t>(qRed(rgb)) >> 3U) << 10U | (static_cast<std::size_t>(qGreen(rgb)) >> 3U) << 5U |
           static_cast<std::size_t>(qBlue(rgb)) >> 3U;
}

struct Sum {
    std::uint64_t red = 0, green = 0, blue = 0, count = 0;
    [[nodiscard]] QRgb mean() const {
        return qRgb(static_cast<int>(red / count), static_cast<int>(green / count), static_cast<int>(blue / count));
    }
};

std::vector<Sum> countColours(const QImage& picture) {
    std::vector<Sum> cells(kCells);
    for (int y = 0; y < picture.height(); ++y) {
        const auto* line = reinterpret_cast<const QRgb*>(picture.constScanLine(y));
        for (int x = 0; x < picture.width(); ++x) {
            Sum& cell = cells[cellOf(line[x])];
            cell.red += static_cast<std::uint64_t>(qRed(line[x]));
            cell.green += static_cast<std::uint64_t>(qGreen(line[x]));
            cell.blue += static_cast<std::uint64_t>(qBlue(line[x]));
            ++cell.count;
        }
    }
    return cells;
}

/// The flat inks as they are, then the commonest blends.
std::vector<QRgb> inksFor(const std::vector<Sum>& cells) {
    std::vector<QRgb> inks;
    for (const QColor& colour :
         {ink::kPaper, ink::kLand, ink::kSea, ink::kWater, ink::kWaterName, ink::kContour, ink::kScree, ink::kWood,
          ink::kTree, ink::kWoodName, ink::kSand, ink::kRoadA, ink::kRoadB, ink::kBuilding, ink::kGrid, ink::kBlack}) {
        inks.push_back(colour.rgb());
    }
    std::vector<std::size_t> order(kCells);
    std::iota(order.begin(), order.end(), 0);
    std::stable_sort(order.begin(), order.end(),
                     [&](std::size_t a, std::size_t b) { return cells[a].count > cells[b].count; });
    for (const std::size_t cell : order) {
        if (inks.size() == kInks || cells[cell].count == 0) {
            break;
        }
        inks.push_back(cells[cell].mean());
    }
    return inks;
}

std::vector<std::uint8_t> nearestInks(const std::vector<Sum>& cells, const std::vector<QRgb>& inks) {
    std::vector<std::uint8_t> nearest(kCells);
    for (std::size_t cell = 0; cell < kCells; ++cell) {
        if (cells[cell].count == 0) {
            continue;
        }
        const QRgb wanted = cells[cell].mean();
        int least = 1 << 30;
        for (std::size_t n = 0; n < inks.size(); ++n) {
            const int r = qRed(inks[n]) - qRed(wanted);
            const int g = qGreen(inks[n]) - qGreen(wanted);
            const int b = qBlue(inks[n]) - qBlue(wanted);
            const int away = 2 * r * r + 4 * g * g + b * b;
            if (away < least) {
                least = away;
                nearest[cell] = static_cast<std::uint8_t>(n);
            }
        }
    }
    return nearest;
}

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
    const auto cells = countColours(picture);
    const auto inks = inksFor(cells);
    const auto nearest = nearestInks(cells, inks);
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
        std::transform(line, line + picture.width(), row.begin(), [&](QRgb rgb) { return nearest[cellOf(rgb)]; });
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
    std::vector<float> values = heights.values;
    if (dataset->GetRasterBand(1)->RasterIO(GF_Write, 0, 0, lattice.columns, lattice.rows, values.data(),
                                            lattice.columns, lattice.rows, GDT_Float32, 0, 0, nullptr) != CE_None) {
        return cannotWrite(file);
    }
    dataset->FlushCache();
    return {};
}

}  // namespace crosstick::demo
