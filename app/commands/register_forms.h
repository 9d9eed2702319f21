#pragma once

#include <optional>
#include <string>
#include <vector>

#include "app/command.h"
#include "app/commands/answers.h"
#include "core/registration/figures.h"
#include "core/registration/found_fit.h"
#include "core/sheets/file_report.h"

namespace crosstick::app {

/// A picture that the command has registered, and what it was asked of it.
struct Registered {
    std::string file;
    sheets::FileReport report;
    std::string crs;
    std::optional<Scale> scale;  ///< where it is known
    std::vector<registration::Mark> marks;
    registration::Fit fit;  ///< of the marks, then of the crossings that were found
    std::optional<std::vector<registration::Crossing>> crossings;  ///< where they were looked for
    registration::Figures figures;
    std::vector<registration::PixelPoint> asked;
};

[[nodiscard]] Json registeredJson(const Registered& registered);
void writeRegistered(std::ostream& out, const Registered& registered);

/// Writes what a name asks for: a GeoTIFF where it ends in .tif or .tiff, else a plan on the picture as its sheet (for
/// a model that six numbers do not tell, on a GeoTIFF beside the plan). @return what was written, a line each Errors:
/// app/in-the-way, sheets/no-scale for a plan, those of registration::writePlaced() and files::PlanFile.
[[nodiscard]] Result<std::vector<std::string>> writeResult(const Registered& registered, const std::string& out,
                                                           const Surroundings& surroundings);

}  // namespace crosstick::app
