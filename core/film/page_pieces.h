#pragma once

#include <optional>
#include <vector>

#include "core/film/block.h"
#include "core/film/furniture.h"
#include "core/film/grid_names.h"
#include "core/film/named_square.h"
#include "core/film/page.h"
#include "core/film/placed_ticks.h"
#include "core/film/placement.h"

namespace crosstick::film {

/// What films of one grid, scale and window have in common.
struct Ground {
    const plan::Registration& registration;
    const GridNames& names;
    const Occupancy& drawn;  ///< by all films of the plan
    const std::vector<PlacedTick>& ticks;
};

/// Pieces of furniture, drawn, and what room they take.
struct Pieces {
    Piece level, upright, north, notch, mark;
    PiecesToPlace toPlace;
};

/// The notches get the room of the widest of all films, so that they do not make one film lie otherwise than the next.
[[nodiscard]] Pieces piecesOf(const PageOrder& order, const Ground& ground);

/// Where everything lies on which paper; the same for all films whose pieces are of the same sizes.
struct Arrangement {
    PiecesToPlace pieces;
    PaperChoice papers;
    Paper paper;
    Places places;
    std::optional<NamedSquare> square;
    std::vector<drawing::Box> reserved;  ///< film millimetres
};

/// Errors: film/paper-too-small.
[[nodiscard]] Result<Arrangement> arrange(const PageOrder& order, const Ground& ground, const Pieces& pieces);

[[nodiscard]] Page drawnPage(const PageOrder& order, const Ground& ground, const Pieces& pieces,
                             const Arrangement& arrangement);

}  // namespace crosstick::film
