#pragma once

#include <span>
#include <vector>

#include "core/registration/grey_picture.h"
#include "core/registration/lattice.h"
#include "core/worker/child.h"

namespace crosstick::registration {

/// A crossing of the printed grid as it was found in the picture.
struct Crossing {
    PixelPoint at;
    geodesy::PlanePoint place;  ///< by name: a whole count of lines
    double confidence = 0;      ///< 0 to 1; under kSure it is to be looked at
};
inline constexpr double kSure = 0.5;

/// Finds the remaining crossings of a sheet's grid from at least three marks on it: outwards from the marks, ring by
/// ring, each predicted by all found so far (affine, from six on projective, and by how its neighbours differ from
/// that), its two lines traced and cut. Confidence falls where an arm of the cross is missing (the neatline), a line is
/// thicker than the sheet's (a frame), faint, ragged, has a rival near by, or where the crossing stands off from what
/// its neighbours say. An arm under a name or a wood is forgiven where the crossing has others on all four
/// sides. Corners and ends of lines are left out, and all crossings are where the marks' own crossings show
/// no lines: none is invented.
/// @return those at the marks too, from the north-west, row by row; empty where there is no grid
/// Errors: those of the picture, worker/stopped; registration/too-few-marks, registration/one-line.
[[nodiscard]] Result<std::vector<Crossing>> findCrossings(const GreyPicture& picture, const Lattice& lattice,
                                                          std::span<const Mark> marks,
                                                          const worker::IsStopped& isStopped = {});

}  // namespace crosstick::registration
