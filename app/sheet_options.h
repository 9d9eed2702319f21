#pragma once

#include <optional>
#include <string>

#include <CLI/CLI.hpp>

#include "core/plan/plan.h"

namespace crosstick::app {

/// What can be said of a sheet on the command line, where its file does not say it.
struct SheetOptions {
    std::optional<double> scale;
    std::string series, name, number, edition, datum, printedGm, printedDate, elevation, crs, heightUnit;
    std::optional<double> yearly;
};

void addSheetOptions(CLI::App& command, SheetOptions& options);
/// Errors: app/bad-angle, units/bad-date, app/gm-needs-date.
[[nodiscard]] Result<plan::Sheet> withOptions(plan::Sheet sheet, const SheetOptions& options);
/// "m", "ft" or "us-ft"; nothing for no text.
[[nodiscard]] std::optional<plan::HeightUnit> heightUnitOf(const std::string& text);
/// "11W", "8.5 E", "-11" (east positive). Errors: app/bad-angle.
[[nodiscard]] Result<Degrees> parseGmAngle(const std::string& text);

}  // namespace crosstick::app
