#pragma once

#include "core/plan/plan.h"
#include "ui/press/route_card_letters.h"
#include "ui/press/route_card_measures.h"
#include "ui/press/route_card_strips.h"

namespace crosstick::press {

/// A strip with its place on the card.
struct PlacedStrip {
    Strip strip;
    double top = 0;
    double bottom = 0;
};

/// Whose ladder, and how wide it stands.
struct LadderOf {
    const plan::Plan& plan;
    const movement::RouteFigures& figures;
    const movement::PaperRoute& paper;
    const CardMeasures& measures;
};

/// The row of a card's first point.
struct LadderStart {
    double top = 0, bottom = 0;
    plan::MeasurePtr point;  ///< what stands there; null for a bend
};

/// The route as a straight line with its points and what is crossed on the way, read by thumb in the dark: each strip's
/// end stands at its foot, crossings between at their share of the piece, with their distance from the last route
/// point.
void drawLadder(CardPen& pen, const LadderOf& of, const LadderStart& start, const std::vector<PlacedStrip>& strips);

}  // namespace crosstick::press
