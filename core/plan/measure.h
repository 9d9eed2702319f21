#pragma once

#include <map>
#include <memory>
#include <optional>
#include <string>
#include <vector>

#include "core/geodesy/points.h"
#include "core/plan/timing.h"
#include "core/units/time.h"
#include "core/units/uuid.h"

namespace crosstick::plan {

/// Identity of a measure or a route; films list these. Never an address: an address changes at every edit.
using ItemId = Uuid;
using FilmId = Uuid;
using SheetId = Uuid;

enum class Anchor { Ground, Paper };
enum class PlaceState { Unplaced, Assumed, Confirmed };
enum class Whose { Own, Enemy };
/// Present, or planned and on order: the trade draws the latter dashed.
enum class Standing { Present, Planned };

/// Where a copy of something of higher's came from.
struct TraceSource {
    std::string film;
    std::string item;
    std::string version;  ///< content hash when it was traced
    UnknownFields unknown = {};
    friend bool operator==(const TraceSource&, const TraceSource&) = default;
};

/// A control measure: one thing, wherever it is shown. Belongs to the plan; films list it.
struct Measure {
    ItemId id;
    std::string kind;  ///< catalogue identity, "checkpoint"
    /// In the plan's plane, in the order the catalogue names; for Anchor::Paper millimetres from the window's upper
    /// left corner, x as easting and y as northing (down). Empty while unplaced.
    std::vector<geodesy::PlanePoint> points;
    std::string name;                           ///< "BODKIN"
    std::string number;                         ///< "3"; a text, since "3A" exists
    std::map<std::string, std::string> fields;  ///< by the catalogue's keys
    Anchor anchor = Anchor::Ground;
    PlaceState state = PlaceState::Confirmed;
    Standing standing = Standing::Present;
    Whose whose = Whose::Own;
    std::vector<std::string> relations;  ///< "ends at: left boundary"
    std::string why;
    std::string tie;              ///< "weir with footbridge at the lake's outlet"
    std::optional<Instant> from;  ///< in force from, until
    std::optional<Instant> until;
    std::optional<TraceSource> tracedFrom;
    UnknownFields unknown;
    friend bool operator==(const Measure&, const Measure&) = default;
};
using MeasurePtr = std::shared_ptr<const Measure>;

/// The way on from the collection point is a vehicle's: it has no paces.
enum class Use { Primary, Alternate, Vehicle };

/// Where routes divide somebody has to say which one is walked.
struct Decision {
    std::string criterion;  ///< "the weir is guarded"
    std::string decider;    ///< who decides: "Plt Ldr"
    std::string codeWord;   ///< tells everybody: "TILLER"
    friend bool operator==(const Decision&, const Decision&) = default;
};

/// A contour that a route crosses, read off the sheet by hand.
struct ContourSpot {
    geodesy::PlanePoint at;  ///< plan's plane, on the route or near it
    Metres height;
    friend bool operator==(const ContourSpot&, const ContourSpot&) = default;
};

/// What a leader says about the leg that ends at a route point.
struct LegNotes {
    std::optional<Going> going;   ///< none: as the plan's timing says
    std::optional<Minutes> halt;  ///< at its end, beside the hourly halts that rates hold already
    std::string catching;         ///< what tells that one has gone too far: "road beyond the weir"
    std::string remark;
    std::optional<ItemId> rally;  ///< active on this leg; none: the last rally point that the route passed
    std::string inContact;        ///< what to do in contact
    std::string ifSeparated;
    friend bool operator==(const LegNotes&, const LegNotes&) = default;
};

/// A measure that sits on a route's vertex.
struct Stop {
    std::size_t vertex = 0;
    ItemId measure;
    UnknownFields unknown = {};
    LegNotes leg = {};  ///< of the leg that ends here
    friend bool operator==(const Stop&, const Stop&) = default;
};

/// A way. Legs run from stop to stop; vertices in between are bends. What lies before the first stop is administrative.
struct Route {
    ItemId id;
    std::string name;  ///< "QUILL"
    Use use = Use::Primary;
    std::vector<geodesy::PlanePoint> vertices;  ///< in the plan's plane
    std::vector<Stop> stops;                    ///< by rising vertex
    std::optional<ItemId> onwardTo;             ///< release point to here: azimuth and distance only
    std::optional<Instant> start;               ///< head at the first stop
    std::optional<Instant> notLaterThan;        ///< the column has closed by then: the start was worked out from it
    std::optional<Decision> decision;           ///< to leave the primary route for this one
    std::vector<ContourSpot> contours;          ///< heights by hand, where no model has them
    std::string why;
    std::string ifNotFound;  ///< one line for the card
    UnknownFields unknown;
    friend bool operator==(const Route&, const Route&) = default;
};
using RoutePtr = std::shared_ptr<const Route>;

}  // namespace crosstick::plan
