#pragma once

#include <array>
#include <filesystem>
#include <string>
#include <vector>

#include "core/reading/own_file.h"

namespace crosstick::reading {

/// A height model as sheets::Elevation reads it: one band of floats in metres, not-a-number where there is none, the
/// CRS as text in the item CRS of the domain CROSSTICK.
class HeightFile {
  public:
    /// Errors: sheets/no-room.
    [[nodiscard]] static Result<HeightFile> create(const std::filesystem::path& out, int columns, int rows,
                                                   const std::string& crs, std::array<double, 6> placement);
    /// Whole rows, from the top on. Errors: sheets/no-room.
    [[nodiscard]] Result<void> addRows(std::vector<float>& heights, int count);
    [[nodiscard]] Result<void> finish() && { return file_.finish(); }

  private:
    OwnFile file_;
    int row_ = 0;
};

}  // namespace crosstick::reading
