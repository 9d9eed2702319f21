#include <cmath>
#include <ostream>

#include <fmt/format.h>

#include "app/command.h"
#include "app/commands/answers.h"
#include "app/sheet_options.h"
#include "app/wording/wording.h"
#include "core/geodesy/crs.h"
#include "core/sheets/levels.h"
#include "core/sheets/sheet_file.h"
#include "core/units/number_text.h"

namespace crosstick::app {
namespace {

constexpr double kInch = 0.0254;  // m

struct Options {
    std::string file, crs;
    std::optional<double> scale;
    bool json = false;
};

/// What the program makes of a file: its report, and the sheet that it gives or why it gives none.
struct Look {
    std::string file;
    sheets::FileReport report;
    Result<plan::Sheet> sheet;
    bool isCached = false;
};

const char* coloursWord(sheets::Colours colours) {
    switch (colours) {
        case sheets::Colours::Palette:
            return "palette";
        case sheets::Colours::Grey:
            return "grey";
        case sheets::Colours::GreyAlpha:
            return "grey with transparency";
        case sheets::Colours::Rgb:
            return "RGB";
        case sheets::Colours::Rgba:
            return "RGB with transparency";
        case sheets::Colours::Cmyk:
            return "CMYK";
        case sheets::Colours::Heights:
            return "heights";
        case sheets::Colours::Unknown:
            break;
    }
    return "none that can be read";
}

const char* unitWord(plan::HeightUnit unit) {
    switch (unit) {
        case plan::HeightUnit::Metre:
            return "m";
        case plan::HeightUnit::Foot:
            return "ft";
        case plan::HeightUnit::SurveyFoot:
            return "us-ft";
        case plan::HeightUnit::Unclear:
            break;
    }
    return "unclear";
}

std::size_t levelsOf(const sheets::FileReport& report) {
    return sheets::levelSizes(report.columns, report.rows).size();
}

bool isLossy(const sheets::FileReport& report) {
    return sheets::packingFor(report.colours, report.isLossy, report.columns, report.rows) == sheets::Packing::Lossy;
}

/// The longer side of a pixel on the ground.
Metres pixelOf(const plan::Placement& p) {
    return Metres(std::max(std::hypot(p.eastPerColumn, p.northPerColumn), std::hypot(p.eastPerRow, p.northPerRow)));
}

std::array<geodesy::PlanePoint, 4> corners(const plan::Sheet& sheet) {
    const auto at = [&](double column, double row) { return plan::onGrid(sheet.placement, column, row); };
    const double across = sheet.columns;
    const double down = sheet.rows;
    return {at(0, 0), at(across, 0), at(across, down), at(0, down)};
}

Json metresOrNull(const std::optional<Metres>& metres) {
    return metres ? number(metres->value()) : Json();
}

Json textOrNull(const std::string& text) {
    return text.empty() ? Json() : Json(text);
}

void putSheet(Json& answer, const Look& look) {
    const plan::Sheet& sheet = *look.sheet;
    const auto facts = geodesy::describeCrs(sheet.crs);
    const auto plane = geodesy::Plane::of(sheet.crs);
    answer["crs_name"] = facts ? Json(facts->name) : Json();
    answer["datum"] = sheet.datum;
    answer["projection"] = facts ? Json(facts->projection) : Json();
    answer["datum_shift"] = textOrNull(sheet.datumShift.name);
    answer["datum_shift_accuracy_m"] = metresOrNull(sheet.datumShift.accuracy);
    answer["better_grid"] = textOrNull(sheet.datumShift.betterGrid);
    answer["better_grid_accuracy_m"] = metresOrNull(sheet.datumShift.betterAccuracy);
    answer["scale"] = number(sheet.scale.denominator);
    const double pixel = pixelOf(sheet.placement).value();
    answer["metres_per_pixel"] = number(pixel);
    answer["dots_per_inch_at_scale"] = number(sheet.scale.denominator * kInch / pixel);
    Json extent = Json::array();
    for (const geodesy::PlanePoint& corner : corners(sheet)) {
        const auto place = plane ? plane->geographic(corner) : tl::unexpected(plane.error());
        extent.push_back({{"easting_m", number(corner.easting.value())},
                          {"northing_m", number(corner.northing.value())},
                          {"latitude_deg", place ? number(place->latitude.value()) : Json()},
                          {"longitude_deg", place ? number(place->longitude.value()) : Json()}});
    }
    answer["corners"] = std::move(extent);
}

Json jsonOf(const Look& look) {
    const sheets::FileReport& r = look.report;
    Json answer = {{"file", look.file},
                   {"driver", r.driver},
                   {"columns", r.columns},
                   {"rows", r.rows},
                   {"bands", r.bands},
                   {"bits", r.bits},
                   {"colours", coloursWord(r.colours)},
                   {"pages", r.pages},
                   {"orientation", r.orientation},
                   {"compression", textOrNull(r.compression)},
                   {"whole", r.isWhole},
                   {"crs", textOrNull(r.crs)},
                   {"placed", r.placement.has_value()},
                   {"control_points", r.controlPoints},
                   {"dots_per_inch_of_file", r.dotsPerMetre ? number(*r.dotsPerMetre * kInch) : Json()}};
    if (look.sheet) {
        putSheet(answer, look);
    } else {
        answer["no_sheet_because"] = words(look.sheet.error());
    }
    if (r.heights) {
        answer["heights"] = {{"unit", unitWord(r.heights->unit)},
                             {"no_data", number(r.heights->noData)},
                             {"datum", textOrNull(r.heights->datum)}};
    }
    answer["copy"] = {{"packing", isLossy(r) ? "JPEG 88" : "ZSTD, without loss"},
                      {"tile_pixels", sheets::kTilePixels},
                      {"levels", levelsOf(r)},
                      {"unpacked_bytes", number(static_cast<double>(r.columns) * r.rows * 4)},
                      {"there_already", look.isCached}};
    return answer;
}

std::string crsLine(const Look& look) {
    if (!look.sheet) {
        return look.report.crs.empty() ? "none in the file" : look.report.crs;
    }
    const auto facts = geodesy::describeCrs(look.sheet->crs);
    return look.sheet->crs.substr(0, 40) + (facts ? " (" + facts->name + ")" : "");
}

std::string shiftLine(const plan::DatumShift& shift) {
    if (shift.name.empty()) {
        return "none needed: the sheet lies on WGS 84";
    }
    std::string line = shift.name;
    line += shift.accuracy ? ", good to " + numberText(shift.accuracy->value()) + " m" : ", accuracy not stated";
    if (!shift.betterGrid.empty()) {
        line += "; WARNING: " + numberText(shift.betterAccuracy.value_or(Metres(0)).value()) +
                " m would be had with the grid file " + shift.betterGrid + ", which is not installed";
    }
    return line;
}

void sayInWords(std::ostream& out, const Look& look) {
    const sheets::FileReport& r = look.report;
    out << look.file << '\n';
    const auto line = [&](const char* name, const std::string& text) {
        out << fmt::format("  {:<14}{}\n", name, text);
    };
    line("Format", r.driver + (r.compression.empty() ? "" : ", " + r.compression) +
                       (r.pages > 1 ? ", first of " + std::to_string(r.pages) + " pages" : ""));
    line("Pixels", fmt::format("{} x {}, {} of {} bit", r.columns, r.rows, coloursWord(r.colours), r.bits) +
                       (r.orientation > 1 ? ", turned as its camera says" : ""));
    line("Grid", crsLine(look));
    if (look.sheet) {
        const plan::Sheet& sheet = *look.sheet;
        const double pixel = pixelOf(sheet.placement).value();
        line("Datum", sheet.datum);
        line("To WGS 84", shiftLine(sheet.datumShift));
        line("Scale",
             fmt::format("1:{:.0f}, {} m a pixel, {:.0f} dots to the inch at that scale", sheet.scale.denominator,
                         numberText(pixel, 3), sheet.scale.denominator * kInch / pixel));
        const auto box = corners(sheet);
        line("Upper left", fmt::format("{:.0f} E {:.0f} N", box[0].easting.value(), box[0].northing.value()));
        line("Lower right", fmt::format("{:.0f} E {:.0f} N", box[2].easting.value(), box[2].northing.value()));
    } else {
        line("No sheet yet", words(look.sheet.error()));
    }
    if (r.heights) {
        line("Heights", std::string("in ") + unitWord(r.heights->unit) +
                            (r.heights->datum.empty() ? "" : ", above " + r.heights->datum));
    }
    line("Copy", fmt::format("{} levels of {} pixel tiles, {}{}", levelsOf(r), sheets::kTilePixels,
                             isLossy(r) ? "JPEG 88" : "without loss",
                             look.isCached ? ", there already" : ", made when first shown"));
}

Exit lookAt(const Options& options, const Surroundings& surroundings) {
    const auto report = surroundings.reader.inspect(options.file);
    if (!report) {
        return couldNot(surroundings, report.error());
    }
    const sheets::GivenFacts given{options.scale ? std::optional(Scale{*options.scale}) : std::nullopt, options.crs};
    const Look look{options.file, *report, sheets::sheetFrom(*report, options.file, Uuid{}, given),
                    surroundings.reader.hasSheet(options.file)};
    if (options.json) {
        say(surroundings.out, Json::array({jsonOf(look)}));
    } else {
        sayInWords(surroundings.out, look);
    }
    return Exit::Done;
}

}  // namespace

void addSheet(CLI::App& program, Action& action) {
    auto* command =
        program.add_subcommand("sheet", "Tell what the program makes of a map sheet's or height model's file");
    auto options = std::make_shared<Options>();
    command->add_option("FILE", options->file, "GeoTIFF, TIFF, PNG, JPEG, BMP, WebP, PDF; DTED, HGT, ASCII grid")
        ->required();
    command
        ->add_option("--scale", options->scale, "The number under the 1 of its scale, where the file does not say it")
        ->check(CLI::Validator(positiveFault, ""));
    command->add_option("--crs", options->crs, "Its grid, where the file does not say it: EPSG:32625");
    command->add_flag("--json", options->json, "As one JSON array");
    command->callback([options, &action] {
        action = [options](const Surroundings& surroundings) { return lookAt(*options, surroundings); };
    });
}

}  // namespace crosstick::app
