#include "core/geodesy/plane_line.h"

#include <algorithm>
#include <cmath>
#include <numeric>
#include <utility>

#include "core/geodesy/plane_angles.h"

namespace crosstick::geodesy {
namespace {

PlanePoint between(PlanePoint a, PlanePoint b, double share) {
    return {a.easting + (b.easting - a.easting) * share, a.northing + (b.northing - a.northing) * share};
}

double shareBeside(PlanePoint at, PlanePoint a, PlanePoint b) {
    const double east = (b.easting - a.easting).value();
    const double north = (b.northing - a.northing).value();
    const double square = east * east + north * north;
    const double along = (at.easting - a.easting).value() * east + (at.northing - a.northing).value() * north;
    return square > 0 ? std::clamp(along / square, 0.0, 1.0) : 0.0;
}

}  // namespace

std::optional<OnLine> nearestOn(const Line& line, Ends ends, PlanePoint at) {
    if (line.empty()) {
        return std::nullopt;
    }
    OnLine best{line.front(), 0, planeDistance(line.front(), at)};
    const std::size_t pieces = line.size() < 2 ? 0 : line.size() - (ends == Ends::Closed ? 0 : 1);
    for (std::size_t n = 0; n < pieces; ++n) {
        const PlanePoint to = line[(n + 1) % line.size()];
        const double share = shareBeside(at, line[n], to);
        const PlanePoint place = share >= 1 ? to : between(line[n], to, share);
        if (const Metres away = planeDistance(place, at); away < best.away) {
            best = {place, static_cast<double>(n) + share, away};
        }
    }
    return best;
}

PlanePoint placeAt(const Line& line, double way) {
    const auto n = static_cast<std::size_t>(std::max(0.0, std::floor(way)));
    const PlanePoint from = line[n % line.size()];
    return way <= static_cast<double>(n) ? from
                                         : between(from, line[(n + 1) % line.size()], way - static_cast<double>(n));
}

Line lineOf(const Line& line, Stretch stretch) {
    Line part{placeAt(line, stretch.from)};
    for (auto n = static_cast<std::size_t>(std::floor(stretch.from)) + 1; static_cast<double>(n) < stretch.to; ++n) {
        part.push_back(line[n]);
    }
    part.push_back(placeAt(line, stretch.to));
    return part;
}

Line partBetween(const Line& line, PlanePoint one, PlanePoint other) {
    const auto first = nearestOn(line, Ends::Open, one);
    const auto second = nearestOn(line, Ends::Open, other);
    return first && second ? lineOf(line, {std::min(first->way, second->way), std::max(first->way, second->way)})
                           : Line{};
}

std::optional<Crossing> crossing(PlanePoint a, PlanePoint b, PlanePoint c, PlanePoint d) {
    const double abE = (b.easting - a.easting).value();
    const double abN = (b.northing - a.northing).value();
    const double cdE = (d.easting - c.easting).value();
    const double cdN = (d.northing - c.northing).value();
    const double acE = (c.easting - a.easting).value();
    const double acN = (c.northing - a.northing).value();
    const double turn = abE * cdN - abN * cdE;
    if (std::abs(turn) <= 1e-12 * std::hypot(abE, abN) * std::hypot(cdE, cdN)) {
        return std::nullopt;
    }
    return Crossing{(acE * cdN - acN * cdE) / turn, (acE * abN - acN * abE) / turn};
}

std::vector<std::size_t> placesToKeep(
    std::size_t count, double tolerance,
    const std::function<double(std::size_t n, std::size_t from, std::size_t to)>& away) {
    if (count < 3) {
        std::vector<std::size_t> all(count);
        std::iota(all.begin(), all.end(), std::size_t{0});
        return all;
    }
    std::vector<std::size_t> kept{0, count - 1};
    std::vector<std::pair<std::size_t, std::size_t>> spans{{0, count - 1}};
    while (!spans.empty()) {
        const auto [from, to] = spans.back();
        spans.pop_back();
        double most = tolerance;
        std::size_t farthest = from;
        for (std::size_t n = from + 1; n < to; ++n) {
            if (const double there = away(n, from, to); there > most) {
                most = there;
                farthest = n;
            }
        }
        if (farthest != from) {
            kept.push_back(farthest);
            spans.emplace_back(from, farthest);
            spans.emplace_back(farthest, to);
        }
    }
    std::sort(kept.begin(), kept.end());
    return kept;
}

Line simplified(const Line& line, Metres tolerance) {
    Line fewer;
    for (const std::size_t n :
         placesToKeep(line.size(), tolerance.value(), [&](std::size_t at, std::size_t from, std::size_t to) {
             const PlanePoint beside = between(line[from], line[to], shareBeside(line[at], line[from], line[to]));
             return planeDistance(line[at], beside).value();
         })) {
        fewer.push_back(line[n]);
    }
    return fewer;
}

Metres lengthOf(const Line& line) {
    Metres length;
    for (std::size_t n = 0; n + 1 < line.size(); ++n) {
        length += planeDistance(line[n], line[n + 1]);
    }
    return length;
}

Metres farthestApart(const Line& one, const Line& other) {
    Metres most;
    for (const auto& [line, corners] : {std::pair(&one, &other), std::pair(&other, &one)}) {
        for (const PlanePoint corner : *corners) {
            const auto nearest = nearestOn(*line, Ends::Open, corner);
            most = nearest ? std::max(most, nearest->away) : most;
        }
    }
    return most;
}

bool isInside(PlanePoint at, const Line& ring) {
    bool inside = false;
    for (std::size_t n = 0, last = ring.size() - 1; n < ring.size(); last = n++) {
        const PlanePoint a = ring[n];
        const PlanePoint b = ring[last];
        if ((a.northing > at.northing) != (b.northing > at.northing)) {
            const double share = (at.northing - a.northing) / (b.northing - a.northing);
            inside = (at.easting < between(a, b, share).easting) != inside;
        }
    }
    return inside;
}

}  // namespace crosstick::geodesy
