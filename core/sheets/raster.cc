#include <algorithm>
#include <array>
#include <cmath>

#include <gdal_priv.h>

#include "core/sheets/faults.h"
#include "core/sheets/geotiff.h"
#include "core/sheets/sheet_file.h"

namespace crosstick::sheets {
namespace {

/// How the bands make a colour.
enum class Kind { Palette, Grey, GreyAlpha, Rgb, Rgba };

using Band = std::vector<std::uint8_t>;

std::uint32_t onWhite(std::uint32_t red, std::uint32_t green, std::uint32_t blue, std::uint32_t alpha) {
    const auto mix = [&](std::uint32_t c) { return (c * alpha + 255U * (255U - alpha) + 127U) / 255U; };
    return 0xff000000U | (mix(red) << 16U) | (mix(green) << 8U) | mix(blue);
}

}  // namespace

struct Raster::Parts {
    std::filesystem::path file;
    DatasetPtr dataset;
    Kind kind = Kind::Rgb;
    std::array<std::uint32_t, 256> palette{};
    double greyLow = 0, greyHigh = 255;  ///< of a grey band deeper than 8 bit

    [[nodiscard]] Result<Pixels> readExact(PixelWindow window) const;
    [[nodiscard]] Result<Band> band(int number, PixelWindow window) const;
};

namespace {

std::optional<Kind> kindOf(GDALDataset& dataset) {
    const int bands = dataset.GetRasterCount();
    if (bands == 1) {
        return dataset.GetRasterBand(1)->GetColorTable() != nullptr ? Kind::Palette : Kind::Grey;
    }
    if (bands == 2) {
        return Kind::GreyAlpha;
    }
    if (bands == 3) {
        return Kind::Rgb;
    }
    const bool alpha = dataset.GetRasterBand(4)->GetColorInterpretation() == GCI_AlphaBand;
    return alpha ? Kind::Rgba : Kind::Rgb;
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
    return palette;
}

/// Sums of a block of pixels, to be averaged.
struct Sum {
    std::uint32_t red = 0, green = 0, blue = 0, count = 0;
    void add(std::uint32_t rgb) {
        red += (rgb >> 16U) & 0xffU;
        green += (rgb >> 8U) & 0xffU;
        blue += rgb & 0xffU;
        ++count;
    }
    [[nodiscard]] std::uint32_t mean() const {
        const std::uint32_t half = count / 2;
        return 0xff000000U | ((red + half) / count << 16U) | ((green + half) / count << 8U) | ((blue + half) / count);
    }
};

/// Averages whole blocks of source pixels into each pixel of the target; fine lines fade evenly instead of flickering.
void averageInto(const Pixels& source, PixelWindow part, PixelWindow whole, Pixels& target) {
    const double perColumn = static_cast<double>(whole.columns) / target.columns;
    const double perRow = static_cast<double>(whole.rows) / target.rows;
    const auto first = [](double at) { return static_cast<int>(std::floor(at)); };
    for (int y = 0; y < target.rows; ++y) {
        const int top = std::max(whole.row + first(y * perRow), part.row);
        const int bottom = std::min(std::max(whole.row + first((y + 1) * perRow), top + 1), part.row + part.rows);
        for (int x = 0; x < target.columns; ++x) {
            const int left = std::max(whole.column + first(x * perColumn), part.column);
            const int right =
                std::min(std::max(whole.column + first((x + 1) * perColumn), left + 1), part.column + part.columns);
            Sum sum;
            for (int row = top; row < bottom; ++row) {
                const auto* line =
                    &source.rgb[static_cast<std::size_t>(row - part.row) * static_cast<std::size_t>(part.columns)];
                for (int column = left; column < right; ++column) {
                    sum.add(line[column - part.column]);
                }
            }
            if (sum.count > 0) {
                target.rgb[static_cast<std::size_t>(y) * static_cast<std::size_t>(target.columns) +
                           static_cast<std::size_t>(x)] = sum.mean();
            }
        }
    }
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
    auto parts = std::make_unique<Parts>();
    parts->file = file;
    parts->dataset = std::move(*dataset);
    parts->kind = *kindOf(*parts->dataset);
    GDALRasterBand& first = *parts->dataset->GetRasterBand(1);
    if (parts->kind == Kind::Palette) {
        parts->palette = paletteOf(first);
    }
    if (first.GetRasterDataType() != GDT_Byte) {
        // Deeper greys are stretched over what their type or the file's own statistics span; never guessed from a scan.
        parts->greyHigh = first.GetRasterDataType() == GDT_UInt16 ? 65535 : first.GetMaximum();
        parts->greyLow = first.GetRasterDataType() == GDT_UInt16 ? 0 : first.GetMinimum();
    }
    return Raster(std::move(parts));
}

int Raster::columns() const {
    return parts_->dataset->GetRasterXSize();
}
int Raster::rows() const {
    return parts_->dataset->GetRasterYSize();
}

Result<Band> Raster::Parts::band(int number, PixelWindow w) const {
    const QuietGdal quiet;
    GDALRasterBand& source = *dataset->GetRasterBand(number);
    const auto count = static_cast<std::size_t>(w.columns) * static_cast<std::size_t>(w.rows);
    const auto damaged = [&] { return fail(kDamaged, {{"file", file.string()}, {"why", quiet.lastWords()}}); };
    if (source.GetRasterDataType() == GDT_Byte) {
        Band bytes(count);
        return source.RasterIO(GF_Read, w.column, w.row, w.columns, w.rows, bytes.data(), w.columns, w.rows, GDT_Byte,
                               0, 0, nullptr) == CE_None
                   ? Result<Band>(std::move(bytes))
                   : damaged();
    }
    std::vector<float> values(count);
    if (source.RasterIO(GF_Read, w.column, w.row, w.columns, w.rows, values.data(), w.columns, w.rows, GDT_Float32, 0,
                        0, nullptr) != CE_None) {
        return damaged();
    }
    Band bytes(count);
    const double span = greyHigh > greyLow ? greyHigh - greyLow : 1;
    std::transform(values.begin(), values.end(), bytes.begin(), [&](float value) {
        const double share = (static_cast<double>(value) - greyLow) / span;
        return std::isfinite(share) ? static_cast<std::uint8_t>(std::lround(std::clamp(share, 0.0, 1.0) * 255))
                                    : std::uint8_t{0};
    });
    return bytes;
}

Result<Pixels> Raster::Parts::readExact(PixelWindow w) const {
    Pixels pixels{w.columns, w.rows, {}};
    const int bands = kind == Kind::Palette || kind == Kind::Grey ? 1
                      : kind == Kind::GreyAlpha                   ? 2
                      : kind == Kind::Rgb                         ? 3
                                                                  : 4;
    std::vector<Band> parts;
    for (int number = 1; number <= bands; ++number) {
        auto part = band(number, w);
        if (!part) {
            return tl::unexpected(part.error());
        }
        parts.push_back(std::move(*part));
    }
    pixels.rgb.resize(parts[0].size());
    for (std::size_t n = 0; n < pixels.rgb.size(); ++n) {
        const std::uint32_t c = parts[0][n];
        switch (kind) {
            case Kind::Palette:
                pixels.rgb[n] = palette[c];
                break;
            case Kind::Grey:
                pixels.rgb[n] = onWhite(c, c, c, 255);
                break;
            case Kind::GreyAlpha:
                pixels.rgb[n] = onWhite(c, c, c, parts[1][n]);
                break;
            case Kind::Rgb:
                pixels.rgb[n] = onWhite(c, parts[1][n], parts[2][n], 255);
                break;
            case Kind::Rgba:
                pixels.rgb[n] = onWhite(c, parts[1][n], parts[2][n], parts[3][n]);
                break;
        }
    }
    return pixels;
}

// Overviews are not used: those of palette files are made by picking pixels, which drops thin contours. Whole rows of
// source blocks are read in strips of bounded height and averaged in RGB, after the palette has been looked up.
Result<Pixels> Raster::read(PixelWindow window, int columns, int rows) const {
    Pixels target{columns, rows,
                  std::vector<std::uint32_t>(static_cast<std::size_t>(columns) * static_cast<std::size_t>(rows), 0)};
    const int left = std::max(0, window.column);
    const int right = std::min(this->columns(), window.column + window.columns);
    const int top = std::max(0, window.row);
    const int bottom = std::min(this->rows(), window.row + window.rows);
    if (left >= right || top >= bottom || columns < 1 || rows < 1) {
        return target;
    }
    const int stripRows = std::max(1, (1 << 23) / (right - left));  // 32 MB a strip
    const double perRow = static_cast<double>(window.rows) / rows;
    for (int y = 0; y < rows;) {
        const int yEnd = std::min(rows, std::max(y + 1, y + static_cast<int>(stripRows / std::max(1.0, perRow))));
        const int from = std::max(top, window.row + static_cast<int>(std::floor(y * perRow)));
        const int to = std::min(bottom, window.row + static_cast<int>(std::floor(yEnd * perRow)) + 1);
        if (from < to) {
            const PixelWindow part{left, from, right - left, to - from};
            auto exact = parts_->readExact(part);
            if (!exact) {
                return tl::unexpected(exact.error());
            }
            Pixels slice{
                columns, yEnd - y,
                std::vector<std::uint32_t>(static_cast<std::size_t>(columns) * static_cast<std::size_t>(yEnd - y), 0)};
            const int sliceTop = window.row + static_cast<int>(std::floor(y * perRow));
            const int sliceRows = window.row + static_cast<int>(std::floor(yEnd * perRow)) - sliceTop;
            averageInto(*exact, part, {window.column, sliceTop, window.columns, std::max(1, sliceRows)}, slice);
            std::copy(slice.rgb.begin(), slice.rgb.end(),
                      target.rgb.begin() + static_cast<std::ptrdiff_t>(y) * static_cast<std::ptrdiff_t>(columns));
        }
        y = yEnd;
    }
    return target;
}

}  // namespace crosstick::sheets
