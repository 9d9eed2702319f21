#pragma once

#include <vector>

#include "ui/press/route_card_letters.h"
#include "ui/press/route_card_words.h"

namespace crosstick::press {

/// Where a column of facts stands on a paper and how close its rows are, in millimetres.
struct FactColumn {
    double left = 0, valueLeft = 0, right = 0;
    double firstBase = 0;  ///< base line of the first row
    double step = 0;       ///< from one fact to the next
    double row = 0;        ///< from row to row of one fact
};

/// @return the base line of the last row; one step above the first where there is no fact
double drawFacts(CardPen& pen, const std::vector<CardFact>& facts, const FactColumn& column);

}  // namespace crosstick::press
