#include "core/registration/whole_line.h"

#include <algorithm>
#include <array>
#include <cmath>

#include <Eigen/Dense>

#include "core/registration/dark_piece.h"

namespace crosstick::registration {
namespace {

constexpr double kGap = 3;                    // pixels about a crossing that are left out: the other line is there
constexpr double kReach = 4;                  // pixels to either side of where the line should run
constexpr double kOnLine = 1;                 // pixel: what is so near belongs to the line
constexpr double kIntervals = 1.6;            // to either side of a crossing that say where it is,
constexpr double kFewest = 100, kMost = 240;  // pixels, but no fewer or more

double distance(PixelPoint a, PixelPoint b) {
    return std::hypot(a.x - b.x, a.y - b.y);
}

/// A piece of the line: what is dark on it, aside of where the model has the line.
struct Stretch {
    double along = 0;
    std::vector<Centre> dark;
};

/// The flat curve that the line is near a crossing: offset, slope, and how it bends.
struct Curve {
    double from = 0;  ///< along, at the crossing
    double offset = 0, slope = 0, bend = 0;
    [[nodiscard]] double at(double along) const {
        const double t = along - from;
        return offset + t * (slope + t * bend);
    }
};

/// Of a piece, by how far it is from the crossing: 1 there, nothing from half the window on.
double weightOf(const Stretch& stretch, const Curve& curve, double half) {
    const double share = std::min(1.0, std::abs(stretch.along - curve.from) / half);
    const double rest = 1 - share * share * share;
    return rest * rest * rest;
}

const Centre* nearest(const Stretch& stretch, const Curve& curve) {
    const auto off = [&](const Centre& dark) { return std::abs(dark.offset - curve.at(stretch.along)); };
    const auto best = std::min_element(stretch.dark.begin(), stretch.dark.end(),
                                       [&](const Centre& a, const Centre& b) { return off(a) < off(b); });
    return best == stretch.dark.end() ? nullptr : &*best;
}

/// The window about a short part of the line, as far as it lies in the picture.
Result<GreyWindow> windowAbout(const GreyPicture& picture, PixelPoint a, PixelPoint b) {
    constexpr double kMargin = kReach + 2 * kSide;
    const int left = std::max(0, static_cast<int>(std::min(a.x, b.x) - kMargin));
    const int top = std::max(0, static_cast<int>(std::min(a.y, b.y) - kMargin));
    const int right = std::min(picture.columns, static_cast<int>(std::max(a.x, b.x) + kMargin) + 1);
    const int bottom = std::min(picture.rows, static_cast<int>(std::max(a.y, b.y) + kMargin) + 1);
    return right - left < 2 || bottom - top < 2 ? GreyWindow{} : picture.read({left, top, right - left, bottom - top});
}

class Follower {
  public:
    Follower(std::span<const Station> stations, const LineLook& look) : stations_(stations), look_(look) {
        alongs_.push_back(0);
        for (std::size_t n = 1; n < stations.size(); ++n) {
            alongs_.push_back(alongs_.back() + distance(stations[n - 1].at, stations[n].at));
        }
    }
    Result<void> read(const GreyPicture& picture);
    [[nodiscard]] std::optional<LineAt> at(std::size_t station) const;

  private:
    std::span<const Station> stations_;
    LineLook look_;
    std::vector<double> alongs_;  ///< of the stations
    std::vector<Stretch> stretches_;

    using Range = std::span<const Stretch>;
    Result<void> readBetween(const GreyPicture& picture, std::size_t station);
    [[nodiscard]] PixelPoint directionAt(std::size_t station) const;
    [[nodiscard]] double spacingAt(std::size_t station) const;
    [[nodiscard]] double expected(double along) const;
    [[nodiscard]] Range within(double from, double to) const;
    [[nodiscard]] double likeness(const Centre& dark) const;
    [[nodiscard]] Curve voted(Range range, const Curve& start, double half) const;
    struct Settled {
        Curve curve;
        double error = 0;
    };
    [[nodiscard]] std::optional<Settled> settled(Range range, const Curve& start, double half) const;
    [[nodiscard]] bool isLine(const Centre& dark, const Curve& curve) const;
    [[nodiscard]] double goesOn(const Curve& curve, double spacing, double way) const;
    [[nodiscard]] LineLook lookAlong(Range range, const Curve& curve) const;
    [[nodiscard]] double seen(const Curve& curve, double from, double to) const;
};

/// The direction in which a line points at a station.
PixelPoint Follower::directionAt(std::size_t station) const {
    const PixelPoint a = stations_[station == 0 ? 0 : station - 1].at;
    const PixelPoint b = stations_[std::min(station + 1, stations_.size() - 1)].at;
    const double length = distance(a, b);
    return {(b.x - a.x) / length, (b.y - a.y) / length};
}

double Follower::spacingAt(std::size_t station) const {
    const std::size_t a = station == 0 ? 0 : station - 1;
    const std::size_t b = std::min(station + 1, stations_.size() - 1);
    return (alongs_[b] - alongs_[a]) / static_cast<double>(b - a);
}

/// Where the line is expected aside of the model.
double Follower::expected(double along) const {
    const auto next = std::upper_bound(alongs_.begin() + 1, alongs_.end() - 1, along);
    const auto b = static_cast<std::size_t>(next - alongs_.begin());
    const double share = (along - alongs_[b - 1]) / (alongs_[b] - alongs_[b - 1]);
    return stations_[b - 1].aside + share * (stations_[b].aside - stations_[b - 1].aside);
}

Follower::Range Follower::within(double from, double to) const {
    const auto before = [](const Stretch& stretch, double along) { return stretch.along < along; };
    const auto first = std::lower_bound(stretches_.begin(), stretches_.end(), from, before);
    const auto last = std::lower_bound(first, stretches_.end(), to, before);
    return {first, last};
}

Result<void> Follower::read(const GreyPicture& picture) {
    for (std::size_t n = 0; n + 1 < stations_.size(); ++n) {
        if (auto read = readBetween(picture, n); !read) {
            return read;
        }
    }
    return {};
}

/// The pieces between a station and the next, some at a time: a window about a slanting line is mostly beside it.
Result<void> Follower::readBetween(const GreyPicture& picture, std::size_t station) {
    constexpr double kAtOnce = 96;  // pixels along
    const Across across{static_cast<int>((kReach + 1) * kPerPixel)};
    const PixelPoint from = stations_[station].at;
    const double length = alongs_[station + 1] - alongs_[station];
    const PixelPoint direction{(stations_[station + 1].at.x - from.x) / length,
                               (stations_[station + 1].at.y - from.y) / length};
    const auto place = [&](double along) {
        const double aside = expected(alongs_[station] + along);
        return PixelPoint{from.x + direction.x * along - direction.y * aside,
                          from.y + direction.y * along + direction.x * aside};
    };
    const double last = length - kGap - kPiece / 2.0;
    double along = kGap + kPiece / 2.0;
    while (along <= last) {
        const double end = std::min(along + kAtOnce, last);
        const auto window = windowAbout(picture, place(along), place(end));
        if (!window) {
            return tl::unexpected(window.error());
        }
        for (; along <= end; along += kPiece) {
            Stretch stretch{alongs_[station] + along, {}};
            stretch.dark = centresOf(pieceAt(*window, place(along), direction, 0, across), across, look_.contrast);
            for (Centre& dark : stretch.dark) {
                dark.along = stretch.along;
                dark.offset += expected(stretch.along);
            }
            stretches_.push_back(std::move(stretch));
        }
    }
    return {};
}

/// 1 for what is as dark as the sheet's lines; less for a contour, a letter, a frame.
double Follower::likeness(const Centre& dark) const {
    const double ratio = dark.contrast * dark.width / look_.ink();
    return ratio < 1 ? std::clamp((ratio - 0.25) / 0.45, 0.05, 1.0) : std::clamp((2.6 - ratio) / 1.1, 0.15, 1.0);
}

/// The curve moved aside to where most of what is dark lies.
Curve Follower::voted(Range range, const Curve& start, double half) const {
    constexpr double kStep = 0.25;
    constexpr double kNear = 0.8;
    Curve best = start;
    double most = -1;
    for (double move = -kReach; move <= kReach; move += kStep) {
        Curve curve = start;
        curve.offset += move;
        double votes = 0;
        for (const Stretch& stretch : range) {
            if (const Centre* dark = nearest(stretch, curve)) {
                const double off = std::min(1.0, std::abs(dark->offset - curve.at(stretch.along)) / kNear);
                votes += weightOf(stretch, curve, half) * likeness(*dark) * (1 - off * off);
            }
        }
        votes *= 1 - 0.1 * std::abs(move) / kReach;  // those nearer to where it should be win where votes are equal
        if (votes > most) {
            most = votes;
            best = curve;
        }
    }
    return best;
}

/// By least squares in some rounds, what lies off the curve counting less and less.
std::optional<Follower::Settled> Follower::settled(Range range, const Curve& start, double half) const {
    constexpr std::array kCuts{1.6, 1.3, 1.0, 0.8, 0.8};  // pixels beyond which a piece does not count
    // How stiffly the curve is held to its neighbours' place and slope and kept straight, as so many pieces: our own.
    const Eigen::Vector3d stiff(0.01, 0.06, 0.25);
    Settled found{start, 0};
    for (const double cut : kCuts) {
        Eigen::Matrix3d normal = stiff.asDiagonal();
        Eigen::Vector3d right = Eigen::Vector3d::Zero();
        double squares = 0;
        double weights = 0;
        for (const Stretch& stretch : range) {
            const Centre* dark = nearest(stretch, found.curve);
            const double off = dark == nullptr ? cut : dark->offset - found.curve.at(stretch.along);
            if (std::abs(off) >= cut) {
                continue;
            }
            const double robust = 1 - off * off / (cut * cut);
            const double weight = weightOf(stretch, start, half) * likeness(*dark) * robust * robust;
            const double t = (stretch.along - start.from) / half;
            const Eigen::Vector3d terms(1, t, t * t);
            normal += weight * terms * terms.transpose();
            right += weight * terms * (dark->offset - start.at(stretch.along));
            squares += weight * off * off;
            weights += weight;
        }
        constexpr double kFewestPieces = 3;
        if (weights < kFewestPieces) {
            return std::nullopt;
        }
        const Eigen::Matrix3d spread = normal.inverse();
        const Eigen::Vector3d moved = spread * right;
        found.curve = {start.from, start.offset + moved[0], start.slope + moved[1] / half, moved[2] / (half * half)};
        constexpr double kFinest = 0.15;
        found.error = std::sqrt(spread(0, 0) * std::max(kFinest * kFinest, squares / weights));
    }
    return found;
}

/// Whether something dark lies on the curve and is like the line itself: a letter across it is not.
bool Follower::isLine(const Centre& dark, const Curve& curve) const {
    constexpr double kLike = 0.4;
    return std::abs(dark.offset - curve.at(dark.along)) < kOnLine && likeness(dark) >= kLike;
}

/// The share of pieces between two places along that lie on the curve.
double Follower::seen(const Curve& curve, double from, double to) const {
    double on = 0;
    double all = 0;
    for (const Stretch& stretch : within(from, to)) {
        const Centre* dark = nearest(stretch, curve);
        on += dark != nullptr && isLine(*dark, curve) ? 1 : 0;
        all += 1;
    }
    return all == 0 ? 0 : on / all;
}

/// The largest share seen a little way on from a crossing, or to the next and past it: behind a name or a wood the line
/// comes out again, behind the neatline it does not. @param way  1 ahead, -1 behind
double Follower::goesOn(const Curve& curve, double spacing, double way) const {
    const double arm = armFor(spacing);
    double most = 0;
    for (const auto& [from, to] :
         {std::pair{0.0, arm}, {0.0, spacing}, {arm, spacing}, {arm, arm + spacing}, {spacing, 2 * spacing}}) {
        most = std::max(most, way > 0 ? seen(curve, curve.from + from, curve.from + to)
                                      : seen(curve, curve.from - to, curve.from - from));
    }
    return most;
}

LineLook Follower::lookAlong(Range range, const Curve& curve) const {
    std::vector<LineTrace> on;
    for (const Stretch& stretch : range) {
        const Centre* dark = nearest(stretch, curve);
        if (dark != nullptr && std::abs(dark->offset - curve.at(dark->along)) < kOnLine) {
            on.push_back({});
            on.back().contrast = dark->contrast;
            on.back().width = dark->width;
        }
    }
    return on.empty() ? LineLook{} : lookOf(on);
}

std::optional<LineAt> Follower::at(std::size_t station) const {
    const double here = alongs_[station];
    const double spacing = spacingAt(station);
    const double half = std::clamp(kIntervals * spacing, kFewest, kMost);
    const Range range = within(here - half, here + half);
    const double slope = (expected(here + spacing / 2) - expected(here - spacing / 2)) / spacing;
    const auto found = settled(range, voted(range, {here, expected(here), slope, 0}, half), half);
    if (!found) {
        return std::nullopt;
    }
    const Curve& curve = found->curve;
    const LineLook look = lookAlong(range, curve);
    LineTrace trace{curve.offset, curve.slope, goesOn(curve, spacing, -1), goesOn(curve, spacing, 1)};
    trace.contrast = look.contrast;
    trace.width = look.width;
    const PixelPoint d = directionAt(station);
    const PixelPoint from = stations_[station].at;
    const double length = std::hypot(1.0, curve.slope);
    return LineAt{{from.x - d.y * curve.offset, from.y + d.x * curve.offset},
                  {(d.x - d.y * curve.slope) / length, (d.y + d.x * curve.slope) / length},
                  trace,
                  found->error};
}

}  // namespace

double confidenceOf(const LineAt& line, const LineLook& look) {
    constexpr double kSurely = 0.25;  // pixels
    const double vague = std::clamp((line.error - kSurely) / kSurely, 0.0, 1.0);
    return confidenceOf(line.seen, look) * (1 - 0.6 * vague);
}

Result<std::vector<std::optional<LineAt>>> followLine(const GreyPicture& picture, std::span<const Station> stations,
                                                      const LineLook& look) {
    std::vector<std::optional<LineAt>> lines(stations.size());
    if (stations.size() < 2) {
        return lines;
    }
    Follower follower(stations, look);
    if (auto read = follower.read(picture); !read) {
        return tl::unexpected(read.error());
    }
    for (std::size_t n = 0; n < stations.size(); ++n) {
        lines[n] = follower.at(n);
    }
    return lines;
}

}  // namespace crosstick::registration
