#include "app/sheet_options.h"

#include <cctype>

#include "app/faults.h"
#include "core/units/number_text.h"

namespace crosstick::app {

namespace {

/// Ranges let "nan" through: it is below no limit and above none.
CLI::Validator aNumber() {
    return {[](std::string& text) { return parseNumber(text) ? std::string{} : '"' + text + "\" is no number."; }, ""};
}

}  // namespace

void addSheetOptions(CLI::App& command, SheetOptions& options) {
    const char* group = "What the sheet prints";
    command.add_option("--scale", options.scale, "The number under the 1 of its scale, such as 25000")
        ->check(aNumber())
        ->check(CLI::Range(100.0, 1e7))
        ->group(group);
    command.add_option("--series", options.series, "Series")->group(group);
    command.add_option("--sheet-name", options.name, "Sheet name")->group(group);
    command.add_option("--number", options.number, "Sheet number")->group(group);
    command.add_option("--edition", options.edition, "Edition")->group(group);
    command.add_option("--datum", options.datum, "Datum, as printed")->group(group);
    command.add_option("--printed-gm", options.printedGm, "G-M angle, as printed: 11W, 8.5E")->group(group);
    command.add_option("--printed-date", options.printedDate, "Date the angle holds for, YYYY-MM-DD")->group(group);
    command.add_option("--yearly-change", options.yearly, "Its yearly change in degrees, east positive")
        ->check(aNumber())
        ->check(CLI::Range(-10.0, 10.0))
        ->group(group);
    command.add_option("--crs", options.crs, "Its grid, where the file does not say it or says it wrong: EPSG:32625")
        ->group(group);
    command
        .add_option("--elevation", options.elevation,
                    "A height model that goes with the sheet (GeoTIFF, DTED, HGT or ASCII grid)")
        ->group(group);
    command.add_option("--height-unit", options.heightUnit, "What it counts in, where its file does not say it")
        ->check(CLI::IsMember({"m", "ft", "us-ft"}))
        ->group(group);
}

std::optional<plan::HeightUnit> heightUnitOf(const std::string& text) {
    if (text.empty()) {
        return std::nullopt;
    }
    return text == "m" ? plan::HeightUnit::Metre : text == "ft" ? plan::HeightUnit::Foot : plan::HeightUnit::SurveyFoot;
}

Result<Degrees> parseGmAngle(const std::string& text) {
    std::string number;
    char letter = 0;
    for (const char c : text) {
        const char upper = static_cast<char>(std::toupper(static_cast<unsigned char>(c)));
        if (upper == 'E' || upper == 'W') {
            letter = upper;
        } else if (c != ' ') {
            number += c;
        }
    }
    const auto value = parseNumber(number);
    if (!value || std::abs(*value) > 180 || (letter != 0 && *value < 0)) {
        return fail(kBadAngle, {{"text", text}});
    }
    return Degrees(letter == 'W' ? -*value : *value);
}

Result<plan::Sheet> withOptions(plan::Sheet sheet, const SheetOptions& options) {
    const auto replace = [](std::string& field, const std::string& given) { field = given.empty() ? field : given; };
    replace(sheet.series, options.series);
    replace(sheet.name, options.name);
    replace(sheet.number, options.number);
    replace(sheet.edition, options.edition);
    replace(sheet.datum, options.datum);
    replace(sheet.elevationPath, options.elevation);
    sheet.elevationUnit = heightUnitOf(options.heightUnit).value_or(sheet.elevationUnit);
    if (options.printedGm.empty()) {
        return sheet;
    }
    const auto angle = parseGmAngle(options.printedGm);
    if (!angle) {
        return tl::unexpected(angle.error());
    }
    if (options.printedDate.empty()) {
        return fail(kGmNeedsDate);
    }
    const auto date = parseIsoDate(options.printedDate);
    if (!date) {
        return tl::unexpected(date.error());
    }
    sheet.declination = plan::PrintedDeclination{*angle, *date, Degrees(options.yearly.value_or(0))};
    return sheet;
}

}  // namespace crosstick::app
