#pragma once

#include <optional>
#include <vector>

#include "core/drawing/drawing.h"
#include "core/film/occupancy.h"
#include "core/film/paper.h"

namespace crosstick::film {

struct Size {
    double width = 0;
    double height = 0;
    friend bool operator==(const Size&, const Size&) = default;
};

/// What has to find its place round or in a window, in page millimetres.
struct PiecesToPlace {
    Size window;
    Size block, levelBar, uprightBar, north;  ///< north of no width: none
    Size marking, notches;
    std::vector<drawing::Box> ticks;  ///< film millimetres: nothing stands on them
    friend bool operator==(const PiecesToPlace&, const PiecesToPlace&) = default;
};

struct Places {
    drawing::Point windowAt;
    drawing::Box block, levelBar, uprightBar, north;
    drawing::Box topMarking, footMarking, notches;
    int clashes = 0;  ///< cells of the plan's ink under furniture inside the window
    int inside = 0;   ///< how much furniture stands inside: the block counts three
};

/// The best arrangement on one paper: all of it beside the window, else inside along its edges where least is drawn.
/// Nothing where the window and its margins are larger than the paper, or a piece finds no place.
[[nodiscard]] std::optional<Places> placeOn(const Paper& paper, const PiecesToPlace& pieces, const Occupancy& drawn);

/// The least paper that holds a window of a size.
[[nodiscard]] Paper leastPaperFor(Size window);

}  // namespace crosstick::film
