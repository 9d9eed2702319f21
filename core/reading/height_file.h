#pragma once

#include <array>
#include <filesystem>
#include <string>
#include <vector>

#include "core/sheets/dataset.h"

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
    [[nodiscard]] Result<void> finish() &&;

  private:
    std::filesystem::path out_;
    sheets::DatasetPtr dataset_;
    int row_ = 0;
};

}  // namespace crosstick::reading
