#pragma once

#include <filesystem>
#include <functional>
#include <string_view>

#include "core/sheets/foreign_reader.h"
#include "core/units/result.h"
#include "core/units/time.h"

namespace crosstick::demo {

enum class Existing { Keep, Replace };

struct DemoOrder {
    std::filesystem::path folder;  ///< made where it is missing
    std::filesystem::path share;   ///< share/crosstick: lists and faces
    sheets::ForeignReader reader;  ///< that looks the finished sheet over
    Existing existing = Existing::Keep;
    std::function<void(std::string_view)> progress;      ///< told what is being done, kSteps times
    std::function<bool()> goesOn = [] { return true; };  ///< asked before each of them; false gives up
};
inline constexpr int kSteps = 4;

/// Makes the demo: folder/plan.gpkg, folder/sheet.tif, folder/elevation.tif. The same order gives the same bytes.
/// Needs a QGuiApplication.
/// Errors: demo/files-there where one of the three stands already and is to be kept, demo/cannot-write, demo/no-data,
///         demo/damaged-data, demo/given-up, and those of files::PlanFile.
[[nodiscard]] Result<void> makeDemo(const DemoOrder& order);

}  // namespace crosstick::demo
