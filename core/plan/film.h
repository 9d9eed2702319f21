#pragma once

#include <memory>
#include <optional>
#include <set>
#include <string>
#include <vector>

#include "core/drawing/drawing.h"
#include "core/plan/measure.h"

namespace crosstick::plan {

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
