#pragma once

#include <memory>
#include <optional>
#include <set>
#include <string>
#include <vector>

#include "core/drawing/drawing.h"
#include "core/plan/measure.h"

namespace crosstick::plan {

/// A straight piece of a route's leg, named by the leg's ends so that an edit of another leg leaves it as it is.
struct LegPiece {
    ItemId from, to;        ///< the route points between which the leg runs; none where the route has none there
    std::size_t piece = 0;  ///< how many bends of the leg lie before it
    std::size_t bends = 0;  ///< of the whole leg: with another number of them it has other pieces
    friend bool operator==(const LegPiece&, const LegPiece&) = default;
};

/// Where a hand placed the figures of a piece. Of a leg that is walked twice these are the first time's; those of a leg
/// that there is not any more wait for it to come back.
struct FiguresAt {
    LegPiece leg;
    geodesy::PlanePoint at;  ///< their middle, in the plan's plane
    UnknownFields unknown = {};
    friend bool operator==(const FiguresAt&, const FiguresAt&) = default;
};

/// One measure or route on one film, with what differs there.
struct Showing {
    ItemId item;
    std::string order;                            ///< fractional key: films draw and list by it
    std::optional<geodesy::PlanePoint> symbolAt;  ///< set aside here (plan's plane), with an extension line
    std::optional<geodesy::PlanePoint> labelAt;   ///< middle of a label placed by hand (plan's plane)
    /// In a row with this unit, both on the one extension line of that unit. It stands by itself where that one is not
    /// shown.
    std::optional<ItemId> standsWith = {};
    /// Its extension line ends on the edge of this area or line, not on its own spot.
    std::optional<ItemId> pointsTo = {};
    std::vector<FiguresAt> figures = {};  ///< of a route: what a hand placed of its legs' figures
    UnknownFields unknown = {};
    friend bool operator==(const Showing&, const Showing&) = default;
};

/// One window and one set of register ticks, in the ground sheet's grid (metres): of all films of a plan, or an
/// inset's.
struct Registration {
    geodesy::PlanePoint southWest;
    geodesy::PlanePoint northEast;
    std::vector<geodesy::PlanePoint> ticks;  ///< grid crossings
    UnknownFields unknown = {};
    friend bool operator==(const Registration&, const Registration&) = default;
};

/// A part of another film at a larger scale, with a window and ticks of its own; the scale is the film's.
struct Inset {
    FilmId parent;
    Registration place;
    UnknownFields unknown = {};
    friend bool operator==(const Inset&, const Inset&) = default;
};

/// A transparent overlay. Higher's own or ours.
struct Film {
    FilmId id;
    std::string name;  ///< "MOVE"
    std::set<int> phases;
    std::optional<Scale> scale;           ///< none: the ground sheet's
    std::optional<SheetId> groundSheet;   ///< none: the plan's first
    std::optional<drawing::Gauge> gauge;  ///< its own sizes; none: the plan's
    bool pinned = false;                  ///< nothing on it is drawn, moved or taken away by hand
    std::optional<Inset> inset;           ///< none: the plan's window and ticks
    std::vector<Showing> shows;           ///< sorted by order
    UnknownFields unknown;
    friend bool operator==(const Film&, const Film&) = default;
};
using FilmPtr = std::shared_ptr<const Film>;

/// A key between two others ("" stands for before the first, after the last). Laws: a < between(a, b) < b.
[[nodiscard]] std::string orderBetween(const std::string& before, const std::string& after);

}  // namespace crosstick::plan
