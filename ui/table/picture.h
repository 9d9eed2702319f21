#pragma once

#include <filesystem>
#include <optional>

#include <QImage>

#include "ui/press/faces.h"
#include "ui/table/palette.h"
#include "ui/table/scene.h"
#include "ui/table/tile_painter.h"

namespace crosstick::table {

/// How a picture of the table is to be: size, light, and what is looked at.
struct Wish {
    QSize size{1366, 768};
    Theme theme = Theme::Day;
    std::optional<geodesy::PlanePoint> centre;  ///< on the sheet's grid; none: the middle of what the films show
    std::optional<Scale> seen;                  ///< on a screen of 96 px to the inch; none: all that the films show
    double below = 1;                           ///< strength of the films under the working film, 0 to 1
};

/// One for each of a plan's sheets, in their order; null for one that is not shown.
using TileSources = std::vector<const TileSource*>;

/// The view that a wish means: everything that is inked, else the sheet, with a margin round it.
/// Errors: table/nothing-to-see for a plan without ink and without a sheet.
[[nodiscard]] Result<View> viewFor(const Scene& scene, const std::vector<FilmInk>& films, const Wish& wish);

/// Paints the whole table: desk, sheet, films, working film's edge, corner block, rim.
/// @param tiles  of the plan's sheets; where there are none: white ground with grid lines
[[nodiscard]] Result<void> paintTable(QPainter& painter, const Scene& scene, const std::vector<FilmInk>& films,
                                      const View& view, const Wish& wish, const TileSources& tiles,
                                      const press::Faces& faces);

/// The table as a picture of its own. Format_RGB32.
[[nodiscard]] Result<QImage> picture(const Scene& scene, const Wish& wish, const TileSources& tiles,
                                     const press::Faces& faces);

/// Writes a PNG beside its place and moves it there; the same picture gives the same bytes.
/// Errors: table/folder-missing, table/cannot-write with "file" and "why".
[[nodiscard]] Result<void> writePng(const QImage& image, const std::filesystem::path& file);

}  // namespace crosstick::table
