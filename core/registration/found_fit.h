#pragma once

#include <optional>
#include <span>
#include <vector>

#include "core/registration/crossing_finder.h"
#include "core/registration/fit.h"

namespace crosstick::registration {

/// A fit to marks and to what was found by them.
struct FoundFit {
    Fit fit;  ///< its residuals: the marks' in their order, then those of the sure crossings aside from the marks
    std::vector<Crossing> crossings;  ///< all, those at the marks too
};

/// Registers a picture by marks, then finds the grid's other crossings from those marks that are no blunders, and fits
/// anew to the marks and all sure crossings where no mark stands. A crossing that is a blunder to that fit is sure no
/// more. The grid's interval is that of the marks (intervalsOf); where lines of that interval are not there, the next
/// wider is tried. Without a grid the fit is that of the marks alone.
/// Errors: those of fitMarks() and findCrossings().
[[nodiscard]] Result<FoundFit> fitWithCrossings(const GreyPicture& picture, std::span<const Mark> marks,
                                                std::optional<Kind> wish = std::nullopt,
                                                const worker::IsStopped& isStopped = {});

}  // namespace crosstick::registration
