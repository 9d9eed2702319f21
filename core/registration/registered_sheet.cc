#include "core/registration/registered_sheet.h"

#include "core/geodesy/crs.h"

namespace crosstick::registration {
namespace {

/// GDAL's six numbers, in metres.
std::array<double, 6> sixNumbers(const Model& model, PixelPoint middle) {
    if (const auto placement = model.placement()) {
        return {placement->corner.easting.value(),  placement->eastPerColumn,  placement->eastPerRow,
                placement->corner.northing.value(), placement->northPerColumn, placement->northPerRow};
    }
    const PixelStep step = model.stepAt(middle);
    const auto place = model.place(middle).value_or(model.norm().place);
    return {place.easting.value() - middle.x * step.eastPerColumn - middle.y * step.eastPerRow,
            step.eastPerColumn,
            step.eastPerRow,
            place.northing.value() - middle.x * step.northPerColumn - middle.y * step.northPerRow,
            step.northPerColumn,
            step.northPerRow};
}

}  // namespace

Result<plan::Sheet> registeredSheet(sheets::FileReport report, const std::filesystem::path& file, const Uuid& id,
                                    const Model& model, const std::string& crs, std::optional<Scale> scale) {
    const auto facts = geodesy::describeCrs(crs);
    if (!facts) {
        return tl::unexpected(facts.error());
    }
    auto numbers = sixNumbers(model, {report.columns / 2.0, report.rows / 2.0});
    for (double& number : numbers) {
        number /= facts->metresPerUnit;  // a file counts in the unit of its CRS
    }
    report.placement = numbers;
    report.controlPoints = 0;
    return sheets::sheetFrom(report, file, id, {scale, crs});
}

std::optional<Scale> scaleOf(const sheets::FileReport& report, const Model& model, const std::string& crs,
                             std::optional<Scale> given) {
    if (given) {
        return given;
    }
    const auto sheet = registeredSheet(report, {}, Uuid{}, model, crs, std::nullopt);
    return sheet ? std::optional(sheet->scale) : std::nullopt;
}

}  // namespace crosstick::registration
