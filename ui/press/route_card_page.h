#pragma once

#include <string>
#include <vector>

#include "core/drawing/drawing.h"
#include "core/movement/route_figures.h"
#include "core/plan/plan.h"

namespace crosstick::press {

/// A5 for the map case, A6 for a breast pocket; both are marked where they fold.
enum class CardSize { A5, A6 };

/// One printed card: a drawing in millimetres from the upper left corner of its paper, upright.
struct CardPage {
    std::string name;  ///< "RTE QUILL, card 1 of 2"
    PaperMm width{148};
    PaperMm height{210};
    drawing::Drawing drawing;
};

/// A route's card. Every piece between two bends has its own azimuth and distance: a navigator walks each by itself, so
/// no leg's figures are averaged. Five legs a card at most, four on A6; what follows goes on a next card, which begins
/// with the last point of the one before and the sums brought on.
/// @param modelName  of the magnetic model: "WMM2025"
/// Errors: those of movement::paperFigures and movement::evacuationFrom.
[[nodiscard]] Result<std::vector<CardPage>> routeCard(const plan::Plan& plan, const movement::RouteFigures& figures,
                                                      geodesy::AngleUnit unit, const std::string& modelName,
                                                      CardSize size = CardSize::A5);

}  // namespace crosstick::press
