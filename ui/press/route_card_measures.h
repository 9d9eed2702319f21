#pragma once

#include "ui/press/route_card_letters.h"

namespace crosstick::press {

// The A5 card's own measures, in millimetres from its upper left corner.
inline constexpr double kCardWidth = 148;
inline constexpr double kCardHeight = 210;
inline constexpr double kLeft = 8;
inline constexpr double kRight = 140;
inline constexpr double kRule = 0.5;       ///< pen of the rules that part the card
inline constexpr double kThinRule = 0.25;  ///< pen of the rules between legs

// Columns of the table.
inline constexpr double kLadderLine = 13.2;
inline constexpr double kLadderText = 16.8;
inline constexpr double kLadderEnd = 38.6;
inline constexpr double kDivide = 40;
inline constexpr double kText = 41;
inline constexpr double kTextWidth = 42;
inline constexpr double kAzimuthEnd = 98;
inline constexpr double kMetresEnd = 111;
inline constexpr double kPacesEnd = 124;
inline constexpr double kFigureWidth = 12.4;  ///< of the columns metres and paces

// Rows of a strip.
inline constexpr double kLabelDrop = 5.0;  ///< base line of the label under the strip's upper edge
inline constexpr double kTieStep = 3.5;
inline constexpr double kInfoTop = 14.9;  ///< base line of the first row under azimuth, back and grid
inline constexpr double kInfoStep = 3.0;
inline constexpr double kInfoWidth = 71;  ///< up to the word "passed"
inline constexpr double kStripFoot = 1.7;
inline constexpr double kBendStrip = 11.6;
inline constexpr double kFullStrip = 23.5;  ///< as high as a strip grows where there is room

inline constexpr Hand kTieHand{2.0, drawing::Weight::Regular};
inline constexpr Hand kInfoHand{1.8, drawing::Weight::Regular};
inline constexpr Hand kSmallHand{1.8, drawing::Weight::Regular};
inline constexpr Hand kFactHand{2.0, drawing::Weight::Regular};
inline constexpr Hand kFigureHand{3.0, drawing::Weight::Bold};
inline constexpr Hand kAzimuthHand{4.4, drawing::Weight::Bold};

}  // namespace crosstick::press
