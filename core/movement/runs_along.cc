#include "core/movement/runs_along.h"

#include <algorithm>
#include <cmath>

#include "core/movement/lines_met.h"

namespace crosstick::movement {
namespace {

using Interval = std::optional<PieceStretch>;

/// Where a point that moves along y = 0 lies within a distance of a place.
Interval withinCircle(double x, double y, double distance) {
    const double square = distance * distance - y * y;
    return square < 0 ? Interval{} : Interval{{x - std::sqrt(square), x + std::sqrt(square)}};
}

/// Where low <= a + b t <= high.
Interval between(double a, double b, double low, double high) {
    constexpr double kFar = 1e9;
    if (std::abs(b) < 1e-12) {
        return a >= low && a <= high ? Interval{{-kFar, kFar}} : Interval{};
    }
    const double one = (low - a) / b;
    const double other = (high - a) / b;
    return Interval{{std::min(one, other), std::max(one, other)}};
}

Interval common(const Interval& a, const Interval& b) {
    if (!a || !b || std::max(a->from, b->from) > std::min(a->to, b->to)) {
        return {};
    }
    return Interval{{std::max(a->from, b->from), std::min(a->to, b->to)}};
}

Interval hull(const Interval& a, const Interval& b) {
    if (!a || !b) {
        return a ? a : b;
    }
    return Interval{{std::min(a->from, b->from), std::max(a->to, b->to)}};
}

/// The part of a piece that lies near a straight bit of line of about its direction. What lies near a straight bit is
/// convex, so that it is one stretch.
Interval besideBit(const Piece& piece, geodesy::PlanePoint a, geodesy::PlanePoint b) {
    const SeenPiece seen = seenFrom(piece, a, b);
    const double length = std::hypot(seen.bx - seen.ax, seen.by - seen.ay);
    if (!(length > 0)) {
        return {};
    }
    const double ex = (seen.bx - seen.ax) / length;
    const double ey = (seen.by - seen.ay) / length;
    if (std::abs(ey) > std::sin(radians(kAlike).value())) {
        return {};
    }
    const double distance = kBeside.value();
    const Interval foot = between(-seen.ax * ex - seen.ay * ey, ex, 0, length);
    const Interval off = between(seen.ax * ey - seen.ay * ex, -ey, -distance, distance);
    const Interval near = hull(
        common(foot, off), hull(withinCircle(seen.ax, seen.ay, distance), withinCircle(seen.bx, seen.by, distance)));
    return common(near, Interval{{0, piece.mapDistance.value()}});
}

/// Every stretch near a line, in map metres from the first stop, joined where they touch.
std::vector<PieceStretch> besideLine(const RouteFigures& figures, const std::vector<geodesy::PlanePoint>& line) {
    constexpr double kTouch = 1;  // metres
    std::vector<PieceStretch> near;
    double soFar = 0;
    for (const Leg& leg : figures.legs) {
        for (const Piece& piece : leg.pieces) {
            for (std::size_t n = 0; piece.mapDistance.value() > 0 && n + 1 < line.size(); ++n) {
                if (const auto one = besideBit(piece, line[n], line[n + 1])) {
                    near.push_back({soFar + one->from, soFar + one->to});
                }
            }
            soFar += piece.mapDistance.value();
        }
    }
    std::sort(near.begin(), near.end(), [](const PieceStretch& a, const PieceStretch& b) { return a.from < b.from; });
    std::vector<PieceStretch> joined;
    for (const PieceStretch& one : near) {
        if (!joined.empty() && one.from <= joined.back().to + kTouch) {
            joined.back().to = std::max(joined.back().to, one.to);
        } else {
            joined.push_back(one);
        }
    }
    return joined;
}

RunAlong runOf(const RouteFigures& figures, const plan::Measure& line, const PieceStretch& stretch) {
    RunAlong run{line.id, label(line), 1, Metres(stretch.from), Metres(stretch.to), Metres(stretch.from)};
    Metres soFar{0};
    for (const Leg& leg : figures.legs) {
        if (soFar <= run.mapFrom) {
            run.leg = leg.number;
            run.mapFromLast = run.mapFrom - soFar;
        }
        soFar += leg.mapDistance;
    }
    return run;
}

}  // namespace

Result<std::vector<RunAlong>> runsAlong(const plan::Plan& plan, const RouteFigures& figures) {
    const auto grid = WorkGrid::of(plan);
    if (!grid) {
        return tl::unexpected(grid.error());
    }
    std::vector<RunAlong> runs;
    for (const GroundLine& line : linesBeside(plan, figures.route, *grid)) {
        for (const PieceStretch& stretch : besideLine(figures, line.points)) {
            if (stretch.to - stretch.from >= kShortestRun.value()) {
                runs.push_back(runOf(figures, *line.measure, stretch));
            }
        }
    }
    std::stable_sort(runs.begin(), runs.end(), [](const RunAlong& a, const RunAlong& b) {
        return a.mapFrom != b.mapFrom ? a.mapFrom < b.mapFrom : a.label < b.label;
    });
    return runs;
}

}  // namespace crosstick::movement
