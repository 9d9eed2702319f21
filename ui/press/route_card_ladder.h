#pragma once

#include "core/plan/plan.h"
#include "ui/press/route_card_letters.h"
#include "ui/press/route_card_strips.h"

namespace crosstick::press {

/// A strip with its place on the card.
struct PlacedStrip {
    Strip strip;
    double top = 0;
    double bottom = 0;
};

/// The route as a straight line with its points and what is crossed on the way, read by thumb in the dark: each strip's
/// end stands at its foot, crossings between at their share of the piece, with their distance from the last route
/// point.
/// @param startTop, startBottom  of the row of the card's first point
/// @param startPoint             what stands there; null for a bend
void drawLadder(CardPen& pen, const plan::Plan& plan, const movement::RouteFigures& figures,
                const movement::PaperRoute& paper, double startTop, double startBottom,
                const plan::MeasurePtr& startPoint, const std::vector<PlacedStrip>& strips);

}  // namespace crosstick::press
