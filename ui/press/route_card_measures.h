#pragma once

#include "ui/press/route_card_letters.h"
#include "ui/press/route_card_page.h"

namespace crosstick::press {

inline constexpr double kRule = 0.5;       ///< pen of the rules that part a card
inline constexpr double kThinRule = 0.25;  ///< pen of the rules between legs

inline constexpr Hand kSmallHand{1.8, drawing::Weight::Regular};
inline constexpr Hand kInfoHand{1.8, drawing::Weight::Regular};
inline constexpr Hand kTieHand{2.0, drawing::Weight::Regular};
inline constexpr Hand kFactHand{2.0, drawing::Weight::Regular};

/// A card's own measures, in millimetres from its upper left corner; drops are from the upper edge of a row to a base
/// line.
struct CardMeasures {
    const char* name;
    double width, height, left, right;
    double markTop, markFoot;  ///< base lines of the marking
    std::size_t legs;          ///< on one card at most

    // Columns of the table.
    double ladderLine, ladderText, ladderEnd, divide, text, textWidth;
    double crossingRow;  ///< least distance of two crossings' words
    double metresUnder;  ///< how far under a crossing's label its metres stand; 0: beside it
    double azimuthEnd, metresEnd, pacesEnd;
    double figureWidth, arriveWidth;

    // Rows of a strip.
    double labelDrop;
    double gridDrop;  ///< the label's own where the grid stands beside it
    double figureDrop, backDrop;
    double gridAzimuthDrop;  ///< 0: a card without it
    std::size_t tieRows;     ///< beside the azimuth; what is left of a tie stands with the leg's own figures
    double tieStep, infoTop, infoStep, infoWidth, stripFoot;
    double bendStrip, fullStrip;  ///< a bend's height; as high as a leg's grows where there is room
    double passedUp;              ///< the line to write on over the lower edge; 0: at passedDrop
    double passedDrop;

    // Round the table.
    double headRow, startRow, totalsRow, exactRow, exactLeft;
    double notesStep, sourceFoot, sourceStep;
    Hand label, grid, figure, azimuth, note, lead, source, mark;
};

inline constexpr CardMeasures kA5{
    .name = "A5",
    .width = 148,
    .height = 210,
    .left = 8,
    .right = 140,
    .markTop = 7.6,
    .markFoot = 206.6,
    .legs = 5,
    .ladderLine = 13.2,
    .ladderText = 16.8,
    .ladderEnd = 38.6,
    .divide = 40,
    .text = 41,
    .textWidth = 42,
    .crossingRow = 3.3,
    .metresUnder = 0,
    .azimuthEnd = 98,
    .metresEnd = 111,
    .pacesEnd = 124,
    .figureWidth = 12.4,
    .arriveWidth = 15,
    .labelDrop = 5.0,
    .gridDrop = 5.0,
    .figureDrop = 6.2,
    .backDrop = 9.3,
    .gridAzimuthDrop = 12.1,
    .tieRows = 2,
    .tieStep = 3.5,
    .infoTop = 14.9,
    .infoStep = 3.0,
    .infoWidth = 71,  // up to the word "passed"
    .stripFoot = 1.7,
    .bendStrip = 11.6,
    .fullStrip = 23.5,
    .passedUp = 2.2,
    .passedDrop = 0,
    .headRow = 6.5,
    .startRow = 10.8,  // label, tie, and the box of the first point beside them
    .totalsRow = 7.6,
    .exactRow = 3.8,
    .exactLeft = 41,
    .notesStep = 3.6,
    .sourceFoot = 201.4,
    .sourceStep = 2.7,
    .label = {2.8, drawing::Weight::Bold},
    .grid = {2.2, drawing::Weight::Bold},
    .figure = {3.0, drawing::Weight::Bold},
    .azimuth = {4.4, drawing::Weight::Bold},
    .note = {2.0, drawing::Weight::Regular},
    .lead = {2.0, drawing::Weight::Bold},
    .source = {1.7, drawing::Weight::Regular},
    .mark = {2.6, drawing::Weight::Bold},
};

/// For a breast pocket: no grid azimuth, the grid under the label, ties across the card.
inline constexpr CardMeasures kA6{
    .name = "A6",
    .width = 105,
    .height = 148,
    .left = 6,
    .right = 99,
    .markTop = 6.2,
    .markFoot = 145.2,
    .legs = 4,
    .ladderLine = 9.2,
    .ladderText = 12.2,
    .ladderEnd = 28.8,
    .divide = 30,
    .text = 31,
    .textWidth = 18.6,
    .crossingRow = 5.4,
    .metresUnder = 2.5,
    .azimuthEnd = 62.6,
    .metresEnd = 73.6,
    .pacesEnd = 84.6,
    .figureWidth = 10.4,
    .arriveWidth = 13.4,
    .labelDrop = 4.4,
    .gridDrop = 7.8,
    .figureDrop = 5.4,
    .backDrop = 8.6,
    .gridAzimuthDrop = 0,
    .tieRows = 0,
    .tieStep = 3.2,
    .infoTop = 13.0,
    .infoStep = 2.7,
    .infoWidth = 68,
    .stripFoot = 1.5,
    .bendStrip = 10.4,
    .fullStrip = 20,
    .passedUp = 0,
    .passedDrop = 9.6,
    .headRow = 4.4,
    .startRow = 9.6,
    .totalsRow = 6.0,
    .exactRow = 3.2,
    .exactLeft = 6,
    .notesStep = 2.9,
    .sourceFoot = 141.6,
    .sourceStep = 2.4,
    .label = {2.6, drawing::Weight::Bold},
    .grid = {2.0, drawing::Weight::Bold},
    .figure = {2.6, drawing::Weight::Bold},
    .azimuth = {4.0, drawing::Weight::Bold},
    .note = {1.8, drawing::Weight::Regular},
    .lead = {1.8, drawing::Weight::Bold},
    .source = {1.6, drawing::Weight::Regular},
    .mark = {2.2, drawing::Weight::Bold},
};

[[nodiscard]] constexpr const CardMeasures& measuresOf(CardSize size) {
    return size == CardSize::A6 ? kA6 : kA5;
}

}  // namespace crosstick::press
