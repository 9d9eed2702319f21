#pragma once

#include "core/units/result.h"
#include "sample-data/ground/island.h"
#include "sample-data/ground/lattice.h"

namespace crosstick::demo {

/// The finished ground.
struct Ground {
    Field<float> heights;  ///< metres above the sea; sea 0
    Field<Cover> cover;
    Line shore;  ///< the smoothed outlines that the cover was cut with
    std::vector<Line> islets;
    Line lake;
    std::vector<NamedPegs> brooks;  ///< smoothed, downhill
    PegLine edge;                   ///< the smoothed shore with the height of the edge behind it
};

/// Cells of 10 m, their centres on the multiples of 10, over the whole island and two kilometres of sea round it.
[[nodiscard]] Lattice islandLattice();

/// Makes the ground from its lists: ridges, brooks, lake, shore and the edge behind it are pinned, the rest is the
/// surface between them, made rough by a fixed seed. The same lists give the same ground. Laws: (1) every height of a
/// spot height is met exactly at its cell; (2) every listed height of ridges and brooks within 2.5 m; (3) no brook
/// rises from cell to cell; (4) the sea is 0.
[[nodiscard]] Ground makeGround(const Island& island);

}  // namespace crosstick::demo
