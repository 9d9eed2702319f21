#pragma once

#include <vector>

#include "core/geodesy/points.h"

namespace crosstick::film {

/// From low to high along one axis of a grid.
struct Span {
    Metres low, high;
    [[nodiscard]] Metres length() const { return high - low; }
};

/// An upright part of a grid. Empty where a span runs backwards.
struct Window {
    Span east, north;

    [[nodiscard]] static Window none();
    [[nodiscard]] bool isEmpty() const;
    void add(geodesy::PlanePoint point);
    [[nodiscard]] Window grown(Metres by) const;
    [[nodiscard]] Window shrunk(Metres by) const { return grown(-by); }
    [[nodiscard]] Window cut(const Window& limits) const;
    /// Edges moved to whole steps, outward or inward.
    [[nodiscard]] Window roundedOut(Metres step) const;
    [[nodiscard]] Window roundedIn(Metres step) const;
};

/// Grid lines inside a span, ends counted.
[[nodiscard]] std::vector<Metres> linesIn(Span span, Metres interval);

/// The span grown at its cheaper side, within the limits, until two grid lines lie in it with an inset from both ends;
/// as far as the limits let it where they do not reach. Ends stay on whole tenths of the interval.
[[nodiscard]] Span holdingTwoLines(Span span, Span limits, Metres interval, Metres inset);

}  // namespace crosstick::film
