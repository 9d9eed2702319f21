#pragma once

#include <optional>
#include <string>
#include <vector>

#include "core/movement/route_figures.h"

namespace crosstick::movement {

/// The way somebody who is hurt is carried to the collection point from the spot of a route that lies worst for it.
struct Carry {
    geodesy::PlanePoint from;     ///< in the grid of the work
    std::string spot, spotGrid;   ///< "CP 3", "the bend 460 m after SP 1"; its eight figures
    Metres ground;                ///< of the way
    std::optional<Minutes> time;  ///< nothing where the leader gave no rate for it
    friend bool operator==(const Carry&, const Carry&) = default;
};

/// How far it is from a route to the collection point.
struct CarryFromRoute {
    Carry straight;
    Degrees gridAzimuth, magneticAzimuth;  ///< of the straight way
    Carry byRoute;    ///< back or onward on the route to its place nearest to the point, and straight from there
    Metres offRoute;  ///< that last part
    friend bool operator==(const CarryFromRoute&, const CarryFromRoute&) = default;
};

/// A measure that evacuation names.
struct EvacuationPoint {
    std::string label, grid;  ///< "CCP 1", "FM 5689 0246"
    friend bool operator==(const EvacuationPoint&, const EvacuationPoint&) = default;
};

/// The way on that a vehicle takes, from its first to its last vertex.
struct VehicleWay {
    std::string name, toGrid;
    Metres mapDistance, groundDistance;
    std::optional<Metres> fromCollection;  ///< from the collection point to where it begins
    friend bool operator==(const VehicleWay&, const VehicleWay&) = default;
};

/// How the hurt are brought out, seen from one route. What the plan does not name, or has not placed yet, is nothing.
struct EvacuationFigures {
    std::optional<EvacuationPoint> collection, pickUp;
    std::optional<CarryFromRoute> carry;  ///< none from a vehicle's way
    std::optional<plan::MarchRate> rate;  ///< of people who carry somebody
    std::optional<VehicleWay> onward;
    friend bool operator==(const EvacuationFigures&, const EvacuationFigures&) = default;
};

/// The worst spot is the one from which the way is longest, of all between the first and the last route point: straight
/// it is a vertex, since the distance to a point has no greatest value inside a straight piece; by the route it is one
/// of both ends. Distances are ground distances. No rate is made up: without the leader's there is no time.
/// Nothing where the plan names neither collection point nor pick-up nor a way on.
/// An area counts at the mean of its corners. Errors: those of geodesy. A point that does not reach the grid of the
/// work is nothing.
[[nodiscard]] Result<std::optional<EvacuationFigures>> evacuationFrom(const plan::Plan& plan,
                                                                      const RouteFigures& figures);

/// A line of a card: the word that it is known by, and what it says.
struct EvacuationLine {
    std::string lead, text;
    friend bool operator==(const EvacuationLine&, const EvacuationLine&) = default;
};
/// "Casualties:", "Carry:", "Pick-up:": azimuths and distances to the trade's steps, times to the minute.
[[nodiscard]] std::vector<EvacuationLine> evacuationLines(const EvacuationFigures& figures, geodesy::AngleUnit unit);

}  // namespace crosstick::movement
