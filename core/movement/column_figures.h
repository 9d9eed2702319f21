#pragma once

#include <optional>
#include <vector>

#include "core/plan/force.h"

namespace crosstick::movement {

/// How an element lies in its column.
struct ElementFigures {
    Uuid element;
    Metres length;          ///< from its first to its last man, the last one's place included
    Metres headBehind;      ///< its head behind the column's head
    Metres intervalBehind;  ///< to the next element; 0 for the last
};
struct ColumnFigures {
    std::vector<ElementFigures> elements;  ///< the head first
    Metres length;                         ///< of the whole column
    int people = 0;
};

/// What each man takes of a column's length: the gap to the next and 0.4 m of his own, shared by the files abreast
/// (FM 21-18's factors 5.4, 2.4, 2.7 and 1.2 m; trade.md 6, from memory, its model recomputed).
[[nodiscard]] Metres perMan(const plan::Column& column);
/// Elements that the force does not have, or whose strength is not said, have no length of their own.
[[nodiscard]] ColumnFigures columnFigures(const plan::Force& force, const plan::Column& column);
/// From the column's head to its last man at a point: length over rate (common practice).
[[nodiscard]] Minutes passTime(Metres length, KilometresPerHour rate);

}  // namespace crosstick::movement
