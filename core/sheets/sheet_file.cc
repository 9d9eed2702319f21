#include "core/sheets/sheet_file.h"

#include <array>
#include <cmath>
#include <fstream>

#include "core/geodesy/crs.h"
#include "core/geodesy/datum_shift.h"
#include "core/geodesy/faults.h"
#include "core/sheets/faults.h"
#include "core/units/number_text.h"
#include "core/units/sha256.h"

namespace crosstick::sheets {
namespace {

std::string printed(const FileReport& report, const char* key) {
    const auto found = report.printed.find(key);
    return found == report.printed.end() ? std::string{} : found->second;
}

/// The file's six numbers in metres; nothing where they are not to be had or have no area.
std::optional<plan::Placement> placementOf(const FileReport& report, double metresPerUnit) {
    if (!report.placement) {
        return std::nullopt;
    }
    std::array<double, 6> g = *report.placement;
    for (double& number : g) {
        number *= metresPerUnit;
    }
    const double area = g[1] * g[5] - g[2] * g[4];
    if (area == 0 || !std::isfinite(area)) {
        return std::nullopt;
    }
    return plan::Placement{{Metres(g[0]), Metres(g[3])}, g[1], g[2], g[4], g[5]};
}

/// From the pixel's size on the ground and the file's dots to the inch or centimetre, if that comes close to a usual
/// scale.
std::optional<Scale> scaleFromResolution(const FileReport& report, const plan::Placement& placement) {
    if (!report.dotsPerMetre) {
        return std::nullopt;
    }
    const double found = std::hypot(placement.eastPerColumn, placement.northPerColumn) * *report.dotsPerMetre;
    constexpr std::array kUsual{5000.0,  10000.0, 12500.0,  20000.0,  24000.0,  25000.0,  31680.0, 50000.0,
                                62500.0, 63360.0, 100000.0, 125000.0, 200000.0, 250000.0, 500000.0};
    for (const double usual : kUsual) {
        if (std::abs(found / usual - 1) < 0.01) {
            return Scale{usual};
        }
    }
    return std::nullopt;
}

std::optional<Scale> scaleFromWords(const FileReport& report) {
    const auto number = parseNumber(printed(report, "SCALE"));
    return number && *number >= 100 && *number <= 1e7 ? std::optional(Scale{*number}) : std::nullopt;
}

std::optional<plan::PrintedDeclination> printedDeclination(const FileReport& report) {
    const auto angle = parseNumber(printed(report, "GM_ANGLE_DEG"));
    const auto date = parseIsoDate(printed(report, "GM_DATE"));
    if (!angle || !date) {
        return std::nullopt;
    }
    return plan::PrintedDeclination{Degrees(*angle), *date,
                                    Degrees(parseNumber(printed(report, "GM_YEARLY_DEG")).value_or(0))};
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

/// In the middle of the sheet; where PROJ has no way, the ground's own error tells later.
plan::DatumShift shiftOf(const plan::Sheet& sheet) {
    const auto middle = plan::onGrid(sheet.placement, sheet.columns / 2.0, sheet.rows / 2.0);
    const auto way = geodesy::datumWay(sheet.crs, middle);
    return way ? plan::DatumShift{way->name, way->accuracy, way->missingGrid, way->accuracyWithGrid}
               : plan::DatumShift{};
}

/// Why a file's CRS cannot carry work: in degrees, or what geodesy said, with the file.
Error crsFault(const Error& fault, const std::filesystem::path& file, const std::string& crs) {
    if (fault.fault != geodesy::kCrsNotProjected) {
        return Error(fault).with("file", file.string());
    }
    return Error{kCrsGeographic, {{"file", file.string()}, {"crs", crs.substr(0, 60)}}};
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

Result<plan::Sheet> sheetFrom(const FileReport& report, const std::filesystem::path& file, const Uuid& id,
                              const GivenFacts& given) {
    plan::Sheet sheet;
    sheet.id = id;
    sheet.path = file.string();
    sheet.crs = given.crs.empty() ? report.crs : given.crs;
    if (sheet.crs.empty() && (report.controlPoints > 0 || !report.placement)) {
        return fail(kNoPlacement, {{"file", file.string()}});  // a scan still waits for its fit
    }
    if (sheet.crs.empty()) {
        return fail(kNoCrs, {{"file", file.string()}});
    }
    const auto facts = geodesy::describeCrs(sheet.crs);
    if (!facts) {
        return tl::unexpected(crsFault(facts.error(), file, sheet.crs));
    }
    const auto placement = placementOf(report, facts->metresPerUnit);
    if (!placement) {
        return fail(kNoPlacement, {{"file", file.string()}});
    }
    sheet.placement = *placement;
    sheet.columns = report.columns;
    sheet.rows = report.rows;
    const auto fromWords = scaleFromWords(report);
    const auto scale = given.scale ? given.scale : fromWords ? fromWords : scaleFromResolution(report, *placement);
    if (!scale) {
        return fail(kNoScale, {{"file", file.string()}});
    }
    sheet.scale = *scale;
    sheet.series = printed(report, "SERIES");
    sheet.name = printed(report, "NAME");
    sheet.number = printed(report, "NUMBER");
    sheet.edition = printed(report, "EDITION");
    sheet.datum = printed(report, "DATUM").empty() ? facts->datum : printed(report, "DATUM");
    sheet.datumShift = shiftOf(sheet);
    sheet.declination = printedDeclination(report);
    sheet.elevationPath = printed(report, "ELEVATION");
    if (!report.isWhole) {
        return fail(kDamaged, {{"file", file.string()}, {"why", std::string("it ends before its last pixels")}});
    }
    return sheet;
}

Result<plan::Sheet> describeSheet(const ForeignReader& reader, const std::filesystem::path& file, const Uuid& id,
                                  const GivenFacts& given, const Watch& watch) {
    auto sheet = reader.inspect(file, watch).and_then([&](const FileReport& report) {
        return sheetFrom(report, file, id, given);
    });
    if (!sheet) {
        return sheet;
    }
    std::error_code ignored;
    sheet->bytes = static_cast<std::int64_t>(std::filesystem::file_size(file, ignored));
    auto sum = fileSha256(file);
    if (!sum) {
        return tl::unexpected(sum.error());
    }
    sheet->sha256 = std::move(*sum);
    return sheet;
}

}  // namespace crosstick::sheets
