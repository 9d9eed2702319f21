#pragma once

#include <cstdint>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "core/movement/crossings.h"
#include "core/movement/route_figures.h"

namespace crosstick::movement {

/// One straight piece as the trade writes it: whole degrees or 10 mils, 10 m, whole double paces.
struct PaperPiece {
    std::string magnetic, backMagnetic, grid, backGrid;  ///< "018", "0330"; "---" for a piece of no length
    std::int64_t metres = 0;                             ///< map distance
    std::int64_t groundMetres = 0;
    std::optional<std::int64_t> paces;  ///< of the exact ground distance
    std::string toGrid;                 ///< of the piece's end: "FL 5433 9852"
};

/// A crossing as the ladder shows it.
struct PaperCrossing {
    std::string label;
    std::int64_t metresFromLast = 0;  ///< map distance from the last route point, to 10 m
    std::size_t piece = 0;            ///< of the leg's pieces the one it falls on
    double share = 0;                 ///< of that piece, 0 to 1
    std::string arrival;              ///< "2210"; empty where unknown
};

struct PaperLeg {
    int number = 1;
    std::string from, to;  ///< labels; "start" and "end" where no measure stands there
    std::string fromGrid, toGrid;
    std::string tie;  ///< of the leg's end
    std::vector<PaperPiece> pieces;
    std::vector<PaperCrossing> crossings;
    std::int64_t metres = 0, groundMetres = 0;  ///< sums of the pieces as shown
    std::optional<std::int64_t> paces;
    std::int64_t metresSoFar = 0, groundMetresSoFar = 0;
    std::optional<std::int64_t> pacesSoFar;
    std::optional<std::int64_t> climb, descent;  ///< whole metres
    std::optional<std::int64_t> steepest;        ///< whole per cent, negative downhill
    bool fromContours = false;                   ///< climb and descent were read off the sheet by hand
    std::string time, timeSoFar;                 ///< "0:41"; empty where unknown
    std::string arrival;                         ///< "2141"; empty where unknown
    std::vector<std::string> notes;              ///< "catch: road beyond the weir", "rally: RLY 1", "halt 10 min",
                                                 ///< "along MSR OAK 540 m from 180 m after SP 1"
};

/// A route's figures for people. Sums are those of the figures shown, so that they can be checked by hand; times are
/// rounded from the exact ones, since the clock times beside them are.
struct PaperRoute {
    std::string name;  ///< "RTE QUILL"
    std::string startLabel, startGrid, startTie, startTime;
    std::vector<PaperLeg> legs;
    std::int64_t metres = 0, groundMetres = 0;
    std::optional<std::int64_t> paces, climb, descent;
    bool fromContours = false;  ///< of one leg at least
    std::string time, arrival;
    std::optional<PaperPiece> onward;
    std::string onwardTo;
};

/// Errors: those of crossings() and runsAlong().
[[nodiscard]] Result<PaperRoute> paperFigures(const plan::Plan& plan, const RouteFigures& figures,
                                              geodesy::AngleUnit unit);

/// "0:41", "12:05": hours and minutes on the move, halves up.
[[nodiscard]] std::string timeText(Minutes time);
/// "primary", "alternate", "vehicle".
[[nodiscard]] std::string_view useText(plan::Use use);
/// "RTE QUILL"; a name that says so itself stays as it is.
[[nodiscard]] std::string routeTitle(const std::string& name);
/// The G-M angle as sheets print it, to half a degree or 10 mils: "11° W", "190 mils W", "0°".
[[nodiscard]] std::string gmAngleText(Degrees angle, geodesy::AngleUnit unit);
/// What to do with it, in words and to the same step: "grid to magnetic: add 11", "grid to magnetic: subtract 190".
[[nodiscard]] std::string gmRuleText(Degrees angle, geodesy::AngleUnit unit);
/// Empty where model and sheet agree; else "Sheet and model differ by 0.7°. Check the sheet's diagram and its date."
[[nodiscard]] std::string gmCautionText(const GmAngle& gm, geodesy::AngleUnit unit);

}  // namespace crosstick::movement
