#pragma once

#include <vector>

#include "core/plan/plan.h"

namespace crosstick::sheets {

/// An edge along which two sheets of a plan join, or ought to.
struct Seam {
    plan::SheetId one, other;
    geodesy::PlanePoint from, to;  ///< where it begins and ends, in the plan's plane
    Metres offset;                 ///< the widest: above 0 a strip is missing between them, below 0 they overlap
    Metres slack;                  ///< up to this much nobody sees: 0.3 mm at the smaller scale, a figure of ours
    [[nodiscard]] bool meets() const { return offset <= slack && offset >= Metres(0) - slack; }
};

/// The seams of a plan: every pair of edges of two sheets' maps (scans of films are none) (their neatlines, or the
/// whole raster where it has none) that look at each other, lie side by side for at least a quarter of the shorter, and
/// are no farther apart than 6 mm at the smaller scale. Offsets are measured in the plan's plane, each datum brought
/// there by PROJ. Errors: those of geodesy::PlaneLink.
[[nodiscard]] Result<std::vector<Seam>> seamsOf(const plan::Plan& plan);

}  // namespace crosstick::sheets
