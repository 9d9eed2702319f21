#include "core/reading/pyramid_writer.h"

#include <algorithm>

#include <cpl_conv.h>
#include <cpl_string.h>
#include <gdal_priv.h>

namespace crosstick::reading {
namespace {

using sheets::Packing;

constexpr int kTile = sheets::kTilePixels;
constexpr const char* kTileText = "512";
static_assert(sheets::kTilePixels == 512);
constexpr const char* kQuality = "88";

CPLStringList optionsFor(Packing packing) {
    CPLStringList options;
    options.SetNameValue("TILED", "YES");
    options.SetNameValue("BLOCKXSIZE", kTileText);
    options.SetNameValue("BLOCKYSIZE", kTileText);
    options.SetNameValue("INTERLEAVE", "PIXEL");
    options.SetNameValue("BIGTIFF", "IF_SAFER");
    options.SetNameValue("NUM_THREADS", "2");
    if (packing == Packing::Lossy) {
        options.SetNameValue("COMPRESS", "JPEG");
        options.SetNameValue("PHOTOMETRIC", "YCBCR");
        options.SetNameValue("JPEG_QUALITY", kQuality);
    } else {
        options.SetNameValue("COMPRESS", "ZSTD");
        options.SetNameValue("ZSTD_LEVEL", "1");
    }
    return options;
}

/// The mean of four colours, all parts at once: two of them in the even bytes, one in the odd.
std::uint32_t meanOfFour(std::uint32_t a, std::uint32_t b, std::uint32_t c, std::uint32_t d) {
    constexpr std::uint32_t kEven = 0x00ff00ffU;
    const std::uint32_t even = (a & kEven) + (b & kEven) + (c & kEven) + (d & kEven) + 0x00020002U;
    const std::uint32_t odd = ((a >> 8U) & 0xffU) + ((b >> 8U) & 0xffU) + ((c >> 8U) & 0xffU) + ((d >> 8U) & 0xffU) + 2;
    return 0xff000000U | ((even >> 2U) & kEven) | ((odd >> 2U) << 8U);
}

/// Red, green, blue, as the tiles hold them: GDAL copies whole lines of such, and is slow in any other order.
void storeBytes(const std::uint32_t* rgb, std::size_t count, std::vector<std::uint8_t>& bytes) {
    bytes.resize(count * 3);
    std::uint8_t* into = bytes.data();
    for (std::size_t n = 0; n < count; ++n) {
        into[0] = static_cast<std::uint8_t>(rgb[n] >> 16U);
        into[1] = static_cast<std::uint8_t>(rgb[n] >> 8U);
        into[2] = static_cast<std::uint8_t>(rgb[n]);
        into += 3;
    }
}

}  // namespace

std::vector<std::uint32_t> halved(const std::uint32_t* rgb, int columns, int rows) {
    const int acrossHalf = (columns + 1) / 2;
    std::vector<std::uint32_t> half(static_cast<std::size_t>(acrossHalf) * static_cast<std::size_t>((rows + 1) / 2));
    auto into = half.begin();
    for (int y = 0; y < rows; y += 2) {
        const std::uint32_t* upper = rgb + static_cast<std::ptrdiff_t>(y) * columns;
        const std::uint32_t* lower = y + 1 < rows ? upper + columns : upper;
        for (int x = 0; x + 1 < columns; x += 2) {
            *into++ = meanOfFour(upper[x], upper[x + 1], lower[x], lower[x + 1]);
        }
        if (columns % 2 == 1) {
            *into++ = meanOfFour(upper[columns - 1], upper[columns - 1], lower[columns - 1], lower[columns - 1]);
        }
    }
    return half;
}

Result<PyramidWriter> PyramidWriter::create(const std::filesystem::path& out, int columns, int rows, Packing packing) {
    const sheets::QuietGdal quiet;
    PyramidWriter writer;
    writer.file_.path = out;
    std::vector<int> factors;
    for (const sheets::LevelSize size : sheets::levelSizes(columns, rows)) {
        writer.levels_.push_back({size.columns, size.rows, 0, {}});
        factors.push_back(1 << factors.size());
    }
    factors.erase(factors.begin());  // of the sheet itself
    GDALDriver* driver = GetGDALDriverManager()->GetDriverByName("GTiff");
    CPLStringList options = optionsFor(packing);
    writer.file_.dataset.reset(driver->Create(out.c_str(), columns, rows, 3, GDT_Byte, options.List()));
    if (!writer.file_.dataset) {
        return tl::unexpected(writer.file_.noRoom(quiet));
    }
    writer.file_.dataset->SetMetadataItem("KIND", sheets::kPyramidKind, sheets::kOwnDomain);
    CPLSetThreadLocalConfigOption("GDAL_TIFF_OVR_BLOCKSIZE", kTileText);
    CPLSetThreadLocalConfigOption("JPEG_QUALITY_OVERVIEW", kQuality);
    const int count = static_cast<int>(factors.size());
    if (count > 0 && writer.file_.dataset->BuildOverviews("NONE", count, factors.data(), 0, nullptr, nullptr, nullptr,
                                                          nullptr) != CE_None) {
        return tl::unexpected(writer.file_.noRoom(quiet));
    }
    return writer;
}

Result<void> PyramidWriter::addRows(const sheets::Pixels& rows) {
    return add(0, rows.rgb.data(), rows.rows);
}

Result<void> PyramidWriter::add(std::size_t number, const std::uint32_t* rgb, int count) {
    Level& level = levels_[number];
    const auto across = static_cast<std::size_t>(level.columns);
    level.held.insert(level.held.end(), rgb, rgb + across * static_cast<std::size_t>(count));
    while (true) {
        const int held = static_cast<int>(level.held.size() / across);
        const bool isLast = level.written + held == level.rows;
        if (held == 0 || (held < kTile && !isLast)) {
            return {};
        }
        if (auto written = write(number, std::min(held, kTile)); !written) {
            return written;
        }
    }
}

/// The first rows held go into the file, and at half their size to the next level.
Result<void> PyramidWriter::write(std::size_t number, int count) {
    const sheets::QuietGdal quiet;
    Level& level = levels_[number];
    GDALDataset* target = file_.dataset.get();
    if (number > 0) {
        GDALRasterBand* overview = file_.dataset->GetRasterBand(1)->GetOverview(static_cast<int>(number) - 1);
        target = overview == nullptr ? nullptr : overview->GetDataset();
    }
    const auto done = static_cast<std::size_t>(count) * static_cast<std::size_t>(level.columns);
    storeBytes(level.held.data(), done, bytes_);
    if (target == nullptr ||
        target->RasterIO(GF_Write, 0, level.written, level.columns, count, bytes_.data(), level.columns, count,
                         GDT_Byte, 3, nullptr, 3, GSpacing{3} * level.columns, 1, nullptr) != CE_None) {
        return tl::unexpected(file_.noRoom(quiet));
    }
    level.written += count;
    if (number + 1 < levels_.size()) {
        const auto half = halved(level.held.data(), level.columns, count);
        if (auto added = add(number + 1, half.data(), (count + 1) / 2); !added) {
            return added;
        }
    }
    level.held.erase(level.held.begin(), level.held.begin() + static_cast<std::ptrdiff_t>(done));
    return {};
}

}  // namespace crosstick::reading
