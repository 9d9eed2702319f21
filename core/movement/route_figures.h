#pragma once

#include <optional>
#include <string>
#include <vector>

#include "core/geodesy/declination.h"
#include "core/geodesy/plane_angles.h"
#include "core/movement/pace.h"
#include "core/movement/progress.h"
#include "core/movement/relief.h"
#include "core/plan/plan.h"
#include "core/sheets/height_source.h"

namespace crosstick::movement {

class WorkGrid;

/// The one G-M angle of a route and how it was got.
struct GmAngle {
    Degrees angle;  ///< grid to magnetic, east positive
    plan::DeclinationSource source;
    std::optional<geodesy::Declination> model;  ///< at the route's middle; none outside the model's dates
    Degrees convergence;                        ///< of the grid of the work at the route's middle
    geodesy::PlanePoint middle;                 ///< in the grid of the work
    CalendarDate date;
    std::optional<Metres> height;    ///< used for the model; none: 0 was taken
    std::optional<Degrees> printed;  ///< the sheet's own angle, brought to the date by its yearly change
    friend bool operator==(const GmAngle&, const GmAngle&) = default;
};

/// One straight piece: bend to bend.
struct Piece {
    geodesy::PlanePoint from, to;  ///< in the grid of the work
    Degrees gridAzimuth;           ///< not a number for a piece of no length
    Degrees trueAzimuth;           ///< geodesic, at the start
    Degrees backTrueAzimuth;       ///< from the end, where it is read
    Degrees magneticAzimuth;
    Metres mapDistance;                                   ///< in the plane of the grid of the work
    Metres groundDistance;                                ///< geodesic on WGS 84
    std::optional<Metres> climb, descent, slopeDistance;  ///< unknown without heights
    std::optional<Steepest> steepest;
    std::optional<double> paces;  ///< double paces on ground distance, by its ground and light; none without a count
    std::optional<Minutes> time;
    bool slowed = false;        ///< by the plan's hiking rule, which is slower here than doctrine
    bool fromContours = false;  ///< heights were read off the sheet by hand
    friend bool operator==(const Piece&, const Piece&) = default;
};

/// From route point to route point.
struct Leg {
    int number = 1;
    plan::ItemId from, to;
    std::string fromLabel, toLabel;  ///< "SP 1", "CP 3"
    std::string fromGrid, toGrid;    ///< 8 digits of the grid of the work, MGRS where it is UTM on WGS 84
    std::vector<Piece> pieces;
    Metres mapDistance, groundDistance;
    std::optional<Metres> climb, descent, slopeDistance;
    std::optional<Steepest> steepest;  ///< seen from the leg's start
    bool fromContours = false;         ///< heights of one of its pieces were read off the sheet by hand
    std::optional<double> paces;
    std::optional<Minutes> time;
    Metres groundSoFar;                ///< at the end of the leg
    std::optional<Minutes> timeSoFar;  ///< the halts at points before it counted
    std::optional<Instant> arrival;    ///< head of the column, the second begun
    plan::LegNotes notes;
    std::string rallyLabel;  ///< of the active rally point, empty where there is none
    friend bool operator==(const Leg&, const Leg&) = default;
};

/// Direction and distance only, outside the totals.
struct Onward {
    plan::ItemId to;
    std::string toLabel;
    Piece piece;
    friend bool operator==(const Onward&, const Onward&) = default;
};

/// What lies before the start point: each commander's own affair, outside legs and totals.
struct Administrative {
    Metres mapDistance, groundDistance;
    friend bool operator==(const Administrative&, const Administrative&) = default;
};

struct RouteFigures {
    plan::ItemId route;
    std::string name;
    plan::Use use = plan::Use::Primary;
    std::string gridCrs;
    GmAngle gm;
    std::vector<Leg> legs;
    std::optional<Onward> onward;
    std::optional<Administrative> administrative;
    Metres mapDistance, groundDistance;
    std::optional<Metres> climb, descent, slopeDistance;
    std::optional<Steepest> steepest;  ///< seen from the first stop
    bool fromContours = false;         ///< those of one of its legs were
    std::optional<double> paces;
    std::optional<Minutes> time;  ///< on the move and at the halts of route points between the first and the last
    std::optional<Instant> start, arrival;
    Progress progress;  ///< over the legs, onward, and as far beyond as the longest column reaches back
    std::optional<plan::PaceProfile> pace;  ///< the one figure; none where courses were walked
    std::vector<UsedPace> counts;           ///< that the legs were counted by, each once; of a vehicle none
    std::optional<plan::MarchRate> rate;
    std::optional<plan::Timing> timing;  ///< none: the one rate made the times
    friend bool operator==(const RouteFigures&, const RouteFigures&) = default;
};

/// Everything a card, a ledger or a film says about a route, computed here and nowhere else.
///
/// Map distances and grid azimuths are those of the grid of the work (the first ground sheet's printed grid); ground
/// distance is the geodesic. One G-M angle for the whole route, at the middle of its length. Legs begin at the first
/// start point, or at the first stop where no stop is one. Heights that no model gives come from the contours that
/// somebody read along the route. Paces, rates and times are those of people on foot: a vehicle's way has none.
/// @param model    may be absent only where the plan takes the sheet's printed angle
/// @param heights  null: climb, descent and slope distance stay unknown
/// Errors: movement/..., and those of geodesy. A route with fewer than two stops is one leg from its first to its last
///         vertex.
[[nodiscard]] Result<RouteFigures> routeFigures(const plan::Plan& plan, const plan::Route& route,
                                                const geodesy::MagneticModel* model,
                                                const sheets::HeightSource* heights);
/// The same with the plan's work grid kept open by the caller. Opening it costs some nine times what a route of 200
/// vertices does, so that whoever computes often (while a vertex is dragged) keeps it as long as plane and sheets stay.
[[nodiscard]] Result<RouteFigures> routeFigures(const plan::Plan& plan, const plan::Route& route, const WorkGrid& grid,
                                                const geodesy::MagneticModel* model,
                                                const sheets::HeightSource* heights);

/// The second in which the column's head is there: cut, not rounded, so that the minute taken from it is the one that
/// the exact time gives. Nothing where start or time is unknown, or beyond a century.
[[nodiscard]] std::optional<Instant> arrivalAfter(std::optional<Instant> start, std::optional<Minutes> time);

/// "SP 1", "CP 3", "AA HASSOCK": how a measure is called in lists, by the catalogue's abbreviation.
[[nodiscard]] std::string label(const plan::Measure& measure);

}  // namespace crosstick::movement
