#pragma once

#include <optional>
#include <string>
#include <vector>

#include "core/drawing/drawing.h"
#include "core/film/frame.h"
#include "core/film/paper.h"
#include "core/movement/route_figures.h"
#include "core/units/speech.h"

namespace crosstick::film {

/// A row of a film's legend: a sample of 16 x 5 mm with its upper left corner at 0, 0, and what it says.
struct LegendEntry {
    drawing::Drawing sample;
    std::string text;
};

/// What one film's page is made from.
struct PageOrder {
    const plan::Plan& plan;
    const plan::Film& film;
    const Frame& frame;
    PaperChoice papers = usualPapers();
    std::vector<LegendEntry> legend = {};
    /// What of the block is kept for a legend at least, so that it is the same on every film of a set: see legendRoom.
    PaperMm legendRoom{0};
    std::optional<movement::GmAngle> gm = std::nullopt;  ///< none: the page bears no north mark
    geodesy::AngleUnit angles = geodesy::AngleUnit::Degrees;
    Speech say = filled;  ///< in which language block and marks speak
};

/// A register tick as it lies on the page.
struct TickMark {
    std::string grid;        ///< "25TFL53009700", or easting and northing of a grid without letters
    geodesy::PlanePoint at;  ///< in the sheet's grid
    drawing::Point onPage;
};

/// 100 true millimetres, from 0 to 100.
struct Bar {
    drawing::Point from;
    drawing::Point to;
};

/// Where everything of one film lies on its paper, in page millimetres from its upper left corner; nothing nearer to
/// the edge than kPaperEdge.
struct Page {
    Paper paper;
    drawing::Point windowAt;  ///< the film's origin: its window's upper left corner
    std::vector<TickMark> ticks;
    std::vector<Bar> bars;               ///< level, upright
    drawing::Box block;                  ///< the administrative block
    std::vector<drawing::Box> reserved;  ///< FILM millimetres: ticks with labels and furniture inside the window
    drawing::Drawing furniture;          ///< frame, ticks, marking, notches, block, bars, north, named square
};

/// Lays out one film's page: window and furniture on the first size of paper that holds both, the furniture beside the
/// window where the paper allows, else inside it in the corners that are freest of what the plan's films show.
/// Errors: film/paper-too-small with "film", "paper", "width_mm", "height_mm" (the least paper that holds it upright as
///         the window stands); those of geodesy.
[[nodiscard]] Result<Page> layOut(const PageOrder& order);

}  // namespace crosstick::film
