#pragma once

#include <vector>

#include "core/movement/relief.h"
#include "core/movement/route_figures.h"

namespace crosstick::movement {

/// A way as it will be walked, noted piece by piece while it is measured; times and paces are made when all of it is
/// known: a piece is counted by its ground and by the light in which it is walked.
class NotedWay {
  public:
    explicit NotedWay(const plan::Plan& plan) : plan_(plan) {}

    /// @param going   none: as the plan's timing says
    /// @param relief  none: a hiking rule cannot be used, and doctrine stands alone
    void addPiece(Metres ground, std::optional<plan::Going> going, const std::optional<Relief>& relief);
    /// A halt before the next piece.
    void addHalt(std::optional<Minutes> lasts);

    /// Times, arrivals, paces and the head's progress for figures whose pieces are exactly those that were noted: those
    /// of the legs, and onward's where there is one. Times stay unknown where the plan has no rate, paces where it has
    /// no count and for a vehicle.
    /// @param place  by which nights are reckoned
    void giveTimesAndPaces(RouteFigures& figures, geodesy::GeoPoint place) const;

  private:
    const plan::Plan& plan_;
    std::vector<Stretch> stretches_;
    std::vector<std::size_t> pieceEnds_;  ///< of each piece, how many stretches there are at its end
    Minutes halt_{0};
};

}  // namespace crosstick::movement
