#pragma once

#include "core/measures/catalogue.h"

namespace crosstick::measures {

/// What becomes of a kind when the phase that it was drawn for is over.
enum class Afterwards {
    LivesOn,           ///< as long as nobody takes it away
    Moves,             ///< it is somewhere else by then: a unit
    Spent,             ///< it served what was done: arrows, tasks, the order of march, words
    BehindOnceCrossed  ///< it lies behind whoever has crossed it: lines to report, stop or deploy at
};
[[nodiscard]] Afterwards afterwards(const Entry& entry);

/// Is it an arrow along which somebody goes from its first point to its last?
[[nodiscard]] bool leadsOn(const Entry& entry);

}  // namespace crosstick::measures
