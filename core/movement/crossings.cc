#include "core/movement/crossings.h"

#include <algorithm>
#include <cmath>
#include <set>

#include "core/geodesy/plane_angles.h"
#include "core/measures/catalogue.h"
#include "core/movement/work_grid.h"

namespace crosstick::movement {
namespace {

constexpr double kTouch = 1e-6;  // metres: nearer than this is met
constexpr double kSame = 1e-3;   // metres: meetings nearer than this are one

/// A stretch of a piece, as metres from the piece's start, along which a line is met; mostly of no length.
struct Stretch {
    double from = 0;
    double to = 0;
};

/// The line's piece a-b seen from the route's: x along it from its start, y to its left, in metres.
struct Seen {
    double ax, ay, bx, by;
};

Seen seenFrom(const Piece& piece, geodesy::PlanePoint a, geodesy::PlanePoint b) {
    const double length = piece.mapDistance.value();
    const double ux = (piece.to.easting - piece.from.easting).value() / length;
    const double uy = (piece.to.northing - piece.from.northing).value() / length;
    const auto along = [&](geodesy::PlanePoint p) {
        return (p.easting - piece.from.easting).value() * ux + (p.northing - piece.from.northing).value() * uy;
    };
    const auto across = [&](geodesy::PlanePoint p) {
        return (p.northing - piece.from.northing).value() * ux - (p.easting - piece.from.easting).value() * uy;
    };
    return {along(a), across(a), along(b), across(b)};
}

/// Where the two meet; both ends belong to each.
std::optional<Stretch> meeting(const Piece& piece, geodesy::PlanePoint a, geodesy::PlanePoint b) {
    const double length = piece.mapDistance.value();
    const Seen seen = seenFrom(piece, a, b);
    if (std::min(seen.ay, seen.by) > kTouch || std::max(seen.ay, seen.by) < -kTouch) {
        return std::nullopt;
    }
    Stretch met{};
    if (std::abs(seen.ay) <= kTouch && std::abs(seen.by) <= kTouch) {
        met = {std::min(seen.ax, seen.bx), std::max(seen.ax, seen.bx)};
    } else {
        const double share = std::clamp(seen.ay / (seen.ay - seen.by), 0.0, 1.0);
        const double x = seen.ax + (seen.bx - seen.ax) * share;
        met = {x, x};
    }
    if (met.to < -kTouch || met.from > length + kTouch) {
        return std::nullopt;
    }
    return Stretch{std::clamp(met.from, 0.0, length), std::clamp(met.to, 0.0, length)};
}

std::set<plan::ItemId> itemsShownWith(const plan::Plan& plan, const plan::ItemId& route) {
    std::set<plan::ItemId> with;
    std::set<plan::ItemId> all;
    for (const plan::FilmPtr& film : plan.films()) {
        const bool showsRoute = std::any_of(film->shows.begin(), film->shows.end(),
                                            [&](const plan::Showing& showing) { return showing.item == route; });
        for (const plan::Showing& showing : film->shows) {
            all.insert(showing.item);
            if (showsRoute) {
                with.insert(showing.item);
            }
        }
    }
    return with.empty() ? all : with;
}

/// A line's points in the grid of the work; none where one does not reach it.
std::vector<geodesy::PlanePoint> onGrid(const plan::Measure& line, const WorkGrid& grid) {
    std::vector<geodesy::PlanePoint> points;
    for (const geodesy::PlanePoint inPlan : line.points) {
        const auto point = grid.onGrid(inPlan);
        if (!point) {
            return {};
        }
        points.push_back(*point);
    }
    return points;
}

std::vector<Stretch> meetings(const Piece& piece, const std::vector<geodesy::PlanePoint>& line) {
    std::vector<Stretch> met;
    if (!(piece.mapDistance.value() > 0)) {
        return met;
    }
    for (std::size_t n = 0; n + 1 < line.size(); ++n) {
        if (const auto one = meeting(piece, line[n], line[n + 1])) {
            met.push_back(*one);
        }
    }
    return met;
}

/// Walks the legs with one line in hand.
class Walk {
  public:
    Walk(const RouteFigures& figures, const plan::Measure& line, std::vector<geodesy::PlanePoint> points)
        : figures_(figures), line_(line), points_(std::move(points)) {}

    std::vector<Crossing> crossings() {
        for (const Leg& leg : figures_.legs) {
            Metres fromLast{0};
            for (const Piece& piece : leg.pieces) {
                auto met = meetings(piece, points_);
                std::sort(met.begin(), met.end(), [](const Stretch& a, const Stretch& b) { return a.from < b.from; });
                for (const Stretch& stretch : met) {
                    take(stretch, leg, piece, fromLast);
                }
                fromLast += piece.mapDistance;
                map_ += piece.mapDistance;
                ground_ += piece.groundDistance;
                time_ = time_ && piece.time ? std::optional<Minutes>(*time_ + *piece.time) : std::nullopt;
            }
        }
        return std::move(found_);
    }

  private:
    void take(const Stretch& stretch, const Leg& leg, const Piece& piece, Metres fromLast) {
        const double begin = map_.value() + stretch.from;
        const double end = map_.value() + stretch.to;
        if (begin <= reached_ + kSame) {
            reached_ = std::max(reached_, end);
            return;
        }
        reached_ = end;
        const double share = stretch.from / piece.mapDistance.value();
        Crossing crossing;
        crossing.line = line_.id;
        crossing.label = label(line_);
        crossing.at = {piece.from.easting + (piece.to.easting - piece.from.easting) * share,
                       piece.from.northing + (piece.to.northing - piece.from.northing) * share};
        crossing.leg = leg.number;
        crossing.mapSoFar = Metres(begin);
        crossing.groundSoFar = ground_ + piece.groundDistance * share;
        crossing.mapFromLast = fromLast + Metres(stretch.from);
        if (time_ && piece.time) {
            crossing.timeSoFar = *time_ + *piece.time * share;
            crossing.arrival = arrivalAfter(figures_.start, crossing.timeSoFar);
        }
        found_.push_back(std::move(crossing));
    }

    const RouteFigures& figures_;
    const plan::Measure& line_;
    std::vector<geodesy::PlanePoint> points_;
    std::vector<Crossing> found_;
    Metres map_{0}, ground_{0};
    std::optional<Minutes> time_ = Minutes(0);
    double reached_ = -1;  // metres of map distance up to which this line has been counted
};

}  // namespace

Result<std::vector<Crossing>> crossings(const plan::Plan& plan, const RouteFigures& figures) {
    const auto grid = WorkGrid::of(plan);
    if (!grid) {
        return tl::unexpected(grid.error());
    }
    std::vector<Crossing> found;
    for (const plan::ItemId& item : itemsShownWith(plan, figures.route)) {
        const auto line = plan.measure(item);
        if (!line || line->anchor != plan::Anchor::Ground) {
            continue;
        }
        const measures::Entry* entry = measures::find(line->kind);
        if (entry == nullptr || !measures::isCrossedOnTheMarch(*entry)) {
            continue;
        }
        auto one = Walk(figures, *line, onGrid(*line, *grid)).crossings();
        found.insert(found.end(), one.begin(), one.end());
    }
    std::stable_sort(found.begin(), found.end(), [](const Crossing& a, const Crossing& b) {
        return a.mapSoFar != b.mapSoFar ? a.mapSoFar < b.mapSoFar : a.label < b.label;
    });
    return found;
}

}  // namespace crosstick::movement
