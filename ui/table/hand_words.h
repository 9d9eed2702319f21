#pragma once

#include <filesystem>
#include <string>
#include <vector>

#include "ui/table/overlay.h"
#include "ui/tools/tool.h"
#include "ui/work/work.h"

namespace crosstick::table {

// What the table says of the place under the hand.

/// "25T FL 5427 9806 · height 118 m · 46.04074 N  31.00969 W".
[[nodiscard]] std::string placeWords(const work::Work& work, geodesy::PlanePoint onGrid);
/// The reading tag of what is wet: azimuth and distance from its last point, paces and time, what it will be.
[[nodiscard]] Tag tagFor(const work::Work& work, const tools::Wet& wet, const std::string& hint,
                         const std::string& film);
/// The four figures by which a grid line and the tenth beyond it are called: 654270 is "5427".
[[nodiscard]] std::string fourFigures(Metres line);
/// The points of a measure or route, empty for one without.
[[nodiscard]] std::vector<geodesy::PlanePoint> pointsOf(const plan::Plan& plan, const plan::ItemId& item);
[[nodiscard]] std::filesystem::path besideFolder(const std::filesystem::path& folder, const std::string& file);

}  // namespace crosstick::table
