#include "core/sheets/sheet_file.h"

#include <array>
#include <cmath>
#include <fstream>

#include <gdal_priv.h>

#include "core/geodesy/crs.h"
#include "core/sheets/faults.h"
#include "core/sheets/geotiff.h"
#include "core/units/number_text.h"
#include "core/units/sha256.h"

namespace crosstick::sheets {
namespace {

constexpr const char* kDomain = "CROSSTICK";

std::string item(GDALDataset& dataset, const char* key, const char* domain = kDomain) {
    const char* value = dataset.GetMetadataItem(key, domain);
    return value == nullptr ? std::string{} : std::string(value);
}

/// The six numbers of a GeoTIFF, in metres; nothing for a file without them or with a placement of no area.
std::optional<plan::Placement> placementOf(GDALDataset& dataset, double metresPerUnit) {
    std::array<double, 6> g{};
    if (dataset.GetGeoTransform(g.data()) != CE_None) {
        return std::nullopt;
    }
    for (double& number : g) {
        number *= metresPerUnit;
        if (!std::isfinite(number)) {
            return std::nullopt;
        }
    }
    const double area = g[1] * g[5] - g[2] * g[4];
    if (area == 0) {
        return std::nullopt;
    }
    return plan::Placement{{Metres(g[0]), Metres(g[3])}, g[1], g[2], g[4], g[5]};
}

/// From the pixel's size on the ground and the file's dots to the inch or centimetre, if that comes close to a usual
/// scale.
std::optional<Scale> scaleFromResolution(GDALDataset& dataset, const plan::Placement& placement) {
    const auto dots = parseNumber(item(dataset, "TIFFTAG_XRESOLUTION", ""));
    const std::string unit = item(dataset, "TIFFTAG_RESOLUTIONUNIT", "");
    if (!dots || *dots <= 0) {
        return std::nullopt;
    }
    if (!unit.starts_with('2') && !unit.starts_with('3')) {
        return std::nullopt;  // a bare ratio of sides tells no size
    }
    const double metresOnPaper = (unit.starts_with('3') ? 0.01 : 0.0254) / *dots;
    const double found = std::hypot(placement.eastPerColumn, placement.northPerColumn) / metresOnPaper;
    constexpr std::array kUsual{5000.0,  10000.0, 12500.0,  20000.0,  24000.0,  25000.0,  31680.0, 50000.0,
                                62500.0, 63360.0, 100000.0, 125000.0, 200000.0, 250000.0, 500000.0};
    for (const double usual : kUsual) {
        if (std::abs(found / usual - 1) < 0.01) {
            return Scale{usual};
        }
    }
    return std::nullopt;
}

std::optional<Scale> scaleFromMetadata(GDALDataset& dataset) {
    const auto number = parseNumber(item(dataset, "SCALE"));
    return number && *number >= 100 && *number <= 1e7 ? std::optional(Scale{*number}) : std::nullopt;
}

std::optional<plan::PrintedDeclination> printedDeclination(GDALDataset& dataset) {
    const auto angle = parseNumber(item(dataset, "GM_ANGLE_DEG"));
    const auto date = parseIsoDate(item(dataset, "GM_DATE"));
    if (!angle || !date) {
        return std::nullopt;
    }
    return plan::PrintedDeclination{Degrees(*angle), *date,
                                    Degrees(parseNumber(item(dataset, "GM_YEARLY_DEG")).value_or(0))};
}

Sha256Stream readToEnd(std::istream& in) {
    Sha256Stream stream;
    std::vector<char> piece(std::size_t{1} << 16U);
    while (in) {
        in.read(piece.data(), static_cast<std::streamsize>(piece.size()));
        stream.add({reinterpret_cast<const std::uint8_t*>(piece.data()), static_cast<std::size_t>(in.gcount())});
    }
    return stream;
}

/// Do all blocks of pixels lie inside the file? Asked of the file's own table, no pixel is read: a copy that broke off
/// keeps its head, and would show white ground only when the light table gets there.
bool isWhole(GDALDataset& dataset, std::uintmax_t bytes) {
    for (int n = 1; n <= dataset.GetRasterCount(); ++n) {
        GDALRasterBand& band = *dataset.GetRasterBand(n);
        int columns = 0;
        int rows = 0;
        band.GetBlockSize(&columns, &rows);
        for (int y = 0; y * rows < band.GetYSize(); ++y) {
            for (int x = 0; x * columns < band.GetXSize(); ++x) {
                const std::string block = std::to_string(x) + '_' + std::to_string(y);
                const char* offset = band.GetMetadataItem(("BLOCK_OFFSET_" + block).c_str(), "TIFF");
                const char* size = band.GetMetadataItem(("BLOCK_SIZE_" + block).c_str(), "TIFF");
                if (offset != nullptr && size != nullptr && std::stoull(offset) + std::stoull(size) > bytes) {
                    return false;
                }
            }
        }
    }
    return true;
}

}  // namespace

Result<std::string> fileSha256(const std::filesystem::path& file) {
    std::ifstream in(file, std::ios::binary);
    if (!in) {
        return fail(kFileMissing, {{"file", file.string()}});
    }
    const Sha256 digest = readToEnd(in).finish();
    if (in.bad()) {
        return fail(kDamaged, {{"file", file.string()}, {"why", std::string("it cannot be read to its end")}});
    }
    return hexText(digest);
}

Result<plan::Sheet> describeSheet(const std::filesystem::path& file, const Uuid& id, std::optional<Scale> given) {
    auto opened = openGeoTiff(file);
    if (!opened) {
        return tl::unexpected(opened.error());
    }
    const QuietGdal quiet;
    GDALDataset& dataset = **opened;
    plan::Sheet sheet;
    sheet.id = id;
    sheet.path = file.string();
    sheet.crs = crsText(dataset);
    if (sheet.crs.empty() && dataset.GetGCPCount() > 0) {
        return fail(kNoPlacement, {{"file", file.string()}});  // a scan with control points still waits for its fit
    }
    if (sheet.crs.empty()) {
        return fail(kNoCrs, {{"file", file.string()}});
    }
    const auto facts = geodesy::describeCrs(sheet.crs);
    if (!facts) {
        return tl::unexpected(crsFault(facts.error(), file, sheet.crs));
    }
    const auto placement = placementOf(dataset, facts->metresPerUnit);
    if (!placement) {
        return fail(kNoPlacement, {{"file", file.string()}});
    }
    sheet.placement = *placement;
    sheet.columns = dataset.GetRasterXSize();
    sheet.rows = dataset.GetRasterYSize();
    const auto fromFile = scaleFromMetadata(dataset);
    const auto scale = given ? given : fromFile ? fromFile : scaleFromResolution(dataset, *placement);
    if (!scale) {
        return fail(kNoScale, {{"file", file.string()}});
    }
    sheet.scale = *scale;
    sheet.series = item(dataset, "SERIES");
    sheet.name = item(dataset, "NAME");
    sheet.number = item(dataset, "NUMBER");
    sheet.edition = item(dataset, "EDITION");
    sheet.datum = item(dataset, "DATUM").empty() ? facts->datum : item(dataset, "DATUM");
    sheet.declination = printedDeclination(dataset);
    sheet.elevationPath = item(dataset, "ELEVATION");
    std::error_code ignored;
    const std::uintmax_t bytes = std::filesystem::file_size(file, ignored);
    if (!isWhole(dataset, bytes)) {
        return fail(kDamaged, {{"file", file.string()}, {"why", std::string("it ends before its last pixels")}});
    }
    sheet.bytes = static_cast<std::int64_t>(bytes);
    auto sum = fileSha256(file);
    if (!sum) {
        return tl::unexpected(sum.error());
    }
    sheet.sha256 = std::move(*sum);
    return sheet;
}

}  // namespace crosstick::sheets
