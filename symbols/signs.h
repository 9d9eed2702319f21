#pragma once

#include "core/measures/catalogue.h"
#include "symbols/desk.h"

namespace crosstick::symbols {

/// What a sign is built on, and so what is checked before it is drawn.
enum class Body {
    Spot,     ///< one point
    Line,     ///< two points or more
    Ring,     ///< three points or more, closed
    Anchors,  ///< as many points as the catalogue says
};

/// The order in which what is shown is lettered (engraving A14): who comes first has the better place.
enum class Turn { Blocks, Symbols, LineEnds, Boundaries, Areas, Routes, Words };
/// The order of painting: areas and lines lie under routes, routes under symbols.
enum class Layer { Areas, Lines, Routes, Symbols };

/// How one sign of the catalogue is engraved.
struct SignRule {
    measures::Sign sign;
    Body body;
    Turn turn;
    Layer layer;
    void (*place)(Desk&, Subject&);
    /// The line that runs along its ink, from its points: letters had better not cross it. Null: the points themselves.
    Points (*along)(const Points&) = nullptr;
};

[[nodiscard]] const SignRule& ruleOf(measures::Sign sign);
/// A measure of a kind that this version does not know: its points as a thin line, its name beside.
[[nodiscard]] const SignRule& unknownRule();

}  // namespace crosstick::symbols
