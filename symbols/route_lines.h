#pragma once

#include "symbols/desk.h"

namespace crosstick::symbols {

/// One straight piece of a route, from vertex to vertex, and how far beside the true line its ink runs.
struct RoutePiece {
    Point from, to;
    double aside = 0;                ///< left of travel positive; 0 where the piece is the route's own
    bool sharedWithPrimary = false;  ///< an alternate on a primary's line: no head, no label of its own
    [[nodiscard]] double length() const { return drawing::length(to - from); }
    [[nodiscard]] Vector direction() const { return drawing::unit(to - from); }
};

/// The pieces of one route among all those shown.
[[nodiscard]] std::vector<RoutePiece> piecesOf(const Subject& route, const std::vector<Subject*>& all);
/// First and last vertex of the legs; what lies outside is administrative.
struct LegSpan {
    std::size_t first, last;
};
[[nodiscard]] LegSpan legSpan(const Desk& desk, const Subject& route);
/// What a route's line is drawn of: a primary's is whole, an alternate's dashed, a vehicle's dashed with a short stroke
/// in each gap (our own pattern, explained in the legend).
[[nodiscard]] std::vector<drawing::Polyline> routePattern(const drawing::Path& path, plan::Use use);
/// An administrative move's round dots.
[[nodiscard]] drawing::Stroke administrativeDots(const drawing::Path& path, drawing::Ink ink);
/// The ink's line from one vertex to another, with transitions 3.0 long on and off a shared stretch.
[[nodiscard]] Points inkLine(const std::vector<RoutePiece>& pieces, std::size_t first, std::size_t last);

}  // namespace crosstick::symbols
