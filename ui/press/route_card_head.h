#pragma once

#include "ui/press/route_card_measures.h"
#include "ui/press/route_card_words.h"

namespace crosstick::press {

/// What a card's head needs to know beside its words.
struct CardHead {
    const CardMeasures& measures;
    const CardWords& words;
    geodesy::AngleUnit unit;
    bool hasPaces = true;
    std::size_t number = 1, cards = 1;
};

/// Everything above the table's rows, and the marking at the foot. @return where the first row begins
double drawCardHead(CardPen& pen, const CardHead& head);

}  // namespace crosstick::press
