#include "core/movement/crossings.h"

#include <algorithm>
#include <cmath>

#include "core/movement/lines_met.h"

namespace crosstick::movement {
namespace {

constexpr double kTouch = 1e-6;  // metres: nearer than this is met
constexpr double kSame = 1e-3;   // metres: meetings nearer than this are one

/// Where the two meet; both ends belong to each.
std::optional<PieceStretch> meeting(const Piece& piece, geodesy::PlanePoint a, geodesy::PlanePoint b) {
    const double length = piece.mapDistance.value();
    const SeenPiece seen = seenFrom(piece, a, b);
    if (std::min(seen.ay, seen.by) > kTouch || std::max(seen.ay, seen.by) < -kTouch) {
        return std::nullopt;
    }
    PieceStretch met{};
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
    return PieceStretch{std::clamp(met.from, 0.0, length), std::clamp(met.to, 0.0, length)};
}

std::vector<PieceStretch> meetings(const Piece& piece, const std::vector<geodesy::PlanePoint>& line) {
    std::vector<PieceStretch> met;
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
                std::sort(met.begin(), met.end(),
                          [](const PieceStretch& a, const PieceStretch& b) { return a.from < b.from; });
                for (const PieceStretch& stretch : met) {
                    take(stretch, leg, piece, fromLast);
                }
                fromLast += piece.mapDistance;
                map_ += piece.mapDistance;
                ground_ += piece.groundDistance;
            }
        }
        return std::move(found_);
    }

  private:
    void take(const PieceStretch& stretch, const Leg& leg, const Piece& piece, Metres fromLast) {
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
        crossing.timeSoFar = figures_.progress.at(crossing.groundSoFar);
        crossing.arrival = arrivalAfter(figures_.start, crossing.timeSoFar);
        found_.push_back(std::move(crossing));
    }

    const RouteFigures& figures_;
    const plan::Measure& line_;
    std::vector<geodesy::PlanePoint> points_;
    std::vector<Crossing> found_;
    Metres map_{0}, ground_{0};
    double reached_ = -1;  // metres of map distance up to which this line has been counted
};

}  // namespace

Result<std::vector<Crossing>> crossings(const plan::Plan& plan, const RouteFigures& figures) {
    const auto grid = WorkGrid::of(plan);
    if (!grid) {
        return tl::unexpected(grid.error());
    }
    std::vector<Crossing> found;
    for (const GroundLine& line : linesBeside(plan, figures.route, *grid)) {
        auto one = Walk(figures, *line.measure, line.points).crossings();
        found.insert(found.end(), one.begin(), one.end());
    }
    std::stable_sort(found.begin(), found.end(), [](const Crossing& a, const Crossing& b) {
        return a.mapSoFar != b.mapSoFar ? a.mapSoFar < b.mapSoFar : a.label < b.label;
    });
    return found;
}

}  // namespace crosstick::movement
