#pragma once

#include <functional>
#include <optional>
#include <string>
#include <vector>

#include "core/movement/column_figures.h"
#include "core/movement/crossings.h"

namespace crosstick::movement {

/// An element as the table lists it.
struct MarchingElement {
    Uuid element;
    std::string unit;  ///< its symbol, in the words of a unit
    std::string name, callSign, role;
    int people = 0;
    Metres length, headBehind, intervalBehind;
    std::optional<Minutes> passTime;  ///< at the start, from its first man to its last
};

/// Since the column's head was at the first stop.
struct Passing {
    std::optional<Minutes> arrive;  ///< its first man
    std::optional<Minutes> clear;   ///< its last
    friend bool operator==(const Passing&, const Passing&) = default;
};

/// A place on the way: a route point, a line that is crossed, or where the way goes on to.
struct MarchPoint {
    enum class Kind { RoutePoint, Line, Onward };
    Kind kind = Kind::RoutePoint;
    plan::ItemId item;
    std::string label;
    Metres ground;                  ///< from the first stop
    std::optional<Minutes> halt;    ///< that is planned here
    Passing column;                 ///< its head and its last man
    std::vector<Passing> elements;  ///< in the order of march
};

/// Something done before the start, placed in time.
struct PreparationTime {
    std::string name;
    Minutes lasts;
    std::optional<Instant> from, until;
};

/// Who passes which point when. Times are since the column's head was at the first stop: add them to `start`.
struct MarchTable {
    plan::ItemId route;
    std::string routeName, columnName;
    plan::Use use = plan::Use::Primary;
    std::vector<MarchingElement> elements;  ///< the head first; none where the plan has no column
    int people = 0;
    Metres length;                    ///< of the column
    std::optional<Minutes> passTime;  ///< of the column, at the start
    std::vector<MarchPoint> points;   ///< in the order in which they are met
    std::optional<Instant> start, hHour;
    std::vector<PreparationTime> before;  ///< up to the start, in the order in which they are done

    /// Since the start: when the last man is past the last point. Nothing where no rate is given.
    [[nodiscard]] std::optional<Minutes> closed() const;
    [[nodiscard]] std::optional<Instant> when(std::optional<Minutes> sinceStart) const {
        return arrivalAfter(start, sinceStart);
    }
    /// To the H-hour, which is then; negative before it.
    [[nodiscard]] std::optional<Minutes> toHHour(std::optional<Minutes> sinceStart) const;
};

/// The table of a route that a column walks. The column moves as one body: an element is at a point when the column's
/// head is as far beyond it as the element's head is behind, so that a change of rate or a halt holds all of it at
/// once. At one rate that is time = way / rate + pass time (trade.md 5).
/// @param column  null: the head alone
/// Errors: those of crossings().
[[nodiscard]] Result<MarchTable> marchTable(const plan::Plan& plan, const RouteFigures& figures,
                                            const plan::Column* column);

/// Time on the way from a start to when the column has closed, as somebody computes it.
using ClosingAfter = std::function<Result<std::optional<Minutes>>(Instant start)>;

/// The latest start, to the second, after which the column has closed not later than a time. Nobody who starts later
/// closes earlier, whatever the light does to rates, so that halving finds it. Nothing where no rate is given.
/// Errors: movement/too-long where a month is not enough; those of `closing`.
[[nodiscard]] Result<std::optional<Instant>> latestStart(Instant notLaterThan, const ClosingAfter& closing);

/// From when the leader knows to when his orders begin: what he has to make them in. Nothing without a start.
[[nodiscard]] std::optional<Minutes> timeBeforeOrders(const MarchTable& table, Instant known);

/// "H-6:15", "H+0:30", "H": hours and minutes to the H-hour, to the nearest minute.
[[nodiscard]] std::string hHourText(Minutes toHHour);

}  // namespace crosstick::movement
