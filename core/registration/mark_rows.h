#pragma once

#include <string_view>
#include <vector>

#include "core/registration/mark.h"
#include "core/registration/printed_grid.h"
#include "core/units/result.h"

namespace crosstick::registration {

/// What a list of marks or points says: what could be read, in its order, and what is wrong with each other row.
template <class Row>
struct Rows {
    std::vector<Row> good;
    std::vector<Error> bad;  ///< with "line", counted from 1; at most kMostBad, and one more that counts the rest
};
inline constexpr std::size_t kMostBad = 20;
inline constexpr std::size_t kLongestList = std::size_t{1} << 20;  ///< bytes
inline constexpr std::size_t kMostRows = 20000;

/// Rows `x,y,easting,northing` (pixels; metres in the grid's CRS) or `x,y,grid` (PrintedGrid). The columns may be named
/// in a first row, in any order, among others that are passed over; without one they are these. Blank rows and what
/// begins with # are none; a field may stand in quotation marks; a grid's own commas are its own where it comes last.
/// Errors: registration/list-too-long for a text over the limits, registration/no-columns for a first row that names
/// others,
///         registration/no-rows. Of a row: registration/short-row, registration/no-number, registration/off-picture for
///         a pixel beyond +-1e6, registration/no-grid, those of PrintedGrid::read().
[[nodiscard]] Result<Rows<Mark>> readMarks(std::string_view text, PrintedGrid& grid);
/// Rows `x,y`. Errors: likewise.
[[nodiscard]] Result<Rows<PixelPoint>> readPoints(std::string_view text);

}  // namespace crosstick::registration
