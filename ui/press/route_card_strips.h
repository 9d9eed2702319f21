#pragma once

#include <string>
#include <vector>

#include "core/movement/paper_figures.h"
#include "ui/press/route_card_measures.h"

namespace crosstick::press {

/// The row of one straight piece on a card. The last piece of a leg also tells of the route point it ends at.
struct Strip {
    std::size_t leg = 0;    ///< place in PaperRoute::legs
    std::size_t piece = 0;  ///< place in the leg's pieces
    bool endsLeg = false;
    std::vector<std::string> tie, info;  ///< rows under the label
    double height = 0;                   ///< millimetres
};

/// What one card holds.
struct CardStrips {
    std::vector<Strip> strips;
};

/// How much height cards have for their strips, in millimetres.
struct CardRoom {
    double first, onward;       ///< a card that another follows
    double firstAndLast, last;  ///< one that none follows
};

/// Shares the pieces out over as few cards as hold them, at most so many legs a card as its size holds, as evenly as
/// their heights allow. A leg stays on one card unless it alone is too high for one; then it is parted at a bend.
[[nodiscard]] std::vector<CardStrips> shareOut(const movement::PaperRoute& paper, const CardMeasures& measures,
                                               CardRoom room);

}  // namespace crosstick::press
