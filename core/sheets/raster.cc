#include <algorithm>
#include <array>
#include <cmath>

#include <gdal_priv.h>

#include "core/sheets/averaging.h"
#include "core/sheets/faults.h"
#include "core/sheets/geotiff.h"
#include "core/sheets/sheet_file.h"
#include "core/units/number_text.h"

namespace crosstick::sheets {
namespace {

/// How the bands make a colour.
enum class Kind { Palette, Grey, GreyAlpha, Rgb, Rgba };

using Band = std::vector<std::uint8_t>;

constexpr int kStripPixels = 1 << 23;  // 32 MB of colours

std::uint32_t onWhite(std::uint32_t red, std::uint32_t green, std::uint32_t blue, std::uint32_t alpha) {
    const auto mix = [&](std::uint32_t c) { return (c * alpha + 255U * (255U - alpha) + 127U) / 255U; };
    return 0xff000000U | (mix(red) << 16U) | (mix(green) << 8U) | mix(blue);
}

/// The values of a band that stand for black and for white.
struct Tones {
    double black = 0, white = 255;
    [[nodiscard]] bool arePlain() const { return black == 0 && white == 255; }
};

/// The raster at its own size, or one of the file's reduced copies.
struct Level {
    int overview = -1;  ///< -1: the raster itself
    int columns = 0, rows = 0;
};

}  // namespace

struct Raster::Parts {
    std::filesystem::path file;
    DatasetPtr dataset;
    Kind kind = Kind::Rgb;
    std::array<std::uint32_t, 256> palette{};
    Tones tones;

    [[nodiscard]] Level levelFor(double columnsToOne, double rowsToOne) const;
    [[nodiscard]] Result<Pixels> readExact(const Level& level, PixelWindow window) const;
    [[nodiscard]] Result<Band> band(int number, const Level& level, PixelWindow window) const;
};

namespace {

/// Nothing where the bands are no colours that we know (CMYK, Lab, a palette of more than 256 inks, complex numbers).
std::optional<Kind> kindOf(GDALDataset& dataset) {
    GDALRasterBand& first = *dataset.GetRasterBand(1);
    const GDALColorInterp meaning = first.GetColorInterpretation();
    const char* space = dataset.GetMetadataItem("SOURCE_COLOR_SPACE", "IMAGE_STRUCTURE");
    const bool foreign = space != nullptr && (EQUAL(space, "CMYK") || EQUAL(space, "CIELAB"));
    if (foreign || meaning == GCI_CyanBand || GDALDataTypeIsComplex(first.GetRasterDataType()) != 0) {
        return std::nullopt;
    }
    const int bands = dataset.GetRasterCount();
    if (first.GetColorTable() != nullptr) {
        return first.GetRasterDataType() == GDT_Byte ? std::optional(Kind::Palette) : std::nullopt;
    }
    if (bands == 1) {
        return Kind::Grey;
    }
    if (bands == 2) {
        return Kind::GreyAlpha;
    }
    const bool alpha = bands > 3 && dataset.GetRasterBand(4)->GetColorInterpretation() == GCI_AlphaBand;
    return alpha ? Kind::Rgba : Kind::Rgb;
}

int bandsOf(Kind kind) {
    switch (kind) {
        case Kind::Palette:
        case Kind::Grey:
            return 1;
        case Kind::GreyAlpha:
            return 2;
        case Kind::Rgb:
            return 3;
        case Kind::Rgba:
            return 4;
    }
    return 1;
}

std::array<std::uint32_t, 256> paletteOf(GDALRasterBand& band) {
    std::array<std::uint32_t, 256> palette{};
    palette.fill(0xffffffffU);
    const GDALColorTable* table = band.GetColorTable();
    for (int n = 0; table != nullptr && n < std::min(256, table->GetColorEntryCount()); ++n) {
        const GDALColorEntry* c = table->GetColorEntry(n);
        const auto part = [](short value) { return static_cast<std::uint32_t>(std::clamp<short>(value, 0, 255)); };
        palette[static_cast<std::size_t>(n)] = onWhite(part(c->c1), part(c->c2), part(c->c3), part(c->c4));
    }
    // A TIFF's palette has no transparency of its own: the ink that stands for "nothing here" is the clear one.
    int hasNone = 0;
    const double none = band.GetNoDataValue(&hasNone);
    if (hasNone != 0 && none >= 0 && none <= 255) {
        palette[static_cast<std::size_t>(none)] = 0xffffffffU;
    }
    return palette;
}

/// By the bits that the file declares, and whether its zero is white; other types span what they hold by their own
/// word.
Tones tonesOf(GDALRasterBand& band) {
    Tones tones;
    const GDALDataType type = band.GetRasterDataType();
    const char* bits = band.GetMetadataItem("NBITS", "IMAGE_STRUCTURE");
    const auto declared = bits == nullptr ? std::nullopt : parseNumber(bits);
    if (declared && *declared >= 1 && *declared <= 16) {
        tones.white = std::exp2(*declared) - 1;
    } else if (type == GDT_UInt16) {
        tones.white = 65535;
    } else if (type != GDT_Byte) {
        tones = {band.GetMinimum(), band.GetMaximum()};
    }
    const char* inverted = band.GetMetadataItem("MINISWHITE", "IMAGE_STRUCTURE");
    if (inverted != nullptr && EQUAL(inverted, "YES")) {
        std::swap(tones.black, tones.white);
    }
    if (!(std::abs(tones.white - tones.black) > 0)) {
        tones.white = tones.black + 1;
    }
    return tones;
}

}  // namespace

Raster::Raster(std::unique_ptr<Parts> parts) : parts_(std::move(parts)) {}
Raster::Raster(Raster&&) noexcept = default;
Raster& Raster::operator=(Raster&&) noexcept = default;
Raster::~Raster() = default;

Result<Raster> Raster::open(const std::filesystem::path& file) {
    auto dataset = openGeoTiff(file);
    if (!dataset) {
        return tl::unexpected(dataset.error());
    }
    const QuietGdal quiet;
    const auto kind = kindOf(**dataset);
    if (!kind) {
        return fail(kColours, {{"file", file.string()}});
    }
    auto parts = std::make_unique<Parts>();
    parts->file = file;
    parts->dataset = std::move(*dataset);
    parts->kind = *kind;
    GDALRasterBand& first = *parts->dataset->GetRasterBand(1);
    if (*kind == Kind::Palette) {
        parts->palette = paletteOf(first);
    } else {
        parts->tones = tonesOf(first);
    }
    return Raster(std::move(parts));
}

int Raster::columns() const {
    return parts_->dataset->GetRasterXSize();
}
int Raster::rows() const {
    return parts_->dataset->GetRasterYSize();
}

// Reduced copies of palette files are made by picking pixels, which drops thin contours: they are never used. Those of
// grey and colour files are averages in any file worth the name, and save reading the whole sheet for a small picture.
Level Raster::Parts::levelFor(double columnsToOne, double rowsToOne) const {
    const QuietGdal quiet;
    GDALRasterBand& band = *dataset->GetRasterBand(1);
    Level best{-1, dataset->GetRasterXSize(), dataset->GetRasterYSize()};
    if (kind == Kind::Palette) {
        return best;
    }
    for (int n = 0; n < band.GetOverviewCount(); ++n) {
        GDALRasterBand* overview = band.GetOverview(n);
        if (overview == nullptr || overview->GetXSize() >= best.columns) {
            continue;
        }
        const double across = static_cast<double>(dataset->GetRasterXSize()) / overview->GetXSize();
        const double down = static_cast<double>(dataset->GetRasterYSize()) / overview->GetYSize();
        if (across <= columnsToOne * 1.001 && down <= rowsToOne * 1.001) {
            best = {n, overview->GetXSize(), overview->GetYSize()};
        }
    }
    return best;
}

Result<Band> Raster::Parts::band(int number, const Level& level, PixelWindow w) const {
    const QuietGdal quiet;
    GDALRasterBand* own = dataset->GetRasterBand(number);
    GDALRasterBand* source = level.overview < 0 ? own : own->GetOverview(level.overview);
    const auto count = static_cast<std::size_t>(w.columns) * static_cast<std::size_t>(w.rows);
    const auto read = [&](void* into, GDALDataType type) {
        return source != nullptr && source->RasterIO(GF_Read, w.column, w.row, w.columns, w.rows, into, w.columns,
                                                     w.rows, type, 0, 0, nullptr) == CE_None;
    };
    const auto damaged = [&] {
        return fail(kDamaged, {{"file", file.string()},
                               {"why", quiet.lastWords(file)},
                               {"column", std::int64_t{w.column}},
                               {"row", std::int64_t{w.row}}});
    };
    Band bytes(count);
    if (own->GetRasterDataType() == GDT_Byte && tones.arePlain()) {
        return read(bytes.data(), GDT_Byte) ? Result<Band>(std::move(bytes)) : damaged();
    }
    std::vector<float> values(count);
    if (!read(values.data(), GDT_Float32)) {
        return damaged();
    }
    std::transform(values.begin(), values.end(), bytes.begin(), [&](float value) {
        const double share = (static_cast<double>(value) - tones.black) / (tones.white - tones.black);
        return std::isfinite(share) ? static_cast<std::uint8_t>(std::lround(std::clamp(share, 0.0, 1.0) * 255))
                                    : std::uint8_t{255};
    });
    return bytes;
}

Result<Pixels> Raster::Parts::readExact(const Level& level, PixelWindow w) const {
    std::vector<Band> bands;
    for (int number = 1; number <= bandsOf(kind); ++number) {
        auto one = band(number, level, w);
        if (!one) {
            return tl::unexpected(one.error());
        }
        bands.push_back(std::move(*one));
    }
    Pixels pixels{w.columns, w.rows, std::vector<std::uint32_t>(bands[0].size())};
    for (std::size_t n = 0; n < pixels.rgb.size(); ++n) {
        const std::uint32_t c = bands[0][n];
        switch (kind) {
            case Kind::Palette:
                pixels.rgb[n] = palette[c];
                break;
            case Kind::Grey:
                pixels.rgb[n] = onWhite(c, c, c, 255);
                break;
            case Kind::GreyAlpha:
                pixels.rgb[n] = onWhite(c, c, c, bands[1][n]);
                break;
            case Kind::Rgb:
                pixels.rgb[n] = onWhite(c, bands[1][n], bands[2][n], 255);
                break;
            case Kind::Rgba:
                pixels.rgb[n] = onWhite(c, bands[1][n], bands[2][n], bands[3][n]);
                break;
        }
    }
    return pixels;
}

// Strips of bounded height are read and averaged in RGB, after the palette has been looked up.
Result<Pixels> Raster::read(PixelWindow window, int columns, int rows) const {
    if (columns < 1 || rows < 1) {
        return Pixels{};
    }
    Pixels target{columns, rows,
                  std::vector<std::uint32_t>(static_cast<std::size_t>(columns) * static_cast<std::size_t>(rows), 0)};
    const double perColumn = static_cast<double>(window.columns) / columns;
    const double perRow = static_cast<double>(window.rows) / rows;
    const Level level = parts_->levelFor(perColumn, perRow);
    const double across = static_cast<double>(level.columns) / this->columns();
    const double down = static_cast<double>(level.rows) / this->rows();
    const Steps columnSteps{window.column * across, perColumn * across};
    const Steps rowSteps{window.row * down, perRow * down};
    const int left = std::max(0, columnSteps.from(0));
    const int right = std::min(level.columns, columnSteps.to(columns - 1));
    if (left >= right) {
        return target;
    }
    const double stripRows = std::max(1, kStripPixels / (right - left));
    for (int y = 0; y < rows;) {
        const int yEnd = std::min(rows, y + std::max(1, static_cast<int>(stripRows / std::max(1.0, rowSteps.each))));
        const int top = std::max(0, rowSteps.from(y));
        const int bottom = std::min(level.rows, rowSteps.to(yEnd - 1));
        if (top < bottom) {
            auto exact = parts_->readExact(level, {left, top, right - left, bottom - top});
            if (!exact) {
                return tl::unexpected(exact.error());
            }
            averageInto({left, top, std::move(*exact)}, columnSteps, rowSteps, y, yEnd, target);
        }
        y = yEnd;
    }
    return target;
}

}  // namespace crosstick::sheets
